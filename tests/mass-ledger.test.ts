import { type Table, type Value, isFigure } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { assessText, CARS, textOf } from './cars.ts'

const cell = (t: Table, row: string, key: string): number => {
  const c = t.rows.find(r => r.name === row)?.cells[key]
  if (typeof c !== 'object' || typeof c.value !== 'number') throw new Error(`${row}, ${key}: no number`)
  return c.value
}
const tables = (text: string): ReadonlyMap<string, Table> => assessText(text).assessment.tables
const ledgerOf = (text: string): Table => tables(text).get('mass-ledger.things') as Table

describe.each(CARS)('the ledger of the %s', car => {
  const t = ledgerOf(textOf(car))
  it('adds up: as weighed, less what came out, plus what went in, on each axle and in all', () => {
    for (const key of ['mass', 'front', 'rear'])
      expect(cell(t, 'donor as weighed', key) - cell(t, 'all taken out', key) + cell(t, 'all put in', key)).toBeCloseTo(
        cell(t, 'finished at kerb', key),
        9,
      )
  })
  it('puts every thing on its axles and sides without losing any of it', () => {
    const things = t.rows.filter(r => r.cells['way'] === 'taken out' || r.cells['way'] === 'put in')
    expect(things.length).toBeGreaterThan(8)
    for (const { name } of things) {
      expect(cell(t, name, 'front') + cell(t, name, 'rear'), name).toBeCloseTo(cell(t, name, 'mass'), 9)
      expect(cell(t, name, 'left') + cell(t, name, 'right'), name).toBeCloseTo(cell(t, name, 'mass'), 9)
    }
  })
  it('says of every thing how its mass is known', () => {
    for (const { name, cells } of t.rows.filter(r => r.cells['way'] === 'put in')) expect(cells['known'], name).toMatch(/\w/)
  })
})

describe('the ledger', () => {
  it('says the least certain part of what a mass is made of', () => {
    const known = (row: string): unknown => ledgerOf(textOf('lapwing')).rows.find(r => r.name === row)?.cells['known']
    expect(known('motor of main, in')).toBe('measured, hanging scale')
    // Modules were weighed, what holds them was not.
    expect(known('battery box front, in')).toBe('not said how')
  })
  it('keeps its rows when one mass is missing', () => {
    const text = textOf('lapwing').replace('wiring: { mass: 5.6 ± 1 kg, ', 'wiring: { ')
    const t = ledgerOf(text)
    expect(t.rows.find(r => r.name === 'wiring, in')?.cells['mass']).toBeUndefined()
    expect(cell(t, 'charger, in', 'mass')).toBe(9)
    expect(t.rows.some(r => r.name === 'finished at kerb')).toBe(false)
  })
  it('tells two things of one name apart', () => {
    const text = textOf('lapwing').replace('    wiring: {', '    motor of main: { mass: 1 kg, x: 0 mm, y: 0 mm, z: 500 mm }\n    wiring: {')
    const names = ledgerOf(text).rows.map(r => r.name)
    expect(names).toContain('motor of main, in 2')
    expect(new Set(names).size).toBe(names.length)
  })
})

describe('wheels in every load case', () => {
  const t = tables(textOf('lapwing')).get('wheel-load.wheels') as Table
  it('add up to the laden car, each side of an axle carrying half of what came on', () => {
    for (const { name, cells } of t.rows)
      expect(
        ['frontLeft', 'frontRight', 'rearLeft', 'rearRight'].reduce((sum, k) => sum + (cells[k] as Value).value, 0),
        name,
      ).toBeCloseTo(cell(t, name, 'total'), 9)
    expect(cell(t, 'two-up', 'rearLeft') - cell(t, 'at kerb', 'rearLeft')).toBeCloseTo(
      cell(t, 'two-up', 'rearRight') - cell(t, 'at kerb', 'rearRight'),
      9,
    )
    expect(t.rows.slice(1).every(r => Object.values(r.cells).every(c => typeof c === 'object' && isFigure(c)))).toBe(true)
  })
  it('are not told of a car that was weighed by axles', () => expect(tables(textOf('wren')).has('wheel-load.wheels')).toBe(false))
})
