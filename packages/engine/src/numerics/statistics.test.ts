import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { mean, quantile, standardDeviation } from './statistics.ts'

describe('mean and standard deviation', () => {
  test('keep their digits on large numbers with small differences: NumAcc1 to NumAcc4', () => {
    // NIST Statistical Reference Datasets, univariate summary statistics; certified values.
    const alternating = (middle: number, low: number, high: number): number[] => [
      middle,
      ...Array.from({ length: 1000 }, (_, i) => (i % 2 === 0 ? low : high)),
    ]
    const sets: readonly [number[], number, number, number][] = [
      [[10000001, 10000003, 10000002], 10000002, 1, 14],
      [alternating(1.2, 1.1, 1.3), 1.2, 0.1, 13],
      [alternating(1000000.2, 1000000.1, 1000000.3), 1000000.2, 0.1, 8],
      [alternating(10000000.2, 10000000.1, 10000000.3), 10000000.2, 0.1, 7],
    ]
    for (const [values, middle, spread, digits] of sets) {
      expect(mean(values)! / middle).toBeCloseTo(1, 14)
      expect(standardDeviation(values)! / spread).toBeCloseTo(1, digits)
    }
  })

  test('are nothing of nothing, and one value has no spread', () => {
    expect(mean([])).toBeUndefined()
    expect(standardDeviation([3])).toBeUndefined()
    expect(standardDeviation([3, 3, 3])).toBe(0)
  })

  test('move and stretch with the values', () => {
    const values = fc.array(fc.double({ min: -1e3, max: 1e3, noNaN: true }), { minLength: 2 })
    fc.assert(
      fc.property(values, fc.double({ min: -9, max: 9, noNaN: true }), fc.double({ min: -1e3, max: 1e3, noNaN: true }), (v, k, c) => {
        const moved = v.map(x => k * x + c)
        expect(mean(moved)).toBeCloseTo(k * mean(v)! + c, 8)
        expect(standardDeviation(moved)).toBeCloseTo(Math.abs(k) * standardDeviation(v)!, 6)
      }),
    )
  })
})

describe('a quantile', () => {
  const values = [3, 20, 7, 8, 15, 8, 10, 13, 6, 16]

  test('lies on the straight line between order statistics (R-7)', () => {
    expect([0, 0.25, 0.5, 0.75, 1].map(p => quantile(values, p))).toEqual([3, 7.25, 9, 14.5, 20])
  })

  test('meets each value of a sorted list at (i − 1)/(n − 1), and rises with p', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: -99, max: 99 }), { minLength: 2, maxLength: 40 }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (v, p, q) => {
          const sorted = [...v].sort((a, b) => a - b)
          for (const [i, value] of sorted.entries()) expect(quantile(v, i / (v.length - 1))).toBeCloseTo(value, 9)
          expect(quantile(v, Math.min(p, q))!).toBeLessThanOrEqual(quantile(v, Math.max(p, q))! + 1e-9)
        },
      ),
    )
  })

  test('of nothing is nothing; of one value it is that; beyond 0 … 1 there is none', () => {
    expect(quantile([], 0.5)).toBeUndefined()
    expect(quantile([4], 0.9)).toBe(4)
    expect(() => quantile([1], 1.5)).toThrow(RangeError('quantile: p must be from 0 to 1, found 1.5'))
  })

  test('leaves the list in its order', () => {
    const kept = [...values]
    quantile(values, 0.3)
    expect(values).toEqual(kept)
  })
})
