import { formula } from '../working/formula.ts'
import { outOfBox } from './box.ts'
import { boxOf } from './placed-body.ts'
import { pointToBox } from './point-to-box.ts'
import { checkPlace, type Vector } from './vector.ts'

const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const three = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length', many: true }) as const
const angles = (symbol: string, label: string) => ({ symbol, unit: 'rad', label, shows: 'angle', many: true }) as const
const hand = (place: string) => ({ work: 'statics', place: `worked by hand: ${place}` }) as const
const body = {
  place: three('p', 'part, its middle'),
  sides: three('s', 'part, length, width and height'),
  turns: angles('θ', 'part, turned about the vertical, tipped, leant'),
}
const RIGHT_ANGLE = Math.PI / 2

/** Where a point that was measured on a part stands in the car, however the part is turned. */
export const pointOfPart = formula(
  {
    id: 'point-of-part',
    label: 'Point of a part in the car',
    gives: { x: length('x', 'behind the front axle'), y: length('y', 'to the right'), z: length('z', 'above the ground') },
    takes: {
      ...body,
      back: length('b', 'behind the front end of the part'),
      across: length('a', 'to the right of its left side'),
      up: length('u', 'above its underside'),
    },
    text: 'the middle of the part, and from there b − s_1 / 2, a − s_2 / 2 and u − s_3 / 2 along its own three axes as they are turned',
    words: 'three turns one after the other have no short form',
    source: { work: 'statics', place: 'a point in the axes of a body that is turned about three axes' },
    proof: {
      examples: [
        {
          takes: { place: [1, 0.2, 0.5], sides: [0.4, 0.3, 0.2], turns: [0, 0, 0], back: 0.02, across: -0.015, up: 0 },
          gives: { x: 0.82, y: 0.035, z: 0.4 },
          within: 1e-12,
          source: hand('a lug beside the left side of a part square to the car'),
        },
        {
          takes: { place: [1, 0.2, 0.5], sides: [0.4, 0.3, 0.2], turns: [RIGHT_ANGLE, 0, 0], back: 0.4, across: 0.15, up: 0.2 },
          gives: { x: 1, y: 0.4, z: 0.6 },
          within: 1e-12,
          source: hand('turned a quarter, its rear end looks to the right: the middle of that end stands 0.2 m to the right of the middle'),
        },
      ],
    },
  },
  ({ place, sides, turns, back, across, up }) => {
    const box = boxOf({ place, sides, turns }),
      [x, y, z] = outOfBox(box, [back - box.half[0], across - box.half[1], up - box.half[2]])
    return { x, y, z }
  },
)

const point = {
  x: length('x', 'point, behind the front axle'),
  y: length('y', 'point, to the right'),
  z: length('z', 'point, above the ground'),
}

/** How far a point is from a room; 0 inside. */
export const pointToRoom = formula(
  {
    id: 'point-to-room',
    label: 'Point to a room kept free',
    gives: length('d', 'apart; 0 inside'),
    takes: { ...point, low: three('e_1', 'room: front, left and bottom end'), high: three('e_2', 'room: rear, right and top end') },
    text: 'd is the way from the point to the nearest point of the room',
    words: 'the nearest point of a room is found axis by axis',
    source: { work: 'statics', place: 'nearest point of a box' },
    proof: {
      examples: [
        {
          takes: { x: 1, y: 0.4, z: 0.3, low: [0, 0, 0], high: [0.7, 0.5, 0.26] },
          gives: Math.hypot(0.3, 0.04),
          within: 1e-12,
          source: hand('0.3 m behind and 0.04 m above'),
        },
        { takes: { x: 0.2, y: 0.1, z: 0.1, low: [0, 0, 0], high: [0.7, 0.5, 0.26] }, gives: 0, within: 0, source: hand('inside') },
      ],
    },
  },
  ({ x, y, z, low, high }) => {
    const at: Vector = [x, y, z],
      from = checkPlace('room', 'low ends', low),
      to = checkPlace('room', 'high ends', high)
    const beyond = (i: 0 | 1 | 2): number => Math.max(0, from[i] - at[i], at[i] - to[i])
    return Math.hypot(beyond(0), beyond(1), beyond(2))
  },
)

/** How far a point is from a part; 0 inside. */
export const pointToPart = formula(
  {
    id: 'point-to-part',
    label: 'Point to a part',
    gives: length('d', 'apart; 0 inside'),
    takes: { ...point, ...body },
    text: 'd is the way from the point to the nearest point of the box of the part',
    words: 'the nearest point of a turned box is found in the axes of that box',
    source: { work: 'statics', place: 'nearest point of a box that is turned about three axes' },
    leavesOut: 'What stands out of the box of a part: terminals, hoses, cables.',
    proof: {
      examples: [
        {
          takes: { x: 1, y: 0.5, z: 0.5, place: [1, 0, 0.5], sides: [0.4, 0.2, 0.2], turns: [RIGHT_ANGLE, 0, 0] },
          gives: 0.3,
          within: 1e-12,
          source: hand('turned a quarter it reaches 0.2 m to the right'),
        },
      ],
    },
  },
  ({ x, y, z, place, sides, turns }) => pointToBox(boxOf({ place, sides, turns }), [x, y, z]),
)
