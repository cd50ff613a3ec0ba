import { along, type Curve, curve, segmentFrom } from '../numerics/index.ts'

/** How far apart heights and speeds of a route are taken [m]. */
export const ROUTE_STEP = 10
/** How many steps to either side the slope is fitted over: 21 heights, 200 m. */
export const SLOPE_REACH = 10
/** What an unhurried driver does [m/s²] (common practice). */
export const SPEEDS_UP = 1
export const SLOWS_DOWN = 1.2
/** Slower than this counts as a stop in a recorded track [m/s]: rolled past at this speed, since a speed over distance cannot say how long it stood. */
export const STANDS = 1

/** Values of a curve at equal steps from its first point, `n` of them. */
function every(c: Curve, step: number, n: number): Float64Array {
  const out = new Float64Array(n)
  for (let k = 0, i = 0; k < n; k++) {
    const x = c.x[0]! + k * step
    i = segmentFrom(c.x, x, i)
    out[k] = along(c, i, x)
  }
  return out
}

/**
 * Slope over distance from measured heights over distance.
 *
 * Heights by satellite wander by metres, and a slope from neighbours would be noise. Heights are taken every 10 m by straight lines, and the slope at
 * each place is that of the parabola fitted by least squares to the 21 heights around it (100 m to either side; fewer near the ends): a
 * Savitzky–Golay filter of the first derivative, Σ i·h / (Δs·Σ i²). Hills shorter than some 200 m are smoothed away.
 * Source: Savitzky and Golay, Analytical Chemistry 36 (1964) 1627 (from memory); window length common practice.
 */
export function routeSlope(heights: Curve): Curve {
  const length = heights.x[heights.x.length - 1]! - heights.x[0]!,
    n = Math.max(2, Math.floor(length / ROUTE_STEP) + 1),
    step = length / (n - 1)
  const h = every(heights, step, n),
    slope = new Float64Array(n)
  for (let k = 0; k < n; k++) {
    const reach = Math.min(SLOPE_REACH, k, n - 1 - k)
    if (reach === 0) {
      const [a, b] = k === 0 ? [0, 1] : [n - 2, n - 1]
      slope[k] = (h[b]! - h[a]!) / step
      continue
    }
    let sum = 0,
      squares = 0
    for (let i = 1; i <= reach; i++) {
      sum += i * (h[k + i]! - h[k - i]!)
      squares += 2 * i * i
    }
    slope[k] = sum / (step * squares)
  }
  return curve(
    Float64Array.from({ length: n }, (_, k) => k * step),
    slope,
  )
}

/**
 * Speed over time on a route, from a speed wanted over distance: from a stand to a stand, speeding up by at most 1 m/s² and slowing down by at most 1.2 m/s².
 *
 * Between places 10 m apart the acceleration is steady. Leaves out: stops on the way (see `STANDS`), bends.
 */
export function routeTrace(wanted: Curve): Curve {
  const length = wanted.x[wanted.x.length - 1]! - wanted.x[0]!,
    n = Math.max(3, Math.floor(length / ROUTE_STEP) + 1),
    step = length / (n - 1)
  const v = every(wanted, step, n).map(x => Math.max(STANDS, x))
  v[0] = v[n - 1] = 0
  for (let k = 1; k < n; k++) v[k] = Math.min(v[k]!, Math.sqrt(v[k - 1]! ** 2 + 2 * SPEEDS_UP * step))
  for (let k = n - 2; k >= 0; k--) v[k] = Math.min(v[k]!, Math.sqrt(v[k + 1]! ** 2 + 2 * SLOWS_DOWN * step))
  const t = new Float64Array(n)
  for (let k = 1; k < n; k++) t[k] = t[k - 1]! + (2 * step) / (v[k - 1]! + v[k]!)
  return curve(t, v)
}
