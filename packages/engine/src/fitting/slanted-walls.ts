import { formula } from '../working/formula.ts'
import { corners } from './box.ts'
import { boxOf } from './placed-body.ts'

/** A place in plan: behind the front axle, to the right. */
export type InPlan = readonly [x: number, y: number]

/** Distance of a point from a straight piece, in plan. */
function toPiece([x, y]: InPlan, [ax, ay]: InPlan, [bx, by]: InPlan): number {
  const [dx, dy] = [bx - ax, by - ay],
    square = dx * dx + dy * dy,
    s = square > 0 ? Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / square)) : 0
  return Math.hypot(x - ax - s * dx, y - ay - s * dy)
}
const pieces = (ring: readonly InPlan[]): readonly (readonly [InPlan, InPlan])[] =>
  ring.map((a, i) => [a, ring[(i + 1) % ring.length] as InPlan])

/** Distance of a point from the ring, above zero inside it, below zero outside. Crossings of a line to the right are counted. */
export function depthIn(ring: readonly InPlan[], p: InPlan): number {
  let inside = false
  for (const [[ax, ay], [bx, by]] of pieces(ring))
    if (ay > p[1] !== by > p[1] && p[0] < ax + ((p[1] - ay) / (by - ay)) * (bx - ax)) inside = !inside
  const least = Math.min(...pieces(ring).map(([a, b]) => toPiece(p, a, b)))
  return inside ? least : -least
}

/** Points round a set of places, in order: nothing lies outside them. */
export function roundOf(points: readonly InPlan[]): readonly InPlan[] {
  const sorted = [...points].sort((a, b) => a[0] - b[0] || a[1] - b[1])
  const half = (list: readonly InPlan[]): InPlan[] => {
    const out: InPlan[] = []
    for (const p of list) {
      while (out.length > 1 && turnsRight(out.at(-2) as InPlan, out.at(-1) as InPlan, p)) out.pop()
      out.push(p)
    }
    return out.slice(0, -1)
  }
  return [...half(sorted), ...half(sorted.toReversed())]
}
const turn = (a: InPlan, b: InPlan, c: InPlan): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
const turnsRight = (a: InPlan, b: InPlan, c: InPlan): boolean => turn(a, b, c) <= 0
const cross = ([a, b]: readonly [InPlan, InPlan], [c, d]: readonly [InPlan, InPlan]): boolean =>
  turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0

/** Least air of a shape in plan to the walls round it, m; at most zero where a wall cuts through it or a corner sticks out. */
export function airToWalls(walls: readonly InPlan[], shape: readonly InPlan[]): number {
  const out = Math.min(...shape.map(p => depthIn(walls, p))),
    // A corner of the walls that points inwards may stand between two corners of the shape.
    pointing = Math.min(...walls.map(p => -depthIn(shape, p)))
  const cut = pieces(walls).some(w => pieces(shape).some(s => cross(w, s)))
  return Math.min(out, pointing, cut ? 0 : Infinity)
}

/** Air of a body to walls that stand upright along an outline. */
export const airToOutline = formula(
  {
    id: 'air-to-outline',
    label: 'Air to slanted walls',
    gives: { symbol: 'd', unit: 'm', label: 'least air to the walls, in plan; below zero it sticks out by so much', shows: 'length' },
    takes: {
      cornersX: { symbol: 'X_i', unit: 'm', label: 'corners of the walls in order, behind the front axle', shows: 'length', many: true },
      cornersY: { symbol: 'Y_i', unit: 'm', label: 'the same, to the right of the centre line', shows: 'length', many: true },
      place: { symbol: 'p', unit: 'm', label: 'body, its middle', shows: 'length', many: true },
      sides: { symbol: 's', unit: 'm', label: 'body, length, width and height', shows: 'length', many: true },
      turns: { symbol: 'θ', unit: 'rad', label: 'body, turned about the vertical, tipped, leant', shows: 'angle', many: true },
    },
    text: 'd is the least distance in plan between the outline of the body, seen from above, and the walls from corner to corner; below zero where a corner of the body lies outside them',
    words: 'corners and walls are compared one by one',
    source: { work: 'statics', place: 'distance of a point from a straight piece, in plan' },
    leavesOut: 'Walls that lean: the outline is that of the height at which the space is narrowest.',
    proof: {
      examples: [
        {
          takes: {
            cornersX: [0, 1, 1, 0],
            cornersY: [-0.3, -0.5, 0.5, 0.3],
            place: [0.5, 0, 0.5],
            sides: [0.4, 0.4, 0.2],
            turns: [0, 0, 0],
          },
          gives: 0.16 / Math.hypot(1, 0.2),
          within: 1e-9,
          source: {
            work: 'statics',
            place: 'worked by hand: the wall stands 0.36 m off the centre line at the front corner, the corner 0.20 m; less by its slant',
          },
        },
        {
          takes: {
            cornersX: [0, 1, 1, 0],
            cornersY: [-0.5, -0.5, 0.5, 0.5],
            place: [0.85, 0, 0.5],
            sides: [0.4, 0.4, 0.2],
            turns: [0, 0, 0],
          },
          gives: -0.05,
          within: 1e-9,
          source: { work: 'statics', place: 'worked by hand: rear end at 1.05 m, the wall at 1.00 m' },
        },
      ],
    },
  },
  ({ cornersX, cornersY, place, sides, turns }) => {
    const walls = cornersX.map((x, i): InPlan => [x, cornersY[i] as number]),
      shape = roundOf(corners(boxOf({ place, sides, turns })).map(([x, y]): InPlan => [x, y]))
    return airToWalls(walls, shape)
  },
)
