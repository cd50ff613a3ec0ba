import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { readQuantity, readWorkshop, type ShelfCar } from '@ampwright/conversion'
import { describe, expect, it } from 'vitest'
import { root } from '../../../../tests/cars.ts'
import { lookUps } from '../look-ups.ts'
import { shelfFound } from './found.ts'
import { pieceName } from './piece-name.ts'
import { priceText, withPrice } from './price-edit.ts'
import { pricePlace } from './price-place.ts'
import { type ShelfLine, shelfView } from './shelf-view.ts'

const SAMPLE = readWorkshop(readFileSync(join(root, 'samples/ferry-lane.workshop.yaml')), { lookUps: lookUps() })
const LAPWING: ShelfCar = { id: 'a'.repeat(16), name: 'Lapwing roadster', deleted: false }
const VIEW = shelfView(SAMPLE, { cars: [LAPWING], today: '2027-01-01' })
const piece = (key: string): ShelfLine => VIEW.pieces.find(p => p.key === key) as ShelfLine

describe('the shelf of the sample workshop', () => {
  it('holds only records of the catalogue and plain words, without a problem', () => {
    expect(SAMPLE.issues).toEqual([])
    expect(VIEW.pieces.filter(p => p.unknown)).toEqual([])
  })
  it('says what each piece is, in the words of the catalogue or its own', () => {
    expect(piece('motor-saloon')).toMatchObject({
      class: 'motor-pm',
      label: expect.stringMatching(/^[A-Z].*motor/),
      price: '1\u202f350\u202f€',
    })
    expect(piece('coupler-blank')).toMatchObject({ label: 'Coupler hub, blank, 25 mm bore, to be splined', pieces: 2 })
    expect(piece('coupler-blank').class).toBeUndefined()
  })
  it('says whom a piece is kept for, and where that car is not there', () => {
    expect(piece('modules-saloon').reserved).toEqual({ car: 'Lapwing roadster', id: LAPWING.id, missing: false })
    expect(piece('dc-dc-2300').reserved).toEqual({ car: 'Wren hatchback', missing: true })
    // Where nobody knows the cars, none is said to be gone.
    expect(shelfView(SAMPLE).pieces.find(p => p.key === 'dc-dc-2300')?.reserved).toEqual({ car: 'Wren hatchback', missing: false })
  })
  it('says that a quote has lapsed the day after its last day', () => {
    const lapsed = (today: string): unknown => shelfView(SAMPLE, { today }).pieces.find(p => p.key === 'charger-offer')?.lapsed
    expect([lapsed('2026-12-31'), lapsed('2027-01-01')]).toEqual([false, true])
  })
  it('is searched by words, by class, and by whom a piece is kept for', () => {
    const keys = (search: Parameters<typeof shelfFound>[1]): readonly string[] => shelfFound(VIEW.pieces, search).map(p => p.key)
    expect(keys({ words: 'RACK bench' })).toEqual(['charger-6600'])
    expect(keys({ words: 'em-20417' })).toEqual(['motor-saloon'])
    expect(keys({ words: 'wren' })).toEqual(['dc-dc-2300'])
    expect(keys({ class: 'charger' })).toEqual(['charger-6600', 'charger-offer'])
    expect(keys({ class: 'none' })).toEqual(['coupler-blank'])
    expect(keys({ kept: 'free' })).not.toContain('dc-dc-2300')
    expect(keys({ kept: { car: 'Lapwing roadster' } })).toEqual(['modules-saloon'])
    expect(VIEW.classes.reduce((n, c) => n + c.count, 0)).toBe(VIEW.pieces.length)
  })
})

describe('the price of a piece in a conversion', () => {
  it('has its place beside the part; of a whole drive unit with the motor; of a fuse among other parts nowhere', () => {
    expect(pricePlace('drive.units.main.motor.part')?.path).toBe('drive.units.main.motor.price')
    expect(pricePlace('charging.charger.part')?.path).toBe('charging.charger.price')
    expect(pricePlace('donor.added.bms.part')?.path).toBe('donor.added.bms.price')
    expect(pricePlace('pack.module.part')?.path).toBe('pack.module.price')
    expect(pricePlace('pack.limits.fuse-part')).toBeUndefined()
  })
  it('says when it was paid or quoted, and reads back as the same price', () => {
    const text = priceText(piece('motor-saloon')) ?? '',
      read = readQuantity(text, 'money')
    expect(text).toBe('1350 € (measured, paid 2026-05-22, breaker, one wrecked saloon, shelf motor-saloon)')
    expect(read.ok && [read.quantity.value, read.quantity.origin?.how]).toEqual([1350, 'measured'])
    expect(priceText(piece('charger-offer'))).toBe('360 ± 20 € (datasheet, quoted 2026-09-02, parts dealer, shelf charger-offer)')
    expect(priceText({ key: 'a' })).toBeUndefined()
    expect(priceText({ key: 'a', priceTyped: '5 €' })).toBe('5 €')
  })
  it('takes the place of what taking out typed values would do to it', () => {
    const at = { path: 'drive.units.main.motor.price', label: 'Price' }
    expect(
      withPrice(
        [
          { path: 'x', now: 'y' },
          { path: at.path, now: null },
        ],
        at,
        '5 €',
      ),
    ).toEqual([
      { path: 'x', now: 'y' },
      { path: at.path, now: '5 €' },
    ])
  })
})

it('a new piece is named after its record or its words, and never twice the same', () => {
  expect(pieceName('motor-pm-100kw@1', [])).toBe('motor-pm-100kw')
  expect(pieceName('motor-pm-100kw@1', ['motor-pm-100kw', 'motor-pm-100kw-2'])).toBe('motor-pm-100kw-3')
  expect(pieceName('Kupplungsnabe, groß', [])).toBe('kupplungsnabe-gro')
  expect([pieceName('…', []), pieceName('Note', [])]).toEqual(['piece', 'note-piece'])
})
