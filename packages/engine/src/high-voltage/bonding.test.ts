import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { BOND_LIMIT, bondResistance, doubleFaultVoltage, largestBondPair } from './bonding.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('bonds', () => {
  it('together at the most resistance leave just 60 V, however it is shared', () => {
    fc.assert(
      fc.property(real(10, 10e3), real(0, 1), (current, part) => {
        const both = largestBondPair({ current })
        expect(doubleFaultVoltage({ current, first: part * both, second: (1 - part) * both })).toBeCloseTo(60, 9)
      }),
      { numRuns: runs(1000) },
    )
  })
  it('that each just meet their limit leave 300 V at 1500 A', () => {
    const bond = BOND_LIMIT.value
    expect(doubleFaultVoltage({ current: 1500, first: bond, second: bond })).toBeCloseTo(300, 9)
    expect(2 * bond).toBeGreaterThan(largestBondPair({ current: 1500 }))
  })
  it('read with any current show the same resistance', () => {
    fc.assert(
      fc.property(real(0.2, 25), real(1e-4, 1), (current, resistance) => {
        expect(bondResistance({ drop: current * resistance, current }) / resistance).toBeCloseTo(1, 12)
      }),
      { numRuns: runs(200) },
    )
  })
})
