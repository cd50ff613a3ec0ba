import { formula } from '../working/formula.ts'
import { inBox, type OrientedBox } from './box.ts'
import { boxOf } from './placed-body.ts'
import { leastOverTravel } from './shaft-over-travel.ts'
import { checkPlace, type Vector } from './vector.ts'

const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const three = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length', many: true }) as const
const hand = (place: string) => ({ work: 'statics', place: `worked by hand: ${place}` }) as const

/**
 * Distance of a straight piece from a box, m. Along the piece each side of the box is passed at most twice; between two such places the square of the
 * distance is one parabola, whose lowest point is known.
 */
export function pieceToBox(from: Vector, to: Vector, box: OrientedBox): number {
  const start = inBox(box, from),
    end = inBox(box, to),
    way = [end[0] - start[0], end[1] - start[1], end[2] - start[2]] as const
  const passed = [0, 1]
  for (const i of AXES)
    if (way[i] !== 0)
      for (const side of [-box.half[i], box.half[i]]) {
        const s = (side - start[i]) / way[i]
        if (s > 0 && s < 1) passed.push(s)
      }
  passed.sort((p, q) => p - q)
  let least = Infinity
  for (let k = 0; k + 1 < passed.length; k++) {
    const [low, high] = [passed[k] as number, passed[k + 1] as number]
    const s = lowest(start, way, box.half, low, high)
    for (const at of [low, s, high]) least = Math.min(least, squared(start, way, box.half, at))
  }
  return Math.sqrt(least)
}
const AXES = [0, 1, 2] as const
function squared(start: Vector, way: Vector, half: Vector, s: number): number {
  let sum = 0
  for (const i of AXES) sum += Math.max(0, Math.abs(start[i] + s * way[i]) - half[i]) ** 2
  return sum
}
/** Lowest point of the parabola that holds between two places along the piece. */
function lowest(start: Vector, way: Vector, half: Vector, low: number, high: number): number {
  const middle = (low + high) / 2
  let slope = 0,
    bend = 0
  for (const i of AXES) {
    const q = start[i] + middle * way[i]
    if (Math.abs(q) <= half[i]) continue
    const out = start[i] - Math.sign(q) * half[i]
    slope += way[i] * out
    bend += way[i] ** 2
  }
  return bend > 0 ? Math.min(high, Math.max(low, -slope / bend)) : middle
}

/** Air between a turning shaft, over the whole travel of its outer joint, and a body. */
export const shaftToBody = formula(
  {
    id: 'shaft-to-body',
    label: 'Air between a shaft and a body, over full travel',
    gives: { gap: length('d', 'least air over the travel; below zero it runs into the body'), at: length('t', 'outer joint then up by') },
    takes: {
      from: three('p_i', 'inner joint: behind the front axle, to the right, above the ground'),
      to: three('p_o', 'outer joint, standing'),
      diameter: length('D', 'diameter of the shaft'),
      bump: length('t_b', 'outer joint goes up by'),
      droop: length('t_d', 'outer joint goes down by'),
      place: three('p', 'body, its middle'),
      sides: three('s', 'body, length, width and height'),
      turns: { symbol: 'θ', unit: 'rad', label: 'body, turned about the vertical, tipped, leant', shows: 'angle', many: true },
    },
    text: 'd is the least distance between the line of the shaft and the box of the body, less half the diameter, for every height of the outer joint from droop to bump',
    words: 'a search over the travel of the joint',
    source: { work: 'statics', place: 'a straight shaft whose outer end moves' },
    leavesOut:
      'Boots and joints thicker than the shaft; an outer end that also moves sideways; an engine or axle that rolls on its mounts.',
    proof: {
      examples: [
        {
          takes: {
            from: [0, 0, 0.3],
            to: [1.35, 0, 0.3],
            diameter: 0.0762,
            bump: 0.08,
            droop: 0,
            place: [0.9, 0, 0.3 + 0.13 + 0.1],
            sides: [0.001, 0.2, 0.2],
            turns: [0, 0, 0],
          },
          gives: { gap: 0.0384 },
          within: 0.0003,
          because: 'the handbook case measures straight up, this one square to the leaning tube',
          source: hand('1.35 m tube of 76.2 mm, edge 130 mm over its line at 0.90 m, 80 mm of bump: 38.5 mm straight up'),
        },
        {
          takes: {
            from: [0, 0, 0.3],
            to: [1, 0, 0.3],
            diameter: 0.04,
            bump: 0,
            droop: 0,
            place: [0.5, 0.2, 0.3],
            sides: [0.2, 0.2, 0.2],
            turns: [0, 0, 0],
          },
          gives: { gap: 0.08, at: 0 },
          within: 1e-9,
          source: hand('a body whose side is 100 mm from the line of a 40 mm shaft'),
        },
      ],
    },
  },
  ({ from, to, diameter, bump, droop, place, sides, turns }) => {
    const box = boxOf({ place, sides, turns }),
      inner = checkPlace('shaft', 'inner joint', from),
      outer = checkPlace('shaft', 'outer joint', to)
    const { least, at } = leastOverTravel(
      droop,
      bump,
      travel => pieceToBox(inner, [outer[0], outer[1], outer[2] + travel], box) - diameter / 2,
    )
    return { gap: least, at }
  },
)
