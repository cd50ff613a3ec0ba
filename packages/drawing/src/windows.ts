import { type Axis, axisOver, extentOf, headingOf, type Quantity, scaleOf } from './axis.ts'
import { cutTo, textWidth } from './extent.ts'
import { isNarrow, LINE_HEIGHT, pictureSvg, SIZE, titleOf, write } from './frame.ts'
import { type Hand, handOf, type Ink } from './inks.ts'
import { laned } from './lanes.ts'
import { element } from './markup.ts'
import { type Outcome, type Page, type Picture, pixelAt, type Scale, SHAPES } from './picture.ts'
import { outcomeInk } from './plot.ts'
import { tidy } from './readout.ts'
import { xTickCount } from './tick-counts.ts'

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
/** An upright line through all bars. */
export type Stand = { readonly value: number; readonly label: string; readonly outcome?: Outcome; readonly handle?: boolean }
export type WindowsSpec = {
  readonly label: string
  readonly quantity: Quantity
  readonly windows: readonly Window[]
  readonly stands: readonly Stand[]
  /** Where every window holds: a frame around all bars. */
  readonly frame?: { readonly low: number; readonly high: number } | undefined
  /** Shaded through all bars. */
  readonly band?: { readonly low: number; readonly high: number } | undefined
  readonly low: number
  readonly high: number
  readonly text: string
}
/** Bars on a common axis, with the axis as data: `handle` is where the one that can be dragged stands. */
export type Windows = Picture & {
  readonly scale: Scale
  readonly handle?: { readonly value: number; readonly x: number; readonly y: number }
}

const BAR = 12
const PAD = 6

export function windowsChart(spec: WindowsSpec, page: Page): Windows {
  const hand = handOf(page.standalone),
    narrow = isNarrow(page.width),
    title = titleOf(page, spec.label),
    axis = axisOver(spec.quantity, extentOf([[spec.low, spec.high]]), { low: spec.low, high: spec.high }, page.units, 0)
  const { left, right, noteRoom } = columns(spec, page.width, narrow),
    scale = scaleOf(axis, [left, right]),
    pitch = narrow ? LINE_HEIGHT + BAR + 8 : LINE_HEIGHT + 8
  const top = title.height + 4,
    foot = top + spec.windows.length * pitch + 2,
    content: string[] = [...title.svg, ...ground(hand, spec, axis, scale, top, foot)]
  spec.windows.forEach((w, i) => content.push(...barOf(hand, w, scale, top + i * pitch, narrow, noteRoom, page.width)))
  content.push(...frameOf(hand, spec, scale, top, foot), ...tickTexts(hand, axis, scale, foot))
  const under = standsOf(hand, spec, scale, top, foot, page.width)
  content.push(...under.svg)
  const height = under.bottom + LINE_HEIGHT + 4
  content.push(write(hand, right, height - 6, headingOf(axis.quantity.label, axis.unit), { anchor: 'end', class: 'drawing-axis' }))
  return {
    label: spec.label,
    width: page.width,
    height: Math.ceil(height),
    text: spec.text,
    svg: pictureSvg(page, height, spec.label, spec.text, content),
    table: () => listed(spec, axis),
    scale,
    ...(under.handle ? { handle: under.handle } : {}),
  }
}

/** Names to the left and how it stands to the right where there is width, else both above each bar. */
function columns({ windows }: WindowsSpec, width: number, narrow: boolean): { left: number; right: number; noteRoom: number } {
  const names = Math.max(...windows.map(w => textWidth(w.name, SIZE.label))),
    notes = Math.max(0, ...windows.map(w => textWidth(noteOf(w), SIZE.label)))
  if (narrow) return { left: 10, right: width - 14, noteRoom: notes }
  const left = Math.min(names, width * 0.3) + PAD + 4
  return { left, right: Math.max(left + width * 0.3, width - (notes ? Math.min(notes, width * 0.3) + 2 * PAD : 14)), noteRoom: width * 0.3 }
}
const noteOf = ({ stands }: Window): string => (stands ? `${SHAPES[stands.outcome]} ${stands.words}` : '')

