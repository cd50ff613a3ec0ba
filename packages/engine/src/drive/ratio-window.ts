import { minimum } from '../numerics/minimum.ts'
import { root } from '../numerics/root.ts'
import { formula } from '../working/formula.ts'
import { type RunPlan, run } from './full-throttle.ts'
import { CAR, WINDING } from './pull-takes.ts'

const FINE = 0.2,
  COARSE = 0.5
/** Ratios are looked for from here up to where the motor's top speed meets the goal. */
const TALLEST = 0.5
const SHARP = 1e-9

type Asked = Omit<RunPlan, 'distance'> & { readonly within: number; readonly which: number }
export type Window = { readonly low: number; readonly high: number; readonly best: number }

const withRatio = (x: Asked, i: number): RunPlan => ({
  ...x,
  ratios: x.ratios.map((r, u) => (u === x.which ? i : r)),
  distance: Number.POSITIVE_INFINITY,
})
const shortest = (x: Asked): number => ((x.topSpeed[x.which] as number) * x.radius) / x.to

/** Ratios of one unit at which the run keeps its time; where none does, the window is empty: from endless to nothing. */
function window(x: Asked, step: number): Window {
  const most = shortest(x),
    longest = 3 * x.within
  const time = (i: number): number => Math.min(longest, run(withRatio(x, i), step, undefined, longest).time)
  if (most <= TALLEST) return { low: Number.POSITIVE_INFINITY, high: 0, best: most }
  // A run given up counts by how far its ratio is from the quickest end, so that the search walks out of the plain.
  const folded = (i: number): number => {
    const t = time(i)
    return t < longest ? t : longest + most - i
  }
  const best = minimum(folded, TALLEST, most, 1e-3).x,
    over = (i: number): number => time(i) - x.within
  const fits = over(best) <= 0 ? best : over(most) <= 0 ? most : undefined
  if (fits === undefined) return { low: Number.POSITIVE_INFINITY, high: 0, best }
  return { best, low: root(over, TALLEST, fits, SHARP) ?? TALLEST, high: fits < most ? (root(over, fits, most, SHARP) ?? most) : most }
}

/**
 * Which total ratios of one unit let a run keep its time, and which is quickest, all else as it is.
 */
export const ratioForTime = formula(
  {
    id: 'ratio-for-time',
    label: 'Ratios that keep a time',
    gives: {
      low: { symbol: 'i_low', unit: '1', label: 'tallest ratio that keeps the time', shows: 'ratio' },
      high: { symbol: 'i_high', unit: '1', label: 'shortest ratio that keeps the time', shows: 'ratio' },
      best: { symbol: 'i_best', unit: '1', label: 'quickest ratio', shows: 'ratio' },
    },
    takes: {
      ...CAR,
      ...WINDING,
      from: { symbol: 'v_1', unit: 'm/s', label: 'from', shows: 'speed' },
      to: { symbol: 'v_2', unit: 'm/s', label: 'to', shows: 'speed' },
      within: { symbol: 't_max', unit: 's', label: 'within' },
      which: { symbol: 'u', unit: '1', label: 'place of the unit among the units, from 0', shows: 'count' },
    },
    text: 't(i) ≤ t_max, t being the run at full pull with the ratio i in place of the unit’s own',
    words: 'runs repeated: the quickest by golden section, the ends by halving',
    source: { work: 'ehsani', place: 'gear ratio from acceleration', mark: 'from memory' },
    leavesOut: 'Ratios beyond the one at which the motor reaches its top speed at the end of the run.',
    proof: { none: 'the run itself is proven; the ends are tested to take exactly the time asked' },
  },
  x => window(x, FINE),
)

/** The same in the neighbourhood of a window already found: where the run at its ends moves by so much, the ends move by that over the slope. For spread. */
export function ratioForTimeNear(near: Window, nominal: Asked): (x: Asked) => Window {
  const time = (x: Asked, i: number): number => run(withRatio(x, i), COARSE).time
  const slope = (i: number): number => (time(nominal, i * 1.002) - time(nominal, i * 0.998)) / (0.004 * i)
  const atTop = near.high >= shortest(nominal) * (1 - 1e-9)
  const [low0, high0, lowSlope, highSlope] =
    near.high > 0 ? [time(nominal, near.low), time(nominal, near.high), slope(near.low), atTop ? 0 : slope(near.high)] : [0, 0, 0, 0]
  return x => {
    if (near.high <= 0) return near
    const more = x.within - nominal.within
    const low = near.low + (more - (time(x, near.low) - low0)) / lowSlope
    const high = atTop ? shortest(x) : near.high + (more - (time(x, near.high) - high0)) / highSlope
    const best = near.best >= shortest(nominal) * (1 - 1e-3) ? (near.best * shortest(x)) / shortest(nominal) : near.best
    return { low, high, best }
  }
}
