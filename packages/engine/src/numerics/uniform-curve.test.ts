import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { at, curve } from './curve.ts'
import { uniform, uniformAt } from './uniform-curve.ts'

const points = fc.array(fc.integer({ min: -100, max: 100 }), { minLength: 2, maxLength: 20 })

describe('a curve at equal steps', () => {
  test('is the same curve where every point lies on a step', () => {
    fc.assert(
      fc.property(points, fc.integer({ min: 1, max: 5 }), fc.double({ min: -50, max: 150, noNaN: true }), (y, finer, x) => {
        const c = curve(
          y.map((_, i) => 3 * i - 7),
          y,
        )
        expect(uniformAt(uniform(c, (y.length - 1) * finer + 1), x)).toBeCloseTo(at(c, x), 9)
      }),
    )
  })

  test('cuts a corner by a quarter of the step times the change of slope at most', () => {
    const tent = curve([0, 0.35, 1], [0, 0.35, -0.3])
    for (const n of [4, 11, 40]) {
      const u = uniform(tent, n)
      const worst = Math.max(...Array.from({ length: 2001 }, (_, i) => Math.abs(uniformAt(u, i / 2000) - at(tent, i / 2000))))
      expect(worst).toBeLessThanOrEqual(((1 / (n - 1)) * 2) / 4 + 1e-12)
      expect(worst).toBeGreaterThan(0)
    }
  })

  test('holds its ends and knows no value at NaN', () => {
    const u = uniform(curve([1, 2], [5, 9]), 3)
    expect([-Infinity, 0, 1, 1.5, 2, 3, Infinity].map(x => uniformAt(u, x))).toEqual([5, 5, 5, 7, 9, 9, 9])
    expect(uniformAt(u, Number.NaN)).toBeNaN()
  })

  test('wants two steps or more', () => {
    expect(() => uniform(curve([1, 2], [5, 9]), 1)).toThrow(RangeError('n must be a whole number of at least 2, found 1'))
  })
})
