import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { clock, emptyFolder, madeOf, storeIn } from '../../../tests/stores.ts'
import { databaseIn } from './database.ts'
import type { Store } from './store.ts'

const TEXT = 'schema: 1\ncar: Wren\nbrief:\n  luggage: 40 kg # a word\n  person: 75 kg\n'
const LUGGAGE = { path: 'brief.luggage', was: '40 kg', now: '41 kg' }
const PERSON = { path: 'brief.person', was: '75 kg', now: '80 kg' }
const copyIn = (folder: string, name: string): string => readFileSync(join(folder, 'conversions', name, `${name}.conversion.yaml`), 'utf8')
const started = (text = TEXT) => {
  const folder = emptyFolder(),
    time = clock(),
    store = storeIn(folder, { now: time.now })
  return { folder, time, store, id: madeOf(store, text) }
}
const ok = <T extends { ok: boolean }>(outcome: T): Extract<T, { ok: true }> => {
  expect(outcome).toMatchObject({ ok: true })
  return outcome as Extract<T, { ok: true }>
}

describe('a conversion that is kept', () => {
  it('keeps every accepted batch as a revision, and every earlier one readable', () => {
    const { store, id } = started()
    ok(store.edit(id, { edits: [LUGGAGE], by: 'Ada', what: 'more luggage' }))
    ok(store.edit(id, { edits: [PERSON] }))
    expect(store.revisions(id).map(r => [r.revision, r.kind, r.by, r.what])).toEqual([
      [3, 'edit', '', ''],
      [2, 'edit', 'Ada', 'more luggage'],
      [1, 'made', '', ''],
    ])
    expect([1, 2, 3].map(n => store.revision(id, n).text)).toEqual([
      TEXT,
      TEXT.replace('40', '41'),
      TEXT.replace('40', '41').replace('75', '80'),
    ])
    expect(() => store.revision(id, 4)).toThrow('has no revision 4; it has 1 to 3')
  })
  it('makes no revision of what changes nothing', () => {
    const { store, id } = started()
    expect(ok(store.edit(id, { edits: [{ path: 'brief.luggage', was: '7 kg', now: '40 kg' }] })).revision).toBe(1)
  })
  it('takes back what one revision changed, whatever came after at other places', () => {
    const { store, id } = started()
    store.edit(id, { edits: [LUGGAGE] })
    store.edit(id, { edits: [PERSON] })
    expect(ok(store.undo(id, 2)).text).toBe(TEXT.replace('75', '80'))
  })
  it('refuses to take back what somebody changed since, with both values', () => {
    const { store, id } = started()
    store.edit(id, { edits: [LUGGAGE], by: 'Ada' })
    store.edit(id, { edits: [{ path: 'brief.luggage', was: '41 kg', now: '50 kg' }], by: 'Ben' })
    expect(store.undo(id, 2)).toMatchObject({
      ok: false,
      why: 'clash',
      clashes: [{ path: 'brief.luggage', yours: '40 kg', theirs: '50 kg', was: '41 kg' }],
    })
    expect(store.revisions(id)).toHaveLength(3)
    expect(() => store.undo(id, 1)).toThrow('nothing was before it')
  })
  it('restores an earlier revision as a new one', () => {
    const { store, id } = started()
    store.edit(id, { edits: [LUGGAGE] })
    store.putFile(id, 'log.csv', Buffer.from('a'))
    const back = store.restore(id, 1)
    expect([back.revision, back.text, back.files]).toEqual([4, TEXT, {}])
    expect(store.file(id, 'log.csv', 3).toString()).toBe('a')
    expect(() => store.file(id, 'log.csv')).toThrow('no file «log.csv»')
  })
  it('keeps out a batch that leaves it unreadable, and says where, what was found and what is accepted', () => {
    const { store, id } = started()
    const outcome = store.edit(id, { edits: [LUGGAGE, { path: 'brief.person', was: '75 kg', now: '5 m' }] })
    expect(outcome).toMatchObject({ ok: false, why: 'kept out', issues: [{ path: 'brief.person' }] })
    expect(store.conversion(id)).toMatchObject({ revision: 1, text: TEXT })
    expect(store.make({ text: 'schema: 1\nbrief: [' })).toMatchObject({ ok: false, why: 'kept out' })
    expect(store.conversions()).toHaveLength(1)
  })
  it('has variants that know of which they are, and duplicates that know nothing', () => {
    const { store, id } = started()
    store.edit(id, { edits: [LUGGAGE] })
    const variant = ok(store.variant(id, 'light', 1)),
      copy = ok(store.duplicate(id))
    expect(store.conversion(variant.id)).toMatchObject({ text: TEXT, variant: { of: id, named: 'light', revision: 1 }, revision: 1 })
    expect(store.conversion(copy.id)).toMatchObject({ text: TEXT.replace('40', '41'), variant: null })
    ok(store.edit(variant.id, { edits: [PERSON] }))
    expect(store.conversion(id).text).toBe(TEXT.replace('40', '41'))
    expect(store.compare({ id, revision: 2 }, { id: variant.id, revision: 2 }).edits).toEqual([
      { path: 'brief.luggage', was: '41 kg', now: '40 kg' },
      { path: 'brief.person', was: '75 kg', now: '80 kg' },
    ])
  })
  it('keeps files by what they hold, once, and gives each as it was', () => {
    const { store, id, folder } = started(),
      bytes = Buffer.from('time,speed\n'.repeat(500))
    ok(store.putFile(id, 'logs/a.csv', bytes))
    ok(store.putFile(id, 'logs/b.csv', bytes))
    ok(store.putFile(id, 'logs/a.csv', Buffer.from('x')))
    expect(store.file(id, 'logs/a.csv').toString()).toBe('x')
    expect(store.file(id, 'logs/a.csv', 2).equals(bytes)).toBe(true)
    ok(store.putFile(id, 'logs/b.csv', null))
    expect(store.listed(store.conversion(id).files)).toMatchObject([{ name: 'logs/a.csv', size: 1 }])
    store.close()
    const db = new Database(databaseIn(folder))
    expect(db.prepare('SELECT count(*) FROM content WHERE size = ?').pluck().get(bytes.length)).toBe(1)
    db.close()
  })
  it.each(['__proto__', 'constructor', 'toString'])('treats a file called %s as any other', name => {
    const { store, id } = started()
    expect(() => store.file(id, name)).toThrow(`no file «${name}»`)
    ok(store.putFile(id, name, Buffer.from('x')))
    expect(store.file(id, name).toString()).toBe('x')
    expect(Object.keys(store.conversion(id).files)).toEqual([name])
  })
  it('is told of to whoever listens, each revision once', () => {
    const { store, id } = started(),
      heard: unknown[] = []
    const stop = store.heard(change => heard.push([change.what, change.revision]))
    store.edit(id, { edits: [LUGGAGE] })
    store.edit(id, { edits: [LUGGAGE] })
    store.remove(id)
    store.bringBack(id)
    stop()
    store.edit(id, { edits: [PERSON] })
    expect(heard).toEqual([
      ['revision', 2],
      ['deleted', 2],
      ['undeleted', 2],
    ])
  })
})

