import { formula } from '../working/formula.ts'
import { corners, type OrientedBox, turned } from './box.ts'
import { boxDistance } from './box-distance.ts'
import { separation } from './separating-axes.ts'
import { checkPlace, plus, times, type Vector } from './vector.ts'

const WORDS = 'the corners and edges of two turned boxes are compared one by one'
const GEOMETRY = { work: 'gottschalk-1996', place: 'separating axes of two boxes' } as const
const hand = (place: string) => ({ work: 'statics', place: `worked by hand: ${place}` }) as const
const three = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length', many: true }) as const
const angles = (symbol: string, label: string) => ({ symbol, unit: 'rad', label, shows: 'angle', many: true }) as const
const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const DEGREE = Math.PI / 180

/** Middle [m], sides before turning [m], and turns [rad]: about the vertical, then tipped, then leant, each about the axes of the body. */
export type PlacedBody = { readonly place: readonly number[]; readonly sides: readonly number[]; readonly turns: readonly number[] }

/** A body as a turned box. Throws RangeError where a list does not hold three numbers, or a side is not above 0. */
export function boxOf({ place, sides, turns }: PlacedBody): OrientedBox {
  const half = times(checkPlace('body', 'sides', sides), 0.5),
    [turn, tip, lean] = checkPlace('body', 'turns', turns)
  if (!half.every(h => h > 0)) throw new RangeError(`body: sides must be above 0, found ${sides.join(', ')}`)
  return { centre: checkPlace('body', 'place', place), half, axes: turned(2, turn, turned(1, tip, turned(0, lean))) }
}

const isSquare = ({ axes: [x, y, z] }: OrientedBox): boolean => x[0] === 1 && y[1] === 1 && z[2] === 1
/** The same of two boxes square to the car: the six ends tell it. */
function squareGap(a: OrientedBox, b: OrientedBox): number {
  const apart = (i: 0 | 1 | 2): number => Math.abs(a.centre[i] - b.centre[i]) - a.half[i] - b.half[i]
  const [x, y, z] = [apart(0), apart(1), apart(2)]
  return x < 0 && y < 0 && z < 0 ? Math.max(x, y, z) : Math.hypot(Math.max(0, x), Math.max(0, y), Math.max(0, z))
}

/** How far apart two boxes are, m; below zero, minus the least push that frees them. */
export function gapOf(a: OrientedBox, b: OrientedBox): number {
  if (isSquare(a) && isSquare(b)) return squareGap(a, b)
  return boxDistance(a, b)?.distance ?? Math.min(0, separation(a, b).gap)
}

/** The same where it is below a limit; else some number not below it. Saves the corners and edges of boxes far apart. */
export function gapBelow(a: OrientedBox, b: OrientedBox, limit: number): number {
  if (isSquare(a) && isSquare(b)) return squareGap(a, b)
  const { overlap, gap } = separation(a, b)
  if (overlap) return Math.min(0, gap)
  return gap >= limit ? gap : (boxDistance(a, b)?.distance ?? 0)
}

const body = (index: '1' | '2', label: string) => ({
  [`place${index}`]: three(`p_${index}`, `${label}, its middle: behind the front axle, to the right, above the ground`),
  [`sides${index}`]: three(`s_${index}`, `${label}, length, width and height`),
  [`turns${index}`]: angles(`θ_${index}`, `${label}, turned about the vertical, tipped, leant`),
})
type Body<I extends string> = { readonly [K in `place${I}` | `sides${I}`]: ReturnType<typeof three> } & {
  readonly [K in `turns${I}`]: ReturnType<typeof angles>
}

/** Air between two bodies as they stand, exact for boxes turned any way. */
export const bodyGap = formula(
  {
    id: 'body-gap',
    label: 'Air between two bodies',
    gives: length('d', 'apart; below zero they overlap by so much'),
    takes: { ...(body('1', 'one body') as Body<'1'>), ...(body('2', 'other body') as Body<'2'>) },
    text: 'd is the least distance between a point of one box and a point of the other; where they overlap, minus the least push that frees them',
    words: WORDS,
    source: GEOMETRY,
    leavesOut: 'A body is its box: what is rounded or hollow has more air than this.',
    proof: {
      examples: [
        {
          takes: {
            place1: [0, 0, 0],
            sides1: [0.6, 0.4, 0.2],
            turns1: [0, 0, 0],
            place2: [0.62, 0.1, 0.05],
            sides2: [0.5, 0.3, 0.2],
            turns2: [30 * DEGREE, 0, 0],
          },
          gives: 0.0285,
          within: 0.00005,
          source: hand('a box turned 30 degrees about the vertical stands apart by 28.5 mm'),
        },
        {
          takes: {
            place1: [0, 0, 0],
            sides1: [0.6, 0.4, 0.2],
            turns1: [0, 0, 0],
            place2: [0.5, 0.1, 0.05],
            sides2: [0.5, 0.3, 0.2],
            turns2: [30 * DEGREE, 0, 0],
          },
          gives: -0.0915,
          within: 0.00005,
          source: hand('the same at 0.50 m overlaps by 91.5 mm'),
        },
        {
          takes: {
            place1: [0, 0, 0],
            sides1: [2, 0.1, 0.1],
            turns1: [0, 0, 45 * DEGREE],
            place2: [0, 0, 0.15],
            sides2: [0.1, 2, 0.1],
            turns2: [0, 45 * DEGREE, 0],
          },
          gives: 0.0086,
          within: 0.00005,
          source: hand(
            'two thin bars, each turned 45 degrees about its own length, crossing 150 mm apart: edge stands over edge by 8.6 mm',
          ),
        },
      ],
    },
  },
  ({ place1, sides1, turns1, place2, sides2, turns2 }) =>
    gapOf(boxOf({ place: place1, sides: sides1, turns: turns1 }), boxOf({ place: place2, sides: sides2, turns: turns2 })),
)

