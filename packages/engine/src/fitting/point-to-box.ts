import { formula } from '../working/formula.ts'
import { inBox, type OrientedBox, outOfBox } from './box.ts'
import { lengthOf, type Vector } from './vector.ts'

const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const

/** Distance of a point from a box that is turned about the vertical. */
export const pointToTurnedBox = formula(
  {
    id: 'point-to-turned-box',
    label: 'Point to a turned box',
    gives: length('d', 'distance'),
    takes: {
      x: length('x', 'point from the centre of the box, along the car'),
      y: length('y', 'point from the centre of the box, across'),
      z: length('z', 'point from the centre of the box, up'),
      turn: { symbol: 'θ', unit: 'rad', label: 'box turned about the vertical', shows: 'angle' },
      halfLength: length('a_x', 'half its length'),
      halfWidth: length('a_y', 'half its width'),
      halfHeight: length('a_z', 'half its height'),
    },
    text: [
      'q_x = x · cos(θ) + y · sin(θ)',
      'q_y = y · cos(θ) − x · sin(θ)',
      'd = √((max(0, abs(q_x) − a_x))² + (max(0, abs(q_y) − a_y))² + (max(0, abs(z) − a_z))²)',
    ].join('\n'),
    source: { work: 'statics', place: 'the point in the axes of the box' },
    leavesOut: 'A box that is tilted as well. In the handbook only: no study knows boxes by place yet.',
    proof: {
      examples: [
        {
          takes: { x: 0.6, y: 0.5, z: 0.3, turn: Math.PI / 6, halfLength: 0.4, halfWidth: 0.3, halfHeight: 0.2 },
          gives: 0.3829,
          within: 0.00005,
          source: { work: 'statics', place: 'worked by hand: half sides 0.4, 0.3, 0.2 m turned 30 degrees, point at 0.6, 0.5, 0.3 m' },
        },
      ],
    },
  },
  ({ x, y, z, turn, halfLength, halfWidth, halfHeight }) => {
    const along = x * Math.cos(turn) + y * Math.sin(turn),
      across = y * Math.cos(turn) - x * Math.sin(turn)
    const beyond = (q: number, a: number): number => Math.max(0, Math.abs(q) - a)
    return Math.sqrt(beyond(along, halfLength) ** 2 + beyond(across, halfWidth) ** 2 + beyond(z, halfHeight) ** 2)
  },
)

/** The point of a box, inside counted, that lies nearest to a place. */
export function nearestInBox(box: OrientedBox, place: Vector): Vector {
  const q = inBox(box, place)
  const held = (i: 0 | 1 | 2): number => Math.min(box.half[i], Math.max(-box.half[i], q[i]))
  return outOfBox(box, [held(0), held(1), held(2)])
}

/** Distance of a place from a box, m; 0 inside. */
export function pointToBox(box: OrientedBox, place: Vector): number {
  const q = inBox(box, place)
  const beyond = (i: 0 | 1 | 2): number => Math.max(0, Math.abs(q[i]) - box.half[i])
  return lengthOf([beyond(0), beyond(1), beyond(2)])
}
