import { formula } from '../working/formula.ts'
import { boxOf } from './placed-body.ts'
import { pieceToBox } from './tube-to-box.ts'
import { checkPlace } from './vector.ts'

const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const three = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length', many: true }) as const
const hand = (place: string) => ({ work: 'statics', place: `worked by hand: ${place}` }) as const

/** How far a belted driver reaches to a handle. */
export const shoulderToHandle = formula(
  {
    id: 'shoulder-to-handle',
    label: 'From the shoulder of the belted driver to a handle',
    gives: length('d', 'shoulder to handle'),
    takes: {
      shoulder: three('p_s', 'shoulder on the side of the handle: behind the front axle, to the right, above the ground'),
      handle: three('p_h', 'handle'),
    },
    text: 'd = √(Σ (p_h − p_s)²)',
    source: { work: 'definition', place: 'distance of two places' },
    leavesOut: 'What stands between shoulder and handle, and a seat that is moved: somebody sits in, belted, and pulls it.',
    proof: {
      examples: [
        {
          takes: { shoulder: [1.6, -0.3, 0.9], handle: [1.2, -0.3, 0.6] },
          gives: 0.5,
          within: 1e-12,
          source: hand('400 mm ahead of the shoulder and 300 mm below it'),
        },
        {
          takes: { shoulder: [1.6, -0.3, 0.9], handle: [1.48, 0.1, 0.6] },
          gives: Math.hypot(0.12, 0.4, 0.3),
          within: 1e-12,
          source: hand('across the car as well'),
        },
      ],
    },
  },
  ({ shoulder, handle }) => {
    const [a, b, c] = checkPlace('reach', 'shoulder', shoulder),
      [x, y, z] = checkPlace('reach', 'handle', handle)
    return Math.hypot(x - a, y - b, z - c)
  },
)

/** How deep a handle lies in the space it is reached through. */
export const depthOfHandle = formula(
  {
    id: 'depth-of-handle',
    label: 'How deep a handle lies behind the opening it is reached through',
    gives: length('d', 'opening to handle'),
    takes: { handle: length('p_h', 'handle, along the way of the arm'), opening: length('p_o', 'opening, along the way of the arm') },
    text: 'd = abs(p_o − p_h)',
    source: { work: 'definition', place: 'difference of places' },
    leavesOut: 'A sill or wing to lean over before the opening is reached.',
    proof: {
      examples: [{ takes: { handle: 0.62, opening: 0.86 }, gives: 0.24, within: 1e-12, source: hand('240 mm under the bonnet') }],
    },
  },
  ({ handle, opening }) => Math.abs(opening - handle),
)

/** Air round an arm that reaches straight in. */
export const airRoundArm = formula(
  {
    id: 'air-round-arm',
    label: 'From the line of an arm to what stands beside it',
    gives: length('d', 'least distance from the line to the body'),
    takes: {
      handle: three('p_h', 'handle: behind the front axle, to the right, above the ground'),
      opening: three('p_o', 'where the arm comes in'),
      place: three('p', 'body, its middle'),
      sides: three('s', 'body, length, width and height'),
      turns: { symbol: 'θ', unit: 'rad', label: 'body, turned about the vertical, tipped, leant', shows: 'angle', many: true },
    },
    text: 'd is the least distance between the straight line from p_o to p_h and the box of the body',
    words: 'a search along a line',
    source: { work: 'statics', place: 'distance of a straight line from a box' },
    leavesOut: 'An arm that reaches round a corner.',
    proof: {
      examples: [
        {
          takes: { handle: [0.3, 0, 0.5], opening: [0.3, 0, 0.9], place: [0.3, 0.3, 0.7], sides: [0.2, 0.4, 0.2], turns: [0, 0, 0] },
          gives: 0.1,
          within: 1e-12,
          source: hand('a box whose side is 100 mm from the line'),
        },
        {
          takes: { handle: [0.3, 0, 0.5], opening: [0.3, 0, 0.9], place: [0.3, 0.1, 0.7], sides: [0.2, 0.4, 0.2], turns: [0, 0, 0] },
          gives: 0,
          within: 1e-12,
          source: hand('a box across the line'),
        },
        {
          takes: { handle: [0, 0, 0.5], opening: [0, 0, 0.9], place: [0.09, 0.08, 0.3], sides: [0.1, 0.1, 0.2], turns: [0, 0, 0] },
          gives: Math.hypot(0.04, 0.03, 0.1),
          within: 1e-12,
          source: hand('an edge that ends under the handle'),
        },
      ],
    },
  },
  ({ handle, opening, place, sides, turns }) =>
    pieceToBox(checkPlace('arm', 'handle', handle), checkPlace('arm', 'opening', opening), boxOf({ place, sides, turns })),
)
