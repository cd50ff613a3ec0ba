import { formula } from '../working/formula.ts'
import { type OrientedBox, SQUARE } from './box.ts'
import { boxOf, gapBelow } from './placed-body.ts'
import { wheelEnvelope } from './turning-wheel.ts'
import type { Vector } from './vector.ts'

const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const three = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length', many: true }) as const
const hand = (place: string) => ({ work: 'statics', place: `worked by hand: ${place}` }) as const
const DEGREE = Math.PI / 180

export type SweptWheel = {
  /** Axle behind the front axle, m. */
  readonly axle: number
  readonly track: number
  readonly radius: number
  readonly width: number
  /** Wheel centre above the ground, standing, m. */
  readonly height: number
  readonly lock: number
  readonly offset: number
  readonly bump: number
  readonly droop: number
}
export type WheelSide = 'left' | 'right'
const SLABS = 16

/** The room a wheel takes over lock and travel, as boxes one over the other: at each height the rectangle round all it reaches there. */
export function sweptBoxes(w: SweptWheel, side: WheelSide): readonly OrientedBox[] {
  const low = -w.droop - w.radius,
    high = w.bump + w.radius,
    out: OrientedBox[] = []
  for (let i = 0; i < SLABS; i++) {
    const bottom = low + ((high - low) * i) / SLABS,
      top = low + ((high - low) * (i + 1)) / SLABS
    // The widest of the slab is where its heights come nearest to those the wheel centre takes.
    const widest = bottom > w.bump ? bottom : top < -w.droop ? top : Math.max(bottom, Math.min(top, 0))
    const reach = wheelEnvelope(w, w.lock, widest, w.droop, w.bump)
    if (!reach) continue
    const [inner, outer] = [w.track / 2 - w.offset - reach.inboard, w.track / 2 - w.offset + reach.outboard]
    const y = ((inner + outer) / 2) * (side === 'right' ? 1 : -1)
    const half: Vector = [reach.fore, (outer - inner) / 2, (top - bottom) / 2]
    out.push({ centre: [w.axle, y, w.height + (bottom + top) / 2], half, axes: SQUARE })
  }
  return out
}

/** How far a wheel reaches into the car over full lock and travel. */
export const wheelRoom = formula(
  {
    id: 'wheel-room',
    label: 'Room a wheel takes over lock and travel',
    gives: {
      inner: length('y_i', 'innermost point, from the centre line'),
      fore: length('d_x', 'ahead and behind its axle'),
      top: length('z_2', 'highest point above the ground'),
      bottom: length('z_1', 'lowest point, hanging'),
    },
    takes: {
      track: length('T', 'track'),
      diameter: length('D', 'diameter of the tyre'),
      width: length('b', 'width of the tyre'),
      height: length('z_w', 'wheel centre above the ground, standing'),
      lock: { symbol: 'δ', unit: 'rad', label: 'full lock; 0 for a wheel that is not steered', shows: 'angle' },
      offset: length('e', 'wheel centre outboard of its steering axis'),
      bump: length('t_b', 'wheel goes up by'),
      droop: length('t_d', 'wheel goes down by'),
    },
    text: 'y_i and d_x are the furthest the wheel reaches at the height of its centre between straight ahead and full lock; z_2 = z_w + t_b + D / 2; z_1 = z_w − t_d − D / 2',
    words: 'the furthest over a range of angles',
    source: { work: 'statics', place: 'a turning wheel seen from above' },
    leavesOut: 'Camber, a leaning steering axis, what sticks out of the tread.',
    proof: {
      examples: [
        {
          takes: { track: 1.4, diameter: 0.61, width: 0.205, height: 0.29, lock: 38 * DEGREE, offset: 0.03, bump: 0.08, droop: 0.09 },
          gives: { inner: 0.7 - 0.03 - 0.2449, fore: 0.3325, top: 0.675, bottom: -0.105 },
          within: 0.0001,
          source: hand('205 mm tyre: 244.9 mm inboard at 38 degrees, 332.5 mm ahead at most'),
        },
      ],
    },
  },
  ({ track, diameter, width, height, lock, offset, bump, droop }) => {
    const radius = diameter / 2,
      reach = wheelEnvelope({ radius, width, offset }, lock, 0, droop, bump)
    return {
      inner: track / 2 - offset - (reach?.inboard ?? 0),
      fore: reach?.fore ?? 0,
      top: height + bump + radius,
      bottom: height - droop - radius,
    }
  },
)

/** Least gap of a body to any of some boxes where it is below a limit, else some number not below it. */
export function leastGap(boxes: readonly OrientedBox[], body: OrientedBox, limit: number): number {
  let least = limit
  for (const box of boxes) least = Math.min(least, gapBelow(box, body, least))
  return least
}

/** Air between a wheel, over full lock and travel, and a body. */
export const wheelToBody = formula(
  {
    id: 'wheel-to-body',
    label: 'Air between a wheel and a body, over full lock and travel',
    gives: length('d', 'least air; below zero the wheel runs into the body'),
    takes: {
      side: { symbol: 'f', oneOf: ['left', 'right'], label: 'side of the car' },
      axle: length('x_w', 'axle, behind the front axle'),
      track: length('T', 'track'),
      diameter: length('D', 'diameter of the tyre'),
      width: length('b', 'width of the tyre'),
      height: length('z_w', 'wheel centre above the ground, standing'),
      lock: { symbol: 'δ', unit: 'rad', label: 'full lock; 0 for a wheel that is not steered', shows: 'angle' },
      offset: length('e', 'wheel centre outboard of its steering axis'),
      bump: length('t_b', 'wheel goes up by'),
      droop: length('t_d', 'wheel goes down by'),
      place: three('p', 'body, its middle'),
      sides: three('s', 'body, length, width and height'),
      turns: { symbol: 'θ', unit: 'rad', label: 'body, turned about the vertical, tipped, leant', shows: 'angle', many: true },
    },
    text: 'd is the least distance between the box of the body and the room of the wheel: slabs over its height, each the rectangle round all it reaches there between straight ahead and full lock, anywhere in its travel',
    words: 'a union over lock and travel',
    source: { work: 'statics', place: 'a turning wheel seen from above' },
    leavesOut:
      'Camber, a leaning steering axis, what sticks out of the tread; the rounded corners of the room, so it is a little on the safe side.',
    proof: {
      examples: [
        {
          takes: {
            side: 'right',
            axle: 0,
            track: 1.4,
            diameter: 0.61,
            width: 0.205,
            height: 0.29,
            lock: 38 * DEGREE,
            offset: 0.03,
            bump: 0.08,
            droop: 0.08,
            place: [0, 0.2, 0.29],
            sides: [0.2, 0.1, 0.1],
            turns: [0, 0, 0],
          },
          gives: 0.7 - 0.03 - 0.2449 - 0.25,
          within: 0.0001,
          source: hand('steering axis at 0.67 m, wheel reaches 244.9 mm inboard at 38 degrees, body ends at 0.25 m'),
        },
      ],
    },
  },
  ({ side, place, sides, turns, diameter, ...wheel }) => {
    const slabs = sweptBoxes({ ...wheel, radius: diameter / 2 }, side as WheelSide)
    return leastGap(slabs, boxOf({ place, sides, turns }), Infinity)
  },
)
