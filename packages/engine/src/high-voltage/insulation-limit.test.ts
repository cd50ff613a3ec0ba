import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import {
  INSULATION_PER_VOLT,
  insulationPerVolt,
  insulationTarget,
  leastInletInsulation,
  leastInsulationResistance,
  singleFaultCurrent,
} from './insulation-limit.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('the least insulation resistance', () => {
  it('lets the same current through one fault at any voltage: 10 mA at 100 Ω/V, 2 mA at 500', () => {
    fc.assert(
      fc.property(real(30, 1500), voltage => {
        for (const [kind, current] of [
          ['DC apart', 0.01],
          ['AC apart', 0.002],
          ['joined', 0.002],
          ['joined, AC protected', 0.01],
        ] as const) {
          const perVolt = INSULATION_PER_VOLT[kind].value,
            resistance = leastInsulationResistance({ perVolt, voltage })
          expect(singleFaultCurrent({ resistance, voltage })).toBeCloseTo(current, 12)
          expect(insulationPerVolt({ resistance, voltage })).toBeCloseTo(perVolt, 9)
        }
      }),
      { numRuns: runs(1000) },
    )
  })
  it('is never above what an inlet must show, nor above what a new build aims at', () => {
    fc.assert(
      fc.property(real(0, 5e6), limit => {
        expect(leastInletInsulation({ limit })).toBeGreaterThanOrEqual(limit)
        expect(insulationTarget({ limit })).toBeGreaterThanOrEqual(leastInletInsulation({ limit }))
      }),
      { numRuns: runs(1000) },
    )
  })
})
