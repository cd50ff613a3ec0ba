import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { polynomial, polynomialFit } from './polynomial.ts'

describe('a polynomial', () => {
  test('is summed from its highest power', () => {
    expect(polynomial([1, -2, 3], 2)).toBe(1 - 4 + 12)
    expect(polynomial([], 5)).toBe(0)
  })

  test('through exact data gives its coefficients back: the Wampler1 data', () => {
    // NIST Statistical Reference Datasets, linear regression, Wampler1: y = 1 + x + … + x⁵ at x = 0 … 20; certified coefficients 1, deviations 0.
    const x = Array.from({ length: 21 }, (_, i) => i)
    const fit = polynomialFit(
      x,
      x.map(v => polynomial([1, 1, 1, 1, 1, 1], v)),
      5,
    )!
    for (const c of fit.coefficients) expect(c).toBeCloseTo(1, 7)
    expect(fit.deviation).toBeLessThan(1e-7)
  })

  test('of degree n − 1 goes through n points', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 1, maxLength: 6 }), y => {
        const x = y.map((_, i) => i)
        const fit = polynomialFit(x, y, y.length - 1)!
        for (const i of x) expect(polynomial(fit.coefficients, i)).toBeCloseTo(y[i]!, 8)
      }),
    )
  })

  test('is not fixed by too few different places', () => {
    expect(polynomialFit([1, 1, 1], [1, 2, 3], 1)).toBeUndefined()
    expect(polynomialFit([], [], 0)).toBeUndefined()
    expect(() => polynomialFit([1, 2], [1], 1)).toThrow(RangeError('polynomialFit: x and y must have the same length, found 2 and 1'))
    expect(() => polynomialFit([1, 2], [1, 2], -1)).toThrow(
      RangeError('polynomialFit: degree must be a whole number of at least 0, found -1'),
    )
  })

  test('bends towards the heavier points', () => {
    const pull = (w: number): number => polynomial(polynomialFit([0, 1, 2], [0, 1, 0], 1, [1, w, 1])!.coefficients, 1)
    expect(pull(100)).toBeGreaterThan(pull(1))
  })
})
