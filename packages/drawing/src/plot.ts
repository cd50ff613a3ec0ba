import { line as path } from 'd3-shape'
import type { Axis } from './axis.ts'
import { bandsOf } from './bands.ts'
import { type Box, clipped, type Pixel } from './clip.ts'
import { textWidth } from './extent.ts'
import { type Entry, SAMPLE_WIDTH, SIZE, write } from './frame.ts'
import type { Hand } from './inks.ts'
import { Ground, placeBeside, TEXT_HEIGHT } from './label-places.ts'
import type { Line, Panel } from './line-chart.ts'
import { inkOf, type Style, sampleOf, strokeOf, stylesOf } from './line-style.ts'
import { marksOf } from './marks.ts'
import { element } from './markup.ts'
import { pixelAt, type Scale } from './picture.ts'
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
const LETTERS = 'abcdefghijklmnopqrstuvwxyz'

/** One panel: bands, grid, lines, marks and their labels; a line without room for its label gets a letter, a mark a number, and an entry in the key. */
export function plotOf(
  f: Frame,
  panel: Panel,
  before: { readonly letters: number; readonly numbers: number; readonly first: boolean },
): { readonly svg: readonly string[]; readonly entries: readonly Entry[]; readonly marked: readonly Entry[] } {
  const ground = new Ground(f.box),
    styles = stylesOf(panel.lines),
    pieces = panel.lines.map(l => piecesOf(f, l))
  pieces.forEach((p, i) => ground.draw(i, p))
  const marks = marksOf(f, panel.marks ?? [], ground, before.numbers),
    bands = bandsOf(f, panel, ground, before.first)
  const labels = labelsOf(f, panel.lines, styles, pieces, ground, before.letters)
  return {
    svg: [
      ...bands.under,
      ...grid(f),
      ...pieces.map((p, i) => element('path', { d: p.map(q => drawn(q)).join(''), ...strokeOf(f.hand, styles[i] as Style) })),
      ...marks.svg,
      ...bands.over,
      ...labels.svg,
    ],
    entries: labels.entries,
    marked: marks.entries,
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
