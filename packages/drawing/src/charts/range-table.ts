import type { AnyValue, Halves, Kind, Table } from '@ampwright/engine'
import { headingOf, unitOf } from '../axis.ts'
import { cutTo, textWidth } from '../extent.ts'
import { isNarrow, LINE_HEIGHT, pictureSvg, SIZE, sized, titleOf, type Writing, write } from '../frame.ts'
import { type Hand, handOf } from '../inks.ts'
import { element } from '../markup.ts'
import type { Page, Picture } from '../picture.ts'
import { decimalsFor, fixedReading, withUnit } from '../reading.ts'
import { tidy } from '../readout.ts'
import { numberIn, said } from './cells.ts'

type Place = {
  readonly row: string
  readonly column: string
  readonly low: number
  readonly best: number
  readonly high: number
  readonly half: number
}
const CELL = 44

/**
 * A table of ranges as tinted cells: trips or speeds down, days across (`range-in-weather.ranges`, `range-at-speeds.ranges`). Each cell says the low end
 * first; the darker the tint, the farther that low end. `halves` are the half-widths of the figures; without them a cell says one number.
 */
export function rangeTable(table: Table, halves: Halves, on: Page): Picture {
  const page = sized(on)
  const places = table.rows.flatMap(r => table.columns.flatMap(c => placeOf(r.name, c.label, r.cells[c.key], halves))),
    [column] = table.columns,
    greatest = Math.max(0, ...places.map(p => p.high))
  const unit = unitOf({ label: '', unit: column?.unit ?? '1', shows: column?.shows as Kind | undefined }, page.units, greatest),
    decimals = decimalsFor(Math.abs(unit.fromSI(greatest))),
    read = (v: number): string => fixedReading(unit.fromSI(v), decimals)
  const text = textOf(table, places, read, unit.unit)
  return {
    label: table.label,
    width: page.width,
    text,
    ...drawn(table, places, page, text, read, unit.unit),
    table: () => ({
      columns: ['', ...table.columns.flatMap(c => ['low', 'best', 'high'].map(end => `${c.label}, ${end}, ${unit.unit}`))],
      rows: table.rows.map(r => [
        r.name,
        ...table.columns.flatMap(c => {
          const p = places.find(q => q.row === r.name && q.column === c.label)
          return p ? [p.low, p.best, p.high].map(v => tidy(unit.fromSI(v))) : [undefined, undefined, undefined]
        }),
      ]),
    }),
  }
}
/** What a cell says in a word, where it holds no range. */
const wordIn = (cell: AnyValue | number | string | undefined): string | undefined => (typeof cell === 'string' ? cell : undefined)

function placeOf(row: string, column: string, cell: AnyValue | number | string | undefined, halves: Halves): readonly Place[] {
  const best = numberIn(cell)
  if (best === undefined) return []
  const half = (typeof cell === 'object' && 'because' in cell ? halves.get(cell.id) : undefined) ?? 0,
    spread = Number.isFinite(half) ? half : 0
  return [{ row, column, low: Math.max(0, best - spread), best, high: best + spread, half: spread }]
}
function textOf(table: Table, places: readonly Place[], read: (v: number) => string, unit: string): string {
  if (places.length === 0) return 'No range is known yet.'
  const rows = table.rows.flatMap(({ name, cells }) => {
    const days = table.columns.flatMap(c => {
      const p = places.find(q => q.row === name && q.column === c.label),
        word = wordIn(cells[c.key])
      return p ? [`${c.label} ${spanOf(p, read, unit)}`] : word ? [`${c.label} ${word}`] : []
    })
    return days.length ? [`${name}: ${said(days)}`] : []
  })
  const least = places.reduce((a, b) => (b.low < a.low ? b : a))
  return `${rows.join('; ')}. The least is ${withUnit(read(least.low), unit)}, ${least.row}, ${least.column}.`
}
const spanOf = (p: Place, read: (v: number) => string, unit: string): string =>
  p.half > 0 ? `${read(p.low)} to ${withUnit(read(p.high), unit)}` : withUnit(read(p.best), unit)

