import type { AnyValue, Kind, Table } from '@ampwright/engine'
import { unitOf } from '../axis.ts'
import { cutTo, textWidth } from '../extent.ts'
import { isNarrow, pictureSvg, SIZE, sized, titleOf, write } from '../frame.ts'
import { handOf } from '../inks.ts'
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
 * A table of ranges as tinted cells: trips or speeds down, days or temperatures across (`range-in-weather.ranges`). Each cell says the low end
 * first; the darker the tint, the farther that low end. `halves` are the half-widths of the figures; without them a cell says one number.
 */
export function rangeTable(table: Table, halves: ReadonlyMap<string, number>, on: Page): Picture {
  const page = sized(on)
  const places = table.rows.flatMap(r => table.columns.flatMap(c => placeOf(r.name, c.label, r.cells[c.key], halves))),
    [column] = table.columns,
    greatest = Math.max(0, ...places.map(p => p.high))
  const unit = unitOf({ label: '', unit: column?.unit ?? '1', shows: column?.shows as Kind | undefined }, page.units, greatest),
    decimals = decimalsFor(Math.abs(unit.fromSI(greatest))),
    read = (v: number): string => fixedReading(unit.fromSI(v), decimals)
  const text = textOf(places, read, unit.unit)
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
function placeOf(
  row: string,
  column: string,
  cell: AnyValue | number | string | undefined,
  halves: ReadonlyMap<string, number>,
): readonly Place[] {
  const best = numberIn(cell)
  if (best === undefined) return []
  const half = (typeof cell === 'object' && 'because' in cell ? halves.get(cell.id) : undefined) ?? 0,
    spread = Number.isFinite(half) ? half : 0
  return [{ row, column, low: Math.max(0, best - spread), best, high: best + spread, half: spread }]
}
function textOf(places: readonly Place[], read: (v: number) => string, unit: string): string {
  if (places.length === 0) return 'No range is known yet.'
  const rows = [...new Set(places.map(p => p.row))].map(row => {
    const days = places.filter(p => p.row === row).map(p => `${p.column} ${spanOf(p, read, unit)}`)
    return `${row}: ${said(days)}`
  })
  const least = places.reduce((a, b) => (b.low < a.low ? b : a))
  return `${rows.join('; ')}. The least is ${withUnit(read(least.low), unit)}, ${least.row}, ${least.column}.`
}
const spanOf = (p: Place, read: (v: number) => string, unit: string): string =>
  p.half > 0 ? `${read(p.low)} to ${withUnit(read(p.high), unit)}` : withUnit(read(p.best), unit)

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
    names = Math.max(0, ...table.rows.map(r => textWidth(r.name, SIZE.label)))
  const left = narrow ? 2 : Math.min(names, page.width * 0.3) + 12,
    wide = (page.width - left - 2) / Math.max(1, table.columns.length),
    above = narrow ? 20 : 0,
    least = Math.min(...places.map(p => p.low)),
    most = Math.max(...places.map(p => p.low))
  const content = [...title.svg]
  let y = title.height + 20
  table.columns.forEach((c, i) =>
    content.push(
      write(hand, left + (i + 0.5) * wide, title.height + 14, cutTo(c.label, SIZE.label, wide - 6), {
        anchor: 'middle',
        class: 'drawing-axis',
      }),
    ),
  )
  for (const row of table.rows) {
    if (narrow) content.push(write(hand, left, y + 15, cutTo(row.name, SIZE.label, page.width - 4), { ink: 'ink', class: 'drawing-label' }))
    else
      content.push(
        write(hand, left - 8, y + CELL / 2 + 4.5, cutTo(row.name, SIZE.label, left - 10), {
          ink: 'ink',
          anchor: 'end',
          class: 'drawing-label',
        }),
      )
    y += above
    table.columns.forEach((c, i) => {
      const p = places.find(q => q.row === row.name && q.column === c.label),
        x = left + i * wide,
        tint = p && most > least ? (p.low - least) / (most - least) : 0.5
      content.push(
        element('rect', {
          x: x + 1.5,
          y: y + 1.5,
          width: wide - 3,
          height: CELL - 3,
          fill: hand.ink(p ? 'act' : 'hair'),
          'fill-opacity': p ? String(Math.round(8 + 24 * tint) / 100) : undefined,
          class: 'drawing-cell',
        }),
        write(hand, x + wide / 2, y + 20, p ? withUnit(read(p.low), p.half > 0 ? '' : unit) : '◌', {
          ink: 'ink',
          size: 16,
          weight: 650,
          anchor: 'middle',
          class: 'drawing-label',
        }),
        write(
          hand,
          x + wide / 2,
          y + 36,
          cutTo(p ? (p.half > 0 ? `to ${withUnit(read(p.high), unit)}` : '') : 'unanswered', SIZE.label, wide - 6),
          { anchor: 'middle', class: 'drawing-label' },
        ),
      )
    })
    y += CELL
  }
  return { height: Math.ceil(y + 4), svg: pictureSvg(page, y + 4, table.label, text, content) }
}
