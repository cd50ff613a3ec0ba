import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { solveOde } from '../numerics/ode.ts'
import { classLosses, ratedHeat, windingHeat } from './motor-loss.ts'
import { heating, timeAtHeating, torqueForTime, windingConductance, windingSteady, windingTime } from './winding.ts'

const motor = { rated: 110, time: 119 }
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
    expect(windingSteady({ heat: 3900, conductance: 3900 / 95, coolant: 333.15 })).toBeCloseTo(428.15, 9)
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
  it('held at its continuous rating settles at its limit at the worst speed, and below it at every other, for every kind of motor', () => {
    const kinds = ['permanent-magnet', 'induction', 'series-dc'] as const
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        between(60, 400),
        between(200, 600),
        between(0.2, 0.9),
        between(0.5, 2),
        between(1.2, 4),
        between(0, 1),
        (kind, peakTorque, baseSpeed, share, corner, fast, at) => {
          const topSpeed = baseSpeed * fast,
            torque = peakTorque * share,
            power = torque * baseSpeed * corner
          const look = { losses: classLosses(kind, 0.93, peakTorque, baseSpeed, topSpeed), factor: 1.1 }
          const limit = 428.15,
            coolant = 333.15
          const conductance = windingConductance({ rated: ratedHeat({ ...look, torque, power, topSpeed }), limit, coolant })
          const settles = (speed: number): number =>
            windingSteady({ heat: windingHeat({ ...look, speed, torque: Math.min(torque, power / speed) }), conductance, coolant })
          expect(settles(Math.max(1, at * topSpeed))).toBeLessThan(limit + 0.5)
          // Fine enough for the edge where torque gives way to power, on either side of which the heat falls steeply.
          const worst = Math.max(...Array.from({ length: 5000 }, (_, i) => settles((topSpeed * (i + 1)) / 5000)))
          expect(worst).toBeGreaterThan(limit - 0.5)
        },
      ),
    )
  })
})
