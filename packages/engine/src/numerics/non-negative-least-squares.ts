import { leastSquares } from './least-squares.ts'

/** A fit of n coefficients, none of them below zero, to m observations. */
export type NonNegativeLeastSquares = {
  readonly coefficients: Float64Array
  /** Observed minus fitted, unweighted. */
  readonly residuals: Float64Array
  /** Sum of weight × residual². */
  readonly sumOfSquares: number
  /** Columns with a coefficient above zero; the others are held at zero. */
  readonly free: readonly number[]
}

/** So many columns make 255 fits. */
const MOST = 8

/**
 * Coefficients x ≥ 0 that make the weighted sum of squares of b − A·x least, by trying every choice of columns held at zero; `a` row by row.
 *
 * Why all of them: with few columns it is quick, ends for certain and needs no tolerance. The least sum is that of an ordinary fit over the columns
 * that are not held, so the best of those fits that stay at or above zero is the answer. Undefined where `leastSquares` over all columns is.
 * Throws RangeError as `leastSquares` does, and when there are more than eight columns.
 * Source: Lawson and Hanson, Solving Least Squares Problems, ch. 23: problem NNLS and its conditions of Kuhn and Tucker (from memory).
 */
export function nonNegativeLeastSquares(
  a: ArrayLike<number>,
  b: ArrayLike<number>,
  weights?: ArrayLike<number>,
): NonNegativeLeastSquares | undefined {
  const m = b.length,
    whole = leastSquares(a, b, weights)
  if (!whole) return undefined
  const n = whole.coefficients.length
  if (n > MOST) throw new RangeError(`nonNegativeLeastSquares: at most ${MOST} columns, found ${n}`)
  let best = held(b, n, weights)
  for (let choice = 1; choice < 2 ** n; choice++) {
    const free = Array.from({ length: n }, (_, j) => j).filter(j => choice & (1 << j))
    const part = Float64Array.from(
      { length: m * free.length },
      (_, k) => a[Math.floor(k / free.length) * n + (free[k % free.length] as number)]!,
    )
    const fit = leastSquares(part, b, weights)
    if (!fit || !(fit.sumOfSquares < best.sumOfSquares) || fit.coefficients.some(x => x < 0)) continue
    const coefficients = new Float64Array(n)
    for (const [k, j] of free.entries()) coefficients[j] = fit.coefficients[k]!
    best = { coefficients, residuals: fit.residuals, sumOfSquares: fit.sumOfSquares, free: free.filter(j => coefficients[j]! > 0) }
  }
  return best
}

/** Every coefficient zero. */
function held(b: ArrayLike<number>, n: number, weights?: ArrayLike<number>): NonNegativeLeastSquares {
  let sumOfSquares = 0
  for (let i = 0; i < b.length; i++) sumOfSquares += (weights ? weights[i]! : 1) * b[i]! ** 2
  return { coefficients: new Float64Array(n), residuals: Float64Array.from(b), sumOfSquares, free: [] }
}
