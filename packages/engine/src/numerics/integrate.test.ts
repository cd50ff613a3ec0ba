import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { curve, integral } from './curve.ts'
import { cumulativeTrapezoid, gaussLegendre, simpson, trapezoid } from './integrate.ts'

describe('the area under samples', () => {
  test('is a sum of trapezoids, the last of the running sums', () => {
    expect(trapezoid([0, 1, 3], [2, 4, 0])).toBe(3 + 4)
    expect([...cumulativeTrapezoid([0, 1, 3], [2, 4, 0])]).toEqual([0, 3, 7])
    expect(trapezoid([], [])).toBe(0)
    expect(() => trapezoid([1, 2], [1])).toThrow(RangeError('trapezoid: x and y must have the same length, found 2 and 1'))
  })

  test('is the area under the curve through them', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: -1e3, max: 1e3, noNaN: true }), { minLength: 2, maxLength: 50 }), y => {
        const x = y.map((_, i) => i * 1.5 + Math.sqrt(i))
        expect(trapezoid(x, y)).toBeCloseTo(integral(curve(x, y), x[0]!, x[x.length - 1]!), 6)
      }),
    )
  })

  test('comes closer to a smooth law with the square of the step', () => {
    const error = (n: number): number => {
      const x = Array.from({ length: n + 1 }, (_, i) => i / n)
      return Math.abs(trapezoid(x, x.map(Math.exp)) - (Math.E - 1))
    }
    expect(Math.log2(error(50) / error(100))).toBeCloseTo(2, 2)
  })
})

describe('Simpson by halving', () => {
  test('meets its tolerance where the area is known in closed form', () => {
    const cases: readonly [(x: number) => number, number, number, number][] = [
      [Math.exp, 0, 1, Math.E - 1],
      [x => 4 / (1 + x * x), 0, 1, Math.PI],
      [Math.sqrt, 0, 1, 2 / 3],
      [x => 1 / (1e-4 + x * x), -1, 1, 200 * Math.atan(100)],
      [x => (x < 0.3 ? 0 : 1), 0, 1, 0.7],
      [Math.abs, -1, 2, 2.5],
    ]
    for (const [f, a, b, area] of cases)
      for (const tolerance of [1e-4, 1e-8, 1e-10]) expect(Math.abs(simpson(f, a, b, tolerance)! - area)).toBeLessThan(2 * tolerance)
  })

  test('is exact for a cubic, turns its sign with its direction, and is nothing over nothing', () => {
    expect(simpson(x => x ** 3 - x, 0, 2, 1e-9)).toBeCloseTo(2, 14)
    expect(simpson(x => x ** 3 - x, 2, 0, 1e-9)).toBeCloseTo(-2, 14)
    expect(simpson(x => 1 / x, 1, 1, 1e-9)).toBe(0)
  })

  test('says so when the tolerance cannot be reached', () => {
    expect(simpson(x => (x === 0 ? 0 : 1 / x), 0, 1, 1e-6)).toBeUndefined()
    expect(simpson(x => 1e12 * Math.sin(1e9 * x), 0, 1, 1e-9)).toBeUndefined()
  })

  test('refuses senseless questions', () => {
    expect(() => simpson(x => x, 0, Infinity, 1)).toThrow(RangeError('simpson: ends must be finite, found 0 and Infinity'))
    expect(() => simpson(x => x, 0, 1, 0)).toThrow(RangeError('simpson: tolerance must be above zero, found 0'))
    expect(() => simpson(Math.log, -1, 1, 1)).toThrow(/simpson: the function is not a number/)
  })
})

describe('Gauss–Legendre', () => {
  test('is exact for polynomials up to degree 9 and no further', () => {
    for (let d = 0; d <= 9; d++) expect(gaussLegendre(x => x ** d, 0, 1)).toBeCloseTo(1 / (d + 1), 14)
    expect(Math.abs(gaussLegendre(x => x ** 10, -1, 1) - 2 / 11)).toBeGreaterThan(1e-4)
  })

  test('gains ten orders with the step', () => {
    const error = (pieces: number): number => Math.abs(gaussLegendre(Math.exp, 0, 10, pieces) - Math.expm1(10))
    expect(Math.log2(error(4) / error(8))).toBeGreaterThan(9.5)
  })

  test('agrees with Simpson', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 5, noNaN: true }), fc.double({ min: -3, max: 3, noNaN: true }), (w, b) => {
        const f = (x: number): number => Math.sin(w * x + b) * Math.exp(-x / 3)
        expect(gaussLegendre(f, 0, 4, 16)).toBeCloseTo(simpson(f, 0, 4, 1e-11)!, 9)
      }),
    )
  })

  test('refuses half a piece', () => {
    expect(() => gaussLegendre(x => x, 0, 1, 0.5)).toThrow(
      RangeError('gaussLegendre: pieces must be a whole number of at least 1, found 0.5'),
    )
    expect(() => gaussLegendre(x => x, Number.NaN, 1)).toThrow(/ends must be finite/)
  })
})