describe('a deleted conversion', () => {
  it('can be brought back for thirty days, and is taken out for good after them, alone', () => {
    const { store, id, time, folder } = started(),
      other = ok(store.duplicate(id)).id
    store.putFile(id, 'own.csv', Buffer.from('only here'))
    const until = store.remove(id).deletedUntil
    expect(until).toBe(time.now() + 30 * 86_400_000)
    expect(() => store.edit(id, { edits: [LUGGAGE] })).toThrow('bring it back first')
    time.turn(29.9)
    expect(store.purge()).toEqual([])
    store.bringBack(id)
    expect(store.conversion(id).deletedUntil).toBe(null)
    store.remove(id)
    time.turn(30)
    expect(store.purge()).toEqual([id])
    expect(() => store.conversion(id)).toThrow('no such conversion')
    expect(store.conversion(other).text).toBe(TEXT)
    store.close()
    const db = new Database(databaseIn(folder))
    expect(db.prepare('SELECT count(*) FROM content').pluck().get()).toBe(1)
    db.close()
    expect(storeIn(folder).isUnused()).toBe(false)
  })
  it('is taken out at the next start too, when its time is over', () => {
    const { store, id, time, folder } = started()
    store.remove(id)
    store.close()
    time.turn(31)
    expect(storeIn(folder, { now: time.now }).conversions()).toEqual([])
  })
})