/** Ends of a body along the three axes of the car. */
export const bodyEnds = formula(
  {
    id: 'body-ends',
    label: 'Ends of a body',
    gives: {
      front: length('x_1', 'front end, behind the front axle'),
      rear: length('x_2', 'rear end, behind the front axle'),
      left: length('y_1', 'left end, to the right of the centre line'),
      right: length('y_2', 'right end, to the right of the centre line'),
      bottom: length('z_1', 'lowest point above the ground'),
      top: length('z_2', 'highest point above the ground'),
    },
    takes: {
      place: three('p', 'its middle: behind the front axle, to the right, above the ground'),
      sides: three('s', 'length, width and height'),
      turns: angles('θ', 'turned about the vertical, tipped, leant'),
    },
    text: 'the least and the greatest of its eight corners along each axis of the car',
    words: 'turns about three axes are written as a table of sines, not as a line',
    source: { work: 'statics', place: 'corners of a turned box' },
    proof: {
      examples: [
        {
          takes: { place: [1, 0.1, 0.5], sides: [0.4, 0.2, 0.3], turns: [0, 0, 0] },
          gives: { front: 0.8, rear: 1.2, left: 0, right: 0.2, bottom: 0.35, top: 0.65 },
          within: 1e-12,
          source: hand('square to the car'),
        },
        {
          takes: { place: [1, 0.1, 0.5], sides: [0.4, 0.2, 0.3], turns: [90 * DEGREE, 0, 0] },
          gives: { front: 0.9, rear: 1.1, left: -0.1, right: 0.3, bottom: 0.35, top: 0.65 },
          within: 1e-12,
          source: hand('a quarter turn about the vertical: length and width change places'),
        },
        {
          takes: { place: [1, 0.1, 0.5], sides: [0.4, 0.2, 0.3], turns: [0, 90 * DEGREE, 0] },
          gives: { front: 0.85, rear: 1.15, left: 0, right: 0.2, bottom: 0.3, top: 0.7 },
          within: 1e-12,
          source: hand('tipped by a quarter: length and height change places'),
        },
      ],
    },
  },
  ({ place, sides, turns }) => {
    const all = corners(boxOf({ place, sides, turns })),
      ends = (i: 0 | 1 | 2): readonly [number, number] => [Math.min(...all.map(c => c[i])), Math.max(...all.map(c => c[i]))]
    const [front, rear] = ends(0),
      [left, right] = ends(1),
      [bottom, top] = ends(2)
    return { front, rear, left, right, bottom, top }
  },
)

/** Least air between a body and the ends of the space it stands in. */
export const airInSpace = formula(
  {
    id: 'air-in-space',
    label: 'Air round a body in its space',
    gives: length('d', 'least air to an end of the space; below zero it sticks out by so much'),
    takes: {
      front: length('x_1', 'front end of the body'),
      rear: length('x_2', 'its rear end'),
      left: length('y_1', 'its left end'),
      right: length('y_2', 'its right end'),
      bottom: length('z_1', 'its lowest point'),
      top: length('z_2', 'its highest point'),
      spaceFront: length('X_1', 'front end of the space'),
      spaceRear: length('X_2', 'rear end of the space'),
      spaceLeft: length('Y_1', 'left end of the space'),
      spaceRight: length('Y_2', 'right end of the space'),
      spaceBottom: length('Z_1', 'bottom of the space'),
      spaceTop: length('Z_2', 'top of the space'),
    },
    text: 'd = min(x_1 − X_1, X_2 − x_2, y_1 − Y_1, Y_2 − y_2, z_1 − Z_1, Z_2 − z_2)',
    source: { work: 'definition', place: 'least of six differences' },
    proof: { none: 'definition' },
  },
  b =>
    Math.min(
      b.front - b.spaceFront,
      b.spaceRear - b.rear,
      b.left - b.spaceLeft,
      b.spaceRight - b.right,
      b.bottom - b.spaceBottom,
      b.spaceTop - b.top,
    ),
)

/** Air over a body to the roof of its space. */
export const airOverTop = formula(
  {
    id: 'air-over-top',
    label: 'Air over a body',
    gives: length('d', 'air over it; below zero it sticks out'),
    takes: { top: length('z_2', 'its highest point'), roof: length('Z_2', 'roof of the space') },
    text: 'd = Z_2 − z_2',
    source: { work: 'definition', place: 'difference' },
    proof: { none: 'definition' },
  },
  ({ top, roof }) => roof - top,
)

