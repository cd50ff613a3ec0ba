import type { Table } from '@ampwright/engine'
import { unitOf } from '../axis.ts'
import { cutTo, textLines, textWidth } from '../extent.ts'
import { isNarrow, LINE_HEIGHT, pictureSvg, SIZE, sized, titleOf, write } from '../frame.ts'
import { type Hand, handOf } from '../inks.ts'
import { element, pixel } from '../markup.ts'
import type { Page, Picture } from '../picture.ts'
import { decimalsFor, fixedReading, withUnit } from '../reading.ts'
import { tidy } from '../readout.ts'
import { numberIn, said } from './cells.ts'

type Flow = { readonly name: string; readonly energy: number; readonly share: number; readonly percent: string }
const LEAST = 5e-4
const BLOCK = 12
const TALL = 230

/**
 * Where the energy out of the charge went (`trip.energy@TRIP`): a stream that parts, each branch as thick as its share. What came back (a
 * descent) joins at the left. The shares shown add to 100 %; what the table leaves over is shown as such.
 */
export function energyFlow(table: Table, on: Page): Picture {
  const page = sized(on)
  const flows = flowsOf(table),
    out = flows.filter(f => f.share > 0),
    back = flows.filter(f => f.share < 0)
  const { unit, fromSI } = unitOf(
    { label: 'energy', unit: 'J', shows: 'energy' },
    page.units,
    Math.max(0, ...flows.map(f => Math.abs(f.energy))),
  )
  const total = flows.reduce((sum, f) => sum + f.energy, 0),
    decimals = decimalsFor(Math.abs(fromSI(total))),
    read = (energy: number): string => withUnit(fixedReading(fromSI(energy), decimals), unit),
    text = textOf(out, back, read(total), read)
  const picture = drawn(page, table.label, text, out, back, read, read(total))
  return {
    label: table.label,
    width: page.width,
    text,
    ...picture,
    table: () => ({
      columns: ['', `energy, ${unit}`, 'share, %'],
      rows: table.rows.map(({ name, cells }) => {
        const energy = numberIn(cells['energy']),
          share = numberIn(cells['share'])
        return [name, energy === undefined ? undefined : tidy(fromSI(energy)), share === undefined ? undefined : tidy(share * 100)]
      }),
    }),
  }
}

function flowsOf(table: Table): readonly Flow[] {
  const rows = table.rows.flatMap(({ name, cells }) => {
    const energy = numberIn(cells['energy']),
      share = numberIn(cells['share'])
    return energy === undefined || share === undefined ? [] : [{ name, energy, share }]
  })
  const shared = rows.reduce((sum, r) => sum + r.share, 0),
    spent = rows.reduce((sum, r) => sum + r.energy, 0)
  // With shares of one whole, what is over is the rest of that whole.
  if (rows.length && Math.abs(1 - shared) >= LEAST)
    rows.push({ name: 'not accounted for', energy: (spent / shared) * (1 - shared), share: 1 - shared })
  const seen = rows.filter(r => Math.abs(r.share) >= LEAST),
    percents = addingUp(seen.map(r => r.share * 100))
  return seen.map((r, i) => ({ ...r, percent: withUnit(percents[i] as string, '%') }))
}
/** Rounded to a tenth so that the sum is the rounded sum: the largest remainders are rounded up. */
export function addingUp(values: readonly number[]): readonly string[] {
  const tenths = values.map(v => v * 10),
    floors = tenths.map(Math.floor),
    missing = Math.round(tenths.reduce((a, b) => a + b, 0)) - floors.reduce((a, b) => a + b, 0)
  const up = new Set([...tenths.keys()].sort((a, b) => ((tenths[b] as number) % 1) - ((tenths[a] as number) % 1)).slice(0, missing))
  return floors.map((f, i) => ((f + (up.has(i) ? 1 : 0)) / 10).toFixed(1).replace('-', '−'))
}

function textOf(out: readonly Flow[], back: readonly Flow[], total: string, read: (e: number) => string): string {
  const sorted = [...out].sort((a, b) => b.share - a.share).map(f => `${f.name} ${f.percent} (${read(f.energy)})`),
    returned = back.map(f => `${f.name} ${f.percent} (${read(f.energy)})`)
  return `${total} out of the charge went to ${said(sorted)}.${returned.length ? ` Given back: ${said(returned)}.` : ''}`
}

