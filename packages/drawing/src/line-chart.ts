import { type Axis, axisOver, type Extent, extentOf, headingOf, type Quantity, scaleOf } from './axis.ts'
import { describedChart } from './described.ts'
import { textWidth } from './extent.ts'
import { type Entry, isNarrow, keyOf, LINE_HEIGHT, pictureSvg, SIZE, sized, titleOf, write } from './frame.ts'
import { handOf } from './inks.ts'
import type { End } from './label-places.ts'
import type { Tone } from './line-style.ts'
import { element } from './markup.ts'
import type { Chart, Outcome, Page, Scale } from './picture.ts'
import { type Frame, plotOf } from './plot.ts'
import { listed, readoutOf } from './readout.ts'
import { xTickCount, yTickCount } from './tick-counts.ts'

/** One line; values in SI, one for each x of the chart or of its own. Not a number: the line is broken there. */
export type Line = {
  readonly name: string
  readonly label: string
  readonly values: ArrayLike<number>
  readonly x?: ArrayLike<number>
  readonly tone?: Tone
  /** Which of the dashes, 0 for a solid line: lines that belong together may share one. */
  readonly dash?: number
  /** The end its label belongs to. */
  readonly at?: End
}
/** A value the lines are held against: at an x, at a y, or a point. */
export type Mark = { readonly x?: number; readonly y?: number; readonly label: string; readonly outcome?: Outcome }
/** A stretch of the x axis or of the panel's y axis that stands out. */
export type Band = { readonly along: 'x' | 'y'; readonly from: number; readonly to: number; readonly label: string }
/** One plot over the common axis. */
export type Panel = Extent & {
  readonly y: Quantity
  readonly lines: readonly Line[]
  readonly marks?: readonly Mark[]
  readonly bands?: readonly Band[]
  /** Of the height, against the others. */
  readonly share?: number
}
export type ChartSpec = {
  readonly label: string
  readonly x: Quantity & Extent & { readonly values: ArrayLike<number> }
  readonly panels: readonly Panel[]
}

const BETWEEN = 10
/** Heading of a panel, with room for the highest tick beside the plot. */
const HEADING = LINE_HEIGHT + 7

/** Lines over a common axis, in one plot or in several below one another with one cursor. Throws a RangeError where a line has not one value for each x. */
export function lineChart(spec: ChartSpec, on: Page): Chart {
  const page = sized(on)
  checked(spec)
  const hand = handOf(page.standalone),
    narrow = isNarrow(page.width),
    title = titleOf(page, spec.label),
    heights = heightsOf(spec, page),
    [x, ys] = axesOf(spec, page, heights),
    { left, right } = sidesOf(page, x, ys, heights)
  const content: string[] = [...title.svg],
    scales: Scale[] = [],
    xScale = scaleOf(x, [left, right])
  let top = title.height
  const lettered: Entry[] = [],
    numbered: Entry[] = []
  heights.forEach((height, i) => {
    const panel = spec.panels[i] as Panel,
      y = ys[i] as Axis,
      box = { left, right, top: top + HEADING, bottom: top + HEADING + height }
    const frame: Frame = { hand, box, x, y, xScale, yScale: scaleOf(y, [box.bottom, box.top]), narrow, xValues: spec.x.values }
    scales.push(frame.yScale)
    content.push(write(hand, 2, top + 13, headingOf(y.quantity.label, y.unit), { class: 'drawing-axis' }))
    const plot = plotOf(frame, panel, { letters: lettered.length, numbers: numbered.length, first: i === 0 })
    content.push(...plot.svg)
    lettered.push(...plot.entries)
    numbered.push(...plot.marked)
    top = box.bottom + BETWEEN
  })
  top -= BETWEEN
  content.push(...xTicks(hand, x, xScale, top))
  top += LINE_HEIGHT
  content.push(write(hand, right, top + 14, headingOf(x.quantity.label, x.unit), { anchor: 'end', class: 'drawing-axis' }))
  top += LINE_HEIGHT + 5
  const key = keyOf(hand, [...lettered, ...numbered], 2, top, page.width - 4)
  const text = describedChart(spec, x, ys),
    height = Math.ceil(top + key.height)
  return {
    label: spec.label,
    width: page.width,
    height,
    text,
    svg: pictureSvg(page, height, spec.label, text, [...content, ...key.svg]),
    table: () => listed(spec, x, ys),
    scales: { x: xScale, y: scales },
    readout: readoutOf(spec, x, ys, xScale, scales),
  }
}

