const GOLDEN = (Math.sqrt(5) - 1) / 2

/** A lowest point: where, and how low. */
export type Minimum = { readonly x: number; readonly value: number }

/**
 * Lowest point of a function with a single dip between two places, by golden section.
 *
 * `x` is right to about `tolerance`, but hardly better than 1e-8 of its size: near the bottom the function changes with the square of the
 * distance. Of several dips it finds one. A function that only rises or falls gives the end it falls to, to within the tolerance.
 * Throws RangeError when `low` is not below `high`, the tolerance not above zero, or the function NaN.
 * Source: Kiefer, Sequential minimax search for a maximum, Proc. Amer. Math. Soc. 4 (1953) 502–506 (from memory).
 */
export function minimum(f: (x: number) => number, low: number, high: number, tolerance: number): Minimum {
  if (!(Number.isFinite(low) && Number.isFinite(high) && low < high))
    throw new RangeError(`minimum: low must lie below high, found ${low} and ${high}`)
  if (!(tolerance > 0)) throw new RangeError(`minimum: tolerance must be above zero, found ${tolerance}`)
  const at = (x: number): Minimum => {
    const value = f(x)
    if (Number.isNaN(value)) throw new RangeError(`minimum: the function is not a number at ${x}`)
    return { x, value }
  }
  let a = low
  let b = high
  let left = at(b - GOLDEN * (b - a))
  let right = at(a + GOLDEN * (b - a))
  while (b - a > tolerance && left.x < right.x && a < left.x && right.x < b) {
    if (left.value <= right.value) {
      b = right.x
      right = left
      left = at(b - GOLDEN * (b - a))
    } else {
      a = left.x
      left = right
      right = at(a + GOLDEN * (b - a))
    }
  }
  return left.value <= right.value ? left : right
}
