import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { pulseFit } from './pulse-fit.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** A 10 s pulse and 20 min of rest, written from the closed form of the circuit. */
function pulse(ohmic: number, branches: readonly (readonly [r: number, tau: number])[], current: number, fall: number) {
  const times = [0, 0.4, 1, 2, 4, 6, 8, 10, 10.4, 11, 13, 16, 20, 26, 34, 45, 60, 85, 120, 180, 300, 500, 900, 1210]
  const on = (t: number): boolean => t > 0 && t <= 10
  const voltages = times.map(t => {
    let v = 3.7 - (fall * Math.min(t, 10)) / 10 - (on(t) ? ohmic * current : 0)
    for (const [r, tau] of branches) v -= r * current * (1 - Math.exp(-Math.min(t, 10) / tau)) * Math.exp(-Math.max(0, t - 10) / tau)
    return v
  })
  return { times, currents: times.map(t => (on(t) ? current : 0)), voltages }
}

describe('fitting a pulse', () => {
  it('finds the elements of a one-branch cell again', () => {
    fc.assert(
      fc.property(real(0.001, 0.1), real(0.2, 1), real(4, 60), real(1, 50), (ohmic, share, tau, current) => {
        const fit = pulseFit(pulse(ohmic, [[ohmic * share, tau]], current, 0.002), 1, 0)
        expect(fit?.ohmic).toBeCloseTo(ohmic, 4)
        expect(Math.abs((fit?.branches[0]?.time ?? 0) - tau) / tau).toBeLessThan(0.02)
        expect(fit?.residual).toBeLessThan(1e-3 * ohmic * current + 1e-6)
      }),
      { numRuns: runs(400) },
    )
  })
  it('with two branches leaves no more than with one', () => {
    fc.assert(
      fc.property(real(0.01, 0.05), real(3, 8), real(30, 120), (ohmic, quick, slow) => {
        const p = pulse(
            ohmic,
            [
              [0.005, quick],
              [0.02, slow],
            ],
            5.8,
            0.004,
          ),
          one = pulseFit(p, 1, 0),
          two = pulseFit(p, 2, 0)
        expect(two?.residual).toBeLessThanOrEqual((one?.residual ?? 0) * 1.001 + 1e-9)
        expect(two?.residual).toBeLessThan(3e-4)
      }),
      { numRuns: runs(200) },
    )
  })
  it('has no answer for a rest without a pulse or for too few samples', () => {
    expect(
      pulseFit({ times: [0, 1, 2, 3, 4, 5, 6], currents: [0, 0, 0, 0, 0, 0, 0], voltages: [3, 3, 3, 3, 3, 3, 3] }, 1, 0),
    ).toBeUndefined()
    expect(pulseFit({ times: [0, 1, 2], currents: [0, 1, 0], voltages: [3, 2.9, 3] }, 1, 0)).toBeUndefined()
    expect(() => pulseFit({ times: [0, 1], currents: [0], voltages: [3, 3] }, 1, 0)).toThrow(RangeError)
  })
})
