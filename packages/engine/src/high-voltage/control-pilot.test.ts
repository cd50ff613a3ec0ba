import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { cableCurrent, PILOT_LOADS, PILOT_STATES, pilotCurrent, pilotDuty, pilotState, pilotVoltage } from './control-pilot.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('the control pilot', () => {
  it('a duty cycle made for a current offers that current again', () => {
    fc.assert(
      fc.property(real(6, 51), real(52.51, 80), (low, high) => {
        for (const current of [low, high]) expect(pilotCurrent({ duty: pilotDuty({ current }) }).current).toBeCloseTo(current, 9)
      }),
      { numRuns: runs(1000) },
    )
  })
  it('between 51 and 52.5 A no duty cycle says the current: less is offered, never more', () => {
    fc.assert(
      fc.property(real(51.001, 52.5), current => {
        const offered = pilotCurrent({ duty: pilotDuty({ current }) }).current
        expect(offered).toBeLessThanOrEqual(current)
        expect(offered).toBeGreaterThan(current - 2)
      }),
      { numRuns: runs(200) },
    )
  })
  it('a steady pilot, one near nothing and one at 5 % offer no current of themselves', () => {
    for (const duty of [0, 0.02, 0.05, 0.075, 0.98, 1, Number.NaN]) expect(pilotCurrent({ duty }).current).toBe(0)
    expect(pilotCurrent({ duty: 0.05 }).digital).toBe(1)
    expect(pilotCurrent({ duty: pilotDuty({ current: 5 }) }).current).toBe(0)
  })
  it('every car’s resistance is read as its own state, with a diode of any usual drop', () => {
    fc.assert(
      fc.property(real(0.4, 0.8), diode => {
        const states = Object.values(PILOT_LOADS).map(load => pilotState({ voltage: pilotVoltage({ load: load.value, diode }) }))
        expect(states.map(s => PILOT_STATES[s as 2].charAt(0))).toEqual(['B', 'C', 'D'])
      }),
      { numRuns: runs(1000) },
    )
  })
  it('a cable code that is missing, shorted or not a number lets nothing charge', () => {
    for (const code of [0, Number.POSITIVE_INFINITY, Number.NaN]) expect(cableCurrent({ code, phases: 1 })).toBe(0)
  })
})
