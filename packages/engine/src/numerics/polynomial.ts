import { type LeastSquares, leastSquares } from './least-squares.ts'

/** Value of c₀ + c₁x + c₂x² + … (Horner's scheme). No coefficient, no value: 0. */
export function polynomial(coefficients: ArrayLike<number>, x: number): number {
  let value = 0
  for (let i = coefficients.length - 1; i >= 0; i--) value = value * x + coefficients[i]!
  return value
}

/**
 * Polynomial through points by least squares, constant term first; undefined when the points do not fix it (too few different x).
 *
 * Throws RangeError when lengths differ or `degree` is not a whole number of at least 0.
 */
export function polynomialFit(
  x: ArrayLike<number>,
  y: ArrayLike<number>,
  degree: number,
  weights?: ArrayLike<number>,
): LeastSquares | undefined {
  if (!Number.isInteger(degree) || degree < 0)
    throw new RangeError(`polynomialFit: degree must be a whole number of at least 0, found ${degree}`)
  if (x.length !== y.length) throw new RangeError(`polynomialFit: x and y must have the same length, found ${x.length} and ${y.length}`)
  if (y.length === 0) return undefined
  const columns = degree + 1
  const a = new Float64Array(x.length * columns)
  for (let i = 0; i < x.length; i++) {
    let power = 1
    for (let j = 0; j < columns; j++) {
      a[i * columns + j] = power
      power *= x[i]!
    }
  }
  return leastSquares(a, y, weights)
}
