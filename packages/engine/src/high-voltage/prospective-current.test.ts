import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { simpson, solveOde } from '../numerics/index.ts'
import { faultCurrent, faultIntegral, prospectiveCurrent, timeToMelt } from './prospective-current.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const loops = [real(500, 20e3), real(1e-5, 5e-3), real(1e3, 1e6)] as const

describe('a rising fault', () => {
  it('has the integral that its current squared, summed, has', () => {
    fc.assert(
      fc.property(real(500, 20e3), real(1e-4, 5e-3), real(0.1, 20), (prospective, constant, times) => {
        const time = times * constant,
          summed = simpson(t => faultCurrent({ prospective, constant, time: t }) ** 2, 0, time, 1e-9 * prospective ** 2 * time)
        expect(faultIntegral({ prospective, constant, time }) / (summed as number)).toBeCloseTo(1, 6)
      }),
      { numRuns: runs(200) },
    )
  })
  it('melts a fuse when the circuit’s own equation, followed in time, has put that much through it', () => {
    // L·di/dt = U − R·i and dW/dt = i², stopped where W reaches the fuse's; 360 V, 60 mΩ, 30 µH, and 400 V, 50 mΩ, 20 µH.
    for (const [u, r, l, melting] of [
      [360, 0.06, 30e-6, 20e3],
      [360, 0.06, 30e-6, 60e3],
      [400, 0.05, 20e-6, 30e3],
    ] as const) {
      const run = solveOde(
        (_, [i], rate) => {
          rate[0] = (u - r * (i as number)) / l
          rate[1] = (i as number) ** 2
        },
        0,
        [0, 0],
        0.1,
        { relative: 1e-10, absolute: 1e-8, watch: [{ of: (_, y) => (y[1] as number) - melting, stop: true }] },
      )
      const { current: prospective } = prospectiveCurrent({ voltage: u, resistances: [r] })
      expect((run?.times.at(-1) as number) / timeToMelt({ prospective, constant: l / r, melting })).toBeCloseTo(1, 7)
    }
  })
  it('melts sooner at more current, with less inductance, and a smaller fuse; and by its own integral', () => {
    fc.assert(
      fc.property(...loops, (prospective, constant, melting) => {
        const time = timeToMelt({ prospective, constant, melting })
        expect(faultIntegral({ prospective, constant, time }) / melting).toBeCloseTo(1, 4)
        expect(timeToMelt({ prospective: 1.02 * prospective, constant, melting })).toBeLessThan(time)
        expect(timeToMelt({ prospective, constant, melting: 0.98 * melting })).toBeLessThan(time)
        expect(timeToMelt({ prospective, constant: 0, melting })).toBeLessThan(time)
        expect(time).toBeLessThanOrEqual(melting / prospective ** 2 + 2 * constant)
      }),
      { numRuns: runs(500) },
    )
  })
  it('is weakest in the cold, empty pack and strongest in the warm, full one', () => {
    const of = (voltage: number, cell: number) => prospectiveCurrent({ voltage, resistances: [96 * cell, 0.0078] }).current
    expect(of(96 * 3.4, 0.5e-3 * 3.189)).toBeLessThan(of(96 * 4.15, 0.5e-3))
    expect(of(96 * 4.15, 0.5e-3)).toBeLessThan(of(96 * 4.2, 0.5e-3 * 0.85))
  })
})
