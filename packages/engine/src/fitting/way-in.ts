import { minimum } from '../numerics/minimum.ts'
import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { type OrientedBox, turned } from './box.ts'
import { boxOf, gapOf } from './placed-body.ts'
import { pieceToBox } from './tube-to-box.ts'
import { checkPlace, dot, minus, plus, times, type Vector } from './vector.ts'

const WORDS = 'the least of a distance along the way, found by a search'
const SWEPT = { work: 'statics', place: 'a box carried straight on: its distance from a convex body is convex along the way' } as const
const hand = (place: string) => ({ work: 'statics', place: `worked by hand: ${place}` }) as const
const three = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length', many: true }) as const
const angles = (symbol: string, label: string) => ({ symbol, unit: 'rad', label, shows: 'angle', many: true }) as const
const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const

export const WAYS = ['from above', 'from below', 'from ahead', 'from behind', 'from the left', 'from the right'] as const
export type Way = (typeof WAYS)[number]
/** Where it goes when it is taken out again. */
const OUT: Readonly<Record<Way, Vector>> = {
  'from above': [0, 0, 1],
  'from below': [0, 0, -1],
  'from ahead': [-1, 0, 0],
  'from behind': [1, 0, 0],
  'from the left': [0, -1, 0],
  'from the right': [0, 1, 0],
}

export const outOf = (way: Way): Vector => OUT[way]

/** Least distance over the way, from so far out of its seat to where the body is past everything. A convex distance has one least. */
function leastAlong(at: (box: OrientedBox) => number, box: OrientedBox, way: Way, from: number, until: number): number {
  const far = Math.max(from, until),
    on = (t: number): number => at({ ...box, centre: plus(box.centre, times(OUT[way], t)) })
  return Math.min(on(from), on(far), far > from ? on(minimum(on, from, far, 1e-7).x) : Infinity)
}
const reachOf = (b: OrientedBox, l: Vector): number => b.half.reduce((sum, h, i) => sum + h * Math.abs(dot(b.axes[i] as Vector, l)), 0)
/** Travel after which a body is past another one along its way. */
const past = (box: OrientedBox, other: OrientedBox, way: Way): number =>
  dot(minus(other.centre, box.centre), OUT[way]) + reachOf(other, OUT[way]) + reachOf(box, OUT[way])

/** Least air of a box to another one along its way, m. */
export const airPastBox = (box: OrientedBox, other: OrientedBox, way: Way, from: number): number =>
  leastAlong(b => gapOf(b, other), box, way, from, past(box, other, way))
/** Least air of a box to a straight tube along its way, m. */
export function airPastTube(box: OrientedBox, ends: readonly [Vector, Vector], diameter: number, way: Way, from: number): number {
  const out = OUT[way],
    furthest = Math.max(...ends.map(e => dot(minus(e, box.centre), out))) + reachOf(box, out)
  return leastAlong(b => pieceToBox(ends[0], ends[1], b) - diameter / 2, box, way, from, furthest)
}
/** A room square to the car as a box. */
export function roomBox(low: readonly number[], high: readonly number[]): OrientedBox {
  const [x1, y1, z1] = checkPlace('room', 'low ends', low),
    [x2, y2, z2] = checkPlace('room', 'high ends', high)
  const half: Vector = [Math.max(0, x2 - x1) / 2, Math.max(0, y2 - y1) / 2, Math.max(0, z2 - z1) / 2]
  return { centre: [(x1 + x2) / 2, (y1 + y2) / 2, (z1 + z2) / 2], half, axes: turned(2, 0) }
}

const body = {
  way: { symbol: 'w', oneOf: WAYS, label: 'way it goes in' },
  from: length('t_0', 'travel out of its seat from which on it is looked at'),
  place: three('p', 'the part, its middle'),
  sides: three('s', 'the part, length, width and height'),
  turns: angles('θ', 'the part, turned about the vertical, tipped, leant'),
} as const
const LEAVES_OUT = 'A part that is turned on its way; walls, bonnet and hands that nobody has drawn.'

