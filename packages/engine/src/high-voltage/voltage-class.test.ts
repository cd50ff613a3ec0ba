import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { VOLTAGE_CLASSES, voltageClass } from './voltage-class.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('the voltage class', () => {
  it('never falls when a voltage rises', () => {
    fc.assert(
      fc.property(real(0, 2000), real(0, 1500), real(1, 3), (dc, ac, more) => {
        const c = voltageClass({ dc, ac })
        expect(voltageClass({ dc: more * dc, ac })).toBeGreaterThanOrEqual(c)
        expect(voltageClass({ dc, ac: more * ac })).toBeGreaterThanOrEqual(c)
      }),
      { numRuns: runs(1000) },
    )
  })
  it('refuses what is not a number', () => {
    for (const x of [
      { dc: Number.NaN, ac: 0 },
      { dc: 48, ac: Number.NaN },
    ])
      expect(VOLTAGE_CLASSES[voltageClass(x) as 3]).toContain('out of scope')
  })
})
