import { isFigure, type Table, type Value } from '@ampwright/engine'
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
  it('adds up: as weighed, less what came out, plus what went in, on each axle and in all; stripped on the scales, from there', () => {
    const isStripped = t.rows.some(r => r.name === 'stripped as weighed')
    expect(isStripped).toBe(car === 'wren' || car === 'otter')
    const sum = t.rows.some(r => r.name === 'finished by the parts alone') ? 'finished by the parts alone' : 'finished at kerb'
    expect(sum === 'finished at kerb').toBe(car !== 'otter')
    for (const key of ['mass', 'front', 'rear']) {
      const before = isStripped ? cell(t, 'stripped as weighed', key) : cell(t, 'donor as weighed', key) - cell(t, 'all taken out', key)
      expect(before + cell(t, 'all put in', key)).toBeCloseTo(cell(t, sum, key), 9)
    }
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

describe('the stripped car on the scales', () => {
  const SCALES = /^ {2}stripped: .*\n/m,
    wren = textOf('wren'),
    before = assessText(wren.replace(SCALES, ''), { bands: true }).assessment,
    after = assessText(wren, { bands: true }).assessment
  it('is what the car is reckoned from: 336 and 271 kg and all that goes in, known to less', () => {
    expect(after.figures.get('ledger.kerb')?.value).toBeCloseTo(
      336 + 271 + cell(after.tables.get('mass-ledger.things') as Table, 'all put in', 'mass'),
      9,
    )
    expect(after.halves.get('ledger.kerb')).toBeLessThan(before.halves.get('ledger.kerb') as number)
    expect(after.tables.get('finished.unsure')?.rows.some(r => r.name.endsWith(', out'))).toBe(false)
    expect(before.tables.get('finished.unsure')?.rows.some(r => r.name.endsWith(', out'))).toBe(true)
  })
  it('needs no mass of what came out; the height of the centre of mass still does', () => {
    const gone = (text: string): string => text.replace('exhaust: { mass: 16 ± 0.5 kg, ', 'exhaust: { '),
      of = (text: string, id: string): boolean => assessText(gone(text)).assessment.figures.has(id)
    expect(gone(wren)).not.toBe(wren)
    expect(of(wren, 'ledger.kerb')).toBe(true)
    expect(of(wren.replace(SCALES, ''), 'ledger.kerb')).toBe(false)
    expect(of(wren, 'stance.height')).toBe(false)
  })
  it('half read is a gap by name, and nothing falls back to the donor car', () => {
    const { assessment } = assessText(wren.replace(SCALES, '  stripped: { front: 336 kg }\n'))
    expect(assessment.figures.has('ledger.kerb')).toBe(false)
    expect(assessment.gaps.map(g => g.path)).toContain('fit.stripped.rear')
  })
  it('on wheels by wheel scales gives the wheels of the finished car', () => {
    // Reckoned from its parts, not from the scales it stood on when it was finished.
    const otter = textOf('otter').replace(/, reckoned-front: .* kg, reckoned-rear: .* kg \}/, ' }'),
      { figures } = assessText(otter).assessment,
      worked = (id: string): number => figures.get(id)?.value as number
    expect(worked('side.front-left') + worked('side.front-right')).toBeCloseTo(worked('ledger.front'), 9)
    expect(worked('side.left-share')).toBeGreaterThan(0.48)
    expect(worked('side.left-share')).toBeLessThan(0.52)
    // As it came it was weighed by axles: of left and right nothing was known.
    expect(assessText(otter.replace(SCALES, '')).assessment.figures.has('side.left-share')).toBe(false)
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
