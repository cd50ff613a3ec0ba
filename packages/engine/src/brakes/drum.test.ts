import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { brakeSplit } from './brake-split.ts'
import { discTorque, effectiveRadius } from './disc.ts'
import { drumFactors, drumSensitivity, drumTorque } from './drum.ts'
import { pinnedShoe } from './pinned-shoe.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const BAR = 1e5

describe('a shoe on a pin', () => {
  it('has the torque that its pressure, summed over the lining in ten thousand strips, gives', () => {
    const shoe = { friction: 0.28, radius: 0.15, pivot: 0.125, arm: 0.2165, from: 0, to: (120 * Math.PI) / 180, force: 2200, width: 0.04 },
      { leadingPressure, leadingTorque, trailingPressure, trailingTorque } = pinnedShoe(shoe)
    const N = 10_000,
      d = (shoe.to - shoe.from) / N
    const summed = (greatest: number, sign: 1 | -1): [torque: number, aboutPin: number] => {
      let torque = 0,
        aboutPin = 0
      for (let i = 0; i < N; i++) {
        const angle = shoe.from + (i + 0.5) * d,
          pressed = greatest * Math.sin(angle) * shoe.width * shoe.radius * d,
          rubbed = shoe.friction * pressed
        torque += rubbed * shoe.radius
        aboutPin += pressed * shoe.pivot * Math.sin(angle) - sign * rubbed * (shoe.radius - shoe.pivot * Math.cos(angle))
      }
      return [torque, aboutPin]
    }
    for (const [pressure, torque, sign] of [
      [leadingPressure, leadingTorque, 1],
      [trailingPressure, trailingTorque, -1],
    ] as const) {
      const [got, aboutPin] = summed(pressure, sign)
      expect(got).toBeCloseTo(torque, 3)
      // The force on the shoe balances pressure and friction about the pin.
      expect(aboutPin).toBeCloseTo(shoe.force * shoe.arm, 3)
    }
    expect(leadingTorque + trailingTorque).toBeCloseTo(422, 1)
  })
})

describe('drums by blocks', () => {
  it('are as sensitive to friction as a small change of it shows', () => {
    fc.assert(
      fc.property(real(0.15, 0.45), real(1, 1.4), (friction, arm) => {
        const step = 1e-6,
          [a, b] = [drumFactors({ friction: friction * (1 - step), arm }), drumFactors({ friction: friction * (1 + step), arm })],
          said = drumSensitivity({ friction, arm })
        for (const kind of ['simplex', 'duplex', 'duoServo'] as const)
          expect(Math.log(b[kind] / a[kind]) / (2 * step) / said[kind]).toBeCloseTo(1, 4)
      }),
      { numRuns: runs(1000) },
    )
  })
  it('two leading shoes brake less rolling back, and shoes that push each other most', () => {
    fc.assert(
      fc.property(real(0.1, 0.5), real(1, 1.4), (friction, arm) => {
        const c = drumFactors({ friction, arm })
        expect(c.rollingBack).toBeLessThan(c.simplex)
        expect(c.simplex).toBeLessThan(c.duplex)
        expect(c.duplex).toBeLessThan(c.duoServo)
      }),
      { numRuns: runs(1000) },
    )
  })
})

describe('disc in front, drum behind', () => {
  it('of the case car give 85 % to the front, from pressure to split', () => {
    const disc = { friction: 0.38, pressure: 60 * BAR, knockOut: 0.5 * BAR, pistons: (Math.PI / 4) * 0.054 ** 2, radius: 0.11 },
      drum = { pressure: 40 * BAR, knockOut: 5 * BAR, piston: (Math.PI / 4) * 0.01905 ** 2, efficiency: 1, radius: 0.1 }
    const factor = drumFactors({ friction: 0.38, arm: 1 / 0.8 }).simplex
    expect(brakeSplit({ frontTorque: discTorque(disc), rearTorque: drumTorque({ factor, ...drum }), wheel: 0.298 }).share).toBeCloseTo(
      0.853,
      3,
    )
    expect(drumTorque({ factor, ...drum, pressure: 4 * BAR })).toBe(0)
  })
  it('a new pad acts a little further out than one run in', () => {
    fc.assert(
      fc.property(real(0.1, 0.25), real(0.01, 0.15), (inner, ring) => {
        const { worn, fresh } = effectiveRadius({ outer: inner + ring, inner })
        expect(fresh).toBeGreaterThanOrEqual(worn)
        expect(fresh).toBeLessThan((inner + ring) / 2)
      }),
      { numRuns: runs(1000) },
    )
  })
})
