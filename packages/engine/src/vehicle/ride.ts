import { formula } from '../working/formula.ts'
import { GRAVITY } from './gravity.ts'

const VIBRATION = { work: 'statics', place: 'one mass on one spring' } as const
const hand = (place: string) => ({ work: 'statics', place: `worked by hand: ${place}` }) as const
const HANDBOOK = 'In the handbook only: no study asks for springs yet.'
const mass = (symbol: string, label: string) => ({ symbol, unit: 'kg', label }) as const
const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const stiffness = (symbol: string, label: string) => ({ symbol, unit: 'N/m', label, shows: 'stiffness' }) as const
const rollStiffness = (symbol: string, label: string) => ({ symbol, unit: 'N·m/rad', label, shows: 'rotational stiffness' }) as const
const damping = (symbol: string, label: string) => ({ symbol, unit: 'N·s/m', label }) as const
const frequency = (symbol: string, label: string) => ({ symbol, unit: '1/s', label }) as const

/** How often a corner of the car bounces on its spring. Road cars: 1.0 to 1.5 Hz, the rear a little above the front. */
export const rideFrequency = formula(
  {
    id: 'ride-frequency',
    label: 'Ride frequency',
    gives: frequency('f', 'ride frequency'),
    takes: { wheel: stiffness('k_w', 'spring rate at the wheel'), mass: mass('m_s', 'sprung mass on the wheel') },
    text: 'f = √(k_w / m_s) / (2 · π)',
    source: VIBRATION,
    leavesOut: 'Damping and friction.',
    proof: {
      examples: [
        { takes: { wheel: 22e3, mass: 280 }, gives: 1.411, within: 0.0005, source: hand('22 N/mm under 280 kg') },
        { takes: { wheel: 22e3, mass: 330 }, gives: 1.299, within: 0.0006, source: hand('22 N/mm under 330 kg') },
        { takes: { wheel: 25.93e3, mass: 330 }, gives: 1.411, within: 0.0005, source: hand('25.93 N/mm under 330 kg') },
        { takes: { wheel: 19.6e3, mass: 280 }, gives: 1.332, within: 0.0005, source: hand('tyre in series: 19.60 N/mm under 280 kg') },
      ],
    },
  },
  ({ wheel, mass }) => Math.sqrt(wheel / mass) / (2 * Math.PI),
)

/** What a spring is worth at the wheel, through the leverage of its arm. */
export const rateAtWheel = formula(
  {
    id: 'rate-at-wheel',
    label: 'Spring rate at the wheel',
    gives: stiffness('k_w', 'spring rate at the wheel'),
    takes: {
      spring: stiffness('k', 'rate of the spring itself'),
      motion: { symbol: 'i', unit: '1', label: 'motion ratio: travel of the spring over travel of the wheel', shows: 'ratio' },
    },
    text: 'k_w = k · i²',
    source: { work: 'statics', place: 'lever: force and travel both by the ratio' },
    leavesOut: `A ratio that changes over the travel. ${HANDBOOK}`,
    proof: { examples: [{ takes: { spring: 34375, motion: 0.8 }, gives: 22e3, within: 1e-6, source: hand('34.375 N/mm at 0.8') }] },
  },
  ({ spring, motion }) => spring * motion ** 2,
)

/** How stiff an axle stands against roll: its two springs, and its bar. */
export const axleRollStiffness = formula(
  {
    id: 'axle-roll-stiffness',
    label: 'Roll stiffness of an axle',
    gives: rollStiffness('K', 'roll stiffness of the axle'),
    takes: {
      wheel: stiffness('k_w', 'spring rate at each wheel'),
      track: length('T', 'track'),
      bar: rollStiffness('K_b', 'roll stiffness of the bar'),
    },
    text: 'K = k_w · T² / 2 + K_b',
    source: { work: 'statics', place: 'two springs half a track from the middle' },
    leavesOut: `A rigid axle, whose springs stand closer than its wheels; the tyres. ${HANDBOOK}`,
    proof: {
      examples: [
        {
          takes: { wheel: 20e3, track: 1.42, bar: 8e3 },
          gives: 28164,
          within: 0.5,
          source: hand('20 N/mm, track 1.42 m, bar of 8 kN·m/rad'),
        },
      ],
    },
  },
  ({ wheel, track, bar }) => (wheel * track ** 2) / 2 + bar,
)

