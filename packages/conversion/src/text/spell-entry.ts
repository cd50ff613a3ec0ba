import { isList, type Now } from './change.ts'
import { isKey, spelledList, spelledNoteLines, spelledRow, spelledValue } from './spell.ts'

export type Given = Exclude<Now, null>

/** Text over several lines is written as a note, where a note may stand. */
export const isNote = (key: string | undefined, now: Given): now is string =>
  key === 'note' && typeof now === 'string' && now.includes('\n')

/** What shall stand behind a colon, in one line; undefined if it cannot be written. */
export function spelledInline(now: Given, flow: boolean): string | undefined {
  if (typeof now === 'string') return spelledValue(now, flow)
  return isList(now) ? spelledList(now) : spelledRow(now)
}

/** A new entry between braces; further keys make groups: `a: { b: 1 }`. */
export function spelledFlowEntry(keys: readonly string[], now: Given): string | undefined {
  const inner = spelledInline(now, true)
  if (inner === undefined || !keys.every(isKey)) return undefined
  const [key, ...rest] = [...keys].reverse()
  return rest.reduce((text, outer) => `${outer}: { ${text} }`, `${key}: ${inner}`)
}

/** A new entry in lines of its own, each group two columns further in; without a line end behind the last line. */
export function spelledLines(keys: readonly string[], now: Given, indent: string, lineEnd: string): string | undefined {
  const inner = spelledBehindKey(keys.at(-1), now, indent + '  '.repeat(keys.length - 1), lineEnd)
  if (inner === undefined || !keys.every(isKey)) return undefined
  const lines = keys.map((key, depth) => `${indent}${'  '.repeat(depth)}${key}:`)
  return `${lines.join(lineEnd)} ${inner}`
}

/** What shall stand behind the colon of a key with this indent: a note in the lines below where it is one, else one line. */
export function spelledBehindKey(key: string | undefined, now: Given, indent: string, lineEnd: string): string | undefined {
  const body = isNote(key, now) ? spelledNoteLines(now, `${indent}  `, lineEnd) : undefined
  return body === undefined ? spelledInline(now, false) : `|${lineEnd}${body}`
}
