import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { columnAssist } from './column-assist.ts'
import { parkingEffortChange } from './heavier-front.ts'
import { hydraulicAssist, steeringPumpPower } from './hydraulic-assist.ts'
import { jackingMoment } from './jacking-moment.ts'
import { parkingMoment, parkingMomentOfAxle, parkingMomentRound } from './parking-moment.ts'
import { handwheelTorque, rackForce } from './rack-force.ts'
import { parkingMomentWithScrub } from './scrub-moment.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const DEGREE = Math.PI / 180
const tyre = fc.record({ grip: real(0.3, 1), load: real(1000, 8000), pressure: real(1.5e5, 4e5) })

describe('a tyre turned on the spot', () => {
  it('by a round patch takes 12.8 % more than by the usual estimate, whatever the tyre', () => {
    fc.assert(
      fc.property(tyre, t => {
        expect(parkingMomentRound(t) / parkingMoment(t)).toBeCloseTo(1.128, 3)
      }),
      { numRuns: runs(1000) },
    )
  })
  it('by a round patch takes what friction, summed ring by ring, gives', () => {
    const [grip, load, pressure] = [0.7, 3384, 220e3],
      radius = Math.sqrt(load / (Math.PI * pressure)),
      N = 10_000
    let moment = 0
    for (let i = 0; i < N; i++) {
      const r = ((i + 0.5) / N) * radius
      moment += grip * pressure * 2 * Math.PI * r * r * (radius / N)
    }
    expect(parkingMomentRound({ grip, load, pressure })).toBeCloseTo(moment, 4)
    expect(moment).toBeCloseTo(110.5, 1)
  })
  it('under an axle load in the books’ form takes √2 more than two tyres singly', () => {
    fc.assert(
      fc.property(tyre, ({ grip, load, pressure }) => {
        const { axle, tyres } = parkingMomentOfAxle({ grip, load: 2 * load, pressure })
        expect(tyres / (2 * parkingMoment({ grip, load, pressure }))).toBeCloseTo(1, 9)
        expect(axle / tyres).toBeCloseTo(Math.SQRT2, 9)
      }),
      { numRuns: runs(1000) },
    )
  })
  it('grows heavier just as the change of load and pressure says', () => {
    fc.assert(
      fc.property(tyre, real(0.7, 1.5), real(0.7, 1.5), (t, more, harder) => {
        const now = { ...t, load: t.load * more, pressure: t.pressure * harder }
        const change = parkingEffortChange({ loadBefore: t.load, load: now.load, pressureBefore: t.pressure, pressure: now.pressure })
        expect(parkingMoment(now) / parkingMoment(t)).toBeCloseTo(change, 9)
      }),
      { numRuns: runs(1000) },
    )
  })
  it('never turns easier for a kingpin further from the patch', () => {
    fc.assert(
      fc.property(real(0, 0.1), real(0, 0.1), real(0.1, 0.3), (a, b, patch) => {
        const at = (offset: number): number => parkingMomentWithScrub({ grip: 0.6, load: 4000, offset, patch }).moment
        expect(at(Math.max(a, b))).toBeGreaterThanOrEqual(at(Math.min(a, b)))
      }),
      { numRuns: runs(1000) },
    )
  })
})

describe('from tyre to handwheel', () => {
  it('a front axle of 690 kg asks for 2535 N at the rack and 118 N at the rim', () => {
    const load = 345 * 9.80665,
      each = parkingMoment({ grip: 0.8, load, pressure: 220e3 }),
      jacks = jackingMoment({ load, offset: 0.02, lean: 12 * DEGREE, lock: 35 * DEGREE })
    const force = rackForce({ moments: 2 * (each + jacks), arm: 0.105, efficiency: 0.9 })
    expect(Math.abs(force - 2535)).toBeLessThan(1)
    const { torque, rim } = handwheelTorque({ force, travel: 0.05, efficiency: 0.9, radius: 0.19 })
    expect(torque).toBeCloseTo(22.4, 1)
    expect(Math.round(rim)).toBe(118)
  })
  it('loses nothing but by its efficiencies: work in one turn is force times travel', () => {
    fc.assert(
      fc.property(real(500, 9000), real(0.03, 0.07), real(0.6, 1), (force, travel, efficiency) => {
        const { torque } = handwheelTorque({ force, travel, efficiency, radius: 0.19 })
        expect((torque * 2 * Math.PI * efficiency) / (force * travel)).toBeCloseTo(1, 9)
      }),
      { numRuns: runs(1000) },
    )
  })
})

describe('assist', () => {
  it('by oil gives the power that rack force and speed are, whatever the piston', () => {
    fc.assert(
      fc.property(real(0.03, 0.06), real(0.1, 0.8), real(500, 9000), real(0.5, 2), (bore, part, force, turns) => {
        const { power } = hydraulicAssist({ bore, rod: bore * part, force, travel: 0.05, turns, leakage: 0.15 })
        expect(power / (force * 0.05 * turns)).toBeCloseTo(1, 9)
      }),
      { numRuns: runs(1000) },
    )
  })
  it('by an electric pump takes 92 A from 13 V for 7.5 kN at the rack', () => {
    const oil = hydraulicAssist({ bore: 0.042, rod: 0.026, force: 7500, travel: 0.05, turns: 1.25, leakage: 0.15 })
    const { power, current } = steeringPumpPower({ pressure: oil.pressure, flow: oil.needed, pump: 0.6, motor: 0.75, voltage: 13 })
    expect(Math.round(power)).toBe(1198)
    expect(Math.round(current)).toBe(92)
  })
  it('on the column of a 5.0 kN rack takes 33.2 A from 12 V', () => {
    const { torque } = handwheelTorque({ force: 5000, travel: 0.044, efficiency: 0.9, radius: 0.19 })
    expect(columnAssist({ needed: torque, driver: 4, turns: 1, efficiency: 0.55, voltage: 12 }).current).toBeCloseTo(33.2, 1)
  })
})
