import type { Face } from './inks.ts'

/** Advance widths of the text face from U+0020 to U+007E in hundredths of the type size, measured in its regular weight. */
const WIDTHS = [
  28, 29, 30, 65, 59, 92, 73, 16, 30, 30, 48, 61, 21, 36, 21, 39, 65, 41, 55, 58, 61, 59, 60, 51, 61, 59, 21, 21, 55, 63, 55, 48, 78, 63,
  61, 64, 67, 57, 55, 69, 69, 39, 51, 63, 54, 82, 69, 71, 59, 72, 61, 59, 56, 69, 59, 86, 62, 57, 61, 32, 39, 34, 55, 37, 24, 52, 57, 48,
  56, 54, 31, 56, 55, 25, 24, 49, 26, 84, 55, 55, 57, 57, 35, 47, 33, 54, 46, 68, 48, 45, 46, 34, 24, 34, 55,
]
const OTHERS: Readonly<Record<string, number>> = {
  '\u202f': 20,
  '·': 24,
  '’': 24,
  '°': 35,
  '²': 38,
  '−': 61,
  '–': 50,
  '…': 67,
  '▲': 99,
  '◐': 87,
  '◌': 87,
}
const WIDE = 66
const MONO = 0.62
/** Digits are set at one width, and another typeface may stand in for ours. */
const DIGIT = 65
const ROOM = 1.04

/** How wide a line of text will be [px], rather too much than too little: there is no page to measure on. */
export function textWidth(text: string, size: number, face: Face = 'text'): number {
  if (face === 'num') return [...text].length * MONO * size
  let sum = 0
  for (const c of text) sum += /\d/.test(c) ? DIGIT : (WIDTHS[c.charCodeAt(0) - 32] ?? OTHERS[c] ?? WIDE)
  return (sum / 100) * size * ROOM
}

/** Breaks a text into lines no wider than `width`; a single long word is cut with an ellipsis. */
export function textLines(text: string, size: number, width: number): readonly string[] {
  const lines: string[] = []
  for (const word of text.split(' ')) {
    const last = lines.at(-1),
      longer = last === undefined ? word : `${last} ${word}`
    if (last !== undefined && textWidth(longer, size) <= width) lines[lines.length - 1] = longer
    else lines.push(cutTo(word, size, width))
  }
  return lines
}
/** A text cut to a width, with an ellipsis where something is missing. */
export function cutTo(text: string, size: number, width: number): string {
  if (textWidth(text, size) <= width) return text
  let cut = text
  while (cut.length > 1 && textWidth(`${cut}…`, size) > width) cut = cut.slice(0, -1)
  return `${cut.trimEnd()}…`
}
