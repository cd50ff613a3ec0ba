import { at, type Curve, curve } from '../numerics/index.ts'

/** A point of a time–current curve: a current [A] and the time [s] that goes with it. */
export type Point = readonly [current: number, time: number]
/** A stretch of currents [A]. */
export type Band = { readonly from: number; readonly to: number }

/**
 * A line through points of current [A] and time [s], straight where both are drawn by their logarithms: ln t over ln I.
 *
 * Throws RangeError when a number is not above zero, currents do not rise strictly, or times do not fall strictly.
 */
export function logLine(points: readonly Point[]): Curve {
  for (const [i, [current, time]] of points.entries()) {
    if (!(current > 0 && time > 0))
      throw new RangeError(`point ${i}: current and time must be above zero, found ${current} A and ${time} s`)
    const before = points[i - 1]
    if (before && !(time < before[1]))
      throw new RangeError(`point ${i}: time must fall as the current rises, found ${time} s after ${before[1]} s`)
  }
  return curve(
    points.map(([current]) => Math.log(current)),
    points.map(([, time]) => Math.log(time)),
  )
}
/** Time [s] of such a line at a current [A]; ends held, so ask only within. */
export const timeOnLine = (line: Curve, current: number): number => Math.exp(at(line, Math.log(current)))

/**
 * Where something stays above zero between two currents [A]. Between neighbouring `corners` [A] it must be a straight line over ln I, or infinite
 * all along; then the answer is exact. It is not asked at the corners themselves, so it may jump there.
 *
 * Touching bands come as one. Throws RangeError when `from` is not above zero or lies above `to`.
 */
export function bandsAbove(from: number, to: number, corners: readonly number[], excess: (current: number) => number): readonly Band[] {
  if (!(from > 0 && from <= to)) throw new RangeError(`bandsAbove: from must lie above zero and not above to, found ${from} and ${to}`)
  const cuts = [from, ...corners.filter(c => c > from && c < to).sort((a, b) => a - b), to],
    bands: { from: number; to: number }[] = []
  const add = (a: number, b: number): void => {
    const last = bands.at(-1)
    if (last && last.to === a) last.to = b
    else bands.push({ from: a, to: b })
  }
  for (let i = 0; i + 1 < cuts.length; i++) {
    const [a, b] = [cuts[i] as number, cuts[i + 1] as number]
    if (a === b) continue
    const [low, high] = [Math.log(a), Math.log(b)],
      one = excess(Math.exp((2 * low + high) / 3)),
      two = excess(Math.exp((low + 2 * high) / 3))
    if (!Number.isFinite(one) || !Number.isFinite(two)) {
      if (one > 0) add(a, b)
      continue
    }
    const atLow = 2 * one - two,
      atHigh = 2 * two - one,
      crossing = Math.exp(low + ((high - low) * atLow) / (atLow - atHigh))
    if (atLow > 0 && atHigh > 0) add(a, b)
    else if (atLow > 0) add(a, Math.min(b, crossing))
    else if (atHigh > 0) add(Math.max(a, crossing), b)
  }
  return bands
}
