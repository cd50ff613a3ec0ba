import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { solveOde } from '../numerics/ode.ts'
import { busEnergy, busVoltageAfter, dischargePower, largestDischargeResistor, timeToClassA } from './bus-discharge.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const bus = fc.tuple(real(61, 1500), real(100, 1e6), real(1e-5, 1e-2))

describe('a bus that empties', () => {
  it('more resistance or more capacitance never empties it sooner', () => {
    fc.assert(
      fc.property(bus, real(1, 10), ([start, resistor, capacitance], more) => {
        const t = timeToClassA({ start, resistor, capacitance })
        expect(timeToClassA({ start, resistor: more * resistor, capacitance })).toBeGreaterThanOrEqual(t)
        expect(timeToClassA({ start, resistor, capacitance: more * capacitance })).toBeGreaterThanOrEqual(t)
      }),
      { numRuns: runs(1000) },
    )
  })
  it('is at 60 V after its time, and the largest resistor takes just the time allowed', () => {
    fc.assert(
      fc.property(bus, ([start, resistor, capacitance]) => {
        const time = timeToClassA({ start, resistor, capacitance })
        expect(busVoltageAfter({ start, resistor, capacitance, time })).toBeCloseTo(60, 8)
        expect(largestDischargeResistor({ start, time, capacitance }) / resistor).toBeCloseTo(1, 9)
      }),
      { numRuns: runs(1000) },
    )
  })
  it('a solver of the circuit finds the same moment, and the resistor has taken what the capacitors gave', () => {
    const [start, resistor, capacitance] = [400, 2635.6, 1e-3]
    const solved = solveOde(
      (_, [u], rate) => {
        rate[0] = -u! / (resistor * capacitance)
        rate[1] = dischargePower({ start: u!, resistor })
      },
      0,
      [start, 0],
      60,
      { relative: 1e-10, absolute: 1e-10, watch: [{ of: (_, [u]) => u! - 60, stop: true }] },
    )!
    expect(solved.times.at(-1)).toBeCloseTo(timeToClassA({ start, resistor, capacitance }), 6)
    const given = busEnergy({ voltage: start, capacitance }) - busEnergy({ voltage: 60, capacitance })
    expect(solved.states.at(-1)![1]).toBeCloseTo(given, 6)
  })
})