/** Spring that keeps the ride frequency under another mass. */
export const springForMass = formula(
  {
    id: 'spring-for-mass',
    label: 'Spring for another mass',
    gives: stiffness('k_2', 'spring rate for the new mass'),
    takes: {
      before: stiffness('k_1', 'spring rate before'),
      massBefore: mass('m_1', 'sprung mass before'),
      mass: mass('m_2', 'sprung mass now'),
    },
    text: 'k_2 = k_1 · m_2 / m_1',
    source: VIBRATION,
    leavesOut: 'Travel and ride height: a stiffer spring of the same length stands higher.',
    proof: {
      examples: [
        {
          takes: { before: 22e3, massBefore: 280, mass: 330 },
          gives: 25.93e3,
          within: 5,
          source: hand('22 N/mm, 280 kg becomes 330 kg'),
        },
      ],
    },
  },
  ({ before, massBefore, mass }) => (before * mass) / massBefore,
)

/** Damping that keeps the share of the critical one. */
export const dampingForMass = formula(
  {
    id: 'damping-for-mass',
    label: 'Damping for another spring and mass',
    gives: damping('c_2', 'damping now'),
    takes: {
      before: damping('c_1', 'damping before'),
      springBefore: stiffness('k_1', 'spring rate before'),
      spring: stiffness('k_2', 'spring rate now'),
      massBefore: mass('m_1', 'sprung mass before'),
      mass: mass('m_2', 'sprung mass now'),
    },
    text: 'c_2 = c_1 · √(k_2 · m_2 / (k_1 · m_1))',
    source: VIBRATION,
    leavesOut: HANDBOOK,
    proof: {
      examples: [
        {
          takes: { before: 1400, springBefore: 22e3, spring: 25.93e3, massBefore: 280, mass: 330 },
          gives: 1650,
          within: 0.5,
          source: hand('spring and mass both grow by 33 in 28: so does the damping'),
        },
      ],
    },
  },
  ({ before, springBefore, spring, massBefore, mass }) => before * Math.sqrt((spring * mass) / (springBefore * massBefore)),
)

/** Spring and tyre, one upon the other. */
export const rateWithTyre = formula(
  {
    id: 'rate-with-tyre',
    label: 'Spring rate with the tyre in series',
    gives: stiffness('k', 'spring rate with the tyre'),
    takes: { wheel: stiffness('k_w', 'spring rate at the wheel'), tyre: stiffness('k_t', 'spring rate of the tyre') },
    text: 'k = k_w · k_t / (k_w + k_t)',
    source: { work: 'statics', place: 'springs in series' },
    leavesOut: HANDBOOK,
    proof: {
      examples: [{ takes: { wheel: 22e3, tyre: 180e3 }, gives: 19.6e3, within: 5, source: hand('22 and 180 N/mm') }],
    },
  },
  ({ wheel, tyre }) => (wheel * tyre) / (wheel + tyre),
)

/** How often the wheel itself hops between spring and tyre. */
export const wheelHop = formula(
  {
    id: 'wheel-hop',
    label: 'Wheel hop',
    gives: frequency('f_u', 'wheel hop'),
    takes: {
      wheel: stiffness('k_w', 'spring rate at the wheel'),
      tyre: stiffness('k_t', 'spring rate of the tyre'),
      mass: mass('m_u', 'unsprung mass of the wheel'),
    },
    text: 'f_u = √((k_w + k_t) / m_u) / (2 · π)',
    source: VIBRATION,
    leavesOut: `The body, taken as still. ${HANDBOOK}`,
    proof: {
      examples: [{ takes: { wheel: 22e3, tyre: 180e3, mass: 35 }, gives: 12.09, within: 0.005, source: hand('22 and 180 N/mm, 35 kg') }],
    },
  },
  ({ wheel, tyre, mass }) => Math.sqrt((wheel + tyre) / mass) / (2 * Math.PI),
)

