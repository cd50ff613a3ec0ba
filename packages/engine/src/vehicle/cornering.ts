import { formula } from '../working/formula.ts'
import { GRAVITY } from './gravity.ts'

const GILLESPIE = { work: 'gillespie', place: 'ch. 6, roll moment distribution', mark: 'from memory' } as const
const hand = (place: string) => ({ work: 'statics', place: `worked by hand: ${place}` }) as const
const mass = (symbol: string, label: string) => ({ symbol, unit: 'kg', label }) as const
const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const roll = (symbol: string, label: string) => ({ symbol, unit: 'N·m/rad', label, shows: 'rotational stiffness' }) as const
const DEGREE = Math.PI / 180,
  HALF_G = 0.5 * 9.80665

const car = { wheelbase: 2.45, frontCentre: 0.08, rearCentre: 0.2, rollFront: 28e3, sideways: HALF_G } as const
const wheels = { unsprungFront: 75, unsprungRear: 80, unsprungHeight: 0.29, trackFront: 1.42, trackRear: 1.4 } as const
const donor = { ...car, ...wheels, mass: 1045, height: 0.58, centre: 1.05, rollRear: 18e3 } as const
const converted = { ...car, ...wheels, mass: 1197, height: 0.575, centre: 1.17, rollRear: 18e3 } as const

/**
 * Roll in a bend, and the load each axle shifts to its outer wheel. The axle with the larger share loses its grip first: more mass behind on
 * the same springs moves a car towards oversteer, and a bar at the rear alone makes it worse.
 */
export const rollInBend = formula(
  {
    id: 'roll-in-bend',
    label: 'Roll and load transfer in a bend',
    gives: {
      angle: { symbol: 'φ', unit: 'rad', label: 'roll angle', shows: 'angle' },
      front: { symbol: 'ΔF_F', unit: 'N', label: 'shifted on the front axle' },
      rear: { symbol: 'ΔF_R', unit: 'N', label: 'shifted on the rear axle' },
      frontShare: { symbol: 's', unit: '1', label: 'share of the front axle in it', shows: 'share' },
    },
    takes: {
      mass: mass('m_s', 'sprung mass'),
      height: length('h_s', 'its centre above the ground'),
      centre: length('x_g', 'its centre behind the front axle'),
      wheelbase: length('L', 'wheelbase'),
      frontCentre: length('h_F', 'roll centre of the front axle, above the ground'),
      rearCentre: length('h_R', 'roll centre of the rear axle, above the ground'),
      rollFront: roll('K_F', 'roll stiffness of the front axle'),
      rollRear: roll('K_R', 'roll stiffness of the rear axle'),
      sideways: { symbol: 'a_y', unit: 'm/s²', label: 'sideways acceleration', shows: 'acceleration' },
      unsprungFront: mass('m_uF', 'unsprung mass of the front axle'),
      unsprungRear: mass('m_uR', 'unsprung mass of the rear axle'),
      unsprungHeight: length('h_u', 'centre of the unsprung masses above the ground'),
      trackFront: length('T_F', 'front track'),
      trackRear: length('T_R', 'rear track'),
    },
    uses: [GRAVITY],
    text: [
      'h = h_s − h_F − (h_R − h_F) · x_g / L',
      'φ = m_s · a_y · h / (K_F + K_R − m_s · g · h)',
      'ΔF_F = (K_F · φ + m_s · a_y · (1 − x_g / L) · h_F + m_uF · a_y · h_u) / T_F',
      'ΔF_R = (K_R · φ + m_s · a_y · x_g / L · h_R + m_uR · a_y · h_u) / T_R',
      's = ΔF_F / (ΔF_F + ΔF_R)',
    ].join('\n'),
    source: GILLESPIE,
    leavesOut: 'Tyres that give sideways, and springs that stiffen. In the handbook only: no study asks for springs yet.',
    proof: {
      examples: [
        {
          takes: donor,
          gives: { angle: 3.18 * DEGREE },
          within: 0.005 * DEGREE,
          source: hand('1045 kg sprung, 0.5 g'),
        },
        { takes: donor, gives: { front: 1335, rear: 1109 }, within: 0.5, source: hand('1045 kg sprung, 0.5 g') },
        { takes: donor, gives: { frontShare: 0.546 }, within: 0.0005, source: hand('1045 kg sprung, 0.5 g') },
        {
          takes: converted,
          gives: { angle: 3.6 * DEGREE },
          within: 0.005 * DEGREE,
          source: hand('the same car converted, 1197 kg sprung'),
        },
        {
          takes: converted,
          gives: { front: 1488, rear: 1290 },
          within: 0.5,
          source: hand('the same car converted, 1197 kg sprung'),
        },
        {
          takes: converted,
          gives: { frontShare: 0.536 },
          within: 0.0005,
          source: hand('the same car converted, 1197 kg sprung'),
        },
        {
          takes: { ...converted, rollRear: 23e3 },
          gives: { front: 1352, rear: 1402 },
          within: 0.6,
          source: hand('converted, and the rear axle stiffened to 23 kN·m/rad'),
        },
        {
          takes: { ...converted, rollRear: 23e3 },
          gives: { angle: 3.21 * DEGREE },
          within: 0.005 * DEGREE,
          source: hand('converted, and the rear axle stiffened to 23 kN·m/rad'),
        },
        {
          takes: { ...converted, rollRear: 23e3 },
          gives: { frontShare: 0.491 },
          within: 0.0005,
          source: hand('converted, and the rear axle stiffened to 23 kN·m/rad'),
        },
      ],
    },
  },
  x => {
    const arm = x.height - x.frontCentre - ((x.rearCentre - x.frontCentre) * x.centre) / x.wheelbase,
      share = x.centre / x.wheelbase
    const angle = (x.mass * x.sideways * arm) / (x.rollFront + x.rollRear - x.mass * GRAVITY.value * arm)
    const front =
      (x.rollFront * angle + x.mass * x.sideways * (1 - share) * x.frontCentre + x.unsprungFront * x.sideways * x.unsprungHeight) /
      x.trackFront
    const rear =
      (x.rollRear * angle + x.mass * x.sideways * share * x.rearCentre + x.unsprungRear * x.sideways * x.unsprungHeight) / x.trackRear
    return { angle, front, rear, frontShare: front / (front + rear) }
  },
)
