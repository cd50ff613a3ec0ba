import { line as path } from 'd3-shape'
import type { Axis } from './axis.ts'
import { type Box, clipped, type Pixel } from './clip.ts'
import { cutTo, textWidth } from './extent.ts'
import { type Entry, SAMPLE_WIDTH, SIZE, write } from './frame.ts'
import type { Hand, Ink } from './inks.ts'
import { Ground, placeBeside } from './label-places.ts'
import type { Line, Mark, Panel } from './line-chart.ts'
import { inkOf, type Style, sampleOf, strokeOf, stylesOf } from './line-style.ts'
import { element } from './markup.ts'
import { type Outcome, pixelAt, type Scale, SHAPES } from './picture.ts'
import { between, thin } from './thin.ts'
import { xTickCount, yTickCount } from './tick-counts.ts'

/** Where a panel is drawn and by which axes. */
export type Frame = {
  readonly hand: Hand
  readonly box: Box
  readonly x: Axis
  readonly y: Axis
  readonly xScale: Scale
  readonly yScale: Scale
  readonly narrow: boolean
  readonly xValues: ArrayLike<number>
}
type Pieces = readonly (readonly Pixel[])[]
const TEXT_HEIGHT = 15
const LETTERS = 'abcdefghijklmnopqrstuvwxyz'

/** One panel: bands, grid, lines, marks and their labels; what has no room beside its line gets a letter and an entry in the key. */
export function plotOf(
  f: Frame,
  panel: Panel,
  keysBefore: number,
  first: boolean,
): { readonly svg: readonly string[]; readonly entries: readonly Entry[] } {
  const ground = new Ground(f.box),
    styles = stylesOf(panel.lines),
    pieces = panel.lines.map(l => piecesOf(f, l))
  pieces.forEach((p, i) => ground.draw(i, p))
  const marks = (panel.marks ?? []).map(m => markOf(f, m, ground)),
    bands = bandsOf(f, panel, ground, first)
  const labels = labelsOf(f, panel.lines, styles, pieces, ground, keysBefore)
  return {
    svg: [
      ...bands.under,
      ...grid(f),
      ...pieces.map((p, i) => element('path', { d: p.map(q => drawn(q)).join(''), ...strokeOf(f.hand, styles[i] as Style) })),
      ...marks.flat(),
      ...bands.over,
      ...labels.svg,
    ],
    entries: labels.entries,
  }
}

const tenth = (v: number): number => Math.round(v * 10) / 10
const drawn = (piece: readonly Pixel[]): string => path()(piece.map(([x, y]): [number, number] => [tenth(x), tenth(y)])) ?? ''
function piecesOf(f: Frame, l: Line): Pieces {
  const [low, high] = f.x.domain,
    near = between(l.x ?? f.xValues, l.values, low, high),
    few = thin(near.x, near.y, Math.ceil(f.box.right - f.box.left))
  return clipped({ x: few.x.map(v => pixelAt(f.xScale, v)), y: few.y.map(v => pixelAt(f.yScale, v)) }, f.box)
}

function grid({ hand, box, x, y, xScale, yScale }: Frame): string[] {
  const hair = { stroke: hand.ink('hair'), class: 'drawing-grid' },
    across = x.ticks(xTickCount(box.right - box.left)),
    up = y.ticks(yTickCount(box.bottom - box.top))
  return [
    ...across.map(t => pixelAt(xScale, t.value)).map(at => element('line', { x1: at, x2: at, y1: box.top, y2: box.bottom, ...hair })),
    ...up.flatMap(t => {
      const at = pixelAt(yScale, t.value)
      return [
        element('line', { x1: box.left, x2: box.right, y1: at, y2: at, ...hair }),
        write(hand, box.left - 6, at + 4, t.text, { face: 'num', size: SIZE.tick, anchor: 'end', class: 'drawing-tick' }),
      ]
    }),
    element('line', { x1: box.left, x2: box.right, y1: box.bottom, y2: box.bottom, stroke: hand.ink('line'), class: 'drawing-rule' }),
  ]
}

/** A label that says an outcome says it by shape and word. */
export const markText = ({ label, outcome }: { readonly label: string; readonly outcome?: Outcome | undefined }): string =>
  outcome ? `${SHAPES[outcome]} ${label}: ${outcome}` : label
export const outcomeInk = (outcome: Outcome | undefined): Ink =>
  outcome === 'sound' || outcome === 'marginal' || outcome === 'failing' ? outcome : outcome === undefined ? 'ink' : 'unknown'

