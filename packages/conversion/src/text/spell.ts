import { FORBIDDEN_KEYS, HIDDEN, MAX_KEY_LENGTH } from './limits.ts'

/** Characters that mean something to the language when a value starts with them. A minus in front of a figure does not. */
const STARTS = /^(?:[?:,[\]{}#&*!|>'"%@`]|-(?![\d.]))/

/** Whether a value reads back as itself when written without quotes, in a line of its own or (`flow`) between brackets. */
function isPlain(value: string, flow: boolean): boolean {
  if (value === '' || value !== value.trim() || STARTS.test(value) || /[\n\t#]|: |:$/.test(value)) return false
  return !flow || !/[,[\]{}]/.test(value)
}

/** A value as it is written in the file: plain where that reads back as the same text, else in double quotes; undefined if it cannot be. */
export function spelledValue(value: string, flow: boolean): string | undefined {
  if (HIDDEN.test(value)) return undefined
  return isPlain(value, flow) ? value : JSON.stringify(value)
}

/** Keys are always written plain, so only names that can be are accepted: words, figures, blanks, points, dashes and the like. */
export const isKey = (key: string): boolean =>
  key.length <= MAX_KEY_LENGTH &&
  isPlain(key, true) &&
  !/[:"'\\]/.test(key) &&
  !HIDDEN.test(key) &&
  !FORBIDDEN_KEYS.has(key) &&
  key !== '<<'

/** Several values in one line: `[a, b]`. */
export function spelledList(values: readonly string[]): string | undefined {
  const spelled = values.map(value => spelledValue(value, true))
  return spelled.includes(undefined) ? undefined : `[${spelled.join(', ')}]`
}

/** Named values in one line: `{ mass: 12 kg, x: 1 m }`. */
export function spelledRow(row: Readonly<Record<string, string>>): string | undefined {
  const spelled = Object.entries(row).map(([key, value]) => (isKey(key) ? [key, spelledValue(value, true)] : [key, undefined]))
  if (spelled.some(([, value]) => value === undefined)) return undefined
  return spelled.length === 0 ? '{}' : `{ ${spelled.map(([key, value]) => `${key}: ${value}`).join(', ')} }`
}

/**
 * The lines of a note as they stand below `note: |`, each with the given indent, without a line end behind the last; undefined where
 * such lines would not read back as the same text (then it is written in quotes).
 */
export function spelledNoteLines(text: string, indent: string, lineEnd: string): string | undefined {
  const lines = withoutLastLineEnds(text).split('\n')
  const first = lines.find(line => line !== '')
  if (first === undefined || /^[ \t]/.test(first) || HIDDEN.test(text)) return undefined
  if (lines.some(line => line !== '' && line.trim() === '') || lines.at(-1) !== lines.at(-1)?.trimEnd()) return undefined
  return lines.map(line => (line === '' ? '' : indent + line)).join(lineEnd)
}

/** Empty lines at the end of a note carry no meaning. */
export function withoutLastLineEnds(text: string): string {
  let end = text.length
  while (text[end - 1] === '\n') end--
  return text.slice(0, end)
}
