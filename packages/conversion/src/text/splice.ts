/**
 * One change of a text: at `at`, the characters `out` are replaced by `in`. Plain data, so it can be kept, sent and turned round;
 * whatever lies outside cannot change.
 */
export type Splice = { readonly at: number; readonly out: string; readonly in: string }

/** The text after a splice, or undefined where the text is not the one the splice was made for. */
export function applySplice(text: string, splice: Splice): string | undefined {
  if (!Number.isInteger(splice.at) || splice.at < 0 || !text.startsWith(splice.out, splice.at) || splice.at > text.length) return undefined
  return text.slice(0, splice.at) + splice.in + text.slice(splice.at + splice.out.length)
}

export const invertSplice = (splice: Splice): Splice => ({ at: splice.at, out: splice.in, in: splice.out })

/** Replaces the stretch `[from, to)` of a text. */
export const spliceOf = (text: string, from: number, to: number, put: string): Splice => ({ at: from, out: text.slice(from, to), in: put })

/** The shortest single splice that turns one text into another, not cutting a character in half. */
export function spliceBetween(before: string, after: string): Splice {
  const shorter = Math.min(before.length, after.length)
  let head = 0
  while (head < shorter && before[head] === after[head]) head++
  if (head > 0 && isHighSurrogate(before.charCodeAt(head - 1))) head--
  let tail = 0
  while (tail < shorter - head && before[before.length - 1 - tail] === after[after.length - 1 - tail]) tail++
  if (tail > 0 && isHighSurrogate(before.charCodeAt(before.length - 1 - tail))) tail--
  return { at: head, out: before.slice(head, before.length - tail), in: after.slice(head, after.length - tail) }
}

const isHighSurrogate = (code: number): boolean => code >= 0xd800 && code <= 0xdbff
