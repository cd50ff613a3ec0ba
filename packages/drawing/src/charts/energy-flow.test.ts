import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { faults, readSvg } from '../../../../tests/drawn.ts'
import type { Page } from '../picture.ts'
import { addingUp, energyFlow } from './energy-flow.ts'

const page: Page = { width: 600, units: () => ({ unit: 'kWh', fromSI: v => v / 3.6e6 }) }
const table = (...rows: readonly (readonly [string, number, number])[]) => ({
  id: 'trip.energy@x',
  label: 'Where the energy went',
  columns: [],
  rows: rows.map(([name, energy, share]) => ({ name, cells: { energy, share } })),
})

describe('the flow of energy', () => {
  it('shows what the shares leave over', () =>
    expect(energyFlow(table(['Air', 6e6, 0.6], ['Rolling', 3e6, 0.3]), page).text).toContain('not accounted for 10.0\u202f%'))
  it('shows what a descent gave back, on the side of the charge', () => {
    const picture = energyFlow(table(['Air', 9e6, 0.9], ['Rolling', 3e6, 0.3], ['Height gained', -2e6, -0.2]), page)
    expect(picture.text).toContain('Given back: Height gained −20.0\u202f%')
    expect(
      readSvg(picture.svg)
        .texts.map(t => t.text)
        .join('\n'),
    ).toContain('given back 0.56\u202fkWh (Height gained −20.0\u202f%)')
    expect(faults(picture.svg)).toEqual([])
  })
  it('makes every branch as thick as its share', () => {
    const blocks = readSvg(energyFlow(table(['Air', 6e6, 0.6], ['Rolling', 4e6, 0.4]), page).svg).elements.filter(
      e => e.of('class') === 'drawing-flow',
    )
    const [trunk, air, rolling] = blocks.map(b => b.at('height')) as [number, number, number]
    expect(air / rolling).toBeCloseTo(1.5, 2)
    expect(air + rolling).toBeCloseTo(trunk, 1)
  })
  it('draws a table without a row that says anything', () => expect(faults(energyFlow(table(), page).svg)).toEqual([]))
  it('keeps everything inside and apart, whatever the names and shares', () => {
    const name = fc
        .array(fc.constantFrom('lost', 'in', 'gears', 'under', 'load', 'rolling', 'battery'), { minLength: 1, maxLength: 9 })
        .map(w => w.join(' ')),
      share = fc.double({ min: -0.3, max: 1, noNaN: true })
    fc.assert(
      fc.property(fc.array(fc.tuple(name, share), { maxLength: 12 }), fc.integer({ min: 0, max: 1200 }), (rows, width) => {
        const all = table(...rows.map(([n, s]): [string, number, number] => [n, s * 1e7, s]))
        expect(faults(energyFlow(all, { ...page, width }).svg)).toEqual([])
      }),
      { numRuns: runs(1000) },
    )
  })
  it('rounds shares so that they add up to what their sum rounds to, each within a tenth', () =>
    fc.assert(
      fc.property(fc.array(fc.double({ min: -20, max: 100, noNaN: true }), { minLength: 1, maxLength: 12 }), values => {
        const shown = addingUp(values).map(v => Math.round(Number(v.replace('−', '-')) * 10)),
          sum = values.reduce((a, b) => a + b, 0)
        expect(Math.abs(shown.reduce((a, b) => a + b, 0) - sum * 10)).toBeLessThanOrEqual(0.5 + 1e-6)
        shown.forEach((v, i) => expect(Math.abs(v - (values[i] as number) * 10)).toBeLessThan(1 + 1e-9))
      }),
      { numRuns: runs(2000) },
    ))
})
