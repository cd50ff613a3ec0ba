import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { readWorkshop } from '@ampwright/conversion'
import Database from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { clock, emptyFolder, madeOf, storeIn } from '../../../tests/stores.ts'
import { hashOf } from './contents.ts'
import { databaseIn, openDatabase } from './database.ts'
import { STEPS } from './migrations.ts'
import type { Store } from './store.ts'

const CAR = 'schema: 1\ncar: Wren\n'
const HASH = hashOf(Buffer.from(CAR))
const SHELF = 'schema: 1\nshelf:\n  motor: { part: motor-pm-100kw@1, serial: EM-1, price: 900 € }\n  pump: { what: pump }\n'
const filled = (): { store: Store; wren: string; otter: string } => {
  const store = storeIn(emptyFolder()),
    [wren, otter] = [madeOf(store, CAR), madeOf(store, CAR.replace('Wren', 'Otter'))]
  store.beginWorkshop(SHELF, 'made')
  return { store, wren, otter }
}
const piece = (store: Store, key: string) => readWorkshop(store.workshop().text).shelf.find(p => p.key === key)

describe('the shelf of a workshop', () => {
  it('is empty at first, and grows by edits, each a revision', () => {
    const store = storeIn(emptyFolder())
    expect(store.workshop()).toEqual({ revision: 0, at: null, text: 'schema: 1\n' })
    const added = store.editWorkshop({ edits: [{ path: 'shelf.pump', was: null, now: { what: 'pump', price: '40 €' } }], by: 'Noor' })
    expect(added).toEqual({ ok: true, revision: 1, text: 'schema: 1\nshelf:\n  pump: { what: pump, price: 40 € }\n' })
    expect(store.editWorkshop({ edits: [{ path: 'shelf.pump.price', was: '40 €', now: '40 €' }] })).toMatchObject({ revision: 1 })
    expect(store.editWorkshop({ edits: [{ path: 'shelf.pump.price', was: '40 €', now: '45 €' }] })).toMatchObject({ revision: 2 })
    expect(store.workshopRevisions().map(r => [r.revision, r.by])).toEqual([
      [2, ''],
      [1, 'Noor'],
    ])
  })
  it('joins changes of different values, and shows both where two changed the same', () => {
    const { store } = filled()
    store.editWorkshop({ edits: [{ path: 'shelf.motor.price', was: '900 €', now: '950 €' }] })
    expect(store.editWorkshop({ edits: [{ path: 'shelf.motor.serial', was: 'EM-1', now: 'EM-2' }], seen: 1 })).toMatchObject({
      revision: 3,
    })
    expect(store.editWorkshop({ edits: [{ path: 'shelf.motor.price', was: '900 €', now: '800 €' }] })).toMatchObject({
      ok: false,
      why: 'clash',
      revision: 3,
      clashes: [{ path: 'shelf.motor.price', yours: '800 €', theirs: '950 €', was: '900 €' }],
    })
    // Two windows put different things under one name: neither is mixed into the other.
    expect(store.editWorkshop({ edits: [{ path: 'shelf.pump', was: null, now: { what: 'other' } }] })).toMatchObject({ why: 'clash' })
  })
  it('keeps out what cannot be read, with place, found and accepted', () => {
    const { store } = filled()
    expect(store.editWorkshop({ edits: [{ path: 'shelf.motor.price', was: '900 €', now: '900 kg' }] })).toMatchObject({
      why: 'kept out',
      issues: [{ path: 'shelf.motor.price', found: expect.stringContaining('kg'), accepted: expect.stringContaining('€') }],
    })
    expect(store.workshop()).toMatchObject({ revision: 1, text: SHELF })
  })
  it('takes back one change, whatever came after', () => {
    const { store } = filled()
    store.editWorkshop({ edits: [{ path: 'shelf.pump', was: '{ what: pump }', now: null }] })
    store.editWorkshop({ edits: [{ path: 'shelf.motor.price', was: '900 €', now: '950 €' }] })
    expect(store.undoWorkshop(2)).toMatchObject({ ok: true, revision: 4 })
    expect(piece(store, 'pump')?.what).toBe('pump')
    expect(piece(store, 'motor')?.price?.value).toBe(950)
    store.editWorkshop({ edits: [{ path: 'shelf.motor.price', was: '950 €', now: '1 €' }] })
    expect(store.undoWorkshop(3)).toMatchObject({ why: 'clash', clashes: [{ path: 'shelf.motor.price', theirs: '1 €' }] })
    expect(() => store.undoWorkshop(99)).toThrow('The workshop file has no revision 99; it has 1 to 5.')
  })
  it('is begun once', () => {
    const { store } = filled()
    expect(() => store.beginWorkshop(SHELF, '')).toThrow('There is a workshop file here already; change that.')
  })
  it('tells of its changes, and rewrites its copy beside the conversions; what was changed there by hand is moved aside', () => {
    const { store } = filled(),
      told: unknown[] = [],
      copy = join(store.folder, 'conversions/own.workshop.yaml')
    store.heard(change => told.push(change))
    expect(readFileSync(copy, 'utf8')).toBe(SHELF)
    writeFileSync(copy, 'by hand')
    store.editWorkshop({ edits: [{ path: 'shelf.motor.price', was: '900 €', now: '950 €' }] })
    expect(told).toEqual([{ what: 'workshop', id: 'workshop', revision: 2 }])
    expect(readFileSync(copy, 'utf8')).toBe(store.workshop().text)
    expect(readFileSync(join(store.folder, 'conversions/own.changed-by-hand-1.workshop.yaml'), 'utf8')).toBe('by hand')
  })
})

