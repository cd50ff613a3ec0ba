import { chmodSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../tests/counts.ts'
import { emptyFolder, madeOf, storeIn } from '../../../tests/stores.ts'
import { databaseIn, openDatabase } from './database.ts'
import { StoreFault } from './fault.ts'
import { STEPS } from './migrations.ts'

const TEXT = 'schema: 1\ncar: Wren\nbrief:\n  luggage: 40 kg\n'
const filled = (): { folder: string; id: string } => {
  const folder = emptyFolder(),
    store = storeIn(folder),
    id = madeOf(store, TEXT)
  store.close()
  return { folder, id }
}
/** As somebody who may not write everywhere: whoever runs the tests as the administrator becomes nobody meanwhile. */
function asNobody<T>(work: () => T): T {
  const isRoot = process.geteuid?.() === 0
  if (isRoot) process.seteuid?.(65_534)
  try {
    return work()
  } finally {
    if (isRoot) process.seteuid?.(0)
  }
}
const refusal = (work: () => unknown): StoreFault => {
  try {
    work()
  } catch (e) {
    if (e instanceof StoreFault) return e
    throw e
  }
  throw new Error('nothing was refused')
}

describe('a data folder', () => {
  it('is made, with those above it', () => {
    const folder = join(emptyFolder(), 'a/b/c')
    storeIn(folder).close()
    expect(readdirSync(folder)).toEqual(['ampwright.sqlite'])
  })
  it('that cannot be written to is refused with one message and what to do', () => {
    const { folder } = filled(),
      above = emptyFolder()
    for (const place of [above, folder]) chmodSync(place, 0o555)
    chmodSync(databaseIn(folder), 0o444)
    for (const place of [join(above, 'new'), folder]) {
      const { kind, message } = asNobody(() => refusal(() => storeIn(place)))
      expect([kind, message.includes(place)]).toEqual(['read-only', true])
      expect(message).toMatch(/choose another folder with --data DIR/)
    }
  })
  it('that is a file, or lies below one, is refused', () => {
    const file = join(emptyFolder(), 'file')
    writeFileSync(file, '')
    expect(refusal(() => storeIn(file)).message).toContain('is a file, not a folder')
    expect(refusal(() => storeIn(join(file, 'below'))).message).toContain('--data DIR')
  })
})

describe('a database', () => {
  it('of a newer version is refused with one message, and left as it is', () => {
    const { folder } = filled(),
      db = new Database(databaseIn(folder))
    db.pragma('user_version = 99')
    db.close()
    const before = readFileSync(databaseIn(folder)),
      { kind, message } = refusal(() => storeIn(folder))
    expect([kind, message]).toEqual([
      'newer',
      `The database in ${folder} is of version 99; this Ampwright reads up to ${STEPS.at(-1)?.to}. Update Ampwright, or choose another folder with --data DIR.`,
    ])
    expect(readFileSync(databaseIn(folder)).equals(before)).toBe(true)
  })
  it('of another program is refused', () => {
    const folder = emptyFolder(),
      db = new Database(databaseIn(folder))
    db.exec('CREATE TABLE songs (name TEXT)')
    db.close()
    expect(refusal(() => storeIn(folder)).message).toContain('is a database of something else')
  })
  it('that is no database is refused as damaged', () => {
    const folder = emptyFolder()
    writeFileSync(databaseIn(folder), 'not a database at all, but long enough to be looked at. '.repeat(40))
    expect(refusal(() => storeIn(folder)).kind).toBe('damaged')
  })
  it('that is damaged anywhere is refused, or gives back only what it was given', () => {
    const { folder, id } = filled(),
      whole = readFileSync(databaseIn(folder))
    fc.assert(
      fc.property(fc.nat(whole.length - 1), fc.uint8Array({ minLength: 1, maxLength: 400 }), fc.boolean(), (at, noise, cut) => {
        const hurt = cut ? whole.subarray(0, at) : Buffer.from(whole)
        if (!cut) hurt.set(noise.subarray(0, hurt.length - at), at)
        const place = emptyFolder()
        writeFileSync(databaseIn(place), hurt)
        try {
          const store = storeIn(place)
          try {
            const { text } = store.conversion(id)
            expect(text).toBe(TEXT)
          } finally {
            store.close()
          }
        } catch (e) {
          if (!(e instanceof StoreFault)) throw e
          expect(['damaged', 'newer', 'unknown', 'full', 'read-only']).toContain(e.kind)
        } finally {
          rmSync(place, { recursive: true })
        }
      }),
      { numRuns: runs(600) },
    )
  })
  it('whose checks are no sentences any more, or whose format nobody knows, is refused as damaged', () => {
    const hurt = (by: (bytes: Buffer) => Buffer): string => {
      const { folder } = filled()
      writeFileSync(databaseIn(folder), by(readFileSync(databaseIn(folder))))
      return refusal(() => storeIn(folder)).kind
    }
    expect(hurt(b => Buffer.from(b.toString('latin1').replaceAll('json_valid', 'Ason_valid'), 'latin1'))).toBe('damaged')
    // The fourth of the four bytes of the schema format, SQLite file format §1.3.
    expect(hurt(b => Buffer.from(b.map((byte, i) => (i === 47 ? 5 : byte))))).toBe('damaged')
  })
  it('that has lost the revisions of a conversion, or its list of files, says that it is damaged', () => {
    for (const sql of ['DELETE FROM revision', "UPDATE revision SET files = '{'"]) {
      const { folder, id } = filled(),
        db = new Database(databaseIn(folder))
      // What guards revisions against the program itself does not guard them against a disk.
      for (const name of db.prepare("SELECT name FROM sqlite_schema WHERE type = 'trigger'").pluck().all() as string[])
        db.exec(`DROP TRIGGER ${name}`)
      db.pragma('foreign_keys = OFF')
      db.pragma('ignore_check_constraints = ON')
      db.exec(sql)
      db.close()
      const read = (): void => {
        const store = storeIn(folder)
        try {
          store.conversion(id)
        } finally {
          store.close()
        }
      }
      expect(refusal(read).kind).toBe('damaged')
    }
  })
  it('is brought up to date step by step; before that a copy is put beside it', () => {
    const { folder, id } = filled(),
      steps = [...STEPS, { to: STEPS.length + 1, says: 'a test', sql: 'CREATE TABLE extra (a TEXT) STRICT;' }]
    const db = openDatabase(folder, { steps })
    expect(db.pragma('user_version', { simple: true })).toBe(steps.length)
    db.close()
    const old = emptyFolder()
    writeFileSync(databaseIn(old), readFileSync(join(folder, `ampwright-version-${STEPS.length}.sqlite`)))
    expect(storeIn(old).conversion(id).text).toBe(TEXT)
    expect(refusal(() => storeIn(folder)).kind).toBe('newer')
  })
  it('stays as it was where a step fails', () => {
    const { folder, id } = filled(),
      steps = [...STEPS, { to: STEPS.length + 1, says: 'a test', sql: 'CREATE TABLE extra (a TEXT) STRICT; CREATE TABLE extra (a TEXT);' }]
    expect(() => openDatabase(folder, { steps })).toThrow('already exists')
    expect(storeIn(folder).conversion(id).text).toBe(TEXT)
  })
})

describe('a disk that is full', () => {
  // Stands for a full disk: the database may not grow beyond so many pages. A disk that is really full gives the same error of the database.
  it('costs nothing that was acknowledged: the save is refused, and works again when there is room', () => {
    const { folder, id } = filled()
    let store = storeIn(folder, { mostPages: 30 })
    const noise = (n: number): Buffer =>
      Buffer.from(Array.from({ length: 6000 }, (_, i) => (i * i * 31 + n * 7919 + ((i * n) % 251)) % 256))
    let saved = 1,
      fault: StoreFault | undefined
    while (!fault)
      try {
        const outcome = store.putFile(id, `f${saved}.csv`, noise(saved))
        if (outcome.ok) saved = outcome.revision
      } catch (e) {
        fault = e as StoreFault
      }
    expect([fault.kind, fault.message]).toEqual(['full', expect.stringContaining('nothing was saved. Make room')])
    expect(saved).toBeGreaterThan(3)
    expect(store.conversion(id).revision).toBe(saved)
    expect(store.file(id, `f${saved - 1}.csv`)).toHaveLength(6000)
    store.close()
    store = storeIn(folder)
    expect(store.putFile(id, 'more.csv', noise(0))).toMatchObject({ ok: true, revision: saved + 1 })
    store.close()
  })
})

describe('a backup', () => {
  it('made in use holds everything up to then, and gives it back; what stood there is kept beside it', async () => {
    const folder = emptyFolder(),
      store = storeIn(folder),
      id = madeOf(store, TEXT),
      file = join(emptyFolder(), 'backup.sqlite')
    store.putFile(id, 'a.csv', Buffer.from('bytes'))
    const going = store.backUp(file)
    store.edit(id, { edits: [{ path: 'brief.luggage', was: '40 kg', now: '41 kg' }] })
    await going
    store.edit(id, { edits: [{ path: 'brief.luggage', was: '41 kg', now: '42 kg' }] })
    store.remove(id)
    const kept = await store.restoreBackup(file)
    expect(store.conversion(id).revision).toBeLessThanOrEqual(3)
    expect(store.conversion(id).deletedUntil).toBe(null)
    expect(store.file(id, 'a.csv').toString()).toBe('bytes')
    expect(readFileSync(join(folder, 'conversions/wren/wren.conversion.yaml'), 'utf8')).toBe(store.conversion(id).text)
    store.close()
    const before = emptyFolder()
    writeFileSync(databaseIn(before), readFileSync(join(folder, kept)))
    expect(storeIn(before).conversion(id).text).toContain('42 kg')
  })
  it('gives back the same in another folder', async () => {
    const one = storeIn(emptyFolder()),
      file = join(emptyFolder(), 'backup.sqlite'),
      ids = [TEXT, TEXT.replace('Wren', 'Otter')].map(text => madeOf(one, text))
    one.variant(ids[0] as string, 'light')
    one.putFile(ids[1] as string, 'a.csv', Buffer.alloc(100_000, 7))
    await one.backUp(file)
    const two = storeIn(emptyFolder())
    await two.restoreBackup(file)
    expect(two.conversions()).toEqual(one.conversions())
    for (const { id } of one.conversions()) expect(two.revisions(id)).toEqual(one.revisions(id))
    expect(two.file(ids[1] as string, 'a.csv')).toEqual(one.file(ids[1] as string, 'a.csv'))
  })
  it('that is damaged, of something else, or lacks the rules is refused; everything stays as it is', async () => {
    const store = storeIn(emptyFolder()),
      id = madeOf(store, TEXT),
      folder = emptyFolder(),
      good = join(folder, 'good.sqlite')
    await store.backUp(good)
    const other = (name: string, change: (db: Database.Database) => void): string => {
      const file = join(folder, name)
      writeFileSync(file, readFileSync(good))
      const db = new Database(file)
      db.pragma('journal_mode = DELETE')
      change(db)
      db.close()
      return file
    }
    writeFileSync(join(folder, 'rubbish.sqlite'), 'rubbish '.repeat(1000))
    writeFileSync(join(folder, 'empty.sqlite'), '')
    mkdirSync(join(folder, 'folder.sqlite'))
    const bad = [
      join(folder, 'rubbish.sqlite'),
      join(folder, 'empty.sqlite'),
      join(folder, 'folder.sqlite'),
      join(folder, 'nothing.sqlite'),
      other('newer.sqlite', db => db.pragma('user_version = 99')),
      other('kind.sqlite', db => db.pragma('application_id = 5')),
      other('rules.sqlite', db => db.exec('DROP TRIGGER revision_stays')),
      other('more.sqlite', db => db.exec('CREATE TABLE more (a TEXT)')),
      other('content.sqlite', db => db.exec("DROP TRIGGER content_stays; UPDATE content SET bytes = x'00'")),
    ]
    for (const file of bad) await expect(store.restoreBackup(file), file).rejects.toThrow('Nothing was changed.')
    expect(store.conversion(id).text).toBe(TEXT)
    expect(readdirSync(store.folder).filter(name => name.startsWith('ampwright-before'))).toEqual([])
  })
})
