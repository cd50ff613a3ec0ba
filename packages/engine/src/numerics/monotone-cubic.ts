import { type Curve, segment } from './curve.ts'

/** A curve with a slope at each point: cubic pieces that join without a bend. */
export type SmoothCurve = Curve & { readonly slopes: Float64Array }

/**
 * Smooth curve through the points of a curve that never overshoots them: rising data give a rising curve, level data a level one.
 *
 * Why: measured tables (open-circuit voltage, efficiency) want a steady slope, but an ordinary spline swings between unequal points.
 * Slopes start as three-point differences and are shortened into the circle of radius 3 in the plane of slope over secant.
 * Source: Fritsch and Carlson, Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17 (1980) 238–246 (from memory).
 */
export function smooth({ x, y }: Curve): SmoothCurve {
  const last = x.length - 1
  const widths = Float64Array.from({ length: last }, (_, i) => x[i + 1]! - x[i]!)
  const secants = Float64Array.from({ length: last }, (_, i) => (y[i + 1]! - y[i]!) / widths[i]!)
  const slopes = new Float64Array(last + 1)
  slopes[0] = endSlope(secants[0]!, secants[1], widths[0]!, widths[1])
  slopes[last] = endSlope(secants[last - 1]!, secants[last - 2], widths[last - 1]!, widths[last - 2])
  for (let i = 1; i < last; i++) {
    const before = secants[i - 1]!
    const after = secants[i]!
    if (before * after > 0) slopes[i] = (widths[i]! * before + widths[i - 1]! * after) / (widths[i]! + widths[i - 1]!)
  }
  for (let i = 0; i < last; i++) {
    const secant = secants[i]!
    if (secant === 0) {
      slopes[i] = 0
      slopes[i + 1] = 0
      continue
    }
    const radius = Math.hypot(slopes[i]! / secant, slopes[i + 1]! / secant)
    if (radius > 3) {
      slopes[i]! *= 3 / radius
      slopes[i + 1]! *= 3 / radius
    }
  }
  return { x, y, slopes }
}

/** One-sided three-point slope at an end; zero where it would point against the first secant, the secant itself when there is only one. */
function endSlope(near: number, next: number | undefined, width: number, nextWidth: number | undefined): number {
  if (next === undefined || nextWidth === undefined) return near
  const slope = ((2 * width + nextWidth) * near - width * next) / (width + nextWidth)
  return slope * near > 0 ? slope : 0
}

/** Value of a smooth curve, ends held. NaN at NaN. */
export function smoothAt({ x, y, slopes }: SmoothCurve, value: number): number {
  const i = segment(x, value)
  const x0 = x[i]!
  const width = x[i + 1]! - x0
  if (value <= x0) return y[i]!
  if (value >= x0 + width) return y[i + 1]!
  const s = (value - x0) / width
  const secant = y[i + 1]! - y[i]!
  const a = slopes[i]! * width
  const b = slopes[i + 1]! * width
  return y[i]! + s * (a + s * (3 * secant - 2 * a - b + s * (a + b - 2 * secant)))
}
