import { isMap, type YAMLError, type YAMLMap } from 'yaml'
import { asFound } from '../issue.ts'
import { saidPlainly } from './library-errors.ts'
import { groupOf } from './nodes.ts'
import { composed, type Mark } from './pieces.ts'
import { type SectionIssue, Source } from './source.ts'
import type { Entry } from './tree.ts'

/** What one top-level section holds, its positions counted from its own first character. Depends on nothing but the section's text. */
export type SectionReading = {
  readonly entry: Entry | undefined
  readonly issues: readonly SectionIssue[]
  /** Issues beyond those kept. */
  readonly more: number
  readonly pieces: number
  readonly refused: 'depth' | 'pieces' | 'library' | undefined
}

const NOT_READ: Readonly<Record<Mark['kind'], readonly [what: string, accepted: string]>> = {
  anchor: ['anchors (&) are not read', 'each value where it belongs; text that starts with & in quotes'],
  alias: ['references (*) are not read', 'each value where it belongs; text that starts with * in quotes'],
  tag: ['tags (!) are not read', 'the value alone; text that starts with ! in quotes'],
  list: ['this form of list is not read', 'a row in one line, [a, b]'],
  'explicit key': ['keys marked by ? are not read', '`key: value`'],
}

/** Reads one section; gives up on it after `maxPieces` lexical pieces. */
export function sectionReading(text: string, maxPieces: number): SectionReading {
  const { document, errors, marks, pieces, refused } = composed(text, maxPieces)
  const source = new Source(text)
  for (const mark of marks) {
    const [what, accepted] = NOT_READ[mark.kind]
    source.say(mark.offset, () => pathAbove(text, mark.offset), { what, found: asFound(mark.source), accepted })
  }
  reportErrors(source, errors)
  const contents = document?.contents
  let entry: Entry | undefined
  if (errors.length === 0 && isMap(contents) && contents.flow !== true) {
    entry = groupOf(source, contents as YAMLMap.Parsed, [])
      .entries.values()
      .next().value
  } else if (errors.length === 0 && marks.length === 0 && refused === undefined) {
    const what = 'the file is not written as `key: value` lines from its first column'
    source.say(0, [], { what, found: asFound(lineFrom(text, 0)), accepted: '`key: value`', echo: true })
  }
  return { entry, issues: source.issues, more: source.more, pieces, refused }
}

/** The library's errors in plain words, one a line: what follows on the same line is mostly an echo of the first. */
function reportErrors(source: Source, errors: readonly YAMLError[]): void {
  const { text } = source
  const last = Math.max(0, text.trimEnd().length - 1)
  let lastLine = 0
  for (const error of errors) {
    const at = Math.min(error.pos[0], last)
    const { line } = source.position(at, at)
    if (line === lastLine) continue
    lastLine = line
    source.say(at, () => pathAbove(text, at), { ...saidPlainly(error, lineFrom(text, at)), echo: true })
  }
}

const lineFrom = (text: string, at: number): string =>
  text
    .slice(at, at + 200)
    .split('\n', 1)[0]
    ?.trimEnd() ?? ''

/** How many lines up the keys above a mistake are looked for. */
const LOOK_UP = 2000

/** The keys above a place, read off the indentation: good enough to say where a mistake stands. */
function pathAbove(text: string, at: number): readonly string[] {
  const path: string[] = []
  let indent = Number.POSITIVE_INFINITY
  const newline = text.indexOf('\n', at)
  let end = newline < 0 ? text.length : newline
  for (let lines = 0; end > 0 && indent > 0 && lines < LOOK_UP; lines++) {
    const start = text.lastIndexOf('\n', end - 1) + 1
    const match = /^( *)([^\s:#][^:\n]{0,80}):(?:\s|$)/.exec(text.slice(start, Math.min(end, start + 200)))
    end = start - 1
    const here = match?.[1]?.length ?? Number.POSITIVE_INFINITY
    if (match?.[2] === undefined || here >= indent) continue
    path.unshift(match[2].trim())
    indent = here
  }
  return path
}