function markOf(f: Frame, m: Mark, ground: Ground): string[] {
  const { box, hand } = f,
    ink = outcomeInk(m.outcome),
    x = m.x === undefined ? undefined : pixelAt(f.xScale, m.x),
    y = m.y === undefined ? undefined : pixelAt(f.yScale, m.y)
  const rule = {
    stroke: hand.ink(ink),
    'stroke-width': '1.5',
    'stroke-dasharray': '3 3',
    class: `drawing-mark drawing-${m.outcome ?? 'plain'}`,
  }
  const shape =
    x !== undefined && y !== undefined
      ? element('circle', {
          cx: x,
          cy: y,
          r: 4,
          fill: hand.ink('sheet'),
          stroke: hand.ink(ink),
          'stroke-width': '2',
          class: 'drawing-mark',
        })
      : x !== undefined
        ? element('line', { x1: x, x2: x, y1: box.top, y2: box.bottom, ...rule })
        : y !== undefined
          ? element('line', { x1: box.left, x2: box.right, y1: y, y2: y, ...rule })
          : ''
  const text = cutTo(markText(m), SIZE.label, box.right - box.left - 6),
    place = markPlace(ground, box, textWidth(text, SIZE.label), x, y)
  if (!place) return [shape]
  ground.take(place)
  return [shape, write(hand, place.left, place.bottom - 3.5, text, { ink, rim: true, class: 'drawing-label' })]
}
/** Beside an upright mark from the top down, above or below a level one from the right, around a point. */
function markPlace(ground: Ground, box: Box, width: number, x: number | undefined, y: number | undefined): Box | undefined {
  const at = (left: number, top: number): Box => ({ left, right: left + width, top, bottom: top + TEXT_HEIGHT }),
    tries: Box[] = []
  if (x !== undefined && y !== undefined)
    for (const dy of [-TEXT_HEIGHT - 5, 5, -TEXT_HEIGHT / 2, -2 * TEXT_HEIGHT, 1.4 * TEXT_HEIGHT])
      for (const dx of [8, -width - 8, -width / 2]) tries.push(at(x + dx, y + dy))
  else if (x !== undefined)
    for (let top = box.top + 1; top + TEXT_HEIGHT < box.bottom; top += TEXT_HEIGHT + 1) tries.push(at(x + 5, top), at(x - width - 5, top))
  else if (y !== undefined)
    for (let left = box.right - width - 2; left > box.left; left -= 40) tries.push(at(left, y - TEXT_HEIGHT - 1), at(left, y + 2))
  const free = tries.filter(b => ground.fits(b))
  return free.find(b => ground.through(b) === 0) ?? free[0]
}

function bandsOf(f: Frame, { bands = [] }: Panel, ground: Ground, first: boolean): { under: string[]; over: string[] } {
  const under: string[] = [],
    over: string[] = [],
    { box, hand } = f
  for (const b of bands) {
    const scale = b.along === 'x' ? f.xScale : f.yScale,
      held = (v: number): number =>
        Math.min(Math.max(pixelAt(scale, v), b.along === 'x' ? box.left : box.top), b.along === 'x' ? box.right : box.bottom)
    const [p, q] = [held(b.from), held(b.to)].sort((m, n) => m - n) as [number, number],
      [x, y, width, height] = b.along === 'x' ? [p, box.top, q - p, box.bottom - box.top] : [box.left, p, box.right - box.left, q - p]
    under.push(element('rect', { x, y, width, height, fill: hand.ink('hair'), class: 'drawing-band' }))
    const text = cutTo(b.label, SIZE.label, box.right - box.left - 6),
      w = textWidth(text, SIZE.label),
      left = Math.max(box.left, Math.min(x + 4, box.right - w)),
      place = { left, right: left + w, top: y + 2, bottom: y + 2 + TEXT_HEIGHT }
    if ((b.along === 'x' && !first) || !ground.fits(place)) continue
    ground.take(place)
    over.push(write(hand, place.left, place.bottom - 3.5, text, { rim: true, class: 'drawing-label' }))
  }
  return { under, over }
}

function labelsOf(
  f: Frame,
  lines: readonly Line[],
  styles: readonly Style[],
  pieces: readonly Pieces[],
  ground: Ground,
  keysBefore: number,
): { svg: string[]; entries: Entry[] } {
  const svg: string[] = [],
    entries: Entry[] = []
  if (lines.length === 1 && lines[0]?.label === f.y.quantity.label) return { svg, entries }
  const set = (i: number, text: string, weight?: number): boolean => {
    const line = lines[i] as Line,
      size = { width: textWidth(text, SIZE.label) + (weight ? 3 : 0), height: TEXT_HEIGHT },
      place = placeBeside(ground, i, pieces[i] as Pieces, size, line.at ?? 'end', weight === undefined)
    if (!place) return false
    ground.take(place)
    const ink = inkOf((styles[i] as Style).tone)
    svg.push(write(f.hand, place.left, place.bottom - 3.5, text, { ink, rim: true, class: 'drawing-label', ...(weight ? { weight } : {}) }))
    return true
  }
  // A line that lies wholly outside the plot is not spoken of.
  const shown = [...lines.keys()].filter(i => (pieces[i] as Pieces).length > 0),
    without = shown.filter(i => (f.narrow && lines.length > 2) || !set(i, (lines[i] as Line).label))
  for (const i of without) {
    const letter = LETTERS[(keysBefore + entries.length) % LETTERS.length] as string,
      stands = set(i, letter, 700)
    entries.push({
      label: (lines[i] as Line).label,
      sample: sampleOf(f.hand, styles[i] as Style, SAMPLE_WIDTH),
      ...(stands ? { letter } : {}),
    })
  }
  return { svg, entries }
}