export const FACES = ['front', 'rear', 'left', 'right', 'top', 'bottom'] as const
export type Face = (typeof FACES)[number]
const FACING: Readonly<Record<Face, readonly [axis: 0 | 1 | 2, way: 1 | -1]>> = {
  front: [0, -1],
  rear: [0, 1],
  left: [1, -1],
  right: [1, 1],
  top: [2, 1],
  bottom: [2, -1],
}

/** The room before a face of a body, so deep, as a box. */
export function roomBefore(box: OrientedBox, face: Face, depth: number): OrientedBox {
  const [axis, way] = FACING[face],
    half: [number, number, number] = [box.half[0], box.half[1], box.half[2]]
  half[axis] = depth / 2
  return { ...box, half, centre: plus(box.centre, times(box.axes[axis] as Vector, way * (box.half[axis] + depth / 2))) }
}

const HALVINGS = 40

/** Free depth before a face of a body up to another one, at most what is wanted. */
export const freeBeforeFace = formula(
  {
    id: 'free-before-face',
    label: 'Free depth before a face',
    gives: length('d', 'free depth, as far as it is wanted'),
    takes: {
      face: { symbol: 'f', oneOf: FACES, label: 'face, named before the body is turned' },
      wanted: length('d_w', 'depth wanted'),
      ...(body('1', 'the body') as Body<'1'>),
      ...(body('2', 'what may stand before it') as Body<'2'>),
    },
    text: 'd is the greatest depth up to the one wanted at which a box over the whole face does not touch the other body',
    words: WORDS,
    source: GEOMETRY,
    leavesOut: 'The whole face counts; a connector in one corner of it may be reached where this says no.',
    proof: {
      examples: [
        {
          takes: {
            face: 'rear',
            wanted: 0.1,
            place1: [0, 0, 0.5],
            sides1: [0.4, 0.2, 0.2],
            turns1: [0, 0, 0],
            place2: [0.35, 0.05, 0.55],
            sides2: [0.2, 0.2, 0.2],
            turns2: [0, 0, 0],
          },
          gives: 0.05,
          within: 1e-9,
          source: hand('0.20 m to the rear face, 0.25 m to the front of what stands behind it'),
        },
        {
          takes: {
            face: 'left',
            wanted: 0.1,
            place1: [0, 0, 0.5],
            sides1: [0.4, 0.2, 0.2],
            turns1: [0, 0, 0],
            place2: [0.35, 0.05, 0.55],
            sides2: [0.2, 0.2, 0.2],
            turns2: [0, 0, 0],
          },
          gives: 0.1,
          within: 1e-9,
          source: hand('nothing on the left: all that is wanted is free'),
        },
      ],
    },
  },
  ({ face, wanted, place1, sides1, turns1, place2, sides2, turns2 }) => {
    const box = boxOf({ place: place1, sides: sides1, turns: turns1 }),
      other = boxOf({ place: place2, sides: sides2, turns: turns2 })
    // What overlaps by no more than rounding only touches.
    const free = (depth: number): boolean => depth <= 0 || separation(roomBefore(box, face as Face, depth), other).gap > -1e-9
    if (free(wanted)) return wanted
    let low = 0,
      high = wanted
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (low + high) / 2
      if (free(middle)) low = middle
      else high = middle
    }
    return low
  },
)

/** Air between a body and a room square to the car. */
export const bodyToRoom = formula(
  {
    id: 'body-to-room',
    label: 'Air between a body and a room kept free',
    gives: length('d', 'apart; below zero they overlap by so much'),
    takes: {
      low: three('e_1', 'room: front, left and bottom end'),
      high: three('e_2', 'room: rear, right and top end'),
      place: three('p', 'body, its middle'),
      sides: three('s', 'body, length, width and height'),
      turns: angles('θ', 'body, turned about the vertical, tipped, leant'),
    },
    text: 'd is the least distance between a point of the room and a point of the body; where they overlap, minus the least push that frees them',
    words: WORDS,
    source: GEOMETRY,
    proof: {
      examples: [
        {
          takes: { low: [0, 0, 0], high: [0.6, 0.4, 0.25], place: [0.86, 0.675, 0.35], sides: [0.28, 0.45, 0.3], turns: [0, 0, 0] },
          gives: 0.13,
          within: 1e-9,
          source: hand('0.12 m along and 0.05 m across apart, level: √(0.12² + 0.05²)'),
        },
      ],
    },
  },
  ({ low, high, place, sides, turns }) => {
    const [x1, y1, z1] = checkPlace('room', 'low ends', low),
      [x2, y2, z2] = checkPlace('room', 'high ends', high)
    // Ends the wrong way round make a room of no depth at their middle: what they are is said where they are read.
    const half: Vector = [Math.max(0, x2 - x1) / 2, Math.max(0, y2 - y1) / 2, Math.max(0, z2 - z1) / 2]
    return gapOf({ centre: [(x1 + x2) / 2, (y1 + y2) / 2, (z1 + z2) / 2], half, axes: turned(2, 0) }, boxOf({ place, sides, turns }))
  },
)
