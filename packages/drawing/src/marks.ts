import type { Box, Pixel } from './clip.ts'
import { cutTo, textWidth } from './extent.ts'
import { type Entry, SAMPLE_WIDTH, SIZE, write } from './frame.ts'
import type { Ink } from './inks.ts'
import { type Ground, overlap, TEXT_HEIGHT } from './label-places.ts'
import type { Mark } from './line-chart.ts'
import { element } from './markup.ts'
import { type Outcome, pixelAt, SHAPES } from './picture.ts'
import type { Frame } from './plot.ts'

const RING = 5
/** Nearer to a mark than this a label seems to belong to it. */
const NEAR = 14

/** A label that says an outcome says it by shape and word. */
export const markText = ({ label, outcome }: { readonly label: string; readonly outcome?: Outcome | undefined }): string =>
  outcome ? `${SHAPES[outcome]} ${label}: ${outcome}` : label
export const outcomeInk = (outcome: Outcome | undefined): Ink =>
  outcome === 'sound' || outcome === 'marginal' || outcome === 'failing' ? outcome : outcome === undefined ? 'ink' : 'unknown'

type Set = { readonly svg: readonly string[]; readonly entries: readonly Entry[] }
type At = { readonly mark: Mark; readonly x: number | undefined; readonly y: number | undefined }

/** Marks with their labels; one without room for it, or a point in a narrow picture, gets a number and an entry in the key. One outside the axes is not drawn. */
export function marksOf(f: Frame, marks: readonly Mark[], ground: Ground, before: number): Set {
  const within = (v: number | undefined, [low, high]: readonly [number, number]): boolean => v === undefined || (v >= low && v <= high)
  const all = marks
    .filter(m => within(m.x, f.x.domain) && within(m.y, f.y.domain))
    .map(
      (mark): At => ({
        mark,
        x: mark.x === undefined ? undefined : pixelAt(f.xScale, mark.x),
        y: mark.y === undefined ? undefined : pixelAt(f.yScale, mark.y),
      }),
    )
  const points = all.flatMap(({ x, y }): readonly Pixel[] => (x === undefined || y === undefined ? [] : [[x, y]]))
  for (const p of points) ground.take(around(p, RING))
  const svg: string[] = all.map(at => shapeOf(f, at)),
    entries: Entry[] = []
  for (const at of all) {
    const point = at.x !== undefined && at.y !== undefined
    if (!(f.narrow && point) && labelled(f, at, markText(at.mark), ground, points, svg)) continue
    const letter = String(before + entries.length + 1)
    labelled(f, at, letter, ground, points, svg)
    entries.push({ letter, label: markText(at.mark), sample: (x, y) => ring(f, x + SAMPLE_WIDTH / 2, y, at.mark.outcome) })
  }
  return { svg, entries }
}
const around = ([x, y]: Pixel, r: number): Box => ({ left: x - r, right: x + r, top: y - r, bottom: y + r })

function labelled(f: Frame, at: At, whole: string, ground: Ground, points: readonly Pixel[], svg: string[]): boolean {
  const text = cutTo(whole, SIZE.label, f.box.right - f.box.left - 6),
    place = placeOf(ground, f.box, textWidth(text, SIZE.label) + 2, at, points)
  if (!place) return false
  ground.take(place)
  svg.push(write(f.hand, place.left, place.bottom - 3.5, text, { ink: outcomeInk(at.mark.outcome), rim: true, class: 'drawing-label' }))
  return true
}

function shapeOf(f: Frame, { mark: { outcome }, x, y }: At): string {
  const { box, hand } = f,
    rule = {
      stroke: hand.ink(outcomeInk(outcome)),
      'stroke-width': '1.5',
      'stroke-dasharray': '3 3',
      class: `drawing-mark drawing-${outcome?.replaceAll(' ', '-') ?? 'plain'}`,
    }
  if (x !== undefined && y !== undefined) return ring(f, x, y, outcome)
  if (x !== undefined) return element('line', { x1: x, x2: x, y1: box.top, y2: box.bottom, ...rule })
  return y === undefined ? '' : element('line', { x1: box.left, x2: box.right, y1: y, y2: y, ...rule })
}
const ring = ({ hand }: Frame, cx: number, cy: number, outcome: Outcome | undefined): string =>
  element('circle', {
    cx,
    cy,
    r: 4,
    fill: hand.ink('sheet'),
    stroke: hand.ink(outcomeInk(outcome)),
    'stroke-width': '2',
    class: 'drawing-mark',
  })

/** Where a label covers the fewest lines and lies nearest to its own mark, not to another. */
function placeOf(ground: Ground, box: Box, width: number, { x, y }: At, points: readonly Pixel[]): Box | undefined {
  const others = points.filter(p => p[0] !== x || p[1] !== y),
    far = (b: Box): number => (x !== undefined && y !== undefined ? apart(b, [x, y]) / 8 : 0)
  return least(
    tries(box, width, x, y).filter(b => ground.fits(b)),
    b => 3 * ground.lines(b) + far(b) + (others.some(p => overlap(b, around(p, NEAR))) ? 3 : 0),
  )
}
/** Around a point, beside an upright mark from the top down, above or below a level one from the right. */
function tries(box: Box, width: number, x: number | undefined, y: number | undefined): readonly Box[] {
  const at = (left: number, top: number): Box => ({ left, right: left + width, top, bottom: top + TEXT_HEIGHT }),
    out: Box[] = []
  if (x !== undefined && y !== undefined)
    for (const dy of [-TEXT_HEIGHT - 6, 6, -TEXT_HEIGHT / 2, -2 * TEXT_HEIGHT, TEXT_HEIGHT])
      for (const dx of [8, -width - 8, -width / 2]) out.push(at(x + dx, y + dy))
  else if (x !== undefined)
    for (let top = box.top + 1; top + TEXT_HEIGHT < box.bottom; top += TEXT_HEIGHT + 1) out.push(at(x + 5, top), at(x - width - 5, top))
  else if (y !== undefined)
    for (let left = box.right - width - 2; left > box.left; left -= 40) out.push(at(left, y - TEXT_HEIGHT - 1), at(left, y + 2))
  return out
}
/** How far a point lies from a box [px]. */
const apart = ({ left, right, top, bottom }: Box, [x, y]: Pixel): number =>
  Math.hypot(Math.max(left - x, 0, x - right), Math.max(top - y, 0, y - bottom))
const least = (boxes: readonly Box[], cost: (b: Box) => number): Box | undefined =>
  boxes.reduce<Box | undefined>((a, b) => (a === undefined || cost(b) < cost(a) ? b : a), undefined)