/** Room for the numbers beside the plots, and for half the last one below them. */
function sidesOf({ width }: Page, x: Axis, ys: readonly Axis[], heights: readonly number[]): { left: number; right: number } {
  const room = (texts: readonly { readonly text: string }[]): number => Math.max(0, ...texts.map(t => textWidth(t.text, SIZE.tick, 'num'))),
    left = Math.max(...ys.map((y, i) => room(y.ticks(yTickCount(heights[i] as number)))))
  return { left: Math.ceil(left) + 8, right: width - Math.max(8, room(x.ticks(xTickCount(width)).slice(-1)) / 2 + 2) }
}

function checked({ label, x, panels }: ChartSpec): void {
  if (panels.length === 0) throw new RangeError(`${label}: no panel to draw`)
  for (const line of panels.flatMap(p => p.lines)) {
    const n = (line.x ?? x.values).length
    if (line.values.length !== n)
      throw new RangeError(`${label}: ${line.name} has ${line.values.length} values for ${n} places along the axis`)
  }
}

/** Heights of the plots: as asked, else what suits the width; a picture of several gives each less. */
function heightsOf({ panels }: ChartSpec, page: Page): readonly number[] {
  const alone = Math.min(300, Math.max(190, page.width * 0.46)),
    around = HEADING * panels.length + BETWEEN * (panels.length - 1) + 2 * LINE_HEIGHT + 5,
    total =
      page.height === undefined ? (panels.length === 1 ? alone : 92 * panels.length) : Math.max(60 * panels.length, page.height - around)
  const shares = panels.reduce((sum, p) => sum + (p.share ?? 1), 0)
  return panels.map(p => (total * (p.share ?? 1)) / shares)
}

function axesOf(spec: ChartSpec, { units }: Page, heights: readonly number[]): readonly [Axis, readonly Axis[]] {
  const { x, panels } = spec,
    marksX = panels.flatMap(p => (p.marks ?? []).flatMap(m => (m.x === undefined ? [] : [m.x])))
  const xs = [x.values, ...panels.flatMap(p => p.lines.flatMap(l => (l.x ? [l.x] : []))), marksX]
  const axis = axisOver(x, extentOf(xs), x, units, 0)
  return [
    axis,
    panels.map((p, i) => {
      const marks = (p.marks ?? []).flatMap(m => (m.y === undefined ? [] : [m.y])),
        bands = (p.bands ?? []).flatMap(b => (b.along === 'y' ? [b.from, b.to] : []))
      return axisOver(p.y, extentOf([...p.lines.map(l => l.values), marks, bands]), p, units, yTickCount(heights[i] as number))
    }),
  ]
}

/** Ticks along the foot of the picture; a text that would touch the one before or leave the picture is left out. */
function xTicks(hand: ReturnType<typeof handOf>, x: Axis, scale: Scale, top: number): string[] {
  const [left, right] = scale.range,
    out: string[] = []
  let free = 0
  for (const t of x.ticks(xTickCount(right - left))) {
    const at = left + ((t.value - scale.domain[0]) / (scale.domain[1] - scale.domain[0])) * (right - left),
      half = textWidth(t.text, SIZE.tick, 'num') / 2
    out.push(element('line', { x1: at, x2: at, y1: top, y2: top + 4, stroke: hand.ink('line') }))
    if (at - half < free) continue
    out.push(write(hand, at, top + 17, t.text, { face: 'num', size: SIZE.tick, anchor: 'middle', class: 'drawing-tick' }))
    free = at + half + 8
  }
  return out
}