type Grid = { readonly hand: Hand; readonly narrow: boolean; readonly left: number; readonly wide: number; readonly width: number }
function drawn(
  table: Table,
  places: readonly Place[],
  page: Page,
  text: string,
  read: (v: number) => string,
  unit: string,
): { height: number; svg: string } {
  const hand = handOf(page.standalone),
    narrow = isNarrow(page.width),
    title = titleOf(page, table.label),
    names = Math.max(0, ...table.rows.map(r => textWidth(r.name, SIZE.label))),
    left = narrow ? 2 : Math.min(names, page.width * 0.3) + 12
  const grid: Grid = { hand, narrow, left, wide: (page.width - left - 2) / Math.max(1, table.columns.length), width: page.width },
    tint = tintOf(places),
    top = title.height + LINE_HEIGHT
  const heading = places.some(p => p.half > 0) ? headingOf('low end to high end', unit) : unit,
    content = [...title.svg, write(hand, 2, top - 3, cutTo(heading, SIZE.label, page.width - 4), { class: 'drawing-axis' })]
  table.columns.forEach((c, i) => content.push(inCell(grid, i, top + 15, c.label, { class: 'drawing-axis' })))
  let y = top + 21
  for (const row of table.rows) {
    content.push(nameOf(grid, row.name, y))
    y += narrow ? 20 : 0
    table.columns.forEach((c, i) => {
      const p = places.find(q => q.row === row.name && q.column === c.label)
      content.push(...(p ? cellOf(grid, p, i, y, tint, read) : cellWithout(grid, wordIn(row.cells[c.key]), i, y)))
    })
    y += CELL
  }
  return { height: Math.ceil(y + 4), svg: pictureSvg(page, y + 4, table.label, text, content) }
}
/** From the lightest tint at the least low end to the darkest at the greatest. */
function tintOf(places: readonly Place[]): (p: Place) => string {
  const least = Math.min(...places.map(p => p.low)),
    most = Math.max(...places.map(p => p.low))
  return p => String(Math.round(8 + 24 * (most > least ? (p.low - least) / (most - least) : 0.5)) / 100)
}
const inCell = ({ hand, left, wide }: Grid, column: number, y: number, text: string, more: Writing): string =>
  write(hand, left + (column + 0.5) * wide, y, cutTo(text, more.size ?? SIZE.label, wide - 6), { anchor: 'middle', ...more })

function nameOf({ hand, narrow, left, width }: Grid, name: string, y: number): string {
  const look = { ink: 'ink', class: 'drawing-label' } as const
  return narrow
    ? write(hand, left, y + 15, cutTo(name, SIZE.label, width - 4), look)
    : write(hand, left - 8, y + CELL / 2 + 4.5, cutTo(name, SIZE.label, left - 10), { ...look, anchor: 'end' })
}
const boxOf = ({ left, wide }: Grid, column: number, y: number) => ({
  x: left + column * wide + 1.5,
  y: y + 1.5,
  width: Math.max(1, wide - 3),
  height: CELL - 3,
  class: 'drawing-cell',
})
/** The low end large, the high end below it. */
function cellOf(grid: Grid, p: Place, column: number, y: number, tint: (p: Place) => string, read: (v: number) => string): string[] {
  const small = p.half > 0 ? `to ${read(p.high)}` : undefined
  return [
    element('rect', { ...boxOf(grid, column, y), fill: grid.hand.ink('act'), 'fill-opacity': tint(p) }),
    inCell(grid, column, y + (small ? 20 : 28), read(p.low), { ink: 'ink', size: 16, weight: 650, class: 'drawing-label' }),
    ...(small ? [inCell(grid, column, y + 36, small, { class: 'drawing-label' })] : []),
  ]
}
/** A place without a range says why: a word of the table, or that it is not known yet. */
function cellWithout(grid: Grid, word: string | undefined, column: number, y: number): string[] {
  return [
    element('rect', { ...boxOf(grid, column, y), fill: grid.hand.ink('hair') }),
    inCell(grid, column, y + 20, word === undefined ? '◌' : '–', { ink: 'ink', size: 16, weight: 650, class: 'drawing-label' }),
    inCell(grid, column, y + 36, word ?? 'unanswered', { class: 'drawing-label' }),
  ]
}
