import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { airDensityRead } from './air-density.ts'
import { coastDownFit, coastTime, stepForce, toReferenceConditions, windAndSlope } from './coast-down.ts'
import { constantPartOnTheDay, linearPartOnTheDay, roadLoad, squaredPartOnTheDay } from './road-load.ts'

const kmh = (v: number): number => v / 3.6
const steps = [120, 110, 100, 90, 80, 70, 60, 50, 40, 30]
const from = steps.map(kmh),
  to = steps.map(v => kmh(v - 10))

describe('coast-down', () => {
  it('takes the times of a made-up car, worked by hand, through each step of ten', () => {
    const expected = [6.929, 7.904, 9.062, 10.438, 12.066, 13.972, 16.159, 18.581, 21.11, 23.507]
    for (const [i, v] of steps.entries()) {
      const t = coastTime({ mass: 1442, f0: 150, f2: 0.42, from: kmh(v), to: kmh(v - 10) })
      expect(Math.abs(t - (expected[i] as number))).toBeLessThanOrEqual(0.00051)
    }
  })

  it('gives the car back from its own times, but for the bend within a step', () => {
    const times = steps.map(v => coastTime({ mass: 1442, f0: 150, f2: 0.42, from: kmh(v), to: kmh(v - 10) }))
    const forces = steps.map((_, i) =>
      stepForce({
        mass: 1442,
        from: from[i] as number,
        to: to[i] as number,
        out: [times[i] as number],
        back: [times[i] as number],
        scatter: 0,
      }),
    )
    // With the linear term forced to zero the same forces give 150.05 N and 0.4193 N·s²/m²; the bias stays below 0.2 % there.
    const n = forces.length,
      x = steps.map(v => kmh(v - 5) ** 2)
    const mx = x.reduce((a, b) => a + b, 0) / n,
      my = forces.reduce((a, b) => a + b, 0) / n
    const slope = x.reduce((s, v, i) => s + (v - mx) * ((forces[i] as number) - my), 0) / x.reduce((s, v) => s + (v - mx) ** 2, 0)
    expect(Math.abs(slope - 0.4193)).toBeLessThanOrEqual(0.00006)
    expect(Math.abs(my - slope * mx - 150.05)).toBeLessThanOrEqual(0.006)
    const fit = coastDownFit({ from, to, forces })
    for (const v of [30, 60, 90, 115])
      expect(
        roadLoad({ ...fit, speed: kmh(v), headWind: 0 }) / roadLoad({ f0: 150, f1: 0, f2: 0.42, speed: kmh(v), headWind: 0 }),
      ).toBeCloseTo(1, 2.5)
  })

  it('drops a steady wind and a steady slope by running both ways, and reads the wind', () => {
    fc.assert(
      fc.property(fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: -0.003, max: 0.003, noNaN: true }), (wind, slope) => {
        const mass = 1200,
          f0 = 140,
          f2 = 0.4,
          push = mass * 9.80665 * slope
        const at = (v: number, sign: number): number => f0 + f2 * (v + sign * wind) ** 2 + sign * push
        // Times of infinitely fine steps, so that only wind and slope are tested.
        const time = (v: number, sign: number): number => (mass * kmh(10)) / at(v, sign)
        const middle = steps.map(v => kmh(v - 5))
        const forces = middle.map((v, i) =>
          stepForce({ mass, from: from[i] as number, to: to[i] as number, out: [time(v, 1)], back: [time(v, -1)], scatter: 0 }),
        )
        const fit = coastDownFit({ from, to, forces })
        const read = windAndSlope({ from, to, differences: middle.map(v => at(v, 1) - at(v, -1)), f2: fit.f2 })
        const still = toReferenceConditions({ ...fit, wind: read, temperature: 293.15, pressure: 100e3 })
        expect(read).toBeCloseTo(wind, 6)
        expect(still.f0).toBeCloseTo(f0, 6)
        expect(still.f1).toBeCloseTo(0, 6)
        expect(still.f2).toBeCloseTo(f2, 8)
      }),
    )
  })

  it('comes back to the day it was measured on: correction and its turning round undo each other', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 278.15, max: 308.15, noNaN: true }),
        fc.double({ min: 92e3, max: 103e3, noNaN: true }),
        (temperature, pressure) => {
          const day = { f0: 150, f1: 2.5, f2: 0.41 }
          const reference = toReferenceConditions({ ...day, wind: 0, temperature, pressure })
          const stated = airDensityRead({ pressure: 100e3, temperature: 293.15 }),
            density = airDensityRead({ pressure, temperature })
          const again = { temperature, stated: 293.15, surface: 1, mass: 1000, tested: 1000 }
          expect(constantPartOnTheDay({ f0: reference.f0, ...again })).toBeCloseTo(day.f0, 9)
          expect(linearPartOnTheDay({ f1: reference.f1, temperature, stated: 293.15 })).toBeCloseTo(day.f1, 9)
          expect(squaredPartOnTheDay({ f2: reference.f2, density, stated, extra: [] })).toBeCloseTo(day.f2, 9)
        },
      ),
    )
  })

  it('reads published coefficients in pounds and miles per hour', () => {
    const LBF = 0.45359237 * 9.80665,
      MPH = 0.44704
    const f0 = 25.89 * LBF,
      f1 = (0.3449 * LBF) / MPH,
      f2 = (0.01945 * LBF) / MPH ** 2
    expect([f0, f1, f2].map(v => Number(v.toPrecision(5)))).toEqual([115.16, 3.4319, 0.43293])
    const power = roadLoad({ f0, f1, f2, speed: 50 * MPH, headWind: 0 }) * 50 * MPH
    // US EPA, model year 2022 fleet table: 12.2 hp, printed to a tenth.
    expect(Math.abs(power / 745.69987 - 12.2)).toBeLessThanOrEqual(0.05)
    expect(power / 1000).toBeCloseTo(9.12, 2)
  })
})
