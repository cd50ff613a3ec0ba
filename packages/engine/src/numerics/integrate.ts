/** Area under samples joined by straight lines (trapezoid rule). Throws RangeError when the lengths differ. No sample, no area: 0. */
export function trapezoid(x: ArrayLike<number>, y: ArrayLike<number>): number {
  checkLengths('trapezoid', x, y)
  let sum = 0
  for (let i = 1; i < x.length; i++) sum += ((x[i]! - x[i - 1]!) * (y[i]! + y[i - 1]!)) / 2
  return sum
}

/** Area from the first sample up to each: same length as the samples, first 0. Throws RangeError when the lengths differ. */
export function cumulativeTrapezoid(x: ArrayLike<number>, y: ArrayLike<number>): Float64Array {
  checkLengths('cumulativeTrapezoid', x, y)
  const sums = new Float64Array(x.length)
  for (let i = 1; i < x.length; i++) sums[i] = sums[i - 1]! + ((x[i]! - x[i - 1]!) * (y[i]! + y[i - 1]!)) / 2
  return sums
}

function checkLengths(name: string, x: ArrayLike<number>, y: ArrayLike<number>): void {
  if (x.length !== y.length) throw new RangeError(`${name}: x and y must have the same length, found ${x.length} and ${y.length}`)
}

const DEEPEST = 48
const MOST_CALLS = 1_000_000

/**
 * Area under a function between two places by Simpson's rule, halving where the estimated error is too large.
 *
 * `tolerance` is the absolute error aimed at for the whole. Undefined when it is not reached within a million calls. It sees only where it
 * looks: a spike narrower than an eighth of the span can be missed. Throws RangeError when an end is not finite, the tolerance not above
 * zero, or the function NaN.
 * Source: Lyness, Notes on the adaptive Simpson quadrature routine, J. ACM 16 (1969) 483–495 (from memory).
 */
export function simpson(f: (x: number) => number, from: number, to: number, tolerance: number): number | undefined {
  checkEnds('simpson', from, to)
  if (!(tolerance > 0)) throw new RangeError(`simpson: tolerance must be above zero, found ${tolerance}`)
  let calls = 0
  let unsettled = 0
  const at = (x: number): number => {
    calls++
    const y = f(x)
    if (Number.isNaN(y)) throw new RangeError(`simpson: the function is not a number at ${x}`)
    return y
  }
  const piece = (a: number, b: number, fa: number, fm: number, fb: number, whole: number, allowed: number, depth: number): number => {
    const m = a + (b - a) / 2
    const fl = at(a + (m - a) / 2)
    const fr = at(m + (b - m) / 2)
    const left = ((m - a) / 6) * (fa + 4 * fl + fm)
    const right = ((b - m) / 6) * (fm + 4 * fr + fb)
    const difference = left + right - whole
    if (depth > 1 && Math.abs(difference) <= 15 * allowed) return left + right + difference / 15
    if (depth >= DEEPEST || calls >= MOST_CALLS) {
      // A jump never settles, but its share shrinks with every halving: count it, and judge the sum.
      unsettled += Math.abs(difference)
      return left + right
    }
    return piece(a, m, fa, fl, fm, left, allowed / 2, depth + 1) + piece(m, b, fm, fr, fb, right, allowed / 2, depth + 1)
  }
  if (from === to) return 0
  const [fa, fm, fb] = [at(from), at(from + (to - from) / 2), at(to)]
  const sum = piece(from, to, fa, fm, fb, ((to - from) / 6) * (fa + 4 * fm + fb), tolerance, 0)
  return unsettled <= tolerance ? sum : undefined
}

const ROOT = Math.sqrt(10 / 7)
const NODES = [0, Math.sqrt(5 - 2 * ROOT) / 3, Math.sqrt(5 + 2 * ROOT) / 3] as const
const WEIGHTS = [128 / 225, (322 + 13 * Math.sqrt(70)) / 900, (322 - 13 * Math.sqrt(70)) / 900] as const

/**
 * Area under a smooth function between two places by the five-point Gauss–Legendre rule on equal pieces; exact for polynomials up to degree 9.
 *
 * Why beside `simpson`: five calls a piece, known in advance, for loops. It knows no error. Throws RangeError when an end is not finite or
 * `pieces` not a whole number of at least 1.
 * Source: Abramowitz and Stegun, Handbook of Mathematical Functions, 25.4.29 and table 25.4, nodes in closed form (from memory).
 */
export function gaussLegendre(f: (x: number) => number, from: number, to: number, pieces = 1): number {
  checkEnds('gaussLegendre', from, to)
  if (!Number.isInteger(pieces) || pieces < 1)
    throw new RangeError(`gaussLegendre: pieces must be a whole number of at least 1, found ${pieces}`)
  const half = (to - from) / pieces / 2
  let sum = 0
  for (let k = 0; k < pieces; k++) {
    const middle = from + half * (2 * k + 1)
    sum += WEIGHTS[0] * f(middle)
    for (const n of [1, 2] as const) sum += WEIGHTS[n] * (f(middle - half * NODES[n]) + f(middle + half * NODES[n]))
  }
  return sum * half
}

function checkEnds(name: string, from: number, to: number): void {
  if (!Number.isFinite(from) || !Number.isFinite(to)) throw new RangeError(`${name}: ends must be finite, found ${from} and ${to}`)
}