/** How far a corner sinks on its spring alone. */
export const cornerSinks = formula(
  {
    id: 'corner-sinks',
    label: 'A corner sinks under more mass',
    gives: length('Δz', 'sinks by'),
    takes: { mass: mass('Δm', 'mass added on the wheel'), wheel: stiffness('k_w', 'spring rate at the wheel') },
    uses: [GRAVITY],
    text: 'Δz = Δm · g / k_w',
    source: { work: 'statics', place: 'spring under load' },
    leavesOut: `The tyre, and springs that stiffen as they go. ${HANDBOOK}`,
    proof: {
      examples: [{ takes: { mass: 50, wheel: 22e3 }, gives: 0.0223, within: 0.00005, source: hand('50 kg more on 22 N/mm') }],
    },
  },
  ({ mass, wheel }) => (mass * GRAVITY.value) / wheel,
)

/** How far an axle sinks on its two springs and tyres. */
export const axleSinks = formula(
  {
    id: 'axle-sinks',
    label: 'An axle sinks under more mass',
    gives: length('Δz', 'sinks by'),
    takes: {
      mass: mass('Δm', 'sprung mass added on the axle'),
      wheel: stiffness('k_w', 'spring rate at each wheel'),
      tyre: stiffness('k_t', 'spring rate of each tyre'),
    },
    uses: [GRAVITY],
    text: 'Δz = Δm · g · (1 / (2 · k_w) + 1 / (2 · k_t))',
    source: { work: 'statics', place: 'springs in series under load' },
    leavesOut: 'Springs that stiffen as they go.',
    proof: {
      examples: [
        { takes: { mass: 31.9, wheel: 20e3, tyre: 180e3 }, gives: 0.00869, within: 0.000005, source: hand('31.9 kg on the front axle') },
        { takes: { mass: 120.1, wheel: 22e3, tyre: 180e3 }, gives: 0.03004, within: 0.000005, source: hand('120.1 kg on the rear axle') },
      ],
    },
  },
  ({ mass, wheel, tyre }) => mass * GRAVITY.value * (1 / (2 * wheel) + 1 / (2 * tyre)),
)

/** How far the body sinks between the axles, and how the lamps tip: the beam rises where the rear sinks more. */
export const bodySinks = formula(
  {
    id: 'body-sinks',
    label: 'The body sinks and tips',
    gives: { at: length('Δz', 'sinks by'), lamps: { symbol: 'p', unit: '1', label: 'lamps aim higher by', shows: 'slope' } },
    takes: {
      front: length('Δz_F', 'front axle sinks'),
      rear: length('Δz_R', 'rear axle sinks'),
      x: length('x', 'place, behind the front axle'),
      wheelbase: length('L', 'wheelbase'),
    },
    text: 'Δz = Δz_F + (Δz_R − Δz_F) · x / L\np = (Δz_R − Δz_F) / L',
    source: { work: 'statics', place: 'a straight line through both axles' },
    leavesOut: 'Self-levelling of body or lamps.',
    proof: {
      examples: [
        {
          takes: { front: 0.00869, rear: 0.03004, x: 1.5, wheelbase: 2.45 },
          gives: { at: 0.02176, lamps: 0.00871 },
          within: 0.000006,
          source: hand('8.69 mm in front, 30.04 mm behind, at 1.5 m of 2.45 m'),
        },
        {
          takes: { front: 0.06, rear: 0, x: 1.5, wheelbase: 2.45 },
          gives: { at: 0.0233 },
          within: 0.00005,
          source: hand('a front tyre flat by 60 mm: 23.3 mm more at 1.5 m'),
        },
      ],
    },
  },
  ({ front, rear, x, wheelbase }) => ({ at: front + ((rear - front) * x) / wheelbase, lamps: (rear - front) / wheelbase }),
)
