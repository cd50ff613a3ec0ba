import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { simpson } from './integrate.ts'
import { normalProbability, normalQuantile } from './normal.ts'

describe('the normal distribution', () => {
  test('has its well-known quantiles', () => {
    expect(normalQuantile(0.5)).toBeCloseTo(0, 15)
    expect(normalQuantile(0.975)).toBeCloseTo(1.959963984540054, 13)
    expect(normalQuantile(0.995)).toBeCloseTo(2.5758293035489004, 13)
    expect(normalQuantile(0.8413447460685429)).toBeCloseTo(1, 13)
    expect(normalQuantile(1e-9)).toBeCloseTo(-5.997807015007687, 11)
    expect([normalQuantile(0), normalQuantile(1)]).toEqual([-Infinity, Infinity])
  })

  test('is the area under its bell', () => {
    fc.assert(
      fc.property(fc.double({ min: -6, max: 6, noNaN: true }), z => {
        const area = 0.5 + simpson(x => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI), 0, z, 1e-13)!
        expect(normalProbability(z)).toBeCloseTo(area, 11)
      }),
    )
  })

  test('is smooth where series and continued fraction meet', () => {
    const [below, above] = [normalProbability(-3 - 1e-12), normalProbability(-3 + 1e-12)]
    expect(above / below).toBeCloseTo(1, 10)
    expect(above).toBeGreaterThan(below)
  })

  test('turns back: the probability of a quantile is where it came from, far into the tail too', () => {
    fc.assert(
      fc.property(fc.double({ min: -300, max: -0.31, noNaN: true }), exponent => {
        const p = 10 ** exponent
        expect(normalProbability(normalQuantile(p)) / p).toBeCloseTo(1, 9)
      }),
    )
  })

  test('refuses what is no probability', () => {
    expect(() => normalQuantile(1.1)).toThrow(RangeError('normalQuantile: p must be from 0 to 1, found 1.1'))
  })
})
