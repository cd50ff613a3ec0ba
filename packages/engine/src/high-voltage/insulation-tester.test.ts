import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { liveTesterVoltage, testerPass, testerSetting } from './insulation-tester.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('the insulation tester', () => {
  it('is set to the working voltage or more, and never asks for less at a higher one', () => {
    fc.assert(
      fc.property(real(0, 1500), real(0, 1500), (a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)]
        expect(testerSetting({ voltage: low })).toBeGreaterThanOrEqual(low)
        expect(testerSetting({ voltage: low })).toBeLessThanOrEqual(testerSetting({ voltage: high }))
        expect(testerPass({ voltage: low })).toBeLessThanOrEqual(testerPass({ voltage: high }))
      }),
      { numRuns: runs(1000) },
    )
  })
  it('has no setting above 1000 V, nor for what is not a number', () => {
    for (const voltage of [1001, Number.NaN]) expect(testerSetting({ voltage })).toBe(Number.POSITIVE_INFINITY)
  })
  it('on one pole of a full pack of 403.2 V puts more than 900 V between the other pole and the body', () => {
    expect(liveTesterVoltage({ pack: 403.2, setting: testerSetting({ voltage: 403.2 }) })).toBeGreaterThan(900)
  })
})
