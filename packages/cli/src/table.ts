import type { System } from '@ampwright/conversion'
import type { Assessment, Table } from '@ampwright/engine'
import { tableView } from '@ampwright/workbench'
import { colours, columns, type Terminal, widthOf, wrapped } from './terminal.ts'

/** A table: in columns where they fit, else row by row. */
export function printTable(given: Table, a: Assessment, t: Terminal, system: System): void {
  const k = colours(t),
    table = tableView(given, a, system)
  t.out(k.bold(table.label))
  if (table.rows.length === 0) return t.out('Nothing yet.')
  const rows = table.rows.map(r => ({ name: r.name, texts: r.cells.map(c => c.text) }))
  const lines = [['', ...table.columns.map(c => c.label)], ...rows.map(r => [r.name, ...r.texts])]
  const widths = lines[0]?.map((_, i) => Math.max(...lines.map(l => widthOf(l[i] ?? '')))) ?? []
  if (widths.reduce((sum, w) => sum + w + 2, -2) <= t.width) {
    columns(lines, t.width, lines.length).forEach((line, i) => t.out(i === 0 ? k.dim(line) : line))
    return
  }
  for (const { name, texts } of rows) {
    t.out('')
    for (const line of wrapped(k.bold(name), t.width, '  ')) t.out(line)
    for (const [i, text] of texts.entries())
      if (text !== '') for (const line of wrapped(`  ${table.columns[i]?.label || '·'}: ${text}`, t.width, '    ')) t.out(line)
  }
}
