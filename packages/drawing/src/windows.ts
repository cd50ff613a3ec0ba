import { type Axis, axisOver, headingOf, type Quantity, scaleOf } from './axis.ts'
import { textWidth } from './extent.ts'
import { isNarrow, LINE_HEIGHT, pictureSvg, SIZE, sized, titleOf, write } from './frame.ts'
import { type Hand, handOf } from './inks.ts'
import { element } from './markup.ts'
import { type Listing, type Outcome, type Page, type Picture, pixelAt, type Scale } from './picture.ts'
import { tidy } from './readout.ts'
import { xTickCount } from './tick-counts.ts'
import { barOf, held, noteOf, PAD, pitchOf } from './window-bars.ts'
import { standsOf } from './window-stands.ts'

/** One bar from a lowest to a highest value in SI; an end left out is open: it holds as far as the picture goes. */
export type Window = {
  readonly name: string
  readonly low?: number | undefined
  readonly high?: number | undefined
  readonly best?: number | undefined
  /** Nothing to draw, and why. */
  readonly none?: string | undefined
  /** How it stands, in words, with the shape of the outcome before it. */
  readonly stands?: { readonly outcome: Outcome; readonly words: string } | undefined
  readonly strong?: boolean
}
/** A value along the axis: an upright line through all bars, a notch at their foot, or a line with a handle to drag. */
export type Stand = {
  readonly value: number
  readonly label: string
  readonly outcome?: Outcome
  readonly as?: 'line' | 'notch' | 'handle'
}
export type Stretch = { readonly low: number; readonly high: number }
export type WindowsSpec = {
  readonly label: string
  readonly quantity: Quantity
  readonly windows: readonly Window[]
  readonly stands: readonly Stand[]
  /** Where every window holds: a frame around all bars. */
  readonly frame?: Stretch | undefined
  /** Shaded through all bars. */
  readonly band?: Stretch | undefined
  /** Of the axis, in SI. */
  readonly low: number
  readonly high: number
  readonly text: string
}
/** Where a handle stands: its value in SI and its middle in pixels. */
export type Handle = { readonly value: number; readonly x: number; readonly y: number }
/** Bars on a common axis, with the axis as data: a screen drags the handle along `scale`. */
export type Windows = Picture & { readonly scale: Scale; readonly handle?: Handle }

/** Above the bars, for the handle. */
const HEAD = 16

/** Windows of one quantity as bars below one another on a common axis, with the values that are held against them. */
export function windowsChart(spec: WindowsSpec, on: Page): Windows {
  const page = sized(on)
  const hand = handOf(page.standalone),
    narrow = isNarrow(page.width),
    title = titleOf(page, spec.label),
    axis = axisOver(spec.quantity, undefined, { low: spec.low, high: spec.high }, page.units, 0),
    { range, noteRoom } = columns(spec, page.width, narrow),
    scale = scaleOf(axis, range)
  const top = title.height + HEAD,
    foot = top + spec.windows.length * pitchOf(narrow) + 2,
    place = { hand, scale, narrow, noteRoom }
  const bars = spec.windows.map((w, i) => barOf(place, w, top + i * pitchOf(narrow))),
    under = standsOf(hand, spec.stands, scale, top, foot, page.width)
  const height = Math.ceil(under.bottom + LINE_HEIGHT + 4)
  const content = [
    ...title.svg,
    ...ground(hand, spec, axis, scale, top, foot),
    ...bars.flatMap(b => b.shapes),
    ...frameOf(hand, spec.frame, scale, top, foot),
    ...under.shapes,
    ...bars.flatMap(b => b.texts),
    ...under.texts,
    write(hand, range[1], height - 6, headingOf(axis.quantity.label, axis.unit), { anchor: 'end', class: 'drawing-axis' }),
  ]
  return {
    label: spec.label,
    width: page.width,
    height,
    text: spec.text,
    svg: pictureSvg(page, height, spec.label, spec.text, content),
    table: () => listed(spec, axis),
    scale,
    ...(under.handle ? { handle: under.handle } : {}),
  }
}

/** Names to the left and how it stands to the right where there is width, else both above each bar. */
function columns({ windows }: WindowsSpec, width: number, narrow: boolean): { range: [number, number]; noteRoom: number } {
  const names = Math.max(0, ...windows.map(w => textWidth(w.name, SIZE.label))),
    notes = Math.max(0, ...windows.map(w => textWidth(noteOf(w), SIZE.label)))
  if (narrow) return { range: [10, width - 14], noteRoom: Math.min(notes, width * 0.5) }
  const room = Math.min(notes, width * 0.25)
  return { range: [Math.min(names, width * 0.3) + PAD + 4, width - (notes ? room + 2 * PAD : 14)], noteRoom: room }
}

function ground(hand: Hand, { band }: WindowsSpec, axis: Axis, scale: Scale, top: number, foot: number): string[] {
  const [from, to] = scale.range,
    out: string[] = []
  if (band) {
    const x = held(scale, band.low)
    out.push(
      element('rect', { x, y: top, width: held(scale, band.high) - x, height: foot - top, fill: hand.ink('hair'), class: 'drawing-band' }),
    )
  }
  let free = 0
  for (const t of axis.ticks(xTickCount(to - from))) {
    const x = pixelAt(scale, t.value),
      half = textWidth(t.text, SIZE.tick, 'num') / 2
    out.push(element('line', { x1: x, x2: x, y1: top, y2: foot, stroke: hand.ink('hair'), class: 'drawing-grid' }))
    if (x - half < free) continue
    free = x + half + 8
    out.push(write(hand, x, foot + 16, t.text, { face: 'num', size: SIZE.tick, anchor: 'middle', class: 'drawing-tick' }))
  }
  out.push(element('line', { x1: from, x2: to, y1: foot, y2: foot, stroke: hand.ink('line'), class: 'drawing-rule' }))
  return out
}

function frameOf(hand: Hand, frame: Stretch | undefined, scale: Scale, top: number, foot: number): string[] {
  if (!frame) return []
  const x = held(scale, frame.low),
    look = { fill: 'none', stroke: hand.ink('sound'), 'stroke-width': '2', class: 'drawing-frame' }
  return [element('rect', { x, y: top - 2, width: held(scale, frame.high) - x, height: foot - top + 2, ...look })]
}

function listed({ windows, stands }: WindowsSpec, axis: Axis): Listing {
  const value = (v: number | undefined): number | undefined => (v === undefined ? undefined : tidy(axis.fromSI(v))),
    named = windows.some(w => w.best !== undefined),
    best = <T>(v: T): readonly T[] => (named ? [v] : [])
  return {
    columns: ['', headingOf('lowest', axis.unit), ...best(headingOf('best', axis.unit)), headingOf('highest', axis.unit), 'stands'],
    rows: [
      ...windows.map(w => [w.name, value(w.low), ...best(value(w.best)), value(w.high), w.none ?? w.stands?.words]),
      ...stands.map(s => [s.label, value(s.value), ...best(undefined), value(s.value), s.outcome]),
    ],
  }
}
