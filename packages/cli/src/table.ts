import type { System } from '@ampwright/conversion'
import type { Assessment, Fact, Kind, Table } from '@ampwright/engine'
import { kindOf } from '@ampwright/engine'
import { readable, shown, shownNumber } from '@ampwright/workbench'
import { colours, columns, type Terminal, widthOf, wrapped } from './terminal.ts'

type Cell = Table['rows'][number]['cells'][string]

/** A cell for people: a value with its spread, a bare number in the unit of its column, or words. */
function cellText(cell: Cell, column: Table['columns'][number], a: Assessment, system: System): string {
  if (cell === undefined) return ''
  if (typeof cell === 'string') return cell
  if (typeof cell === 'number')
    return shownNumber(
      cell,
      (column.shows as Kind | undefined) ?? (column.unit === undefined ? undefined : kindOf(column.unit)),
      column.unit ?? '',
      system,
    )
  return shown(cell, system, 'because' in cell ? a.halves.get(cell.id) : (cell as Fact).half)
}

/** A table: in columns where they fit, else row by row. */
export function printTable(given: Table, a: Assessment, t: Terminal, system: System): void {
  const k = colours(t),
    table = readable(given),
    used = table.columns.filter(c => table.rows.some(r => r.cells[c.key] !== undefined && r.cells[c.key] !== ''))
  t.out(k.bold(table.label))
  if (table.rows.length === 0) return t.out('Nothing yet.')
  const rows = table.rows.map(r => ({ name: r.name, texts: used.map(c => cellText(r.cells[c.key], c, a, system)) }))
  const lines = [['', ...used.map(c => c.label)], ...rows.map(r => [r.name, ...r.texts])]
  const widths = lines[0]?.map((_, i) => Math.max(...lines.map(l => widthOf(l[i] ?? '')))) ?? []
  if (widths.reduce((sum, w) => sum + w + 2, -2) <= t.width) {
    columns(lines, t.width, lines.length).forEach((line, i) => t.out(i === 0 ? k.dim(line) : line))
    return
  }
  for (const { name, texts } of rows) {
    t.out('')
    for (const line of wrapped(k.bold(name), t.width, '  ')) t.out(line)
    for (const [i, text] of texts.entries())
      if (text !== '') for (const line of wrapped(`  ${used[i]?.label || '·'}: ${text}`, t.width, '    ')) t.out(line)
  }
}
