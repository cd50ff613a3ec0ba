import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { solveLinear } from './linear.ts'

describe('linear equations', () => {
  test('come out where the answer is known', () => {
    expect([...solveLinear([2, 1, 1, 3], [5, 10])!]).toEqual([1, 3])
    // Zero on the diagonal: the rows must be swapped.
    expect([...solveLinear([0, 1, 1, 0], [3, 4])!]).toEqual([4, 3])
    expect([...solveLinear([], [])!]).toEqual([])
  })

  test('give back what was put in', () => {
    const size = fc.integer({ min: 1, max: 8 })
    const number = fc.double({ min: -10, max: 10, noNaN: true })
    fc.assert(
      fc.property(size, fc.infiniteStream(number), (n, stream) => {
        const a = [...stream.take(n * n)]
        for (let i = 0; i < n; i++) a[i * n + i]! += 100
        const x = [...stream.take(n)]
        const b = Array.from({ length: n }, (_, i) => x.reduce((sum, v, j) => sum + a[i * n + j]! * v, 0))
        const found = solveLinear(a, b)!
        for (let i = 0; i < n; i++) expect(found[i]).toBeCloseTo(x[i]!, 10)
      }),
    )
  })

  test('invert the Hilbert matrix, whose inverse has whole numbers', () => {
    // First column of the inverse for n = 5: 25, −300, 1050, −1400, 630.
    const n = 5
    const hilbert = Array.from({ length: n * n }, (_, k) => 1 / (Math.floor(k / n) + (k % n) + 1))
    const column = solveLinear(hilbert, [1, 0, 0, 0, 0])!
    for (const [i, whole] of [25, -300, 1050, -1400, 630].entries()) expect(column[i]! / whole).toBeCloseTo(1, 9)
  })

  test('are no less solvable for unknowns and equations of very different size', () => {
    const x = solveLinear(
      [2e12, 1e-9, 1e12, 3e-9].map((v, i) => (i < 2 ? v * 1e-20 : v * 1e15)),
      [5e-20, 10e15],
    )!
    expect(x[0]! * 1e12).toBeCloseTo(1, 12)
    expect(x[1]! * 1e-9).toBeCloseTo(3, 12)
  })

  test('have no answer when one follows from the others or contradicts them', () => {
    expect(solveLinear([1, 2, 2, 4], [1, 2])).toBeUndefined()
    expect(solveLinear([1, 2, 3, 4, 5, 6, 7, 8, 9], [1, 2, 4])).toBeUndefined()
    expect(solveLinear([0], [1])).toBeUndefined()
    expect(solveLinear([Number.NaN, 1, 1, 1], [1, 1])).toBeUndefined()
  })

  test('want as many coefficients as unknowns squared', () => {
    expect(() => solveLinear([1, 2, 3], [1, 2])).toThrow(RangeError('solveLinear: a must have 2 × 2 = 4 values, found 3'))
  })
})
