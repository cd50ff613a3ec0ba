import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { descentHeating, descentPower } from './descent.ts'
import { heatingRunSpeeds, repeatedStops } from './repeated-stops.ts'
import { rotorHeating, rotorMass } from './rotor-heating.ts'
import { steadyStop } from './steady-stop.ts'
import { fullyDevelopedDeceleration, prescribedStop } from './stopping-distance.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('rotors', () => {
  it('after the heating run of the case car are at 500 °C when the run is followed second by second', () => {
    const { from, to } = heatingRunSpeeds({ top: 160 / 3.6 }),
      { rise } = rotorHeating({ mass: 1500, from, to, part: 0.72, heat: 500, rotor: 6.5 })
    const G = 9.6,
      C = 6.5 * 500,
      step = 0.001
    let above = 0
    for (let stop = 1; stop <= 15; stop++) {
      above += rise
      if (stop < 15) for (let t = 0; t < 45 - step / 2; t += step) above -= ((G * above) / C) * step
    }
    const { hot, limit } = repeatedStops({ stops: 15, each: rise, interval: 45, cooling: G, rotor: 6.5, heat: 500, around: 293.15 })
    expect(hot).toBeCloseTo(293.15 + above, 1)
    expect(Math.abs(hot - 273.15 - 500)).toBeLessThan(0.5)
    expect(limit).toBeGreaterThan(hot)
  })
  it('never cool by one more stop, and never pass their limit', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 60 }),
        real(5, 300),
        real(10, 200),
        real(1, 15),
        real(2, 12),
        (stops, each, interval, cooling, rotor) => {
          const after = (n: number) => repeatedStops({ stops: n, each, interval, cooling, rotor, heat: 500, around: 293.15 })
          expect(after(stops + 1).hot).toBeGreaterThanOrEqual(after(stops).hot)
          expect(after(stops).hot).toBeLessThanOrEqual(after(stops).limit + 1e-9)
          expect(after(1).hot).toBeCloseTo(293.15 + each, 9)
        },
      ),
      { numRuns: runs(1000) },
    )
  })
  it('of the least mass warm by just what is accepted', () => {
    fc.assert(
      fc.property(real(600, 3000), real(10, 50), real(0, 9), real(0.5, 0.9), real(20, 400), (mass, from, to, part, rise) => {
        const rotor = rotorMass({ mass, from, to, part, heat: 500, rise })
        expect(rotorHeating({ mass, from, to, part, heat: 500, rotor }).rise).toBeCloseTo(rise, 8)
      }),
      { numRuns: runs(1000) },
    )
  })
  it('down a long hill warm by 584 K without the motors and 174 K with 12 kW, followed second by second', () => {
    const time = 432,
      { power } = descentPower({ mass: 1500, speed: 50 / 3.6, slope: 0.1, rolling: 0.011, dragArea: 0.62, air: 1.2, time })
    const G = 5.4,
      C = 6.5 * 500
    for (const [motors, wanted] of [
      [0, 584],
      [12e3, 174],
    ] as const) {
      let above = 0
      for (let i = 0; i < time * 1000; i++) above += (((0.72 * (power - motors)) / 2 - G * above) / C) * 0.001
      const rise = descentHeating({ power, motors, part: 0.72, cooling: G, time, rotor: 6.5, heat: 500 })
      expect(rise).toBeCloseTo(above, 1)
      expect(Math.abs(rise - wanted)).toBeLessThan(0.6)
    }
  })
})

describe('a stop', () => {
  it('the laws of distance belong to the decelerations the rule names beside them, to five decimals', () => {
    for (const [law, d] of [
      [0.006, 6.43],
      [0.0067, 5.76],
      [0.01581, 2.44],
    ] as const)
      expect(1 / (25.92 * d)).toBeCloseTo(law, 5)
    const { cold, fast, failed } = prescribedStop({ speed: 100 / 3.6 })
    expect([cold, fast, failed].map(Math.round)).toEqual([70, 77, 168])
  })
  it('at a steady deceleration has that as its mean fully developed one', () => {
    fc.assert(
      fc.property(real(5, 45), real(1, 10), real(0, 20), (speed, d, lag) => {
        const run = (part: number): number => lag + (speed ** 2 * (1 - part ** 2)) / (2 * d)
        expect(fullyDevelopedDeceleration({ speed, from: run(0.8), to: run(0.1) })).toBeCloseTo(d, 8)
      }),
      { numRuns: runs(1000) },
    )
  })
  it('turns the whole of its kinetic energy into heat', () => {
    fc.assert(
      fc.property(real(500, 3000), real(500, 3e4), real(1, 50), (mass, force, speed) => {
        const { energy, peak, mean } = steadyStop({ mass, force, speed })
        expect(energy / (0.5 * mass * speed ** 2)).toBeCloseTo(1, 9)
        expect(peak / mean).toBeCloseTo(2, 9)
      }),
      { numRuns: runs(1000) },
    )
  })
})
