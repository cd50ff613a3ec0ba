import { minimum } from '../numerics/minimum.ts'
import { formula } from '../working/formula.ts'

const STATICS = { work: 'statics', place: 'a straight shaft whose outer end moves' } as const
const HANDBOOK = 'In the handbook only: no study knows shafts and obstacles by place yet.'
const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const angle = (symbol: string, label: string) => ({ symbol, unit: 'rad', label, shows: 'angle' }) as const
const hand = (place: string) => ({ work: 'statics', place: `worked by hand: ${place}` }) as const
const DEGREE = Math.PI / 180
const halfShaft = { innerY: 0.2, innerZ: 0.3, outerY: 0.62, outerZ: 0.29, radius: 0.014, obstacleY: 0.45, obstacleZ: 0.42 } as const

/** Room over a propshaft while the axle behind it comes up: the tube rises with the share of its length at which the obstacle stands. */
export const propshaftRoom = formula(
  {
    id: 'propshaft-room',
    label: 'Room over a propshaft',
    gives: { room: length('d', 'room left over the tube'), rise: length('Δz', 'tube rises by'), angle: angle('θ', 'angle changes by') },
    takes: {
      length: length('ℓ', 'length of the shaft'),
      bump: length('t', 'axle comes up by'),
      at: length('x', 'obstacle, behind the front joint'),
      above: length('z', 'obstacle, above the standing centre line'),
      diameter: length('D', 'diameter of the tube'),
    },
    text: 'Δz = t · x / ℓ\nθ = atan(t / ℓ)\nd = z − Δz − D / (2 · cos(θ))',
    source: STATICS,
    leavesOut: `An axle that also moves forwards and backwards, joints and boots thicker than the tube. Usual over full travel: 25 mm, 20 mm at a joint (common practice). ${HANDBOOK}`,
    proof: {
      examples: [
        {
          takes: { length: 1.35, bump: 0.08, at: 0.9, above: 0.13, diameter: 0.0762 },
          gives: { room: 0.0385, rise: 0.0533 },
          within: 0.00005,
          source: hand('1.35 m tube of 76.2 mm, lid 130 mm over the centre line, 80 mm of bump'),
        },
        {
          takes: { length: 1.35, bump: 0.08, at: 0.9, above: 0.13, diameter: 0.0762 },
          gives: { angle: 3.39 * DEGREE },
          within: 0.005 * DEGREE,
          source: hand('80 mm over 1.35 m'),
        },
      ],
    },
  },
  ({ length, bump, at, above, diameter }) => {
    const rise = (bump * at) / length,
      angle = Math.atan(bump / length)
    return { room: above - rise - diameter / (2 * Math.cos(angle)), rise, angle }
  },
)

/** A half-shaft at one point of the travel of its wheel: its angle, how far it has to grow, and what is left to an edge over or under it. */
export const halfShaftAtTravel = formula(
  {
    id: 'half-shaft-at-travel',
    label: 'Half-shaft at a point of its travel',
    gives: {
      angle: angle('θ', 'angle of the shaft'),
      room: length('d', 'room to the edge'),
      plunge: length('Δℓ', 'longer than standing by'),
    },
    takes: {
      innerY: length('y_i', 'inner joint, from the middle of the car'),
      innerZ: length('z_i', 'inner joint, above the ground'),
      outerY: length('y_o', 'outer joint, from the middle of the car'),
      outerZ: length('z_o', 'outer joint, above the ground, standing'),
      travel: length('t', 'wheel up by; droop below zero'),
      radius: length('r', 'radius of the shaft'),
      obstacleY: length('y_e', 'edge, from the middle of the car'),
      obstacleZ: length('z_e', 'edge, above the ground'),
    },
    text: [
      'w = y_o − y_i',
      'h = z_o + t − z_i',
      'θ = atan(h / w)',
      'd = abs(z_e − z_i − h · (y_e − y_i) / w) · cos(θ) − r',
      'Δℓ = √(w² + h²) − √(w² + (z_o − z_i)²)',
    ].join('\n'),
    source: STATICS,
    leavesOut: `A wheel that moves inwards and outwards as it goes up and down, and an edge past the end of the shaft. Take both ends of the travel, and where the shaft is level with the edge. ${HANDBOOK}`,
    proof: {
      examples: [
        {
          takes: { ...halfShaft, travel: 0.08 },
          gives: { room: 0.0633 },
          within: 0.00005,
          source: hand('80 mm of bump, edge 120 mm over the inner joint'),
        },
        { takes: { ...halfShaft, travel: 0.08 }, gives: { angle: 9.46 * DEGREE }, within: 0.005 * DEGREE, source: hand('80 mm of bump') },
        { takes: { ...halfShaft, travel: 0 }, gives: { angle: -1.36 * DEGREE }, within: 0.005 * DEGREE, source: hand('standing') },
        {
          takes: { ...halfShaft, travel: -0.09 },
          gives: { angle: -13.39 * DEGREE },
          within: 0.005 * DEGREE,
          source: hand('90 mm of droop'),
        },
        { takes: { ...halfShaft, travel: 0.08 }, gives: { plunge: 0.00567 }, within: 0.000005, source: hand('80 mm of bump') },
        { takes: { ...halfShaft, travel: -0.09 }, gives: { plunge: 0.01162 }, within: 0.000005, source: hand('90 mm of droop') },
      ],
    },
  },
  ({ innerY, innerZ, outerY, outerZ, travel, radius, obstacleY, obstacleZ }) => {
    const across = outerY - innerY,
      up = outerZ + travel - innerZ,
      angle = Math.atan(up / across)
    return {
      angle,
      room: Math.abs(obstacleZ - innerZ - (up * (obstacleY - innerY)) / across) * Math.cos(angle) - radius,
      plunge: Math.sqrt(across ** 2 + up ** 2) - Math.sqrt(across ** 2 + (outerZ - innerZ) ** 2),
    }
  },
)

/**
 * Least room between a shaft and an obstacle over the travel from `-droop` to `bump`, m, and where in the travel it is met. `clearance` tells the room at one
 * point of the travel. Even steps are looked at, and closer about the least of them; `level`, where the shaft stands level with the obstacle, is looked at too.
 *
 * Throws RangeError when droop or bump is below 0.
 */
export function leastOverTravel(
  droop: number,
  bump: number,
  clearance: (travel: number) => number,
  level?: number,
): { readonly least: number; readonly at: number } {
  if (!(droop >= 0 && bump >= 0)) throw new RangeError(`travel: droop and bump must be at least 0, found ${droop} and ${bump}`)
  const step = (droop + bump) / STEPS
  let least = Infinity,
    at = 0 - droop
  const look = (travel: number): void => {
    const room = clearance(travel)
    if (room < least) {
      least = room
      at = travel
    }
  }
  for (let i = 0; i <= STEPS; i++) look(step * i - droop)
  if (level !== undefined && level > -droop && level < bump) look(level)
  if (step > LEAST_STEP) look(minimum(clearance, Math.max(-droop, at - step), Math.min(bump, at + step), step * 1e-6).x)
  return { least, at }
}
const STEPS = 64
/** Steps shorter than this tell nothing new [m]. */
const LEAST_STEP = 1e-9
