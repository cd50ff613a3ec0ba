import type { Table } from '@ampwright/engine'

type Cell = Table['rows'][number]['cells'][string]
/** The number in a cell of a table, be it a figure, a fact or bare; undefined where there is none. */
export const numberIn = (cell: Cell): number | undefined => {
  const value = typeof cell === 'object' ? cell.value : cell
  return typeof value === 'number' && Number.isFinite(value) ? value : undefined
}
/** The words in a cell; empty where there are none. */
export const wordsIn = (cell: Cell): string => {
  const value = typeof cell === 'object' ? cell.value : cell
  return typeof value === 'string' ? value : ''
}
/** A list as people say it: `a, b and c`. */
export const said = (list: readonly string[]): string =>
  list.length < 2 ? (list[0] ?? '') : `${list.slice(0, -1).join(', ')} and ${list.at(-1)}`
