import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { mayOpen, prechargeWindow, weldTestWait } from './contactor-steps.ts'
import { prechargeReaches, prechargeVoltage } from './precharge.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('the steps of the contactors', () => {
  it('a welded precharge contact shows a rise of a tenth at the latest when the weld test ends', () => {
    fc.assert(
      fc.property(real(0.001, 10), constant => {
        const { wait, rise } = weldTestWait({ constant })
        expect(rise).toBeGreaterThan(0.1)
        expect(prechargeVoltage({ final: 1, constant, time: wait })).toBeCloseTo(rise, 12)
      }),
      { numRuns: runs(1000) },
    )
  })
  it('50 ms are enough up to a time constant of 0.47 s', () => {
    expect(prechargeReaches({ threshold: 0.1, final: 1, constant: 0.47 })).toBeLessThan(0.05)
    expect(prechargeReaches({ threshold: 0.1, final: 1, constant: 0.48 })).toBeGreaterThan(0.05)
  })
  it('a precharge with the right resistor and capacitors ends inside its window', () => {
    const { soonest, timeout } = prechargeWindow({ design: 0.5 })
    const at = prechargeReaches({ threshold: 380, final: 400, constant: 0.1669041 })
    expect(at).toBeGreaterThan(soonest)
    expect(at).toBeLessThan(timeout)
  })
  it('what may not be opened at a current may not be opened at more, nor at more voltage', () => {
    fc.assert(
      fc.property(real(-3000, 3000), real(60, 800), real(1, 3), (current, voltage, more) => {
        const part = { forward: 2000, backward: 200, rated: 400 }
        const now = mayOpen({ current, voltage, ...part }).may
        expect(mayOpen({ current: more * current, voltage, ...part }).may).toBeLessThanOrEqual(now)
        expect(mayOpen({ current, voltage: more * voltage, ...part }).may).toBeLessThanOrEqual(now)
      }),
      { numRuns: runs(1000) },
    )
  })
  it('a current that is not a number opens nothing', () => {
    expect(mayOpen({ current: Number.NaN, voltage: 320, forward: 2000, backward: 200, rated: 320 }).may).toBe(0)
  })
})
