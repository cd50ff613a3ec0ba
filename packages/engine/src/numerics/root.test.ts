import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { root } from './root.ts'

describe('a root', () => {
  test('is found where it is known in closed form', () => {
    expect(root(x => x * x - 2, 0, 2, 0)).toBeCloseTo(Math.SQRT2, 15)
    expect(root(x => Math.cos(x) - x, 0, 1, 0)).toBeCloseTo(0.7390851332151607, 15)
    // Newton's own example of 1669, x³ − 2x − 5 = 0.
    expect(root(x => x ** 3 - 2 * x - 5, 2, 3, 0)).toBeCloseTo(2.0945514815423265, 14)
  })

  test('is undefined when the ends have the same sign', () => {
    expect(root(x => x * x + 1, -1, 1, 1e-9)).toBeUndefined()
  })

  test('may lie at an end, and the ends may be given either way round', () => {
    expect(root(x => x, 0, 1, 1e-9)).toBe(0)
    expect(root(x => x - 1, 0, 1, 1e-9)).toBe(1)
    expect(root(x => x - 0.3, 1, 0, 1e-12)).toBeCloseTo(0.3, 12)
  })

  test('is a true change of sign within the tolerance, also for steps and very flat functions', () => {
    const shapes: readonly ((x: number, r: number) => number)[] = [
      (x, r) => (x < r ? -1 : 1),
      (x, r) => (x - r) ** 9,
      (x, r) => Math.atan(1e6 * (x - r)),
      (x, r) => Math.expm1(30 * (x - r)),
      (x, r) => Math.cbrt(x - r),
    ]
    fc.assert(
      fc.property(
        fc.double({ min: -9, max: 9, noNaN: true }),
        fc.constantFrom(...shapes),
        fc.constantFrom(1e-3, 1e-8, 1e-12),
        (r, f, tolerance) => {
          const x = root(v => f(v, r), -10, 10, tolerance)!
          // The ninth power is exactly zero, by underflow, in a neighbourhood of its root.
          if (f(x, r) !== 0) expect(Math.abs(x - r)).toBeLessThanOrEqual(tolerance + 4 * Number.EPSILON * Math.abs(r) + 1e-300)
        },
      ),
    )
  })

  test('takes few calls on smooth functions', () => {
    let calls = 0
    root(
      x => {
        calls++
        return Math.exp(x) - 5
      },
      0,
      10,
      1e-12,
    )
    expect(calls).toBeLessThan(16)
  })

  test('refuses senseless questions', () => {
    expect(() => root(x => x, -Infinity, 1, 1e-9)).toThrow(RangeError('root: ends must be finite, found -Infinity and 1'))
    expect(() => root(x => x, -1, 1, -1)).toThrow(RangeError('root: tolerance must be zero or more, found -1'))
    expect(() => root(() => Number.NaN, -1, 1, 0)).toThrow(RangeError('root: the function is not a number at -1'))
  })
})
