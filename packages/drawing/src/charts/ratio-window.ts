import type { Table } from '@ampwright/engine'
import { axisOver, type Quantity } from '../axis.ts'
import type { Outcome, Page } from '../picture.ts'
import { type Stand, type Window, type Windows, windowsChart } from '../windows.ts'
import { numberIn, said, wordsIn } from './cells.ts'

export type RatioOptions = {
  /** Total ratios of the gears there are, to stop at while dragging. */
  readonly gears?: readonly { readonly name: string; readonly ratio: number }[]
}
const RATIO: Quantity = { label: 'total ratio', unit: '1', shows: 'ratio' }
const EVERY = 'every goal'

/**
 * Which total ratios meet each goal (`window.ratio@UNIT`), where all of them do, and the present ratio as a handle. A low ratio is tall (fast),
 * a high one short (strong). A screen makes the handle movable with `scale`: the ratio under a pixel is `valueAt(scale, x)`.
 */
export function ratioWindowChart(table: Table, present: number, page: Page, { gears = [] }: RatioOptions = {}): Windows {
  const every = table.rows.find(r => r.name === EVERY)?.cells,
    goals = table.rows.filter(r => r.name !== EVERY),
    low = numberIn(every?.['low']),
    high = numberIn(every?.['high'])
  const windows = goals.map(({ name, cells }) => windowOf(name, cells)),
    inside = wordsIn(every?.['here']) === 'inside',
    frame =
      low !== undefined && high !== undefined && low <= high && !wordsIn(every?.['here']).startsWith('no ratio') ? { low, high } : undefined
  const near = [
    present,
    ...windows.flatMap(w => (w.best === undefined ? [] : [w.best])),
    ...[low, high].filter(v => v !== undefined),
    ...gears.map(g => g.ratio),
  ]
  const from = Math.min(...near) * 0.8,
    to = Math.max(...near) * 1.12
  const { read } = axisOver(RATIO, [from, to], {}, page.units, 0)
  const stands: Stand[] = [
    ...gears.filter(g => Math.abs(g.ratio - present) > 1e-6 * present).map(g => ({ value: g.ratio, label: g.name, as: 'notch' as const })),
    { value: present, label: `${read(present)} now`, outcome: inside ? 'sound' : 'failing', as: 'handle' },
  ]
  return windowsChart(
    {
      label: table.label,
      quantity: RATIO,
      windows,
      stands,
      frame,
      low: from,
      high: to,
      text: textOf(windows, frame, present, inside, read),
    },
    page,
  )
}
/** The engine says where the present ratio lies; too tall and too short miss the goal. */
function windowOf(name: string, cells: Table['rows'][number]['cells']): Window {
  const here = wordsIn(cells['here']),
    none = here.startsWith('no ratio') ? here : undefined,
    outcome: Outcome = here === 'met' ? 'sound' : 'failing'
  const open = (v: number | undefined): number | undefined => (v === undefined || v <= 0 ? undefined : v)
  return {
    name,
    low: open(numberIn(cells['low'])),
    high: open(numberIn(cells['high'])),
    best: numberIn(cells['best']),
    none,
    stands: { outcome, words: none ? 'no ratio' : here },
  }
}
function textOf(
  windows: readonly Window[],
  frame: { low: number; high: number } | undefined,
  present: number,
  inside: boolean,
  read: (v: number) => string,
): string {
  const each = windows.map(w =>
    w.none
      ? `${w.name}: ${w.none}`
      : `${w.name} ${w.low === undefined ? '' : `from ${read(w.low)} `}${w.high === undefined ? '' : `to ${read(w.high)}`}`.trim() +
        ` (${w.stands?.words})`,
  )
  const all = frame ? `Every goal is met from ${read(frame.low)} to ${read(frame.high)}` : 'No ratio is known to meet every goal'
  return `${all}; the present ratio ${read(present)} lies ${inside ? 'inside' : 'outside'}. Goals: ${said(each)}.`
}
