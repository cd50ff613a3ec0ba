import { isGap } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { readConversion } from './conversion.ts'
import { salvageEdits, type TesterTable } from './salvage-table.ts'
import { applyEdits } from './text/edit.ts'
import { applySplice } from './text/splice.ts'

const TABLE: TesterTable = {
  rows: 3,
  words: [
    { name: 'Serial number', values: ['A1', 'A2', 'A3'] },
    { name: 'place', values: ['front 1', '', 'front 3'] },
  ],
  columns: [
    { name: 'Capacity', unit: 'Ah', values: [109.3, 108.9, Number.NaN] },
    { name: 'R10s', unit: 'mΩ', values: [2.98, 3.04, 3.1] },
    { name: 'rest_voltage', unit: 'V', values: [22.041, 22.043, 22.04] },
    { name: 'days', unit: 'd', values: [14, 14, 14] },
  ],
}
const START = 'schema: 1\npack:\n  salvage:\n    first: { serial: A2, capacity: 100 Ah }\n'

describe('a table of a module tester', () => {
  it('becomes records: a known serial number is filled in, a new one gets a short name, an empty cell stays a gap', () => {
    const { edits, problems } = salvageEdits(TABLE, { first: 'A2' })
    expect(problems).toEqual([])
    const done = applyEdits(START, edits)
    if (!done.ok) throw new Error(done.problem.what)
    const { model, issues } = readConversion(done.text),
      records = model.pack.salvage
    expect(issues).toEqual([])
    expect(Object.keys(records)).toEqual(['first', 'm02', 'm03'])
    expect(records['first']?.capacity).toMatchObject({ value: 108.9 * 3600, origin: { how: 'measured', note: 'module tester' } })
    expect(records['m02']).toMatchObject({ serial: { value: 'A1' }, resistance: { value: 2.98e-3 }, daysApart: { value: 14 * 86400 } })
    expect(isGap(records['m03']?.capacity)).toBe(true)
    expect(isGap(records['first']?.place)).toBe(true)
  })
  it('is taken back by the inverse of its edits', () => {
    const done = applyEdits(START, salvageEdits(TABLE, { first: 'A2' }).edits)
    if (!done.ok) throw new Error(done.problem.what)
    const back = done.inverse.reduce((text, splice) => applySplice(text, splice) ?? '', done.text)
    expect(back).toBe(START)
  })
  it('says what it cannot read: unknown headings, units that do not fit, rows without a name', () => {
    const { edits, problems } = salvageEdits(
      {
        rows: 3,
        words: [{ name: 'serial', values: ['A1', '', 'A1'] }],
        columns: [
          { name: 'capasity', unit: 'Ah', values: [1, 2, 3] },
          { name: 'capacity', unit: 'V', values: [1, 2, 3] },
          { name: 'insulation', values: [1, 2, 3] },
        ],
      },
      {},
    )
    expect(problems.map(p => [p.column, p.row, p.nearest])).toEqual([
      ['capasity', undefined, 'capacity'],
      ['capacity', undefined, undefined],
      ['insulation', undefined, undefined],
      ['serial', 2, undefined],
      ['serial', 3, undefined],
    ])
    expect(edits).toEqual([{ path: 'pack.salvage.m01.serial', now: 'A1' }])
    expect(salvageEdits({ rows: 1, words: [], columns: [] }, {}).problems[0]?.what).toBe('no column names the modules')
  })
})