describe('what is recorded', () => {
  it('cannot be changed or taken out by anybody who has the database', () => {
    const { store, id, folder } = started()
    store.putFile(id, 'a.csv', Buffer.from('file bytes'))
    store.remove(id)
    store.bringBack(id)
    store.close()
    const db = new Database(databaseIn(folder))
    const attempts = [
      "UPDATE revision SET what = 'x'",
      'DELETE FROM revision',
      "UPDATE content SET bytes = x'00'",
      'DELETE FROM content',
      'UPDATE conversion SET at = 0',
      'DELETE FROM conversion',
      'UPDATE removal SET deleted = 1',
      'DELETE FROM removal',
      `INSERT INTO purge VALUES ('${id}', 9e15)`,
      `INSERT INTO revision SELECT conversion, number + 5, at, by, kind, what, text, files FROM revision`,
      `REPLACE INTO content SELECT hash, 1, 0, x'00' FROM content`,
      `REPLACE INTO removal SELECT n, conversion, at, 1 FROM removal`,
      `REPLACE INTO conversion SELECT id, 0, variant_of, named, from_revision FROM conversion`,
      `REPLACE INTO revision SELECT conversion, 1, at, 'x', kind, what, text, files FROM revision WHERE number = 2`,
    ]
    for (const sql of attempts) expect(() => db.exec(sql), sql).toThrow()
    expect(db.prepare('SELECT count(*) FROM revision').pluck().get()).toBe(2)
    db.close()
    expect(storeIn(folder).conversion(id).text).toBe(TEXT)
  })
})

describe('the copy beside the database', () => {
  it('is the text as it stands, with its files, under the name of the car', () => {
    const { store, id, folder } = started()
    expect(copyIn(folder, 'wren')).toBe(TEXT)
    store.edit(id, { edits: [LUGGAGE] })
    store.putFile(id, 'logs/a.csv', Buffer.from('x'))
    expect(copyIn(folder, 'wren')).toBe(TEXT.replace('40', '41'))
    expect(readFileSync(join(folder, 'conversions/wren/logs/a.csv'), 'utf8')).toBe('x')
    const second = madeOf(store, TEXT)
    expect(copyIn(folder, 'wren-2')).toBe(TEXT)
    store.edit(second, { edits: [{ path: 'car', was: 'Wren', now: 'Otter' }] })
    expect(copyIn(folder, 'otter')).toContain('car: Otter')
    store.remove(id)
    expect(readdirSync(join(folder, 'conversions'))).toEqual(['otter'])
    store.bringBack(id)
    expect(copyIn(folder, 'wren')).toBe(TEXT.replace('40', '41'))
  })
  it('is made anew at the next start where it is missing', () => {
    const { store, folder } = started()
    store.close()
    writeFileSync(join(folder, 'conversions/wren/wren.conversion.yaml'), '')
    storeIn(folder)
    expect(copyIn(folder, 'wren')).toBe(TEXT)
  })
  it('never costs what somebody wrote into it by hand', () => {
    const { store, id, folder } = started()
    writeFileSync(join(folder, 'conversions/wren/wren.conversion.yaml'), 'by hand')
    store.edit(id, { edits: [LUGGAGE] })
    expect(copyIn(folder, 'wren')).toBe(TEXT.replace('40', '41'))
    expect(readFileSync(join(folder, 'conversions/wren/wren.changed-by-hand-1.conversion.yaml'), 'utf8')).toBe('by hand')
  })
  it('does not hold up a save where it cannot be written: that is told', () => {
    const told: string[] = [],
      folder = emptyFolder(),
      store = storeIn(folder, { warn: message => told.push(message) })
    writeFileSync(join(folder, 'conversions'), 'a file in the way')
    const id = madeOf(store, TEXT)
    expect(store.conversion(id).text).toBe(TEXT)
    expect(told[0]).toContain(`The copy of conversion ${id} could not be renewed`)
  })
  it('that could not be written is made up for with the next save that can, of whatever conversion, and all is well then', () => {
    const told: string[] = [],
      folder = emptyFolder(),
      store = storeIn(folder, { warn: () => told.push('warned'), well: () => told.push('well') })
    writeFileSync(join(folder, 'conversions'), 'a file in the way')
    madeOf(store, TEXT)
    rmSync(join(folder, 'conversions'))
    madeOf(store, TEXT.replace('Wren', 'Otter'))
    expect(told).toEqual(['warned', 'well'])
    expect(copyIn(folder, 'wren')).toBe(TEXT)
    madeOf(store, TEXT)
    expect(told).toEqual(['warned', 'well'])
  })
})

