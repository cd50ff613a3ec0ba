import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { curve } from './curve.ts'
import { smooth, smoothAt } from './monotone-cubic.ts'

const fine = (from: number, to: number, n: number): number[] => Array.from({ length: n + 1 }, (_, i) => from + ((to - from) * i) / n)

describe('a smooth curve', () => {
  test('goes through its points and holds its ends', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 2, maxLength: 15 }), y => {
        const s = smooth(
          curve(
            y.map((_, i) => i + (i * i) / 10),
            y,
          ),
        )
        for (let i = 0; i < y.length; i++) expect(smoothAt(s, s.x[i]!)).toBe(y[i])
        expect(smoothAt(s, -1)).toBe(y[0])
        expect(smoothAt(s, 1e9)).toBe(y[y.length - 1])
      }),
    )
  })

  test('never leaves the range between neighbouring points, and rises where they rise', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 2, maxLength: 15 }), y => {
        const s = smooth(
          curve(
            y.map((_, i) => i + (i * i) / 10),
            y,
          ),
        )
        for (let i = 1; i < y.length; i++) {
          const sign = Math.sign(y[i]! - y[i - 1]!)
          const values = fine(s.x[i - 1]!, s.x[i]!, 40).map(x => smoothAt(s, x))
          for (let k = 1; k < values.length; k++) {
            const rise = values[k]! - values[k - 1]!
            if (sign === 0) expect(Math.abs(rise)).toBeLessThan(1e-12)
            else expect(rise * sign).toBeGreaterThan(-1e-9)
          }
        }
      }),
    )
  })

  test('keeps the plateaus and the steep middle of RPN 14, the data of the paper that introduced it', () => {
    // Fritsch and Carlson 1980, table 1, data set RPN 14 (radiochemical data, from memory).
    const x = [7.99, 8.09, 8.19, 8.7, 9.2, 10, 12, 15, 20]
    const y = [0, 2.76429e-5, 4.37498e-2, 0.169183, 0.469428, 0.94374, 0.998636, 0.999919, 0.999994]
    const s = smooth(curve(x, y))
    const values = fine(7.99, 20, 2000).map(v => smoothAt(s, v))
    for (let i = 1; i < values.length; i++) expect(values[i]!).toBeGreaterThanOrEqual(values[i - 1]!)
    expect(Math.max(...values)).toBeLessThanOrEqual(0.999994)
  })

  test('has no bend at its points', () => {
    const s = smooth(curve([0, 1, 2.5, 3, 5], [0, 1, 4, 4.5, 9]))
    for (const x of [1, 2.5, 3]) {
      const left = (smoothAt(s, x) - smoothAt(s, x - 1e-6)) / 1e-6
      const right = (smoothAt(s, x + 1e-6) - smoothAt(s, x)) / 1e-6
      expect(Math.abs(left - right)).toBeLessThan(1e-4)
    }
  })

  test('comes closer to a smooth law with the third power of the step or better', () => {
    const worst = (n: number): number => {
      const x = fine(0, 2, n)
      const s = smooth(curve(x, x.map(Math.exp)))
      return Math.max(...fine(0, 2, 1000).map(v => Math.abs(smoothAt(s, v) - Math.exp(v))))
    }
    expect(Math.log2(worst(20) / worst(40))).toBeGreaterThan(2.8)
    expect(Math.log2(worst(40) / worst(80))).toBeGreaterThan(2.8)
  })

  test('is a straight line through two points', () => {
    expect(smoothAt(smooth(curve([0, 4], [1, 3])), 1)).toBe(1.5)
  })
})
