import { asFound } from '../issue.ts'
import type { LineShape } from './line.ts'

/** A line that others may hang below: its indent, where its key stands, and whether a value stands behind the key already. */
export type Level = {
  readonly indent: number
  readonly depth: number
  readonly first: number
  readonly colon: number
  readonly hasValue: boolean
}

/** The key of a line, for messages; empty where it has none. */
export const keyOf = (text: string, { first, colon }: Level): string =>
  colon < 0
    ? ''
    : text
        .slice(first, Math.min(colon, first + 80))
        .trim()
        .replace(/^(["'])(.*)\1$/, '$2')

/** What is wrong with a line, and the least indent of the lines after it that it makes meaningless. */
export type LineProblem = {
  readonly at: number
  readonly what: string
  readonly found: string
  readonly accepted: string
  readonly spoils: number
}

/** Whether a line in the first column steers the language instead of holding anything: `---`, `...` or a directive. */
export const isStreamMark = (start: string): boolean => /^(?:%|(?:---|\.\.\.)(?:\s|$))/.test(start)

type Line = {
  readonly text: string
  readonly from: number
  readonly first: number
  readonly end: number
  readonly shape: LineShape
  /** The key this line hangs below, and the outermost one that ends before it. */
  readonly above: Level | undefined
  readonly left: Level | undefined
}

/** What was found is named already; a tab shown by its code would say nothing to the reader. */
export const tabProblem = (): Pick<LineProblem, 'what' | 'found' | 'accepted'> => ({
  what: 'a tab is used for indentation',
  found: '',
  accepted: 'spaces',
})

/**
 * Whether a line has the form of the small YAML: one key with a colon and a space behind it, in line with its neighbours, everything it
 * opens closed again.
 */
export function lineProblem({ text, from, first, end, shape: line, above, left }: Line): LineProblem | undefined {
  const indent = first - from
  const whole = (): string => asFound(text.slice(first, end))
  const say = (at: number, what: string, found: string, accepted: string, spoils = indent + 1): LineProblem => ({
    at,
    what,
    found,
    accepted,
    spoils,
  })

  if (indent === 0 && isStreamMark(text.slice(from, from + 4))) {
    const what = text[first] === '%' ? 'a directive has no place here' : 'a document mark has no place here: one file is one document'
    return say(first, what, whole(), '')
  }
  if (line.indicator >= 0 && text[line.indicator] === '?')
    return say(line.indicator, 'keys marked by ? are not read', whole(), '`key: value`')
  if (line.indicator >= 0) {
    return say(
      line.indicator,
      'this form of list is not read',
      whole(),
      'a row in one line, [a, b], or named entries, `name: …` on a line each',
    )
  }
  if (line.openQuote >= 0) return say(line.openQuote, 'a quote is not closed on its line', asFound(text.slice(line.openQuote, end)), '')
  if (line.open > 0) return say(line.bracket, 'a bracket is not closed on its line', asFound(text.slice(line.bracket, end)), '')
  if (line.colons === 0) return missingColon(text.slice(first, end), first, whole(), indent + 1)
  if (line.colons > 1) return say(line.secondColon, 'a second colon in one line', whole(), 'one key a line; a value with a colon in quotes')
  if (indent > 0 && above === undefined)
    return say(first, 'an indented line has no key above it', whole(), 'top-level keys in the first column', 1)
  if (above?.hasValue) {
    return say(
      first,
      `this line is indented below ${asFound(keyOf(text, above))}, which has a value already`,
      whole(),
      '',
      above.indent + 1,
    )
  }
  if (left !== undefined && left.indent !== indent) {
    return say(
      first,
      'this line is not in line with the keys above it',
      spaces(indent),
      `${spaces(left.indent)}, as for ${asFound(keyOf(text, left))}`,
    )
  }
  return undefined
}

const spaces = (count: number): string => (count === 1 ? '1 space' : `${count} spaces`)

function missingColon(line: string, at: number, found: string, spoils: number): LineProblem {
  const glued = /^([^\s:"'{[]+):([^\s:].*)$/.exec(line)
  if (glued === null) return { at, what: 'a line needs a key, a colon and a value', found, accepted: '`key: value`', spoils }
  return { at, what: 'a colon needs a space behind it', found, accepted: asFound(`${glued[1]}: ${glued[2]}`), spoils }
}
