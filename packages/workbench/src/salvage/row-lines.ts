/**
 * The line of the text each row of a table begins in, headings first; lines count from 1. As the reader of tables counts rows: notes with # before the headings
 * and empty lines are no rows, and a line may break within quotation marks.
 */
export function rowLines(bytes: Uint8Array): readonly number[] {
  const out: number[] = []
  let within = false
  for (const [i, line] of new TextDecoder()
    .decode(bytes)
    .split(/\r\n|\n|\r/)
    .entries()) {
    if (!within && line.trim() !== '' && !(out.length === 0 && line.startsWith('#'))) out.push(i + 1)
    if (out.length && (line.match(/"/g)?.length ?? 0) % 2 === 1) within = !within
  }
  return out
}
