import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { celsius } from './conductor-symbols.ts'
import { FUSE_AIR, fuseAirFactor, meltingIntegralNeeded, type PulseShape, pulseIntegral, pulseShape, pulseShare } from './fuse-rating.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('a fuse and the air about it', () => {
  it('loses its rating as the air warms, all of it at its constant', () => {
    const factor = (air: number) => fuseAirFactor({ end: FUSE_AIR.end.value, rated: FUSE_AIR.rated.value, ambient: celsius(air) })
    fc.assert(
      fc.property(real(-40, 139), real(0.01, 1), (air, step) => {
        expect(factor(air + step)).toBeLessThan(factor(air))
      }),
      { numRuns: runs(500) },
    )
    expect(factor(25)).toBe(1)
    expect(factor(140)).toBe(0)
    expect(factor(200)).toBe(0)
  })
})

describe('pulses through a fuse', () => {
  it('have the square that their shape, summed in a hundred thousand steps, has', () => {
    const shapes: Readonly<Record<PulseShape, readonly [length: number, at: (s: number) => number]>> = {
      square: [1, () => 1],
      'half sine': [1, s => Math.sin(Math.PI * s)],
      triangle: [1, s => 1 - Math.abs(2 * s - 1)],
      'exponential decay': [40, s => Math.exp(-s)],
    }
    for (const [shape, [length, at]] of Object.entries(shapes) as [PulseShape, readonly [number, (s: number) => number]][]) {
      let sum = 0
      const N = 100_000
      for (let i = 0; i < N; i++) sum += at(((i + 0.5) * length) / N) ** 2 * (length / N)
      expect(pulseIntegral({ peak: 300, time: 0.01, shape: pulseShape(shape).value })).toBeCloseTo(sum * 300 ** 2 * 0.01, 3)
    }
  })
  it('may use the less the more often they come; nothing is known above 100 000', () => {
    expect([1, 100, 101, 1000, 5000, 100_000].map(n => pulseShare(n)?.value)).toEqual([0.48, 0.48, 0.38, 0.38, 0.29, 0.22])
    expect(pulseShare(100_001)).toBeUndefined()
    for (const bad of [0, -1, Number.NaN]) expect(() => pulseShare(bad)).toThrow(RangeError)
    const needed = (n: number) => meltingIntegralNeeded({ pulse: 625, share: pulseShare(n)?.value as number })
    expect([100, 1000, 10_000, 100_000].map(n => Math.round(needed(n)))).toEqual([1302, 1645, 2155, 2841])
  })
})
