import pc from 'picocolors'

/** How output is written: width of the terminal, colour only where somebody looks. */
export type Terminal = {
  readonly width: number
  readonly colour: boolean
  readonly out: (line: string) => void
  readonly err: (line: string) => void
}

const PLAIN = pc.createColors(false),
  COLOURED = pc.createColors(true)
export const colours = (t: Terminal): ReturnType<typeof pc.createColors> => (t.colour ? COLOURED : PLAIN)

/** Width of a text as a terminal shows it: escape sequences take none. */
// biome-ignore lint: escape sequences start with a control character
export const widthOf = (text: string): number => [...text.replace(/\u001b\[[0-9;]*m/g, '')].length
export const padded = (text: string, width: number, right = false): string => {
  const gap = ' '.repeat(Math.max(0, width - widthOf(text)))
  return right ? gap + text : text + gap
}

/** A paragraph broken at blanks to fit; further lines are indented. Thin blanks do not break. */
export function wrapped(text: string, width: number, indent = ''): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(/[ \n]+/)) {
    if (line !== '' && widthOf(line) + 1 + widthOf(word) > width) {
      lines.push(line)
      line = indent + word
    } else line = line === '' ? (lines.length ? indent : '') + word : `${line} ${word}`
  }
  if (line.trim() !== '') lines.push(line)
  return lines
}

/** A cell broken to fit its column: at blanks, further lines indented; a word that is too long by itself in pieces. Nothing is lost. */
function cellLines(text: string, width: number): readonly string[] {
  if (widthOf(text) <= width) return [text]
  return wrapped(text, width, '  ').flatMap(line => {
    if (widthOf(line) <= width) return [line]
    const letters = [...line]
    return Array.from({ length: Math.ceil(letters.length / width) }, (_, k) => letters.slice(k * width, (k + 1) * width).join(''))
  })
}

/** Rows in columns: the first left, numbers right; the widest column gives way when the terminal is narrow, and its cells go on below. */
export function columns(rows: readonly (readonly string[])[], width: number, rightFrom = 1): string[] {
  const count = Math.max(0, ...rows.map(r => r.length)),
    widths = Array.from({ length: count }, (_, i) => Math.max(...rows.map(r => widthOf(r[i] ?? ''))))
  const over = widths.reduce((a, b) => a + b, 0) + 2 * (count - 1) - width
  if (over > 0) {
    const widest = widths.indexOf(Math.max(...widths))
    widths[widest] = Math.max(12, (widths[widest] as number) - over)
  }
  return rows.flatMap(r => {
    const cells = r.map((cell, i) => cellLines(cell, widths[i] as number))
    return Array.from({ length: Math.max(0, ...cells.map(c => c.length)) }, (_, line) =>
      cells
        .map((c, i) => {
          const text = c[line] ?? ''
          return i === r.length - 1 && i < rightFrom ? text : padded(text, widths[i] as number, i >= rightFrom)
        })
        .join('  ')
        .trimEnd(),
    )
  })
}
