import type { System } from '@ampwright/conversion'
import { type Assessment, type Fact, type Kind, kindOf, type Table } from '@ampwright/engine'
import { readable } from '../requirement.ts'
import { headed, shown, shownNumber } from '../shown.ts'

/** A cell as it is read; `name` is that of the figure or fact whose working stands behind it. */
export type CellView = { readonly text: string; readonly name?: string }
/** A table of a study as people read it, columns without a word in them left out. */
export type TableView = {
  readonly id: string
  readonly label: string
  readonly columns: readonly { readonly key: string; readonly label: string; readonly number: boolean }[]
  readonly rows: readonly { readonly name: string; readonly cells: readonly CellView[] }[]
}
type Cell = Table['rows'][number]['cells'][string]

/** A cell for people: a value with its spread, a bare number in the unit of its column, or words. */
function cellView(cell: Cell, column: Table['columns'][number], a: Assessment, system: System): CellView {
  if (cell === undefined) return { text: '' }
  if (typeof cell === 'string') return { text: cell }
  if (typeof cell === 'number') {
    const kind = (column.shows as Kind | undefined) ?? (column.unit === undefined ? undefined : kindOf(column.unit))
    return { text: shownNumber(cell, kind, column.unit ?? '', system) }
  }
  const figure = 'because' in cell
  return { text: shown(cell, system, figure ? a.halves.get(cell.id) : (cell as Fact).half), name: figure ? cell.id : cell.path }
}

/** A table of an assessment in the reader's units. */
export function tableView(given: Table, a: Assessment, system: System): TableView {
  const table = readable(given),
    used = table.columns.filter(c => table.rows.some(r => r.cells[c.key] !== undefined && r.cells[c.key] !== ''))
  return {
    id: table.id,
    label: headed(table.label),
    columns: used.map(({ key, label, unit }) => ({ key, label, number: unit !== undefined })),
    rows: table.rows.map(r => ({ name: r.name, cells: used.map(c => cellView(r.cells[c.key], c, a, system)) })),
  }
}
