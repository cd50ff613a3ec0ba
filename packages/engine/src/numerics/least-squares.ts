/** A fit of n coefficients to m observations. Matrices are n × n, row by row. */
export type LeastSquares = {
  readonly coefficients: Float64Array
  /** Observed minus fitted, unweighted. */
  readonly residuals: Float64Array
  /** Sum of weight × residual². */
  readonly sumOfSquares: number
  /** m − n. */
  readonly degrees: number
  /** Residual standard deviation; undefined when nothing is left over (m = n). */
  readonly deviation: number | undefined
  /** (AᵀWA)⁻¹: the covariance itself when the weights are 1/variance and believed. */
  readonly inverse: Float64Array
  /** Covariance of the coefficients by the scatter of the residuals: deviation² × inverse; undefined when m = n. */
  readonly covariance: Float64Array | undefined
}

/**
 * Coefficients x that make the weighted sum of squares of b − A·x least, by Householder QR; `a` row by row, one row for each observation.
 *
 * Why QR: normal equations lose twice the digits. Undefined when the columns do not fix x (within rounding one is a mix of the others), or
 * observations are fewer than coefficients. A weight of zero leaves its observation out, also of `degrees`.
 * Throws RangeError when `a` has not m × n values, weights have another length than `b`, or one is negative or not finite.
 * Source: Golub and Van Loan, Matrix Computations, 5.2 and 5.3 (from memory).
 */
export function leastSquares(a: ArrayLike<number>, b: ArrayLike<number>, weights?: ArrayLike<number>): LeastSquares | undefined {
  const m = b.length
  const n = a.length / m
  if (!Number.isInteger(n) || n < 1)
    throw new RangeError(`leastSquares: a must have a whole number of columns for ${m} rows, found ${a.length} values`)
  if (weights && weights.length !== m)
    throw new RangeError(`leastSquares: weights must be as many as observations (${m}), found ${weights.length}`)
  const q = Float64Array.from(a)
  const rest = Float64Array.from(b)
  let counted = 0
  for (let i = 0; i < m; i++) {
    const weight = weights ? weights[i]! : 1
    if (!(weight >= 0 && weight < Infinity))
      throw new RangeError(`leastSquares: weights[${i}] must be zero or more and finite, found ${weight}`)
    if (weight > 0) counted++
    if (weight === 1) continue
    const factor = Math.sqrt(weight)
    for (let j = 0; j < n; j++) q[i * n + j]! *= factor
    rest[i]! *= factor
  }
  if (counted < n) return undefined
  const lengths = unitColumns(q, m, n)
  const r = lengths && triangle(q, rest, m, n)
  if (!r) return undefined
  const unscaled = substitute(r, rest, n)
  const coefficients = unscaled.map((v, j) => v / lengths[j]!)
  const residuals = new Float64Array(m)
  for (let i = 0; i < m; i++) {
    let fitted = 0
    for (let j = 0; j < n; j++) fitted += a[i * n + j]! * coefficients[j]!
    residuals[i] = b[i]! - fitted
  }
  let sumOfSquares = 0
  for (let i = 0; i < m; i++) sumOfSquares += (weights ? weights[i]! : 1) * residuals[i]! ** 2
  const degrees = counted - n
  const inverse = inverseOfSquare(r, n, lengths)
  const variance = degrees > 0 ? sumOfSquares / degrees : undefined
  return {
    coefficients,
    residuals,
    sumOfSquares,
    degrees,
    deviation: variance === undefined ? undefined : Math.sqrt(variance),
    inverse,
    covariance: variance === undefined ? undefined : inverse.map(v => v * variance),
  }
}

/** Scales columns to length one, so that the test for a vanishing pivot does not depend on units; undefined when one is empty. */
function unitColumns(q: Float64Array, m: number, n: number): Float64Array | undefined {
  const lengths = new Float64Array(n)
  for (let j = 0; j < n; j++) {
    let largest = 0
    for (let i = 0; i < m; i++) largest = Math.max(largest, Math.abs(q[i * n + j]!))
    if (!(largest > 0 && largest < Infinity)) return undefined
    let sum = 0
    for (let i = 0; i < m; i++) sum += (q[i * n + j]! / largest) ** 2
    const length = largest * Math.sqrt(sum)
    lengths[j] = length
    for (let i = 0; i < m; i++) q[i * n + j]! /= length
  }
  return lengths
}

/** Reflects column after column onto its axis, the right side along with them; gives R (n × n), undefined when a diagonal vanishes. */
function triangle(q: Float64Array, right: Float64Array, m: number, n: number): Float64Array | undefined {
  const r = new Float64Array(n * n)
  for (let c = 0; c < n; c++) {
    let sum = 0
    for (let i = c; i < m; i++) sum += q[i * n + c]! ** 2
    const length = Math.sqrt(sum)
    if (!(length > m * Number.EPSILON)) return undefined
    const head = q[c * n + c]!
    const diagonal = head > 0 ? -length : length
    // v = column − diagonal·e, kept in the column; vᵀv = 2·length·(length + |head|).
    q[c * n + c] = head - diagonal
    const half = length * (length + Math.abs(head))
    for (let j = c + 1; j < n; j++) {
      let dot = 0
      for (let i = c; i < m; i++) dot += q[i * n + c]! * q[i * n + j]!
      for (let i = c; i < m; i++) q[i * n + j]! -= (dot / half) * q[i * n + c]!
    }
    let dot = 0
    for (let i = c; i < m; i++) dot += q[i * n + c]! * right[i]!
    for (let i = c; i < m; i++) right[i]! -= (dot / half) * q[i * n + c]!
    r[c * n + c] = diagonal
    for (let i = 0; i < c; i++) r[i * n + c] = q[i * n + c]!
  }
  return r
}

function substitute(r: Float64Array, right: Float64Array, n: number): Float64Array {
  const x = new Float64Array(n)
  for (let i = n - 1; i >= 0; i--) {
    let sum = right[i]!
    for (let j = i + 1; j < n; j++) sum -= r[i * n + j]! * x[j]!
    x[i] = sum / r[i * n + i]!
  }
  return x
}

/** (RᵀR)⁻¹ = R⁻¹R⁻ᵀ, with the scaling of the columns taken back. */
function inverseOfSquare(r: Float64Array, n: number, lengths: Float64Array): Float64Array {
  const columns = Array.from({ length: n }, (_, c) =>
    substitute(
      r,
      Float64Array.from({ length: n }, (_, i) => (i === c ? 1 : 0)),
      n,
    ),
  )
  const inverse = new Float64Array(n * n)
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      let sum = 0
      for (const column of columns) sum += column[i]! * column[j]!
      inverse[i * n + j] = sum / (lengths[i]! * lengths[j]!)
    }
  }
  return inverse
}
