import type { Letter } from './letter.ts'
import type { LetterLine, LetterPart, Piece, Pieces } from './pieces.ts'

/** What the person writes over and under the letter; the day is theirs too, never the clock's. */
export type Written = { readonly date: string; readonly by: string; readonly recipient: string; readonly about: string }

/** What is not known, in a letter. */
export const NOT_KNOWN = 'not known yet'
const BLANK = '____________________'
const pieceText = (p: Piece): string => (typeof p === 'string' ? p : 'quoted' in p ? p.quoted : p.text)
/** Pieces of a line as one text. */
export const plainText = (pieces: Pieces): string => pieces.map(pieceText).join('')

/** The letter as plain text, to be pasted into a mail. What the person has not written is a line to write on. */
export function letterText(letter: Letter, { date, by, recipient, about }: Written): string {
  const of = (label: string, typed: string): string => `${label}: ${typed.trim() || BLANK}`
  const head = [
    of('To', recipient),
    of('From', by),
    of('Date', date),
    ...(about.trim() ? [`About: ${about.trim()}`] : []),
    '',
    plainText(letter.subject),
  ]
  const foot = ['', of('Signed', by), '', `${of('Agreed as described, or on these conditions', '')}`, of('Day and signature', ''), '']
  return [...head, ...letter.parts.flatMap(partText), ...foot].join('\n')
}

function partText({ heading, columns = [], lines }: LetterPart): readonly string[] {
  let n = 0
  return ['', heading, ...lines.flatMap(l => lineText(l, columns, () => ++n))]
}

function lineText(line: LetterLine, columns: readonly string[], next: () => number): readonly string[] {
  switch (line.is) {
    case 'text':
    case 'caution':
      return [plainText(line.pieces)]
    case 'item':
      return [`- ${plainText(line.pieces)}`]
    case 'question':
      return [`${next()}. ${plainText(line.pieces)}`]
    case 'open':
      return [`- ${NOT_KNOWN}: ${line.open}`]
    case 'rule':
      return [
        `- ${line.asks.quoted}: ${line.says.quoted}`,
        ...line.stands.map(s => `  as planned: ${plainText(s)}`),
        `  ${line.source.quoted}`,
      ]
    case 'row':
      return [`- ${plainText(line.label)}: ${cellsText(line.cells, columns)}`]
  }
}

/** One column needs no name; of several each cell says which it is. */
const cellsText = (cells: readonly (Piece | undefined)[], columns: readonly string[]): string =>
  cells.flatMap((c, i) => (c === undefined ? [] : [columns.length > 1 ? `${columns[i]} ${pieceText(c)}` : pieceText(c)])).join('; ')