function ground(hand: Hand, { band }: WindowsSpec, axis: Axis, scale: Scale, top: number, foot: number): string[] {
  const hair = { stroke: hand.ink('hair'), class: 'drawing-grid' },
    held = (v: number): number => Math.min(Math.max(pixelAt(scale, v), scale.range[0]), scale.range[1])
  return [
    ...(band
      ? [
          element('rect', {
            x: held(band.low),
            y: top,
            width: held(band.high) - held(band.low),
            height: foot - top,
            fill: hand.ink('hair'),
            class: 'drawing-band',
          }),
        ]
      : []),
    ...ticksOf(axis, scale).map(({ x }) => element('line', { x1: x, x2: x, y1: top, y2: foot, ...hair })),
    element('line', { x1: scale.range[0], x2: scale.range[1], y1: foot, y2: foot, stroke: hand.ink('line'), class: 'drawing-rule' }),
  ]
}
const ticksOf = (axis: Axis, scale: Scale): readonly { x: number; text: string }[] =>
  axis.ticks(xTickCount(scale.range[1] - scale.range[0])).map(t => ({ x: pixelAt(scale, t.value), text: t.text }))
function tickTexts(hand: Hand, axis: Axis, scale: Scale, foot: number): string[] {
  let free = 0
  return ticksOf(axis, scale).flatMap(({ x, text }) => {
    const half = textWidth(text, SIZE.tick, 'num') / 2
    if (x - half < free) return []
    free = x + half + 8
    return [write(hand, x, foot + 15, text, { face: 'num', size: SIZE.tick, anchor: 'middle', class: 'drawing-tick' })]
  })
}

function barOf(hand: Hand, w: Window, scale: Scale, top: number, narrow: boolean, noteRoom: number, width: number): string[] {
  const [from, to] = scale.range,
    y = narrow ? top + LINE_HEIGHT + 1 : top + (LINE_HEIGHT + 8 - BAR) / 2,
    base = narrow ? top + 13 : y + BAR - 1.5
  const note = noteOf(w),
    ink = outcomeInk(w.stands?.outcome)
  const nameRoom = narrow ? width - from - (note ? noteRoom + 24 : 10) : from - PAD - 2
  const texts = [
    write(hand, narrow ? from : from - PAD, base, cutTo(w.name, SIZE.label, nameRoom), {
      ink: 'ink',
      anchor: narrow ? 'start' : 'end',
      class: 'drawing-label',
      ...(w.strong ? { weight: 650 } : {}),
    }),
    ...(note
      ? [
          write(hand, narrow ? to : to + PAD + 4, base, cutTo(note, SIZE.label, noteRoom), {
            ink,
            anchor: narrow ? 'end' : 'start',
            class: 'drawing-label',
          }),
        ]
      : []),
  ]
  if (w.none !== undefined)
    return [
      ...texts,
      write(hand, (from + to) / 2, y + BAR - 1.5, cutTo(w.none, SIZE.label, to - from), { anchor: 'middle', class: 'drawing-label' }),
    ]
  const p = w.low === undefined ? from : Math.min(Math.max(pixelAt(scale, w.low), from), to),
    q = w.high === undefined ? to : Math.min(Math.max(pixelAt(scale, w.high), from), to)
  const fill: Ink = w.strong ? 'ink' : 'quiet',
    end = (x: number): string => element('line', { x1: x, x2: x, y1: y - 1, y2: y + BAR + 1, stroke: hand.ink(fill), 'stroke-width': '2' })
  return [
    element('rect', {
      x: p,
      y,
      width: Math.max(q - p, 1),
      height: BAR,
      fill: hand.ink(fill),
      'fill-opacity': w.strong ? '0.75' : '0.4',
      class: 'drawing-window',
    }),
    // An end inside the picture is closed, one that goes on is open.
    ...(w.low !== undefined && w.low >= scale.domain[0] ? [end(p)] : []),
    ...(w.high !== undefined && w.high <= scale.domain[1] ? [end(q)] : []),
    ...bestOf(hand, w.best, scale, y),
    ...texts,
  ]
}
function bestOf(hand: Hand, best: number | undefined, scale: Scale, y: number): string[] {
  if (best === undefined || best < scale.domain[0] || best > scale.domain[1]) return []
  return [
    element('circle', {
      cx: pixelAt(scale, best),
      cy: y + BAR / 2,
      r: 3,
      fill: hand.ink('sheet'),
      stroke: hand.ink('ink'),
      'stroke-width': '1.5',
    }),
  ]
}

