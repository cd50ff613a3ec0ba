import type { Issue } from '../issue.ts'
import { MAX_ISSUES } from './limits.ts'
import { pathText } from './path.ts'
import type { Position } from './tree.ts'

/**
 * An issue of a section, its lines counted from the section's first. `twin` is the place of the other of two keys of one name; an `echo`
 * follows from the form of the section as a whole and says little beside a known mistake in one of its lines.
 */
export type SectionIssue = Issue & { readonly twin?: Position; readonly echo?: boolean }

/** The words of an issue, without its place. */
export type Said = Pick<SectionIssue, 'what' | 'found' | 'accepted' | 'twin' | 'echo'>

/** The text of one section while it is read: turns offsets into positions and collects what is wrong. */
export class Source {
  readonly text: string
  readonly issues: SectionIssue[] = []
  /** Issues beyond those kept. */
  more = 0
  private readonly lineStarts: readonly number[]

  constructor(text: string) {
    this.text = text
    const starts = [0]
    for (let i = text.indexOf('\n'); i >= 0; i = text.indexOf('\n', i + 1)) starts.push(i + 1)
    this.lineStarts = starts
  }

  position(offset: number, end: number): Position {
    let low = 0
    for (let high = this.lineStarts.length; high - low > 1; ) {
      const middle = (low + high) >> 1
      if ((this.lineStarts[middle] ?? 0) <= offset) low = middle
      else high = middle
    }
    return { line: low + 1, column: offset - (this.lineStarts[low] ?? 0) + 1, offset, end }
  }

  isOneLine(from: number, to: number): boolean {
    return this.position(from, from).line === this.position(Math.max(from, to - 1), to).line
  }

  /** Adds an issue; the path may be given as a function where it costs something to find. */
  say(at: number, path: readonly string[] | (() => readonly string[]), said: Said): void {
    if (this.issues.length >= MAX_ISSUES) {
      this.more++
      return
    }
    const { line, column } = this.position(at, at)
    this.issues.push({ line, column, path: pathText(typeof path === 'function' ? path() : path), ...said })
  }
}
