import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { solveOde } from '../numerics/ode.ts'
import { busEnergy } from './bus-discharge.ts'
import {
  loadedPrecharge,
  prechargeEnergy,
  prechargeReaches,
  prechargeResistor,
  prechargeStart,
  prechargeVoltage,
  stalledPrechargeEnergy,
} from './precharge.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const circuit = fc.record({ pack: real(60, 1000), resistor: real(10, 500), load: real(50, 1e6), capacitance: real(1e-5, 5e-3) })
/** The circuit followed in time: bus voltage, energy from the pack, energy in the resistor, energy in the load. */
const followed = (c: { pack: number; resistor: number; load: number; capacitance: number }, end: number, threshold = Number.NaN) =>
  solveOde(
    (_, [u], rate) => {
      const i = (c.pack - u!) / c.resistor
      rate[0] = (i - u! / c.load) / c.capacitance
      rate[1] = c.pack * i
      rate[2] = (c.pack - u!) * i
      rate[3] = u! ** 2 / c.load
    },
    0,
    [0, 0, 0, 0],
    end,
    { relative: 1e-9, absolute: 1e-9, watch: Number.isNaN(threshold) ? [] : [{ of: (_, [u]) => u! - threshold }] },
  )!

describe('a precharge', () => {
  it('follows the closed forms with and without a load: a solver of the circuit agrees', () => {
    fc.assert(
      fc.property(circuit, real(0.1, 6), (c, constants) => {
        const { final, constant } = loadedPrecharge(c),
          end = constants * constant
        expect(prechargeVoltage({ final, constant, time: end }) / followed(c, end).at(end)[0]!).toBeCloseTo(1, 6)
      }),
      { numRuns: runs(400) },
    )
  })
  it('loses no energy: what the pack gave is in the capacitors, the resistor and the load', () => {
    fc.assert(
      fc.property(circuit, real(0.1, 6), (c, constants) => {
        const time = constants * c.resistor * c.capacitance,
          [u, given, lost, used] = followed(c, time).at(time) as unknown as [number, number, number, number]
        expect((busEnergy({ voltage: u, capacitance: c.capacitance }) + lost + used) / given).toBeCloseTo(1, 6)
        const [, , alone] = followed({ ...c, load: Number.POSITIVE_INFINITY }, time).at(time) as unknown as [number, number, number]
        expect(prechargeEnergy({ ...c, time }) / alone).toBeCloseTo(1, 6)
      }),
      { numRuns: runs(400) },
    )
  })
  it('reaches 324 V at 0.20723 s through a load of 900 Ω, and never 95 % of the pack', () => {
    const c = { pack: 400, resistor: 100, load: 900, capacitance: 1e-3 },
      { final, constant } = loadedPrecharge(c)
    expect(followed(c, 1, 324).crossings[0]!.time).toBeCloseTo(prechargeReaches({ threshold: 324, final, constant }), 7)
    expect(prechargeReaches({ threshold: 0.95 * 400, final, constant })).toBe(Number.POSITIVE_INFINITY)
    expect(followed(c, 10, 380).crossings).toEqual([])
  })
  it('the largest resistor just makes it, and more resistance is never quicker', () => {
    fc.assert(
      fc.property(real(0.1, 5), real(1e-5, 5e-3), real(0.5, 0.999), real(1, 10), (time, capacitance, share, more) => {
        const resistor = prechargeResistor({ time, capacitance, share })
        const when = (r: number): number => prechargeReaches({ threshold: share * 400, final: 400, constant: r * capacitance })
        expect(when(resistor) / time).toBeCloseTo(1, 9)
        expect(when(more * resistor)).toBeGreaterThanOrEqual(when(resistor) * (1 - 1e-12))
      }),
      { numRuns: runs(1000) },
    )
  })
  it('on a shorted bus a timeout of 1 s puts 12 times the energy of a precharge into the resistor', () => {
    const stalled = stalledPrechargeEnergy({ pack: 400, resistor: 166.9041, timeout: 1, tries: 1 })
    expect(stalled / prechargeEnergy({ pack: 400, capacitance: 1e-3, resistor: 166.9041, time: 0.5 })).toBeCloseTo(12, 1)
    expect(stalled).toBeCloseTo(prechargeStart({ pack: 400, resistor: 166.9041 }).power, 9)
  })
})