describe('a piece', () => {
  it('is kept for one car; another is refused and told whose it is', () => {
    const { store, wren, otter } = filled()
    expect(store.reserve('motor', wren)).toMatchObject({ ok: true, revision: 2 })
    expect(piece(store, 'motor')?.reserved).toEqual({ car: 'Wren', conversion: wren })
    expect(store.reserve('motor', otter)).toMatchObject({
      ok: false,
      why: 'reserved',
      piece: 'motor',
      holder: { name: 'Wren', car: { id: wren } },
    })
    expect(store.reserve('motor', wren)).toMatchObject({ ok: true, revision: 2 })
    const light = store.variant(wren, 'light')
    expect(light.ok && store.reserve('motor', light.id)).toMatchObject({ ok: true, revision: 2 })
    store.editWorkshop({ edits: [{ path: 'shelf.motor.reserved', was: { car: 'Wren', conversion: wren }, now: null }] })
    expect(store.reserve('motor', otter)).toMatchObject({ ok: true, revision: 4 })
  })
  it('stays kept for a car that was deleted, until somebody frees it', () => {
    const { store, wren, otter } = filled()
    store.reserve('motor', wren)
    store.remove(wren)
    expect(store.reserve('motor', otter)).toMatchObject({ why: 'reserved', holder: { name: 'Wren' } })
    expect(() => store.reserve('pump', wren)).toThrow('This conversion is deleted; bring it back first.')
  })
  it('that is not on the shelf, or for a car nobody knows, is refused', () => {
    const { store, wren } = filled()
    expect(() => store.reserve('wheel', wren)).toThrow('Nothing on the shelf is called «wheel».')
    expect(() => store.reserve('motor', '0'.repeat(16))).toThrow('There is no such conversion here.')
    expect(store.workshop().revision).toBe(1)
  })
})

describe('what is recorded of a shelf', () => {
  it('cannot be changed, deleted or replaced by anybody', () => {
    const { store } = filled()
    store.close()
    const db = new Database(databaseIn(store.folder))
    for (const sql of [
      "UPDATE workshop_revision SET by = 'x'",
      'DELETE FROM workshop_revision',
      "INSERT OR REPLACE INTO workshop_revision SELECT number, at, 'x', kind, what, text FROM workshop_revision",
      "INSERT INTO workshop_revision SELECT 9, at, 'x', kind, what, text FROM workshop_revision",
      'DELETE FROM content WHERE hash IN (SELECT text FROM workshop_revision)',
    ])
      expect(() => db.exec(sql), sql).toThrow(/revision of the workshop|content in use is kept/)
    db.close()
  })
  it('outlives the cars it was kept beside', () => {
    const time = clock(),
      store = storeIn(emptyFolder(), { now: time.now }),
      id = madeOf(store, CAR)
    store.beginWorkshop(SHELF, '')
    store.reserve('motor', id)
    store.remove(id)
    time.turn(31)
    expect(store.purge()).toEqual([id])
    expect(piece(store, 'motor')?.reserved).toEqual({ car: 'Wren', conversion: id })
  })
  it('is in a backup, and comes back with it, copy and all', async () => {
    const { store } = filled(),
      file = join(emptyFolder(), 'backup.sqlite'),
      two = storeIn(emptyFolder())
    await store.backUp(file)
    two.beginWorkshop('schema: 1\nworkshop: Other\n', '')
    await two.restoreBackup(file)
    expect(two.workshop()).toEqual(store.workshop())
    expect(two.workshopRevisions()).toEqual(store.workshopRevisions())
    expect(readFileSync(join(two.folder, 'conversions/own.workshop.yaml'), 'utf8')).toBe(SHELF)
  })
})

describe('a database of version 1', () => {
  const old = (): { folder: string; id: string } => {
    const folder = emptyFolder(),
      id = '0123456789abcdef'
    const db = openDatabase(folder, { steps: STEPS.slice(0, 1) })
    expect(db.pragma('user_version', { simple: true })).toBe(1)
    db.exec(`INSERT INTO content VALUES ('${HASH}', ${CAR.length}, 0, x'${Buffer.from(CAR).toString('hex')}');
      INSERT INTO conversion (id, at) VALUES ('${id}', 1);
      INSERT INTO revision VALUES ('${id}', 1, 1, '', 'made', '', '${HASH}', '{}');`)
    db.close()
    return { folder, id }
  }
  it('is brought up to date with everything in it, and a copy of it is put beside it', () => {
    const { folder, id } = old(),
      store = storeIn(folder)
    expect(store.conversion(id).text).toBe(CAR)
    expect(store.workshop().revision).toBe(0)
    expect(existsSync(join(folder, 'conversions/own.workshop.yaml'))).toBe(false)
    expect(readdirSync(folder)).toContain('ampwright-version-1.sqlite')
    store.beginWorkshop(SHELF, '')
    expect(store.reserve('motor', id)).toMatchObject({ ok: true, revision: 2 })
  })
  it('comes back as a backup too', async () => {
    const { folder, id } = old(),
      { store } = filled()
    await store.restoreBackup(databaseIn(folder))
    expect([store.conversion(id).text, store.workshop().revision]).toEqual([CAR, 0])
  })
})
