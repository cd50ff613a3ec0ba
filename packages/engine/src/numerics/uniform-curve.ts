import { along, type Curve, segmentFrom } from './curve.ts'

/** A curve at equal steps: found without a search. `perStep` is 1 over the step. */
export type UniformCurve = { readonly first: number; readonly perStep: number; readonly y: Float64Array }

/**
 * A curve taken again at `n` equal steps between its ends.
 *
 * Why: in loops that jump about, a look-up without a search is quicker. Between two steps that enclose a bend the result cuts the corner, by at
 * most a quarter of a step times the change of slope; where every point of the curve lies on a step it is the same curve.
 * Throws RangeError when `n` is not a whole number of at least 2.
 */
export function uniform(curve: Curve, n: number): UniformCurve {
  if (!Number.isInteger(n) || n < 2) throw new RangeError(`n must be a whole number of at least 2, found ${n}`)
  const { x } = curve
  const first = x[0]!
  const span = x[x.length - 1]! - first
  const y = new Float64Array(n)
  let i = 0
  for (let k = 0; k < n; k++) {
    const value = first + (span * k) / (n - 1)
    i = segmentFrom(x, value, i)
    y[k] = along(curve, i, value)
  }
  return { first, perStep: (n - 1) / span, y }
}

/** Value of an equally stepped curve, ends held, without a search. NaN at NaN. */
export function uniformAt(curve: UniformCurve, x: number): number {
  const { y } = curve
  const place = (x - curve.first) * curve.perStep
  const last = y.length - 1
  if (place <= 0) return y[0]!
  if (place >= last) return y[last]!
  const i = Math.floor(place)
  if (i !== i) return Number.NaN
  const y0 = y[i]!
  return y0 + (y[i + 1]! - y0) * (place - i)
}
