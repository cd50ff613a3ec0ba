/**
 * Where a function crosses zero between two places where it has different signs; undefined when the signs are the same.
 *
 * The answer lies within `tolerance` (plus a few roundings) of a change of sign. Bisection kept as a safeguard under inverse quadratic
 * interpolation and secant, so it always ends. Throws RangeError when an end is not finite, the tolerance negative, or the function NaN.
 * Source: Brent, Algorithms for Minimization without Derivatives (1973), chapter 4, procedure zero (from memory).
 */
export function root(f: (x: number) => number, low: number, high: number, tolerance: number): number | undefined {
  if (!Number.isFinite(low) || !Number.isFinite(high)) throw new RangeError(`root: ends must be finite, found ${low} and ${high}`)
  if (!(tolerance >= 0)) throw new RangeError(`root: tolerance must be zero or more, found ${tolerance}`)
  const at = (x: number): number => {
    const y = f(x)
    if (Number.isNaN(y)) throw new RangeError(`root: the function is not a number at ${x}`)
    return y
  }
  let a = low
  let b = high
  let fa = at(a)
  let fb = at(b)
  if (fa === 0) return a
  if (fb === 0) return b
  if (fa > 0 === fb > 0) return undefined
  // b is the best estimate, c the other end of the bracket, a the estimate before b.
  let c = a
  let fc = fa
  let step = b - a
  let before = step
  for (;;) {
    if (Math.abs(fc) < Math.abs(fb)) {
      a = b
      b = c
      c = a
      fa = fb
      fb = fc
      fc = fa
    }
    const enough = 2 * Number.EPSILON * Math.abs(b) + tolerance / 2
    const middle = (c - b) / 2
    if (Math.abs(middle) <= enough || fb === 0) return b
    if (Math.abs(before) < enough || Math.abs(fa) <= Math.abs(fb)) {
      step = middle
      before = middle
    } else {
      const [p, q] = fraction(a, b, c, fa, fb, fc)
      if (2 * p < 3 * middle * q - Math.abs(enough * q) && p < Math.abs((before * q) / 2)) {
        before = step
        step = p / q
      } else {
        step = middle
        before = middle
      }
    }
    a = b
    fa = fb
    b += Math.abs(step) > enough ? step : middle > 0 ? enough : -enough
    fb = at(b)
    if (fb > 0 === fc > 0) {
      c = a
      fc = fa
      step = b - a
      before = step
    }
  }
}

/** The interpolated step p/q with p ≥ 0: secant through two points, inverse parabola through three. */
function fraction(a: number, b: number, c: number, fa: number, fb: number, fc: number): [p: number, q: number] {
  const s = fb / fa
  let p: number
  let q: number
  if (a === c) {
    p = (c - b) * s
    q = 1 - s
  } else {
    const u = fa / fc
    const v = fb / fc
    p = s * ((c - b) * u * (u - v) - (b - a) * (v - 1))
    q = (u - 1) * (v - 1) * (s - 1)
  }
  return p > 0 ? [p, -q] : [-p, q]
}
