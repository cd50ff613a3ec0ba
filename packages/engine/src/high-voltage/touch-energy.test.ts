import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { solveOde } from '../numerics/ode.ts'
import { energyAboveClassA, largestYCapacitance, lowEnergyVoltage, touchEnergy } from './touch-energy.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('the energy of a touch', () => {
  it('is what flows through the body when the circuit is followed in time, the pack feeding it', () => {
    const [first, second, voltage, body] = [0.3e-6, 0.6e-6, 400, 1000]
    const { balanced, worst } = touchEnergy({ first, second, voltage })
    for (const [start, energy] of [
      [voltage / 2, balanced],
      [voltage, worst],
    ] as const) {
      // State: voltage of the body's node over the negative pole, which is touched; energy in the body so far.
      const solved = solveOde(
        (_, [u], rate) => {
          rate[0] = -u! / body / (first + second)
          rate[1] = u! ** 2 / body
        },
        0,
        [start, 0],
        20 * body * (first + second),
        { relative: 1e-10, absolute: 1e-12 },
      )
      expect(solved!.states.at(-1)![1]! / energy).toBeCloseTo(1, 7)
    }
  })
  it('with the most capacitance is just the limit, however it is shared between the poles', () => {
    fc.assert(
      fc.property(real(60, 1500), real(0, 1), (voltage, part) => {
        const c = largestYCapacitance({ voltage })
        expect(touchEnergy({ first: part * c, second: (1 - part) * c, voltage }).worst).toBeCloseTo(0.2, 9)
      }),
      { numRuns: runs(1000) },
    )
  })
  it('a capacitor at its low-energy voltage holds just the limit above 60 V', () => {
    fc.assert(
      fc.property(real(1e-7, 1e-2), capacitance => {
        expect(energyAboveClassA({ capacitance, voltage: lowEnergyVoltage({ capacitance }) })).toBeCloseTo(0.2, 8)
      }),
      { numRuns: runs(1000) },
    )
  })
})
