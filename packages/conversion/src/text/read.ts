import { asFound, type Issue, isError } from '../issue.ts'
import { aroundLines } from './around.ts'
import { IssueList } from './issue-list.ts'
import { MAX_DEPTH, MAX_ISSUES, MAX_PIECES } from './limits.ts'
import { isStreamMark } from './line-problem.ts'
import { TWICE } from './nodes.ts'
import type { Stretch } from './outline.ts'
import { scan } from './scan.ts'
import { type SectionReading, sectionReading } from './section.ts'
import type { SectionIssue } from './source.ts'
import { type Entry, movedEntry, type TextTree } from './tree.ts'

/** A file as read: its text, what could be read of it, and everything wrong with it. */
export type TextReading = {
  /** The text, decoded; undefined when the file was refused as a whole. */
  readonly text: string | undefined
  /** What could be read. Where there are errors, what they touch is left out; undefined when the file was refused as a whole. */
  readonly tree: TextTree | undefined
  readonly issues: readonly Issue[]
  /** The sections by their text, so that a later reading of an edited text need not read them again. */
  readonly sections: ReadonlyMap<string, SectionReading>
}

/**
 * Reads a conversion file as text: groups, values, notes and rows, each with its place; no meaning, no units, no types.
 *
 * All problems are reported at once. Each top-level section is read by itself, so a mistake in one hides nothing in another, and with
 * `before`, an earlier reading of nearly the same text, only the sections that changed are read again.
 */
export function readText(input: Uint8Array | string, file?: string, before?: TextReading): TextReading {
  const scanned = scan(input)
  const all = new IssueList()
  for (const issue of scanned.problems.issues) all.add(issue)
  all.left += scanned.problems.left
  if (!scanned.ok) return { text: undefined, tree: undefined, issues: finished(all, file), sections: new Map() }

  const { text, sections: stretches } = scanned
  const trouble = troubledSections(stretches, scanned.problems.issues)
  const entries = new Map<string, Entry>()
  const sections = new Map<string, SectionReading>()
  let pieces = 0
  for (const stretch of stretches) {
    const source = text.slice(stretch.from, stretch.to)
    if (isStreamMark(source.slice(0, 4))) continue
    const whole = sections.get(source) ?? before?.sections.get(source) ?? sectionReading(source, MAX_PIECES - pieces)
    sections.set(source, whole)
    const lines = trouble.get(stretch),
      section =
        whole.entry === undefined && lines !== undefined ? (readAround(source, stretch, lines, MAX_PIECES - pieces) ?? whole) : whole
    pieces += section === whole ? whole.pieces : whole.pieces + section.pieces
    if (section.refused !== undefined || pieces > MAX_PIECES) {
      all.add(refusal(section.refused ?? 'pieces', stretch))
      return { text: undefined, tree: undefined, issues: finished(all, file), sections: new Map() }
    }
    for (const issue of section.issues) {
      if (lines === undefined || !(issue.echo || lines.has(issue.line + stretch.line - 1))) all.add(placed(issue, stretch))
    }
    all.left += section.more
    if (section.entry === undefined) continue
    const entry = movedEntry(section.entry, stretch.line - 1, stretch.from)
    const twin = entries.get(entry.key)
    if (twin === undefined) entries.set(entry.key, entry)
    else all.add(twice(entry, twin))
  }
  const at = { line: 1, column: 1, offset: 0, end: text.length }
  return { text, tree: { kind: 'group', entries, at, flow: false }, issues: finished(all, file), sections }
}

/** A reading that can be built upon: everything in the file was understood as text. */
export type SoundReading = TextReading & { readonly text: string; readonly tree: TextTree }

export const isSound = (reading: TextReading): reading is SoundReading =>
  reading.text !== undefined && reading.tree !== undefined && !reading.issues.some(isError)

/** A section read without the lines whose problems are known, so that these hide nothing else in it; undefined where that does not help. */
function readAround(source: string, stretch: Stretch, faulty: ReadonlySet<number>, maxPieces: number): SectionReading | undefined {
  const rest = aroundLines(source, new Set([...faulty].map(line => line - stretch.line + 1))),
    read = rest === undefined ? undefined : sectionReading(rest, maxPieces)
  return read?.entry === undefined ? undefined : read
}

/** The lines with known problems, by the section they stand in. */
function troubledSections(stretches: readonly Stretch[], issues: readonly Issue[]): ReadonlyMap<Stretch, ReadonlySet<number>> {
  const trouble = new Map<Stretch, Set<number>>()
  let i = -1
  for (const { line } of [...issues].sort((a, b) => a.line - b.line)) {
    while ((stretches[i + 1]?.line ?? Number.POSITIVE_INFINITY) <= line) i++
    const stretch = stretches[i]
    if (stretch === undefined) continue
    const lines = trouble.get(stretch) ?? new Set()
    trouble.set(stretch, lines.add(line))
  }
  return trouble
}

/** An issue of a section as an issue of the file. */
function placed({ line, column, path, what, found, accepted, twin }: SectionIssue, stretch: Stretch): Issue {
  const above = stretch.line - 1
  const first = twin === undefined ? '' : `, first on line ${twin.line + above}, column ${twin.column}`
  return { line: line + above, column, path, what, found: found + first, accepted }
}

const twice = ({ key, keyAt }: Entry, twin: Entry): Issue => ({
  line: keyAt.line,
  column: keyAt.column,
  path: key,
  ...TWICE,
  found: `${asFound(key)}, first on line ${twin.keyAt.line}, column ${twin.keyAt.column}`,
})

function refusal(refused: NonNullable<SectionReading['refused']>, { line }: Stretch): Issue {
  const place = { line, column: 1, path: '', found: '' }
  if (refused === 'depth') return { ...place, what: 'the text nests too deep', accepted: `up to ${MAX_DEPTH} levels` }
  if (refused === 'pieces') return { ...place, what: 'the text has too many parts', accepted: `up to ${MAX_PIECES} words and marks` }
  return { ...place, what: 'this section cannot be read', accepted: '`key: value` lines' }
}

function finished(all: IssueList, file: string | undefined): readonly Issue[] {
  const issues = [...all.issues].sort((a, b) => a.line - b.line || a.column - b.column)
  const last = issues.at(-1)
  if (all.left > 0 && last) {
    issues.push({
      ...last,
      path: '',
      what: `${all.left} more problems follow`,
      found: '',
      accepted: `a file with fewer than ${MAX_ISSUES} of them`,
    })
  }
  return file === undefined ? issues : issues.map(issue => ({ file, ...issue }))
}
