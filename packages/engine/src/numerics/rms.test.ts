import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { highestRms, rms } from './rms.ts'

describe('root mean square over time', () => {
  test('weighs each value with the time it holds', () => {
    // 500 A for 10 s, 350 A for 100 s, 200 A for 490 s: √(Σ I²t / Σ t) = 239.27 A by hand.
    expect(rms([0, 10, 110, 600], [500, 350, 200, 0])).toBeCloseTo(239.27, 2)
    expect(rms([0, 2], [-3, 7])).toBe(3)
    expect(rms([], [])).toBeUndefined()
    expect(rms([1, 1], [5, 5])).toBeUndefined()
  })
})

describe('the highest root mean square of a window', () => {
  test('finds the worst stretch of a known trace', () => {
    const times = [0, 10, 110, 600]
    expect(highestRms(times, [500, 350, 200, 0], 10)).toBeCloseTo(500, 10)
    expect(highestRms(times, [500, 350, 200, 0], 60)).toBeCloseTo(Math.sqrt((500 ** 2 * 10 + 350 ** 2 * 50) / 60), 10)
    expect(highestRms(times, [500, 350, 200, 0], 600)).toBeCloseTo(239.27, 2)
    // A peak in the middle counts in full whichever end of the window meets it.
    expect(highestRms([0, 5, 6, 20], [10, 100, 10, 0], 4)).toBeCloseTo(Math.sqrt((100 ** 2 + 3 * 10 ** 2) / 4), 10)
  })

  const trace = fc
    .array(fc.record({ step: fc.integer({ min: 0, max: 6 }), value: fc.integer({ min: -20, max: 20 }) }), { minLength: 2, maxLength: 40 })
    .map(rows => {
      let t = -5
      return { times: rows.map(r => (t += r.step)), values: rows.map(r => r.value) }
    })

  test('equals a plain search over every start on a fine raster', () => {
    fc.assert(
      fc.property(trace, fc.integer({ min: 1, max: 25 }), ({ times, values }, window) => {
        const first = times[0]!
        const last = times[times.length - 1]!
        const found = highestRms(times, values, window)
        if (last - first < window) {
          expect(found).toBeUndefined()
          return
        }
        // Times are whole, so one of the whole starts is the worst; quarter starts must not beat it.
        const valueAt = (t: number): number => values[times.findLastIndex(s => s <= t)]!
        let worst = 0
        for (let start = first; start <= last - window; start += 0.25) {
          let sum = 0
          for (let t = start; t < start + window; t += 0.25) sum += 0.25 * valueAt(t) ** 2
          worst = Math.max(worst, sum / window)
        }
        expect(found).toBeCloseTo(Math.sqrt(worst), 9)
      }),
    )
  })

  test('never lies below the mean of the whole nor above the highest value', () => {
    fc.assert(
      fc.property(trace, fc.double({ min: 0.1, max: 30, noNaN: true }), ({ times, values }, window) => {
        const found = highestRms(times, values, window)
        if (found === undefined) return
        expect(found).toBeLessThanOrEqual(Math.max(...values.map(Math.abs)) + 1e-9)
      }),
    )
  })

  test('takes time in proportion to the samples', () => {
    const n = 400_000
    const times = Float64Array.from({ length: n }, (_, i) => i * 0.1)
    const values = Float64Array.from({ length: n }, (_, i) => 100 * Math.sin(i / 500))
    // Of sin² over a window w the highest mean is (1 + |sin ωw|/ωw)/2; here ω = 1/50 s and ωw = 36.
    const started = performance.now()
    expect(highestRms(times, values, 1800)).toBeCloseTo(100 * Math.sqrt((1 + Math.abs(Math.sin(36)) / 36) / 2), 1)
    // A search over all pairs of ends would take 10^11 steps, minutes at best.
    expect(performance.now() - started).toBeLessThan(5000)
  })

  test('refuses a window of nothing, times that fall back, lengths that differ', () => {
    expect(() => highestRms([0, 1], [1, 1], 0)).toThrow(RangeError('highestRms: window must be above zero, found 0'))
    expect(() => rms([0, -1], [1, 1])).toThrow(RangeError('rms: times must not fall back, found -1 after 0'))
    expect(() => rms([0], [1, 1])).toThrow(RangeError('rms: times and values must have the same length, found 1 and 2'))
  })
})
