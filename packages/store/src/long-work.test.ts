import { randomBytes } from 'node:crypto'
import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { describe, expect, it } from 'vitest'
import { emptyFolder, madeOf, storeIn } from '../../../tests/stores.ts'
import { databaseIn } from './database.ts'
import { type Progress, Stopped } from './long-work.ts'
import type { Store } from './store.ts'

const TEXT = 'schema: 1\ncar: Wren\nbrief:\n  luggage: 40 kg\n'
/** A store of some megabytes: a car with files of noise. */
function large(): { store: Store; folder: string; id: string } {
  const folder = emptyFolder(),
    store = storeIn(folder),
    id = madeOf(store, TEXT)
  for (let n = 0; n < 6; n++) store.putFile(id, `log-${n}.csv`, randomBytes(500_000))
  return { store, folder, id }
}
const heard = (): { steps: Progress[]; hear: (p: Progress) => void } => {
  const steps: Progress[] = []
  return { steps, hear: p => void steps.push(p) }
}
/** Stops at the so-many-th step. */
const stopping = (after: number): { signal: AbortSignal; hear: () => void } => {
  const stop = new AbortController()
  let n = 0
  return { signal: stop.signal, hear: () => void (++n >= after && stop.abort()) }
}
const grows = (steps: readonly Progress[], doing: string): void => {
  const own = steps.filter(s => s.doing === doing)
  expect(own.length, doing).toBeGreaterThan(2)
  for (const [i, { done, of }] of own.entries()) {
    expect(done).toBeGreaterThanOrEqual(own[i - 1]?.done ?? 0)
    expect(done).toBeLessThanOrEqual(of)
  }
}

describe('long work tells how far it is', () => {
  it('making a backup, putting one back, looking everything through', async () => {
    const { store, folder, id } = large(),
      file = join(emptyFolder(), 'backup.sqlite'),
      made = heard(),
      looked = heard(),
      put = heard()
    await store.backUp(file, made)
    grows(made.steps, 'copying the database')
    expect(await store.check(looked)).toEqual({ contents: 7, bytes: 3_000_000 + TEXT.length, problems: [] })
    grows(looked.steps, 'holding every content against its hash')
    const kept = await store.restoreBackup(file, put)
    grows(put.steps, 'looking through the backup')
    grows(put.steps, 'keeping what is here now')
    expect(readdirSync(folder)).toContain(kept)
    expect(store.conversion(id).revision).toBe(7)
  })
})

describe('long work stopped on the way', () => {
  it('leaves no file, and everything as it was', async () => {
    const { store, folder, id } = large(),
      away = emptyFolder(),
      file = join(away, 'backup.sqlite')
    await expect(store.backUp(file, stopping(3))).rejects.toThrow(Stopped)
    expect(readdirSync(away)).toEqual([])
    await expect(store.check(stopping(4))).rejects.toThrow(Stopped)
    await store.backUp(file)
    const before = readdirSync(folder).sort()
    store.edit(id, { edits: [{ path: 'brief.luggage', was: '40 kg', now: '41 kg' }] })
    // While the backup is looked through, and while what is here is kept aside.
    for (const after of [3, 9, 11]) {
      await expect(store.restoreBackup(file, stopping(after))).rejects.toThrow(Stopped)
      expect(readdirSync(folder).sort()).toEqual(before)
      expect(store.conversion(id).text).toContain('41 kg')
    }
    await store.restoreBackup(file)
    expect(store.conversion(id).text).toBe(TEXT)
  })
})

describe('looking everything through', () => {
  it('names what does not come back as it was kept, and goes on', async () => {
    const { store, folder } = large()
    store.close()
    const db = new Database(databaseIn(folder))
    // What guards contents against the program does not guard them against a disk: it is put back, for a database without it is refused.
    const guard = db.prepare("SELECT sql FROM sqlite_schema WHERE name = 'content_stays'").pluck().get() as string
    db.exec(
      "DROP TRIGGER content_stays; UPDATE content SET bytes = x'00' WHERE size = 500000 AND rowid = (SELECT min(rowid) FROM content WHERE size = 500000)",
    )
    db.exec(guard)
    db.close()
    const { contents, problems } = await storeIn(folder).check()
    expect(contents).toBe(7)
    expect(problems).toEqual(['The file «log-0.csv» of revision 2 of Wren and 5 more does not come back as it was kept.'])
  })
  it('lets saving go on, and nothing take the place of everything meanwhile', async () => {
    const { store, id } = large(),
      file = join(emptyFolder(), 'backup.sqlite')
    await store.backUp(file)
    const looking = store.check()
    store.edit(id, { edits: [{ path: 'brief.luggage', was: '40 kg', now: '41 kg' }] })
    await expect(store.restoreBackup(file)).rejects.toThrow('Try again when it is done.')
    expect((await looking).problems).toEqual([])
    const putting = store.restoreBackup(file)
    await expect(store.backUp(join(emptyFolder(), 'b.sqlite'))).rejects.toThrow('in the place of everything')
    await putting
  })
})
