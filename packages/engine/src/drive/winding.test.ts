import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { solveOde } from '../numerics/ode.ts'
import { heating, timeAtHeating, torqueForTime, windingSteady, windingTime } from './winding.ts'

const motor = { rated: 110, peak: 250, idle: 0.038, time: 119 }
const between = (low: number, high: number): fc.Arbitrary<number> => fc.double({ min: low, max: high, noNaN: true })

describe('a winding as one lump', () => {
  it('gets to its limit in just the time the peak is rated for', () => {
    fc.assert(
      fc.property(between(5, 120), between(1000, 5000), between(1.2, 8), (time, rated, times) => {
        const tau = windingTime({ time, rated, peak: rated * times })
        expect(timeAtHeating({ heating: times, start: 0, time: tau })).toBeCloseTo(time, 8)
      }),
    )
  })
  it('settles at its limit under its continuous torque', () => {
    expect(heating({ torque: 110, ...motor })).toBeCloseTo(1, 12)
    expect(windingSteady({ loss: 3900, conductance: 3900 / 95, coolant: 333.15 })).toBeCloseTo(428.15, 9)
  })
  it('stands a torque for a time as the equation of heating says, step by step', () => {
    fc.assert(
      fc.property(between(10, 600), between(0, 0.9), (duration, start) => {
        const torque = torqueForTime({ duration, start, allowed: 1e9, ...motor }),
          p = heating({ torque, ...motor })
        const end = solveOde(
          (_, y, r) => {
            r[0] = (p - (y[0] as number)) / motor.time
          },
          0,
          [start],
          duration,
          { relative: 1e-10, firstStep: 0.1, absolute: 1e-12 },
        )
        expect(end?.at(duration)[0]).toBeCloseTo(1, 7)
      }),
    )
  })
  it('stands less torque for longer, and from a warmer start', () => {
    const torque = (duration: number, start: number): number => torqueForTime({ duration, start, allowed: 250, ...motor })
    expect(torque(30, 0)).toBeGreaterThan(torque(300, 0))
    expect(torque(60, 0.5)).toBeLessThan(torque(60, 0))
    expect(torque(1e6, 0.5)).toBeCloseTo(110, 6)
    expect(torque(1, 0)).toBe(250)
  })
})
