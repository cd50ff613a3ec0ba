import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { normalProbability } from './normal.ts'
import { random, splitMix64, xoshiro128 } from './random.ts'
import { mean, standardDeviation } from './statistics.ts'

describe('random numbers', () => {
  test('are the published words of xoshiro128** for the state 1, 2, 3, 4', () => {
    // First outputs of the reference program of Blackman and Vigna, as ports of it print them.
    const word = xoshiro128([1, 2, 3, 4])
    expect(Array.from({ length: 10 }, word)).toEqual([
      11520, 0, 5927040, 70819200, 2031721883, 1637235492, 1287239034, 3734860849, 3729100597, 4258142804,
    ])
  })

  test('start from the published words of SplitMix64', () => {
    const next = splitMix64(1234567n)
    expect([next(), next(), next()]).toEqual([6457827717110365317n, 3203168211198807973n, 9817491932198370423n])
  })

  test('come again from the same seed, and differ for another', () => {
    fc.assert(
      fc.property(fc.maxSafeNat(), seed => {
        const [a, b, c] = [random(seed), random(seed), random(seed === 0 ? 1 : seed - 1)]
        const row = (r: ReturnType<typeof random>): number[] => [r.uniform(), r.normal(), r.below(1000), r.normal(), r.uniform()]
        const first = row(a)
        expect(row(b)).toEqual(first)
        expect(row(c)).not.toEqual(first)
      }),
    )
  })

  test('spread evenly', () => {
    const { uniform } = random(20240512)
    const n = 200_000
    const counts = Array.from({ length: 100 }, () => 0)
    for (let i = 0; i < n; i++) {
      const u = uniform()
      if (!(u >= 0 && u < 1)) throw new Error(`${u} lies outside`)
      counts[Math.floor(u * 100)]!++
    }
    const chiSquare = counts.reduce((sum, c) => sum + (c - n / 100) ** 2 / (n / 100), 0)
    // 99 degrees of freedom: 0.1 % lie below 60 and 0.1 % above 149.
    expect(chiSquare).toBeGreaterThan(60)
    expect(chiSquare).toBeLessThan(149)
  })

  test('follow the normal law', () => {
    const { normal } = random(7)
    const values = Float64Array.from({ length: 100_000 }, normal).sort()
    expect(Math.abs(mean(values)!)).toBeLessThan(4 / Math.sqrt(1e5))
    expect(Math.abs(standardDeviation(values)! - 1)).toBeLessThan(4 / Math.sqrt(2e5))
    // Largest distance from the law (Kolmogorov and Smirnov): above 1.95/√n once in a thousand.
    let worst = 0
    values.forEach((v, i) => (worst = Math.max(worst, Math.abs((i + 0.5) / 1e5 - normalProbability(v)))))
    expect(worst).toBeLessThan(1.95 / Math.sqrt(1e5))
  })

  test('pick fairly from a number that divides nothing', () => {
    const { below } = random(3)
    const counts = [0, 0, 0, 0, 0, 0, 0]
    for (let i = 0; i < 70_000; i++) counts[below(7)]!++
    for (const c of counts) expect(Math.abs(c - 10_000)).toBeLessThan(4 * Math.sqrt(10_000))
    expect(() => below(0)).toThrow(RangeError('random: below takes a whole number from 1 to 2^32, found 0'))
    expect(random(1).below(1)).toBe(0)
  })

  test('want a whole seed', () => {
    expect(() => random(0.5)).toThrow(RangeError('random: seed must be a safe whole number of at least 0, found 0.5'))
    expect(() => xoshiro128([0, 0, 0, 0])).toThrow(RangeError('xoshiro128: the state must not be all zero'))
  })
})
