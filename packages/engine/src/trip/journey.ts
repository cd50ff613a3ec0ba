import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { SLOWS_DOWN, SPEEDS_UP } from './route.ts'

const speed = (symbol: string, label: string) => ({ symbol, unit: 'm/s', label, shows: 'speed' }) as const
const metres = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'distance' }) as const
const practice = (place: string) => ({ work: 'practice', place, mark: 'common practice' }) as const

/** How long a steady drive is followed where nothing says otherwise: as long as the longest current average. */
export const STEADY_TIME = standard(
  'trip.steady-time',
  'How long a steady drive is followed',
  't_0',
  1800,
  's',
  practice('half an hour, the longest average of currents'),
)
/** A trip starts with a full battery. */
export const FULL = standard('trip.full', 'Charge at the start', 'z_0', 1, '1', { work: 'definition', place: 'a trip starts full' })
const UP = standard('trip.speeds-up', 'Speeding up of an unhurried driver', 'a_1', SPEEDS_UP, 'm/s²', practice('1 m/s²'))
const DOWN = standard('trip.slows-down', 'Slowing down of an unhurried driver', 'a_2', SLOWS_DOWN, 'm/s²', practice('1.2 m/s²'))

/** Speed of a drive at one speed: the same all the time. */
export const speedHeld = formula(
  {
    id: 'speed-held',
    label: 'Speed over time, held',
    gives: speed('v_t', 'speed'),
    takes: { speed: speed('v', 'speed') },
    text: 'v_t = v',
    source: { work: 'definition', place: 'a steady drive' },
    proof: { none: 'definition' },
  },
  ({ speed }) => speed,
)
/** How long a hill takes. */
export const climbTime = formula(
  {
    id: 'climb-time',
    label: 'Time on a hill',
    gives: { symbol: 't', unit: 's', shows: 'duration' },
    takes: { length: metres('ℓ', 'length of the hill'), speed: speed('v', 'speed') },
    text: 't = ℓ / v',
    source: { work: 'definition', place: 'speed' },
    proof: { none: 'definition' },
  },
  ({ length, speed }) => length / speed,
)
/** Slope of a hill that is the same all along. */
export const slopeAlong = formula(
  {
    id: 'slope-along',
    label: 'Slope over distance, the same all along',
    gives: { symbol: 'p_s', unit: '1', shows: 'slope' },
    takes: { slope: { symbol: 'p', unit: '1', label: 'slope', shows: 'slope' } },
    text: 'p_s = p',
    source: { work: 'definition', place: 'a steady slope' },
    proof: { none: 'definition' },
  },
  ({ slope }) => slope,
)
/** Slope at a place from the heights around it: the parabola through them by least squares. */
export const slopeFitted = formula(
  {
    id: 'slope-fitted',
    label: 'Slope from measured heights',
    gives: { symbol: 'p', unit: '1', shows: 'slope' },
    takes: {
      places: { symbol: 'k', unit: '1', label: 'steps from the place', many: true },
      heights: { symbol: 'h_k', unit: 'm', label: 'heights', many: true },
      step: metres('Δs', 'one step'),
    },
    text: 'p = (Σ k · h_k) / (Δs · Σ k · k)',
    source: { work: 'savitzky-golay', place: 'first derivative, 21 points 10 m apart' },
    leavesOut: 'Hills shorter than the 200 m it looks over.',
    proof: {
      examples: [
        {
          takes: { places: [-2, -1, 0, 1, 2], heights: [0, 1, 2, 3, 4], step: 10 },
          gives: 0.1,
          within: 1e-12,
          source: { work: 'definition', place: 'a straight slope of 10 %' },
        },
      ],
    },
  },
  ({ places, heights, step }) => {
    let sum = 0,
      squares = 0
    for (const [i, k] of places.entries()) {
      sum += k * heights[i]!
      squares += k * k
    }
    return sum / (step * squares)
  },
)
/** Speed at the next place of a route: the speed wanted there, as far as it can be reached and left again. */
export const speedReached = formula(
  {
    id: 'speed-reached',
    label: 'Speed on a route',
    gives: speed('v_2', 'speed'),
    takes: {
      wanted: speed('v', 'speed wanted'),
      before: speed('v_1', 'speed one step before'),
      after: speed('v_3', 'speed one step behind'),
      step: metres('Δs', 'one step'),
    },
    uses: [UP, DOWN],
    text: 'v_2 = min(v, √(v_1² + 2 · a_1 · Δs), √(v_3² + 2 · a_2 · Δs))',
    source: { work: 'statics', place: 'steady acceleration' },
    leavesOut: 'Stops of a recorded track, bends, hurry.',
    proof: {
      examples: [
        {
          takes: { wanted: 20, before: 0, after: 20, step: 50 },
          gives: 10,
          within: 1e-12,
          source: { work: 'statics', place: '50 m at 1 m/s² from a stand' },
        },
      ],
    },
  },
  ({ wanted, before, after, step }) =>
    Math.min(wanted, Math.sqrt(before * before + 2 * SPEEDS_UP * step), Math.sqrt(after * after + 2 * SLOWS_DOWN * step)),
)
