import type { Table } from '@ampwright/engine'
import { unitOf } from '../axis.ts'
import { cutTo } from '../extent.ts'
import { LINE_HEIGHT, pictureSvg, SIZE, sized, titleOf, write } from '../frame.ts'
import { handOf } from '../inks.ts'
import type { Listing, Page, Picture } from '../picture.ts'
import { decimalsFor, fixedReading, withUnit } from '../reading.ts'
import { tidy } from '../readout.ts'
import { numberIn, said } from './cells.ts'
import { type Flow, flowBranches } from './flow-branches.ts'

/** A share smaller than this is not drawn. */
const LEAST = 5e-4
type Row = { readonly name: string; readonly energy: number; readonly share: number }

/**
 * Where the energy out of the charge went (`trip.energy@TRIP`): a stream that parts, each branch as thick as its share. What came back (a
 * descent) joins at the left. The shares shown add to 100 %; what the table leaves over is shown as such.
 */
export function energyFlow(table: Table, on: Page): Picture {
  const page = sized(on),
    rows = rowsOf(table),
    total = rows.reduce((sum, r) => sum + r.energy, 0),
    greatest = Math.max(0, ...rows.map(r => Math.abs(r.energy)))
  const { unit, fromSI } = unitOf({ label: 'energy', unit: 'J', shows: 'energy' }, page.units, greatest),
    decimals = decimalsFor(Math.abs(fromSI(total))),
    read = (energy: number): string => withUnit(fixedReading(fromSI(energy), decimals), unit)
  const flows = flowsOf(rows, read),
    out = flows.filter(f => f.share > 0),
    back = flows.filter(f => f.share < 0),
    given = back.length ? `given back ${said(back.map(f => `${read(-f.energy)} (${f.name} ${f.percent})`))}` : '',
    text = textOf(out, back, read(total))
  return {
    label: table.label,
    width: page.width,
    text,
    ...drawn(page, table.label, text, [`out of the charge ${read(total)}`, ...(given ? [given] : [])], out, back),
    table: () => listed(table, unit, fromSI),
  }
}

function rowsOf(table: Table): readonly Row[] {
  const rows = table.rows.flatMap(({ name, cells }) => {
    const energy = numberIn(cells['energy']),
      share = numberIn(cells['share'])
    return energy === undefined || share === undefined ? [] : [{ name, energy, share }]
  })
  const shared = rows.reduce((sum, r) => sum + r.share, 0),
    spent = rows.reduce((sum, r) => sum + r.energy, 0)
  // With shares of one whole, what is over is the rest of that whole.
  if (shared > 0 && Math.abs(1 - shared) >= LEAST)
    rows.push({ name: 'not accounted for', energy: (spent / shared) * (1 - shared), share: 1 - shared })
  return rows.filter(r => Math.abs(r.share) >= LEAST)
}
function flowsOf(rows: readonly Row[], read: (energy: number) => string): readonly Flow[] {
  const percents = addingUp(rows.map(r => r.share * 100))
  return rows.map((r, i) => ({ ...r, percent: withUnit(percents[i] as string, '%'), said: read(r.energy) }))
}
/** Rounded to a tenth so that the sum is the rounded sum: the largest remainders are rounded up. */
export function addingUp(values: readonly number[]): readonly string[] {
  const tenths = values.map(v => v * 10),
    floors = tenths.map(Math.floor),
    over = tenths.map((t, i) => t - (floors[i] as number)),
    missing = Math.round(tenths.reduce((a, b) => a + b, 0)) - floors.reduce((a, b) => a + b, 0)
  const up = new Set([...over.keys()].sort((a, b) => (over[b] as number) - (over[a] as number)).slice(0, missing))
  return floors.map((f, i) => ((f + (up.has(i) ? 1 : 0)) / 10).toFixed(1).replace('-', '−'))
}

function textOf(out: readonly Flow[], back: readonly Flow[], total: string): string {
  const each = (list: readonly Flow[]): string => said(list.map(f => `${f.name} ${f.percent} (${f.said})`)),
    sorted = [...out].sort((a, b) => b.share - a.share)
  if (out.length === 0) return 'No energy is told of.'
  return `${total} out of the charge went to ${each(sorted)}.${back.length ? ` Given back: ${each(back)}.` : ''}`
}

function drawn(
  page: Page,
  label: string,
  text: string,
  heads: readonly string[],
  out: readonly Flow[],
  back: readonly Flow[],
): { height: number; svg: string } {
  const hand = handOf(page.standalone),
    title = titleOf(page, label)
  const headings = heads.map((head, i) =>
    write(hand, 2, title.height + 14 + i * LINE_HEIGHT, cutTo(head, SIZE.label, page.width - 12), {
      ink: i === 0 ? 'ink' : 'act',
      weight: 650,
      class: 'drawing-label',
    }),
  )
  const stream = flowBranches(hand, out, back, title.height + 5 + heads.length * LINE_HEIGHT, page.width, page.height),
    height = Math.ceil(stream.foot + 6)
  return { height, svg: pictureSvg(page, height, label, text, [...title.svg, ...headings, ...stream.svg]) }
}
function listed(table: Table, unit: string, fromSI: (v: number) => number): Listing {
  const value = (v: number | undefined, by: (v: number) => number): number | undefined => (v === undefined ? undefined : tidy(by(v)))
  return {
    columns: ['', `energy, ${unit}`, 'share, %'],
    rows: table.rows.map(({ name, cells }) => [
      name,
      value(numberIn(cells['energy']), fromSI),
      value(numberIn(cells['share']), v => v * 100),
    ]),
  }
}