describe('a text that comes back', () => {
  const changed = (store: Store, id: string): string => store.exported(id).replace('75 kg', '90 kg # heavier')
  it('stands byte for byte where nothing happened meanwhile', () => {
    const { store, id } = started(),
      back = store.take({ text: changed(store, id), files: {} })
    expect(ok(back)).toMatchObject({ as: 'merged', id, revision: 2, text: TEXT.replace('75 kg', '90 kg # heavier'), layoutLeftOut: false })
    expect(store.take({ text: store.exported(id), files: {} })).toMatchObject({ as: 'unchanged', revision: 2 })
  })
  it('is merged by its places with what happened meanwhile, and says that a comment was left out', () => {
    const { store, id } = started(),
      text = changed(store, id)
    store.edit(id, { edits: [LUGGAGE] })
    expect(ok(store.take({ text, files: {} }))).toMatchObject({
      as: 'merged',
      id,
      revision: 3,
      text: TEXT.replace('40', '41').replace('75', '90'),
      layoutLeftOut: true,
    })
  })
  it('becomes a variant where both changed the same, and both values are said', () => {
    const { store, id } = started(),
      text = changed(store, id)
    store.edit(id, { edits: [PERSON] })
    const back = ok(store.take({ text, files: {}, named: 'from the workshop' }))
    expect(back).toMatchObject({ as: 'variant', clashes: [{ path: 'brief.person', yours: '90 kg', theirs: '80 kg', was: '75 kg' }] })
    expect(store.conversion(back.id).variant).toEqual({ of: id, named: 'from the workshop', revision: 1 })
    expect(store.conversion(id)).toMatchObject({ revision: 2 })
  })
  it('names a variant after the file or the day, and never as another is named', () => {
    const { store, id } = started()
    const named = (as?: string): string | undefined => {
      const back = store.take({ text: changed(store, id), files: {}, asVariant: true, ...(as === undefined ? {} : { named: as }) })
      return back.ok ? store.conversion(back.id).variant?.named : undefined
    }
    expect([named('car-2'), named('car-2'), named('car-2')]).toEqual(['car-2', 'car-2 2', 'car-2 3'])
    expect(named()).toMatch(/^taken in on \d{4}-\d{2}-\d{2}$/)
    expect(named()).toMatch(/^taken in on \d{4}-\d{2}-\d{2} 2$/)
  })
  it('becomes a variant, or a conversion of its own, where that is asked for or nobody knows what it was made from', () => {
    const { store, id } = started()
    expect(store.take({ text: changed(store, id), files: {}, asVariant: true })).toMatchObject({ as: 'variant' })
    expect(store.take({ text: changed(store, id), files: {}, alone: true })).toMatchObject({ as: 'new' })
    expect(store.take({ text: TEXT.replace('75', '90'), files: {}, into: id })).toMatchObject({ as: 'variant', clashes: [] })
    expect(store.take({ text: TEXT.replace('75', '90'), files: {}, into: id, fromRevision: 1 })).toMatchObject({ as: 'merged' })
    expect(store.take({ text: TEXT, files: {} })).toMatchObject({ as: 'new' })
    expect(store.take({ text: 'car: [\n', files: {}, into: id, fromRevision: 1 })).toMatchObject({ ok: false, why: 'kept out' })
  })
})

describe('two stores', () => {
  it('do not open the same folder: the second is told', () => {
    const { store, folder } = started()
    expect(() => storeIn(folder)).toThrow('is in use by another Ampwright')
    store.close()
    storeIn(folder).close()
    expect(existsSync(`${databaseIn(folder)}-wal`)).toBe(false)
  })
})
