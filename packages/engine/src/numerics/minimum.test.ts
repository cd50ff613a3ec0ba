import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { minimum } from './minimum.ts'

describe('a minimum', () => {
  test('is found where it is known in closed form', () => {
    // x^x is lowest at 1/e; x + 4/x at 2.
    expect(minimum(x => x ** x, 0.01, 2, 1e-9).x).toBeCloseTo(Math.exp(-1), 7)
    const drag = minimum(x => x + 4 / x, 0.1, 30, 1e-9)
    expect(drag.x).toBeCloseTo(2, 6)
    expect(drag.value).toBeCloseTo(4, 12)
  })

  test('lies within the tolerance of the bottom of any single dip', () => {
    fc.assert(
      fc.property(fc.double({ min: -5, max: 5, noNaN: true }), fc.constantFrom(1e-2, 1e-4, 1e-6), (bottom, tolerance) => {
        expect(Math.abs(minimum(x => Math.abs(x - bottom), -6, 7, tolerance).x - bottom)).toBeLessThanOrEqual(tolerance)
      }),
    )
  })

  test('is the end a function falls to', () => {
    expect(minimum(x => x, 2, 3, 1e-6).x).toBeCloseTo(2, 5)
    expect(minimum(x => -x, 2, 3, 1e-6).x).toBeCloseTo(3, 5)
  })

  test('ends although the tolerance is below what numbers can tell apart', () => {
    expect(minimum(x => (x - 1e6) ** 2, 0, 3e6, 1e-300).x).toBeCloseTo(1e6, 0)
  })

  test('refuses senseless questions', () => {
    expect(() => minimum(x => x, 3, 2, 1)).toThrow(RangeError('minimum: low must lie below high, found 3 and 2'))
    expect(() => minimum(x => x, 2, 3, 0)).toThrow(RangeError('minimum: tolerance must be above zero, found 0'))
    expect(() => minimum(() => Number.NaN, 2, 3, 1)).toThrow(/minimum: the function is not a number at/)
  })
})