/** Each branch has room for its label, so that none touches another however thin the branches are. */
function drawn(
  page: Page,
  label: string,
  text: string,
  out: readonly Flow[],
  back: readonly Flow[],
  read: (e: number) => string,
  total: string,
): { height: number; svg: string } {
  const hand = handOf(page.standalone),
    narrow = isNarrow(page.width),
    title = titleOf(page, label)
  const sum = out.reduce((s, f) => s + f.share, 0) || 1,
    tall = (page.height ?? TALL) / sum,
    split = narrow ? page.width * 0.3 : page.width * 0.42,
    room = page.width - split - BLOCK - PERCENT - 14
  const branches = out.map(f => {
    const thick = Math.max(1, f.share * tall),
      lines = labelLines(f, read, room)
    return { f, thick, lines, slot: Math.max(thick + 4, lines.length * LINE_HEIGHT + 2) }
  })
  const height = branches.reduce((s, b) => s + b.slot, 0),
    given = givenBack(back, read),
    top = title.height + 22 + (given ? LINE_HEIGHT : 0),
    foot = top + Math.max(height, 20),
    trunk = out.reduce((s, f) => s + Math.max(1, f.share * tall), 0)
  const content = [
    ...title.svg,
    write(hand, 2, title.height + 14, cutTo(`out of the charge ${total}`, SIZE.label, page.width - 4), {
      ink: 'ink',
      weight: 650,
      class: 'drawing-label',
    }),
  ]
  if (given)
    content.push(
      write(hand, 2, title.height + 14 + LINE_HEIGHT, cutTo(given, SIZE.label, page.width - 4), {
        ink: 'act',
        weight: 650,
        class: 'drawing-label',
      }),
    )
  let from = (top + foot - trunk) / 2,
    to = top
  content.push(...sources(hand, back, from, trunk, tall))
  for (const b of branches) {
    const y = to + (b.slot - b.thick) / 2
    content.push(
      branch(hand, 2 + BLOCK, from, split, y, b.thick),
      element('rect', { x: split, y, width: BLOCK, height: b.thick, fill: hand.ink('ink'), class: 'drawing-flow' }),
    )
    const middle = to + b.slot / 2 + 4.5,
      first = middle - ((b.lines.length - 1) / 2) * LINE_HEIGHT,
      x = split + BLOCK + PERCENT
    content.push(write(hand, x, first, b.f.percent, { ink: 'ink', weight: 650, anchor: 'end', class: 'drawing-label' }))
    b.lines.forEach((line, i) => content.push(write(hand, x + 10, first + i * LINE_HEIGHT, line, { ink: 'ink', class: 'drawing-label' })))
    from += b.thick
    to += b.slot
  }
  const whole = foot + 6
  return { height: Math.ceil(whole), svg: pictureSvg(page, whole, label, text, content) }
}
const PERCENT = 52
const givenBack = (back: readonly Flow[], read: (e: number) => string): string =>
  back.length ? `given back ${said(back.map(f => `${read(-f.energy)} (${f.name} ${f.percent})`))}` : ''
/** Name and energy in one line where they fit, else the name in as many as it needs and the energy below. */
function labelLines(f: Flow, read: (e: number) => string, room: number): readonly string[] {
  const whole = `${f.name}, ${read(f.energy)}`
  return textWidth(whole, SIZE.label) <= room ? [whole] : [...textLines(f.name, SIZE.label, room), cutTo(read(f.energy), SIZE.label, room)]
}
/** The charge, and below it what was given back on the way. */
function sources(hand: Hand, back: readonly Flow[], top: number, trunk: number, tall: number): string[] {
  const given = back.reduce((s, f) => s - f.share * tall, 0)
  return [
    element('rect', { x: 2, y: top, width: BLOCK, height: Math.max(0, trunk - given), fill: hand.ink('ink'), class: 'drawing-flow' }),
    ...(given > 0
      ? [element('rect', { x: 2, y: top + trunk - given, width: BLOCK, height: given, fill: hand.ink('act'), class: 'drawing-flow' })]
      : []),
  ]
}
/** A band from one block to another, level at both ends. */
function branch(hand: Hand, x0: number, y0: number, x1: number, y1: number, thick: number): string {
  const half = (x0 + x1) / 2,
    [a, b, c] = [x0, half, x1].map(pixel) as [string, string, string],
    [p, q, r, s] = [y0, y1, y1 + thick, y0 + thick].map(pixel) as [string, string, string, string]
  return element('path', {
    d: `M${a},${p}C${b},${p},${b},${q},${c},${q}L${c},${r}C${b},${r},${b},${s},${a},${s}Z`,
    fill: hand.ink('quiet'),
    'fill-opacity': '0.35',
    class: 'drawing-branch',
  })
}
