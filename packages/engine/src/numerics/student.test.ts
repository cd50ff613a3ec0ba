import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { simpson } from './integrate.ts'
import { studentFactor, studentWithin } from './student.ts'

describe('the Student factor', () => {
  test('is that of the printed tables, two-sided 95 and 99 %', () => {
    // Quantile table as in any statistics book, e.g. GUM, JCGM 100:2008, table G.2 (95 and 99 %).
    const table: readonly (readonly [number, number, number])[] = [
      [1, 12.71, 63.66],
      [2, 4.3, 9.92],
      [3, 3.18, 5.84],
      [4, 2.78, 4.6],
      [5, 2.57, 4.03],
      [6, 2.45, 3.71],
      [7, 2.36, 3.5],
      [8, 2.31, 3.36],
      [9, 2.26, 3.25],
      [10, 2.23, 3.17],
      [15, 2.13, 2.95],
      [20, 2.09, 2.85],
      [30, 2.04, 2.75],
      [50, 2.01, 2.68],
    ]
    for (const [degrees, at95, at99] of table) {
      expect(Math.abs(studentFactor(degrees) - at95)).toBeLessThanOrEqual(0.00501)
      expect(Math.abs(studentFactor(degrees, 0.99) - at99)).toBeLessThanOrEqual(0.00501)
    }
  })

  test('has closed forms for one, two and four degrees of freedom', () => {
    for (const p of [0.1, 0.5, 0.9, 0.95, 0.999]) {
      expect(studentFactor(1, p) / Math.tan((Math.PI / 2) * p)).toBeCloseTo(1, 12)
      expect(studentFactor(2, p) / (p * Math.sqrt(2 / (1 - p * p)))).toBeCloseTo(1, 12)
      const q = Math.cos(Math.acos(Math.sqrt(1 - p * p)) / 3) / Math.sqrt(1 - p * p)
      expect(studentFactor(4, p) / (2 * Math.sqrt(q - 1))).toBeCloseTo(1, 11)
    }
  })

  test('holds the share of the density it claims', () => {
    // Density by a product, not by the sums under test: Γ((ν+1)/2)/(√(νπ)·Γ(ν/2)) grows from ν to ν + 2 by (ν+1)/√(ν(ν+2)).
    const height = (degrees: number): number => {
      let c = degrees % 2 === 1 ? 1 / Math.PI : 1 / (2 * Math.SQRT2)
      for (let v = degrees % 2 === 1 ? 1 : 2; v < degrees; v += 2) c *= (v + 1) / Math.sqrt(v * (v + 2))
      return c
    }
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.double({ min: 0.05, max: 8, noNaN: true }), (degrees, t) => {
        const c = height(degrees)
        const area = simpson(x => 2 * c * (1 + (x * x) / degrees) ** (-(degrees + 1) / 2), 0, t, 1e-12)!
        expect(studentWithin(t, degrees)).toBeCloseTo(area, 10)
      }),
    )
  })

  test('changes over from the sum to the expansion without a seam, and ends at the normal distribution', () => {
    for (const p of [0.5, 0.95, 0.999]) {
      const [before, at, after] = [studentFactor(999, p), studentFactor(1000, p), studentFactor(1001, p)]
      expect(after).toBeLessThan(at)
      expect(before - at).toBeCloseTo(at - after, 7)
    }
    expect(studentFactor(1e9)).toBeCloseTo(1.959963984540054, 8)
  })

  test('refuses what has no meaning', () => {
    expect(() => studentFactor(0)).toThrow(RangeError('studentFactor: degrees must be a whole number of at least 1, found 0'))
    expect(() => studentFactor(2.5)).toThrow(/whole number/)
    expect(() => studentFactor(2, 1)).toThrow(RangeError('studentFactor: confidence must be above 0 and below 1, found 1'))
    expect(() => studentWithin(-1, 2)).toThrow(RangeError('studentWithin: t must be zero or more, found -1'))
  })
})