function frameOf(hand: Hand, { frame }: WindowsSpec, scale: Scale, top: number, foot: number): string[] {
  if (!frame) return []
  const held = (v: number): number => Math.min(Math.max(pixelAt(scale, v), scale.range[0]), scale.range[1]),
    x = held(frame.low)
  return [
    element('rect', {
      x,
      y: top - 2,
      width: held(frame.high) - x,
      height: foot - top + 2,
      fill: 'none',
      stroke: hand.ink('sound'),
      'stroke-width': '2',
      class: 'drawing-frame',
    }),
  ]
}

/** Upright lines, each with its label below in the first row where it touches no other. */
function standsOf(hand: Hand, { stands }: WindowsSpec, scale: Scale, top: number, foot: number, width: number) {
  const inside = stands.filter(s => s.value >= scale.domain[0] && s.value <= scale.domain[1]),
    texts = inside.map(s => (s.outcome ? `${SHAPES[s.outcome]} ${s.label}` : s.label)),
    lanes = laned(
      inside.map((s, i) => ({ at: pixelAt(scale, s.value), width: textWidth(texts[i] as string, SIZE.label) + 4 })),
      2,
      width - 2,
    )
  const first = foot + LINE_HEIGHT + 2,
    svg: string[] = []
  let bottom = first,
    handle: Windows['handle']
  inside.forEach((s, i) => {
    const x = pixelAt(scale, s.value),
      { lane, centre } = lanes[i] as { lane: number; centre: number },
      y = first + lane * LINE_HEIGHT,
      ink = outcomeInk(s.outcome)
    svg.push(
      element('line', {
        x1: x,
        x2: x,
        y1: top - 2,
        y2: foot + 2,
        stroke: hand.ink(ink),
        'stroke-width': s.handle ? '2.5' : '1.5',
        'stroke-dasharray': s.handle ? undefined : '3 3',
        class: 'drawing-mark',
      }),
    )
    if (s.handle) {
      handle = { value: s.value, x, y: top - 2 }
      svg.push(element('circle', { cx: x, cy: foot, r: 6, fill: hand.ink(ink), class: 'drawing-handle' }))
      handle = { value: s.value, x, y: foot }
    }
    svg.push(
      write(hand, centre, y + 13, texts[i] as string, {
        ink,
        anchor: 'middle',
        class: 'drawing-label',
        ...(s.handle ? { weight: 650 } : {}),
      }),
    )
    bottom = Math.max(bottom, y + LINE_HEIGHT)
  })
  return { svg, bottom, handle }
}

function listed({ windows, stands }: WindowsSpec, axis: Axis) {
  const value = (v: number | undefined): number | undefined => (v === undefined ? undefined : tidy(axis.fromSI(v)))
  return {
    columns: ['', headingOf('lowest', axis.unit), headingOf('best', axis.unit), headingOf('highest', axis.unit), 'stands'],
    rows: [
      ...windows.map(w => [w.name, value(w.low), value(w.best), value(w.high), w.none ?? w.stands?.words]),
      ...stands.map(s => [s.label, value(s.value), undefined, value(s.value), s.outcome]),
    ],
  }
}
