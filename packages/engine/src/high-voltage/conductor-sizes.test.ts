import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { cableRating, groupingFactor, ratedSections, tableRating } from './cable-ampacity.ts'
import { MM2 } from './conductor-symbols.ts'
import { CIRCULAR_MIL } from './conductor-resistance.ts'
import { FLEXIBLE_SECTIONS, flexibleResistance, nextGauge, nextSection, usualDiameters, wireByGauge } from './conductor-sizes.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('flexible copper of IEC 60228', () => {
  it('has 18 sections whose resistances add up to that of the printed table', () => {
    const ohms = FLEXIBLE_SECTIONS.map(s => flexibleResistance(s)?.value as number)
    expect(ohms).toHaveLength(18)
    // 39.0 + 26.0 + 19.5 + 13.3 + 7.98 + 4.95 + 3.30 + 1.91 + 1.21 + 0.780 + 0.554 + 0.386 + 0.272 + 0.206 + 0.161 + 0.129 + 0.106 + 0.0801 Ω/km, added by hand.
    expect(1000 * ohms.reduce((sum, r) => sum + r, 0)).toBeCloseTo(119.8241, 9)
  })
  it('has less resistance the larger it is, never far from copper of its section', () => {
    for (const [i, s] of FLEXIBLE_SECTIONS.entries()) {
      const r = flexibleResistance(s)?.value as number
      if (i > 0) expect(r).toBeLessThan(flexibleResistance(FLEXIBLE_SECTIONS[i - 1] as number)?.value as number)
      // A nominal section is that of the resistance, not of the metal: within 17 % of 17.241 nΩ·m over it.
      expect((r * s) / 17.241e-9).toBeGreaterThan(1.09)
      expect((r * s) / 17.241e-9).toBeLessThan(1.18)
    }
  })
  it('knows no section the table has not, and takes one off by rounding', () => {
    expect(flexibleResistance(42 * MM2)).toBeUndefined()
    expect(usualDiameters(10 * MM2)).toBeUndefined()
    expect(flexibleResistance(35.00000001 * MM2)?.value).toBe(0.554e-3)
    expect(usualDiameters(35 * MM2)?.outside.value).toBeCloseTo(0.0125, 12)
  })
  it('takes the next section up, the same one where it is in the table', () => {
    for (const s of FLEXIBLE_SECTIONS) expect(nextSection(s)).toBe(s)
    expect(nextSection(7.91 * MM2)).toBe(10 * MM2)
    expect(nextSection(241 * MM2)).toBeUndefined()
    fc.assert(
      fc.property(real(0.1 * MM2, 240 * MM2), wanted => {
        const s = nextSection(wanted) as number,
          below = FLEXIBLE_SECTIONS[FLEXIBLE_SECTIONS.indexOf(s) - 1] ?? 0
        expect(s).toBeGreaterThanOrEqual(wanted * (1 - 2e-9))
        expect(below).toBeLessThan(wanted)
      }),
      { numRuns: runs(500) },
    )
  })
})

describe('wire by American gauge', () => {
  it('doubles its area about every three gauges, and is ten times thinner 39/log₁₀ 92 gauges on', () => {
    for (let n = -3; n < 34; n++)
      expect(wireByGauge({ gauge: n }).area / wireByGauge({ gauge: n + 3 }).area).toBeCloseTo(92 ** (6 / 39), 12)
    expect(92 ** (6 / 39)).toBeCloseTo(2.005, 3)
    expect(wireByGauge({ gauge: -3 }).diameter).toBeCloseTo(0.46 * 0.0254, 9)
  })
  it('is chosen as the printed charts of small craft choose it', () => {
    expect(nextGauge(7465 * CIRCULAR_MIL)).toBe(10)
    expect(nextGauge(2240 * CIRCULAR_MIL)).toBe(16)
    expect(nextGauge(120 * MM2)).toBeUndefined()
    for (const gauge of [18, 10, 0, -3]) expect(nextGauge(wireByGauge({ gauge }).area)).toBe(gauge)
  })
})

describe('tabulated ratings', () => {
  it('rise with the section, and with more air about the cable', () => {
    for (const laid of ['in conduit', 'clipped, touching', 'in air, touching', 'in air, spaced', 'flexible, touching'] as const) {
      const amps = ratedSections(laid).map(s => tableRating(laid, s)?.value as number)
      expect(amps).toEqual([...amps].sort((a, b) => a - b))
    }
    for (const s of ratedSections('in air, spaced')) {
      const [a, b, c, d] = (['in conduit', 'clipped, touching', 'in air, touching', 'in air, spaced'] as const).map(
        laid => tableRating(laid, s)?.value as number,
      ) as [number, number, number, number]
      expect(a < b && b < c && c < d).toBe(true)
    }
    expect(tableRating('flexible, touching', 35 * MM2)?.value).toBe(200)
    expect(tableRating('flexible 60 °C, touching', 35 * MM2)?.value).toBe(140)
    expect(tableRating('flexible, touching', 16 * MM2)).toBeUndefined()
  })
  it('add up to what the printed tables add up to', () => {
    const sum = (laid: Parameters<typeof tableRating>[0]) =>
      ratedSections(laid).reduce((all, s) => all + (tableRating(laid, s)?.value as number), 0)
    expect(sum('in conduit')).toBe(1379)
    expect(sum('clipped, touching')).toBe(1549)
    expect(sum('in air, touching')).toBe(1290)
    expect(sum('in air, spaced')).toBe(1466)
    expect(sum('flexible, touching')).toBe(2058)
    expect(sum('flexible 60 °C, touching')).toBe(789)
  })
  it('say from memory where they are so', () => {
    expect(tableRating('in air, spaced', 95 * MM2)?.origin?.source?.mark).toBe('from memory')
    expect(tableRating('in air, spaced', 70 * MM2)?.origin?.source?.mark).toBeUndefined()
  })
  it('fall with the number of circuits bunched; between two rows the larger bunch holds; above 20 nothing is known', () => {
    expect([1, 2, 3, 10, 11, 12, 20].map(n => groupingFactor(n)?.value)).toEqual([1, 0.8, 0.7, 0.45, 0.45, 0.45, 0.38])
    expect(groupingFactor(21)).toBeUndefined()
    for (const bad of [0, 1.5, Number.NaN]) expect(() => groupingFactor(bad)).toThrow(RangeError)
    for (let n = 2; n <= 20; n++) expect(groupingFactor(n)?.value).toBeLessThanOrEqual(groupingFactor(n - 1)?.value as number)
    // All the circuits together never carry less than fewer of them.
    for (let n = 2; n <= 20; n++)
      expect(n * cableRating({ table: 1, ambient: 1, grouping: groupingFactor(n)?.value as number })).toBeGreaterThan(1)
  })
})
