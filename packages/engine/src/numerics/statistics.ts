/** Arithmetic mean; undefined of nothing. */
export function mean(values: ArrayLike<number>): number | undefined {
  const n = values.length
  if (n === 0) return undefined
  let sum = 0
  for (let i = 0; i < n; i++) sum += values[i]!
  const first = sum / n
  // A second pass over the small differences takes back what the long sum lost.
  let rest = 0
  for (let i = 0; i < n; i++) rest += values[i]! - first
  return Number.isFinite(rest) ? first + rest / n : first
}

/** Standard deviation of a sample, with n − 1; undefined of fewer than two values. */
export function standardDeviation(values: ArrayLike<number>): number | undefined {
  const n = values.length
  const middle = mean(values)
  if (n < 2 || middle === undefined) return undefined
  let squares = 0
  let rest = 0
  for (let i = 0; i < n; i++) {
    const d = values[i]! - middle
    squares += d * d
    rest += d
  }
  return Math.sqrt(Math.max(0, squares - (rest * rest) / n) / (n - 1))
}

/**
 * Value below which a share `p` of the values lies, by linear interpolation between order statistics (method R-7); undefined of nothing.
 *
 * Throws RangeError when `p` is not from 0 to 1.
 * Source: Hyndman and Fan, Sample quantiles in statistical packages, The American Statistician 50 (1996) 361–365, definition 7 (from memory).
 */
export function quantile(values: ArrayLike<number>, p: number): number | undefined {
  if (!(p >= 0 && p <= 1)) throw new RangeError(`quantile: p must be from 0 to 1, found ${p}`)
  const n = values.length
  if (n === 0) return undefined
  const sorted = Float64Array.from(values).sort()
  const place = (n - 1) * p
  const i = Math.floor(place)
  const low = sorted[i]!
  return i + 1 < n ? low + (sorted[i + 1]! - low) * (place - i) : low
}
