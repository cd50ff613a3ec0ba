import { padded, widthOf, wrapped } from './terminal.ts'

/** One line of a comparison: what it is of, and a cell for each thing compared. */
export type SideRow = { readonly label: string; readonly cells: readonly string[] }

const NARROWEST = 18
const WIDEST_LABEL = 30

/** Things beside each other, cells broken to fit; where the terminal is too narrow for that, one below the other. */
export function sideBySide(names: readonly string[], rows: readonly SideRow[], width: number): readonly string[] {
  const label = Math.min(WIDEST_LABEL, Math.max(...rows.map(r => widthOf(r.label)))),
    cell = Math.floor((width - label) / names.length) - 2
  if (cell >= NARROWEST) return [{ label: '', cells: names }, ...rows].flatMap(r => beside(r, label, cell))
  return names.flatMap((name, i) => [
    ...(i === 0 ? [] : ['']),
    name,
    ...rows.flatMap(r => (r.cells[i] ? wrapped(`${r.label}: ${r.cells[i]}`, width, '  ') : [])),
  ])
}
function beside({ label, cells }: SideRow, labelWidth: number, cellWidth: number): readonly string[] {
  const parts = [wrapped(label, labelWidth, '  '), ...cells.map(c => wrapped(c, cellWidth, '  '))]
  return Array.from({ length: Math.max(...parts.map(p => p.length)) }, (_, line) =>
    parts
      .map((p, i) => padded(p[line] ?? '', i === 0 ? labelWidth : cellWidth))
      .join('  ')
      .trimEnd(),
  )
}
