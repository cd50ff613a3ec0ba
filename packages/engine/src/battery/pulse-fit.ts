import { leastSquares } from '../numerics/least-squares.ts'
import { minimum } from '../numerics/minimum.ts'

/** One pulse with the rest after it: the first sample is the last one at rest before the pulse. Discharge positive. */
export type Pulse = { readonly times: ArrayLike<number>; readonly currents: ArrayLike<number>; readonly voltages: ArrayLike<number> }
export type PulseFit = {
  readonly ohmic: number
  readonly branches: readonly { readonly resistance: number; readonly time: number }[]
  /** Root mean square of measured less fitted voltage [V], over time: what to judge a fit by, for the coefficients of a short pulse are not unique. */
  readonly residual: number
  readonly samples: number
}

/** A sample counts as the time it stands for [s], but no more than this: the long tail of the rest must not decide alone. */
const LONGEST_SHARE = 5
const SHORTEST = 1,
  LONGEST = 1000

/**
 * Resistance and RC branches of a cell from one pulse and the rest after it, by least squares.
 *
 * The open-circuit voltage falls with the charge taken, from the first to the last sample. Time constants are searched between 1 and 1000 s on a
 * logarithmic scale, resistances follow linearly; a branch that would come out negative is left out. Samples within `settling` [s] of a step of the
 * current do not count: testers smear the step (0.35 s in the data this was tried on). Undefined when there are too few samples or no
 * current. Throws RangeError when the series differ in length.
 * Source: Plett, Battery Management Systems, vol. I (2015), ch. 2 (from memory).
 */
export function pulseFit(pulse: Pulse, branches: 1 | 2, settling: number): PulseFit | undefined {
  const { times, currents, voltages } = pulse,
    n = times.length
  if (currents.length !== n || voltages.length !== n)
    throw new RangeError(`pulseFit: ${n} times need as many currents and voltages, found ${currents.length} and ${voltages.length}`)
  if (n < 4 + 2 * branches) return undefined
  const taken = new Float64Array(n)
  for (let k = 1; k < n; k++) taken[k] = taken[k - 1]! + currents[k]! * (times[k]! - times[k - 1]!)
  const whole = taken[n - 1]!
  if (whole === 0) return undefined
  const first = voltages[0]!,
    fall = first - voltages[n - 1]!
  const counted = settled(times, currents, settling)
  if (counted.length < 3 + 2 * branches) return undefined
  const target = Float64Array.from(counted, k => first - (fall * taken[k]!) / whole - voltages[k]!)

  const weights = Float64Array.from(counted, k => Math.min(LONGEST_SHARE, (times[Math.min(n - 1, k + 1)]! - times[k - 1]!) / 2))
  const counts = weights.reduce((sum, w) => sum + w, 0)
  const solved = (taus: readonly number[]): PulseFit | undefined => {
    const columns = 1 + taus.length,
      a = new Float64Array(counted.length * columns)
    for (const [row, k] of counted.entries()) a[row * columns] = currents[k]!
    for (const [j, tau] of taus.entries()) {
      let u = 0,
        row = 0
      for (let k = 1; k < n; k++) {
        const e = Math.exp(-(times[k]! - times[k - 1]!) / tau)
        u = e * u + (1 - e) * currents[k]!
        if (counted[row] === k) a[row++ * columns + 1 + j] = u
      }
    }
    const fit = leastSquares(a, target, weights)
    if (!fit) return undefined
    const [ohmic, ...rest] = fit.coefficients as unknown as Iterable<number> as number[]
    const negative = rest.findIndex(r => r < 0)
    if (negative >= 0) return solved(taus.filter((_, j) => j !== negative))
    return {
      ohmic: ohmic as number,
      branches: rest.map((resistance, j) => ({ resistance, time: taus[j]! })),
      residual: Math.sqrt(fit.sumOfSquares / counts),
      samples: counted.length,
    }
  }
  const left = (taus: readonly number[]): number => solved(taus)?.residual ?? Infinity
  const best = (f: (log: number) => number, low: number, high: number): number => bestOf(f, Math.log(low), Math.log(high))
  if (branches === 1) return solved([Math.exp(best(l => left([Math.exp(l)]), SHORTEST, LONGEST))])
  const slowFor = (quick: number): number => Math.exp(best(l => left([quick, Math.exp(l)]), quick * 1.5, LONGEST * 1.5))
  const quick = Math.exp(best(l => left([Math.exp(l), slowFor(Math.exp(l))]), SHORTEST, LONGEST / 10))
  return solved([quick, slowFor(quick)])
}

/** Samples far enough behind the last step of the current. */
function settled(times: ArrayLike<number>, currents: ArrayLike<number>, settling: number): readonly number[] {
  let most = 0
  for (let k = 0; k < times.length; k++) most = Math.max(most, Math.abs(currents[k]!))
  const out: number[] = []
  let since = -Infinity
  for (let k = 1; k < times.length; k++) {
    if (Math.abs(currents[k]! - currents[k - 1]!) > 0.02 * most) since = times[k]!
    if (times[k]! - since >= settling) out.push(k)
  }
  return out
}

/** The lowest place by a coarse walk, then closer in: the curve may have more than one dip. */
function bestOf(f: (x: number) => number, low: number, high: number): number {
  const steps = 12,
    width = (high - low) / steps
  let at = low,
    least = Infinity
  for (let i = 0; i <= steps; i++) {
    const y = f(low + i * width)
    if (y < least) {
      least = y
      at = low + i * width
    }
  }
  return minimum(f, Math.max(low, at - width), Math.min(high, at + width), 1e-3).x
}
