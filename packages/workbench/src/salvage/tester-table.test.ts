import { applyEdits } from '@ampwright/conversion'
import { writeCsv } from '@ampwright/exchange'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { CARS, conversionOf, textOf } from '../../../../tests/cars.ts'
import { runs } from '../../../../tests/counts.ts'
import { moduleTable } from './module-table.ts'
import { testerTable } from './tester-table.ts'

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text),
  modelOf = (text: string) => conversionOf(text).model,
  lapwing = modelOf(textOf('lapwing'))
const places = (text: string) => testerTable(bytes(text), lapwing).faults.map(f => [f.line, f.row, f.column, f.what])

describe('a tester’s table', () => {
  it.each(CARS)('written from the modules of %s and read back changes nothing', car => {
    const model = modelOf(textOf(car))
    for (const separator of ['\t', ',', ';'] as const) {
      const text = moduleTable(model, separator),
        reading = testerTable(bytes(text), model)
      if (text === '') expect(Object.keys(model.pack.salvage)).toEqual([])
      else expect(reading).toEqual({ edits: [], faults: [], more: 0, rows: Object.keys(model.pack.salvage).length })
    }
  })
  it('written from any lot and pasted back changes nothing, whatever the numbers', () => {
    const reading = fc.option(fc.integer({ min: 1000, max: 999_999 }), { nil: undefined })
    const rows = fc.array(fc.tuple(reading, reading, reading, reading), { minLength: 1, maxLength: 8 })
    fc.assert(
      fc.property(rows, lot => {
        const records = lot.map(([q, r, u, iso], i) => {
          const typed = [
            `serial: S-${i}`,
            ...(q ? [`capacity: ${q / 1000} Ah (measured)`] : []),
            ...(r ? [`resistance: ${r / 10_000} mΩ`] : []),
            ...(u ? [`rest-voltage: ${u / 10_000} V`] : []),
            ...(iso ? [`insulation: ${iso / 100} MΩ`] : []),
          ]
          return `    m${i}: { ${typed.join(', ')} }`
        })
        const model = modelOf(`schema: 1\npack:\n  salvage:\n${records.join('\n')}\n`)
        expect(testerTable(bytes(moduleTable(model)), model)).toMatchObject({ edits: [], faults: [] })
      }),
      { numRuns: runs(2000) },
    )
  })
  it('pasted from a spreadsheet fills what is missing and leaves the rest as it was', () => {
    const filled = moduleTable(lapwing).replace(/(PM-40692\t[^\t]*\t[^\t]*\t[^\t]*)\t[^\r]*/, '$1\t109.2\t3.01\t22.041\t22.037\t14\t440'),
      { edits, faults } = testerTable(bytes(filled), lapwing)
    expect(faults).toEqual([])
    expect(edits.map(e => `${String(e.path)} ${String(e.now)}`)).toEqual([
      'pack.salvage.m14.capacity 109.2 Ah (measured, module tester)',
      'pack.salvage.m14.resistance 3.01 mΩ (measured, module tester)',
      'pack.salvage.m14.rest-voltage 22.041 V (measured, module tester)',
      'pack.salvage.m14.rest-voltage-later 22.037 V (measured, module tester)',
      'pack.salvage.m14.days-apart 14 d (measured, module tester)',
      'pack.salvage.m14.insulation 440 MΩ (measured, module tester)',
    ])
    const done = applyEdits(textOf('lapwing'), edits)
    expect(done.ok && testerTable(bytes(filled), modelOf(done.text)).edits).toEqual([])
  })
  it('takes a measured value over an assumed one, though the number be the same', () => {
    const model = modelOf('schema: 1\npack:\n  salvage:\n    a: { serial: A, capacity: 100 Ah (assumed) }\n')
    expect(testerTable(bytes('serial,capacity [Ah]\nA,100\n'), model).edits).toHaveLength(1)
  })
  it('names every fault with its line, its row and its column: headings, units, serials and cells at once', () => {
    expect(places('# bench 2\nserial\tcapasity [Ah]\tresistance [V]\tinsulation [MΩ]\n\nA\tx\t2\tmany\nA\ty\t3\t400\n')).toEqual([
      [2, undefined, 'capasity', 'a heading that is not known'],
      [2, undefined, 'resistance', 'a unit that does not fit'],
      [4, 1, 'insulation', 'a cell is no number'],
      [5, 2, 'serial', 'a serial number that stands twice'],
    ])
  })
  it('names a table without headings, and one that is empty', () => {
    expect(places('A,1,2\nB,2,3\n')[0]).toEqual([1, undefined, '', 'the first row holds a number'])
    expect(places('')[0]?.[3]).toBe('the file holds no table')
  })
  it('takes over nothing where anything is wrong', () => {
    const text = writeCsv([
      { name: 'serial', values: ['PM-40211', ''] },
      { name: 'capacity', unit: 'Ah', values: Float64Array.of(95, 96) },
    ])
    const { edits, faults } = testerTable(bytes(text), lapwing)
    expect(edits).toEqual([])
    expect(faults.map(f => [f.line, f.column])).toEqual([[3, 'serial']])
  })
})
