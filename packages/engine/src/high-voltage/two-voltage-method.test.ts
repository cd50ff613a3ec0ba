import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { solveLinear } from '../numerics/linear.ts'
import { solveOde } from '../numerics/ode.ts'
import { insulationPerVolt, leastInsulationResistance } from './insulation-limit.ts'
import { expectedPoleVoltages, insulationFromPoles, insulationFromVoltages, insulationStated, readingWait } from './two-voltage-method.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
/** Resistances spread evenly over decades. */
const decades = (low: number, high: number) => real(low, high).map(x => 10 ** x)

/** Voltage of the body over the negative pole by Kirchhoff's law: the currents through what joins it to the two poles cancel. */
const bodyAt = (bus: number, toNegative: readonly number[], toPositive: readonly number[]): number => {
  const g = (list: readonly number[]): number => list.reduce((sum, r) => sum + 1 / r, 0)
  return (solveLinear(Float64Array.of(g(toNegative) + g(toPositive)), Float64Array.of(bus * g(toPositive))) as Float64Array)[0]!
}
const legs = fc.tuple(real(60, 1000), decades(4, 7), decades(4, 7), decades(6, 8), decades(4, 6))

describe('insulation by two voltages and a resistor', () => {
  it('expects what Kirchhoff’s law gives for the same circuit', () => {
    fc.assert(
      fc.property(legs, ([bus, leg, other, meter, resistor]) => {
        const u = expectedPoleVoltages({ bus, leg, other, meter, resistor })
        const ratio = (a: number, b: number) => expect(a / b).toBeCloseTo(1, 9)
        ratio(u.greater, bodyAt(bus, [leg, meter], [other]))
        ratio(u.lesser, bus - bodyAt(bus, [leg], [other, meter]))
        ratio(u.with, bodyAt(bus, [leg, meter, resistor], [other]))
      }),
      { numRuns: runs(2000) },
    )
  })
  it('returns the smaller leg, whatever the meter and whatever the resistor', () => {
    fc.assert(
      fc.property(legs, ([bus, one, two, meter, resistor]) => {
        const leg = Math.max(one, two),
          other = Math.min(one, two),
          u = expectedPoleVoltages({ bus, leg, other, meter, resistor })
        expect(u.greater).toBeGreaterThanOrEqual(u.lesser * (1 - 1e-12))
        expect(insulationFromVoltages({ bus, greater: u.greater, with: u.with, resistor }) / other).toBeCloseTo(1, 7)
      }),
      { numRuns: runs(2000) },
    )
  })
  it('never reads high from the pole voltages alone, and agrees when the meter draws nothing', () => {
    fc.assert(
      fc.property(legs, ([bus, one, two, meter, resistor]) => {
        const leg = Math.max(one, two),
          other = Math.min(one, two)
        const alone = (m: number): number =>
          insulationFromPoles({ ...expectedPoleVoltages({ bus, leg, other, meter: m, resistor }), resistor })
        expect(alone(meter)).toBeLessThanOrEqual(other * (1 + 1e-7))
        expect(alone(Number.POSITIVE_INFINITY) / other).toBeCloseTo(1, 7)
      }),
      { numRuns: runs(2000) },
    )
  })
  it('never states more than is there, however small the readings', () => {
    fc.assert(
      fc.property(real(60, 1000), decades(4, 11), decades(4, 11), decades(6, 8), decades(4, 6), (bus, one, two, meter, resistor) => {
        const leg = Math.max(one, two),
          other = Math.min(one, two),
          { greater, with: u } = expectedPoleVoltages({ bus, leg, other, meter, resistor })
        const stated = insulationStated({ bus, greater, with: u, resistor })
        expect(stated.resistance).toBeLessThanOrEqual(other * (1 + 1e-6))
        if (stated.only === 0) expect(stated.resistance / other).toBeCloseTo(1, 6)
      }),
      { numRuns: runs(2000) },
    )
  })
  it('a reading is held against the full pack: 1240.1 Ω/V, not the 1388.9 of the day', () => {
    const resistance = insulationFromVoltages({ bus: 360, greater: 232.258, with: 83.1836, resistor: 180e3 })
    expect(insulationPerVolt({ resistance, voltage: 403.2 })).toBeCloseTo(1240.1, 1)
    expect(insulationPerVolt({ resistance, voltage: 360 })).toBeCloseTo(1388.9, 1)
    expect(leastInsulationResistance({ perVolt: 500, voltage: 403.2 })).toBeCloseTo(201.6e3, 6)
  })
  it('after the wait the Y capacitors have settled to within a hundredth: the circuit followed in time', () => {
    const bus = 400,
      [leg, other, meter, c1, c2] = [1e6, 500e3, 10e6, 0.3e-6, 0.6e-6]
    const end = bodyAt(bus, [leg, meter], [other])
    const wait = readingWait({ resistance: 1 / (1 / leg + 1 / meter + 1 / other), capacitance: c1 + c2 })
    const solved = solveOde(
      (_, [u], rate) => {
        rate[0] = ((bus - u!) / other - u! * (1 / leg + 1 / meter)) / (c1 + c2)
      },
      0,
      [0],
      wait,
      { relative: 1e-9, absolute: 1e-9 },
    )
    const left = 1 - solved!.at(wait)[0]! / end
    expect(left).toBeCloseTo(Math.exp(-5), 7)
    expect(left).toBeLessThan(0.01)
  })
})
