import { existsSync, renameSync, rmSync, statSync } from 'node:fs'
import { join } from 'node:path'
import Database from 'better-sqlite3'
import { bytesOf } from './contents.ts'
import { bringUpToDate, checkKind, checkWhole, type Db, databaseIn, opened, versionOf } from './database.ts'
import { StoreFault } from './fault.ts'
import { goOn, oneByOne, Stopped, type Watch } from './long-work.ts'
import { STEPS } from './migrations.ts'

/** Copies the whole database into one file while it is in use; the file is there when it is whole, and nothing of it where that is stopped. */
export async function backUp(db: Db, file: string, watch: Watch = {}, doing = 'copying the database'): Promise<void> {
  const beside = `${file}.writing`
  try {
    await db.backup(beside, {
      progress({ totalPages, remainingPages }) {
        goOn(watch)
        watch.hear?.({ done: totalPages - remainingPages, of: totalPages, doing })
        return PAGES
      },
    })
    goOn(watch)
    renameSync(beside, file)
  } finally {
    for (const leftover of [beside, `${beside}-journal`]) rmSync(leftover, { force: true })
  }
}
/** Pages copied before others are let in. */
const PAGES = 100

/**
 * Looks a backup through before it may take the place of anything: kind, version, wholeness, the rules that keep what is recorded, every
 * content against its own hash. Brings it up to date. Throws one message where it cannot be taken.
 */
export async function checkBackup(file: string, watch: Watch = {}): Promise<void> {
  let db: Db | undefined
  try {
    db = opened(file, true)
    checkKind(db, 'the backup')
    if (versionOf(db) === 0) throw refused('it is empty')
    checkWhole(db, 'the backup')
    bringUpToDate(db, undefined)
    if (lawsOf(db) !== lawsOf(fresh())) throw refused('it lacks tables or rules of a database of Ampwright')
    const coming = db
    await oneByOne(db.prepare('SELECT hash FROM content').pluck().all() as string[], 'looking through the backup', watch, hash => {
      bytesOf(coming, hash)
    })
    if ((db.pragma('foreign_key_check') as unknown[]).length) throw refused('parts of it are missing')
    db.pragma('journal_mode = DELETE')
  } catch (e) {
    if (e instanceof Stopped) throw e
    throw e instanceof StoreFault && e.kind === 'newer'
      ? newer(e)
      : e instanceof StoreFault && e.kind === 'content'
        ? e
        : refused('it is damaged, or something else')
  } finally {
    db?.close()
  }
}

const refused = (why: string): StoreFault => new StoreFault('content', `This backup cannot be taken: ${why}. Nothing was changed.`)
const newer = (e: StoreFault): StoreFault => new StoreFault('content', `${e.message} Nothing was changed.`)

function fresh(): Db {
  const db = new Database(':memory:')
  for (const step of STEPS) db.exec(step.sql)
  return db
}

const lawsOf = (db: Db): string =>
  (db.prepare("SELECT type, name, sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite_%' ORDER BY type, name").all() as object[])
    .map(row => JSON.stringify(row))
    .join('\n')

/**
 * Puts a checked backup in the place of the database, which must be closed by now. What was there is kept beside it. Gives the name of that
 * file. At every instant the old or the new database stands whole in its place.
 */
export function swapIn(folder: string, backup: string): void {
  const wal = `${databaseIn(folder)}-wal`
  if (existsSync(wal) && statSync(wal).size > 0) throw refused('the database could not be closed')
  rmSync(wal, { force: true })
  renameSync(backup, databaseIn(folder))
}

/** Keeps what stands now beside the database, whole. Gives the name of the file. */
export async function keepBefore(db: Db, folder: string, at: number, watch: Watch = {}): Promise<string> {
  const day = new Date(at).toISOString().replace(/[:.]/g, '-'),
    name = `ampwright-before-${day}.sqlite`
  await backUp(db, join(folder, name), watch, 'keeping what is here now')
  return name
}
