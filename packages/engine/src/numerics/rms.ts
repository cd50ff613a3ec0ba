/**
 * Root mean square over time of values that each hold from their time to the next; the last value holds for no time.
 *
 * Undefined when no time passes. Throws RangeError when lengths differ or times fall back.
 */
export function rms(times: ArrayLike<number>, values: ArrayLike<number>): number | undefined {
  const n = times.length
  const sums = squaresUpTo('rms', times, values)
  const span = n > 0 ? times[n - 1]! - times[0]! : 0
  return span > 0 ? Math.sqrt(sums[n - 1]! / span) : undefined
}

/**
 * Highest root mean square over any stretch of the given length: the 10 s current of a trip, say. Values hold as for `rms`.
 *
 * Why held: a trace made in steps is constant within each, and a short peak then counts in full. Under that reading the answer is exact for
 * windows starting anywhere, for the mean over a sliding window is highest where one of its ends meets a sample. Takes time in proportion to
 * the samples. Undefined when the trace is shorter than the window.
 * Throws RangeError when lengths differ, times fall back, or the window is not above zero.
 */
export function highestRms(times: ArrayLike<number>, values: ArrayLike<number>, window: number): number | undefined {
  if (!(window > 0)) throw new RangeError(`highestRms: window must be above zero, found ${window}`)
  const n = times.length
  const sums = squaresUpTo('highestRms', times, values)
  if (n < 2 || times[n - 1]! - times[0]! < window) return undefined
  const sumAt = (t: number, i: number): number => sums[i]! + values[i]! ** 2 * (t - times[i]!)
  let highest = 0
  // Windows that start at a sample; `j` is the sample their end lies behind.
  for (let i = 0, j = 0; i < n && times[i]! + window <= times[n - 1]!; i++) {
    const end = times[i]! + window
    while (j + 1 < n - 1 && times[j + 1]! <= end) j++
    highest = Math.max(highest, sumAt(end, j) - sums[i]!)
  }
  // Windows that end at a sample.
  for (let i = n - 1, j = n - 2; i >= 0 && times[i]! - window >= times[0]!; i--) {
    const start = times[i]! - window
    while (j > 0 && times[j]! > start) j--
    highest = Math.max(highest, sums[i]! - sumAt(start, j))
  }
  return Math.sqrt(highest / window)
}

/** Integral of the squared value up to each sample. */
function squaresUpTo(name: string, times: ArrayLike<number>, values: ArrayLike<number>): Float64Array {
  const n = times.length
  if (values.length !== n) throw new RangeError(`${name}: times and values must have the same length, found ${n} and ${values.length}`)
  const sums = new Float64Array(n)
  for (let i = 1; i < n; i++) {
    const step = times[i]! - times[i - 1]!
    if (!(step >= 0)) throw new RangeError(`${name}: times must not fall back, found ${times[i]} after ${times[i - 1]}`)
    sums[i] = sums[i - 1]! + values[i - 1]! ** 2 * step
  }
  return sums
}
