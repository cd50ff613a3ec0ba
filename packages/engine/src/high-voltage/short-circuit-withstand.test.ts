import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { COPPER } from './conductor-metals.ts'
import { celsius, MM2 } from './conductor-symbols.ts'
import {
  cableWithstand,
  faultTemperature,
  faultTemperatures,
  type Insulation,
  sectionForFault,
  tabledWithstand,
  withstandConstant,
} from './short-circuit-withstand.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const copper = { constant: COPPER.constant.value, reciprocal: COPPER.reciprocal.value }
const KINDS: readonly Insulation[] = ['PVC 70 °C', 'PVC 90 °C', 'rubber 60 °C', 'XLPE or EPR 90 °C']

describe('a conductor heated without loss', () => {
  it('has the tabulated constants of BS 7671, Table 43.1, to the figure printed', () => {
    for (const kind of KINDS) {
      const { before, after } = faultTemperatures(kind)
      const k = withstandConstant({ ...copper, before: before.value, after: after.value })
      expect(Math.round(k / 1e6)).toBe(tabledWithstand(kind, 35 * MM2).value / 1e6)
    }
    expect(tabledWithstand('PVC 70 °C', 400 * MM2).value).toBe(103e6)
    expect(tabledWithstand('XLPE or EPR 90 °C', 400 * MM2).value).toBe(143e6)
  })
  it('has the constant that the properties of copper give: K = √(Qc·(β + 20)/ρ20)', () => {
    expect(Math.sqrt((COPPER.heat.value * (234.5 + 20)) / COPPER.resistivity.value) / COPPER.constant.value).toBeCloseTo(1, 2)
  })
  it('ends a fault at the temperature its constant was made for', () => {
    fc.assert(
      fc.property(real(0, 120), real(1, 300), real(1, 240), (before, rise, mm2) => {
        const from = celsius(before),
          to = from + rise,
          constant = withstandConstant({ ...copper, before: from, after: to }),
          fault = cableWithstand({ constant, section: mm2 * MM2 })
        expect(faultTemperature({ ...copper, before: from, section: mm2 * MM2, fault })).toBeCloseTo(to, 8)
      }),
      { numRuns: runs(500) },
    )
  })
  it('heats as copper whose resistance rises on the way does, summed in small steps', () => {
    // 35 mm², 6 kA for 0.4 s from 90 °C: J²·ρ(T)/c in 100 000 steps, with K² put in for c·(β + 20)/ρ20.
    let t = 90
    for (let i = 0; i < 100_000; i++) t += ((6000 / 35) ** 2 * (234.5 + t) * (0.4 / 100_000)) / 226 ** 2
    expect(faultTemperature({ ...copper, before: celsius(90), section: 35 * MM2, fault: 6000 ** 2 * 0.4 })).toBeCloseTo(celsius(t), 2)
  })
  it('needs the section that just stands the fault, and is never hotter with a larger one', () => {
    fc.assert(
      fc.property(real(100, 20e3), real(1e-3, 5), real(80e6, 180e6), (current, time, constant) => {
        const section = sectionForFault({ current, time, constant })
        expect(cableWithstand({ constant, section }) / (current ** 2 * time)).toBeCloseTo(1, 9)
        const end = (s: number) => faultTemperature({ ...copper, before: celsius(90), section: s, fault: current ** 2 * time })
        expect(end(1.1 * section)).toBeLessThan(end(section))
      }),
      { numRuns: runs(500) },
    )
  })
})
