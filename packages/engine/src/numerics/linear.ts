/**
 * Solves n equations a·x = b by LU decomposition with partial pivoting; `a` row by row. Undefined when they do not fix x (singular).
 *
 * Rows and columns are scaled first, so unknowns of very different size (volts beside farads) neither spoil the choice of pivots nor look singular.
 * Inputs are left as they are. Throws RangeError when `a` has not n × n values.
 * Source: Golub and Van Loan, Matrix Computations, 3.4 (partial pivoting) and 3.5.2 (scaling) (from memory).
 */
export function solveLinear(a: ArrayLike<number>, b: ArrayLike<number>): Float64Array | undefined {
  const n = b.length
  if (a.length !== n * n) throw new RangeError(`solveLinear: a must have ${n} × ${n} = ${n * n} values, found ${a.length}`)
  const lu = Float64Array.from(a)
  const x = Float64Array.from(b)
  for (let i = 0; i < n; i++) {
    const largest = largestOf(lu, i * n, 1, n)
    if (!(largest > 0 && largest < Infinity)) return undefined
    for (let j = 0; j < n; j++) lu[i * n + j]! /= largest
    x[i]! /= largest
  }
  const scales = new Float64Array(n)
  for (let j = 0; j < n; j++) {
    const largest = largestOf(lu, j, n, n)
    if (!(largest > 0)) return undefined
    scales[j] = largest
    for (let i = 0; i < n; i++) lu[i * n + j]! /= largest
  }
  return eliminate(lu, x, n) ? x.map((v, j) => v / scales[j]!) : undefined
}

function largestOf(a: Float64Array, start: number, stride: number, n: number): number {
  let largest = 0
  for (let i = 0; i < n; i++) largest = Math.max(largest, Math.abs(a[start + i * stride]!))
  return largest
}

/** Eliminates and substitutes back in place; false when a pivot vanishes within rounding. */
function eliminate(a: Float64Array, x: Float64Array, n: number): boolean {
  for (let c = 0; c < n; c++) {
    let pivot = c
    for (let i = c + 1; i < n; i++) if (Math.abs(a[i * n + c]!) > Math.abs(a[pivot * n + c]!)) pivot = i
    const value = a[pivot * n + c]!
    if (!(Math.abs(value) > n * Number.EPSILON)) return false
    if (pivot !== c) {
      for (let j = c; j < n; j++) [a[c * n + j], a[pivot * n + j]] = [a[pivot * n + j]!, a[c * n + j]!]
      ;[x[c], x[pivot]] = [x[pivot]!, x[c]!]
    }
    for (let i = c + 1; i < n; i++) {
      const factor = a[i * n + c]! / value
      if (factor === 0) continue
      for (let j = c + 1; j < n; j++) a[i * n + j]! -= factor * a[c * n + j]!
      x[i]! -= factor * x[c]!
    }
  }
  for (let i = n - 1; i >= 0; i--) {
    for (let j = i + 1; j < n; j++) x[i]! -= a[i * n + j]! * x[j]!
    x[i]! /= a[i * n + i]!
  }
  return true
}