/** Least air between a part on its straight way in and a body that stands there. */
export const airOnTheWay = formula(
  {
    id: 'air-on-the-way',
    label: 'Air beside a part on its way in',
    gives: length('d', 'least air on the way; below zero it strikes'),
    takes: {
      ...body,
      place2: three('p_2', 'what stands there, its middle'),
      sides2: three('s_2', 'what stands there, length, width and height'),
      turns2: angles('θ_2', 'what stands there, turned about the vertical, tipped, leant'),
    },
    text: 'd is the least distance between the box of the part and that of the body, for every travel t ≥ t_0 along the way',
    words: WORDS,
    source: SWEPT,
    leavesOut: LEAVES_OUT,
    proof: {
      examples: [
        {
          takes: {
            way: 'from above',
            from: 0.02,
            place: [0, 0, 0.3],
            sides: [0.4, 0.2, 0.2],
            turns: [0, 0, 0],
            place2: [0, 0.2, 0.8],
            sides2: [0.4, 0.1, 0.2],
            turns2: [0, 0, 0],
          },
          gives: 0.05,
          within: 1e-6,
          source: hand('sides 100 mm and 150 mm off the middle: 50 mm of air when it passes'),
        },
        {
          takes: {
            way: 'from above',
            from: 0.02,
            place: [0, 0, 0.3],
            sides: [0.4, 0.2, 0.2],
            turns: [0, 0, 0],
            place2: [0, 0, 0.15],
            sides2: [0.4, 0.2, 0.1],
            turns2: [0, 0, 0],
          },
          gives: 0.02,
          within: 1e-6,
          source: hand('it stands on the other with no air; 20 mm out of its seat there are 20 mm'),
        },
      ],
    },
  },
  ({ way, from, place, sides, turns, place2, sides2, turns2 }) =>
    airPastBox(boxOf({ place, sides, turns }), boxOf({ place: place2, sides: sides2, turns: turns2 }), way as Way, from),
)

/** The same to a room that is kept free. */
export const airToRoomOnTheWay = formula(
  {
    id: 'air-to-room-on-the-way',
    label: 'Air to a room kept free, on the way in',
    gives: length('d', 'least air on the way; below zero it strikes'),
    takes: { ...body, low: three('e_1', 'room: front, left and bottom end'), high: three('e_2', 'room: rear, right and top end') },
    text: 'd is the least distance between the box of the part and the room, for every travel t ≥ t_0 along the way',
    words: WORDS,
    source: SWEPT,
    leavesOut: LEAVES_OUT,
    proof: {
      examples: [
        {
          takes: {
            way: 'from the left',
            from: 0.02,
            place: [1, 0, 0.5],
            sides: [0.4, 0.2, 0.2],
            turns: [0, 0, 0],
            low: [1.23, -0.8, 0.4],
            high: [1.4, -0.6, 0.6],
          },
          gives: 0.03,
          within: 1e-6,
          source: hand('rear end at 1.20 m, the room from 1.23 m on: 30 mm when it passes'),
        },
      ],
    },
  },
  ({ way, from, place, sides, turns, low, high }) => airPastBox(boxOf({ place, sides, turns }), roomBox(low, high), way as Way, from),
)

/** The same to a shaft, as it lies while the car stands. */
export const airToShaftOnTheWay = formula(
  {
    id: 'air-to-shaft-on-the-way',
    label: 'Air to a shaft, on the way in',
    gives: length('d', 'least air on the way; below zero it strikes'),
    takes: {
      ...body,
      inner: three('p_i', 'inner joint'),
      outer: three('p_o', 'outer joint'),
      diameter: length('D', 'diameter of the shaft'),
    },
    text: 'd is the least distance between the box of the part and the line of the shaft, less half its diameter, for every travel t ≥ t_0 along the way',
    words: WORDS,
    source: SWEPT,
    leavesOut: `${LEAVES_OUT} On a lift the wheels hang, and their shafts with them.`,
    proof: {
      examples: [
        {
          takes: {
            way: 'from below',
            from: 0.02,
            place: [1, 0, 0.6],
            sides: [0.4, 0.2, 0.2],
            turns: [0, 0, 0],
            inner: [0.5, 0.2, 0.3],
            outer: [1.5, 0.2, 0.3],
            diameter: 0.06,
          },
          gives: 0.07,
          within: 1e-6,
          source: hand('side at 100 mm, line of the shaft at 200 mm, half of 60 mm less'),
        },
      ],
    },
  },
  ({ way, from, place, sides, turns, inner, outer, diameter }) =>
    airPastTube(
      boxOf({ place, sides, turns }),
      [checkPlace('shaft', 'inner joint', inner), checkPlace('shaft', 'outer joint', outer)],
      diameter,
      way as Way,
      from,
    ),
)

/** What one person lifts into a car, with another one on each side of a load. */
export const PER_PERSON = standard('lifted-by-one', 'what one person lifts into a car', 'm_1', 25, 'kg', {
  work: 'practice',
  place: 'masses lifted by hand',
  mark: 'common practice',
})

/** What people lift together. */
export const liftedByHand = formula(
  {
    id: 'lifted-by-hand',
    label: 'What people lift together',
    gives: { symbol: 'm', unit: 'kg', label: 'lifted by hand' },
    takes: {
      people: { symbol: 'n', unit: '1', label: 'people', shows: 'count' },
      each: { symbol: 'm_1', unit: 'kg', label: 'each lifts' },
    },
    text: 'm = n · m_1',
    source: { work: 'practice', place: 'masses lifted by hand', mark: 'common practice' },
    proof: { none: 'definition' },
  },
  ({ people, each }) => people * each,
)
