import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { leastSquares } from './least-squares.ts'
import { nonNegativeLeastSquares } from './non-negative-least-squares.ts'

describe('least squares with nothing below zero', () => {
  const number = fc.double({ min: -5, max: 5, noNaN: true }).map(v => Math.round(v * 1e3) / 1e3)
  const problem = fc
    .record({ columns: fc.integer({ min: 1, max: 4 }), more: fc.integer({ min: 0, max: 5 }) })
    .chain(({ columns: n, more }) =>
      fc.record({
        n: fc.constant(n),
        a: fc.array(number, { minLength: n * (n + more), maxLength: n * (n + more) }),
        b: fc.array(number, { minLength: n + more, maxLength: n + more }),
        weights: fc.array(fc.double({ min: 0.1, max: 3, noNaN: true }), { minLength: n + more, maxLength: n + more }),
      }),
    )

  test('should always meet the conditions of Kuhn and Tucker: no coefficient below zero, no slope that would still help', () => {
    fc.assert(
      fc.property(problem, ({ n, a, b, weights }) => {
        const fit = nonNegativeLeastSquares(a, b, weights)
        fc.pre(fit !== undefined && leastSquares(a, b, weights)!.inverse.every(v => Math.abs(v) < 1e6))
        for (let j = 0; j < n; j++) {
          let slope = 0
          for (let i = 0; i < b.length; i++) slope += weights[i]! * a[i * n + j]! * fit!.residuals[i]!
          expect(fit!.coefficients[j]).toBeGreaterThanOrEqual(0)
          // A free coefficient has no slope left; one held at zero could only get better by going below.
          if (fit!.free.includes(j)) expect(Math.abs(slope)).toBeLessThan(1e-7)
          else expect(slope).toBeLessThan(1e-7)
        }
      }),
      { numRuns: runs(2000) },
    )
  })
  test('is the ordinary fit where that stays above zero', () => {
    const a = [1, 2, 0.5, 0.3, 1, 2, 2, 0.1, 1, 1, 1, 1, 0.5, 3, 0.2],
      b = [3.6, 3.2, 3.1, 3.1, 3.7]
    const plain = leastSquares(a, b)!
    expect(Math.min(...plain.coefficients)).toBeGreaterThan(0)
    expect(nonNegativeLeastSquares(a, b)!.coefficients).toEqual(plain.coefficients)
  })
  test('holds at zero what an independent routine holds there', () => {
    // scipy.optimize.nnls 1.17.1 on the same five rows.
    const fit = nonNegativeLeastSquares([1, 2, 0.5, 0.3, 1, 2, 2, 0.1, 1, 1, 1, 1, 0.5, 3, 0.2], [3, 1, 2, 2, 4])!
    expect(fit.free).toEqual([0, 1])
    expect(fit.coefficients[0]).toBeCloseTo(0.90664078, 8)
    expect(fit.coefficients[1]).toBeCloseTo(1.11037949, 8)
    expect(fit.sumOfSquares).toBeCloseTo(0.21491404350416288, 12)
  })
  test('gives zeros where every column points away', () => {
    expect(nonNegativeLeastSquares([1, 2, 3], [-1, -2, -3])).toMatchObject({ free: [], sumOfSquares: 14 })
  })
  test('has no answer where the columns do not fix one', () => {
    expect(nonNegativeLeastSquares([1, 2, 2, 4, 3, 6], [1, 2, 3])).toBeUndefined()
    expect(nonNegativeLeastSquares([1, 2], [1])).toBeUndefined()
  })
  test('refuses more columns than it would try', () => {
    const a = Float64Array.from({ length: 81 }, (_, k) => (k % 10 === 0 ? 1 : 0))
    expect(() => nonNegativeLeastSquares(a, new Float64Array(9))).toThrow(RangeError('nonNegativeLeastSquares: at most 8 columns, found 9'))
  })
})
