import { chmodSync, existsSync, mkdirSync, renameSync, rmSync, statSync } from 'node:fs'
import { dirname, join } from 'node:path'
import Database from 'better-sqlite3'
import { damaged, guarded, StoreFault } from './fault.ts'
import { APPLICATION, STEPS, type Step } from './migrations.ts'

export type Db = Database.Database

export const DATABASE = 'ampwright.sqlite'
export const databaseIn = (folder: string): string => join(folder, DATABASE)

export type Opening = {
  readonly steps?: readonly Step[]
  /** A bound on the size of the database, in pages: stands for a full disk in tests. */
  readonly mostPages?: number
}

/**
 * Opens the database of a data folder, makes it where there is none, brings it up to date. It is held by one process alone; what is
 * committed is on the disk. Throws one clear message where the folder or the file cannot be used.
 */
export function openDatabase(folder: string, { steps = STEPS, mostPages }: Opening = {}): Db {
  return guarded(folder, () => {
    madeFolder(folder)
    const isNew = !existsSync(databaseIn(folder)),
      db = opened(databaseIn(folder))
    if (isNew) chmodSync(databaseIn(folder), 0o600)
    try {
      // Another process sees «busy» from here to the end of this one, however that comes.
      asSentences(folder, () => {
        db.pragma('locking_mode = EXCLUSIVE')
        checkKind(db, folder, steps.at(-1)?.to)
        db.pragma('journal_mode = WAL')
        db.pragma('synchronous = FULL')
        db.pragma('foreign_keys = ON')
        db.exec('BEGIN IMMEDIATE; COMMIT')
        if (mostPages !== undefined) db.pragma(`max_page_count = ${mostPages}`)
        checkWhole(db, folder)
      })
      bringUpToDate(db, folder, steps)
      checkMade(db, folder, steps)
      return db
    } catch (e) {
      db.close()
      throw e
    }
  })
}

/** A database file, not made where it should be there already and is not. */
export const opened = (file: string, mustExist = false): Db => new Database(file, { timeout: 500, fileMustExist: mustExist })

/** Refuses a file that is something else, or of a version this program does not know. */
export function checkKind(db: Db, folder: string, newest = STEPS.at(-1)?.to ?? 0): void {
  const kind = db.pragma('application_id', { simple: true }) as number,
    version = versionOf(db),
    isEmpty = db.prepare('SELECT count(*) FROM sqlite_schema').pluck().get() === 0
  if (kind !== APPLICATION && !(isEmpty && kind === 0))
    throw new StoreFault('damaged', `${join(folder, DATABASE)} is a database of something else. Choose another folder with --data DIR.`)
  if (version > newest)
    throw new StoreFault(
      'newer',
      `The database in ${folder} is of version ${version}; this Ampwright reads up to ${newest}. Update Ampwright, or choose another folder with --data DIR.`,
    )
}

export const versionOf = (db: Db): number => db.pragma('user_version', { simple: true }) as number

export function checkWhole(db: Db, folder: string): void {
  if (db.pragma('quick_check(1)', { simple: true }) !== 'ok') throw damaged(folder)
}

/** Refuses a file whose tables, indexes and triggers are not those the steps make: one letter changed in their text would show only where something is asked of them. */
function checkMade(db: Db, folder: string, steps: readonly Step[]): void {
  const fresh = new Database(':memory:')
  try {
    for (const { sql } of steps) fresh.exec(sql)
    if (JSON.stringify(madeOf(db)) !== JSON.stringify(madeOf(fresh))) throw damaged(folder)
  } finally {
    fresh.close()
  }
}
const madeOf = (db: Db): readonly unknown[] =>
  db
    .prepare("SELECT type, name, tbl_name, sql FROM sqlite_schema WHERE name NOT LIKE 'sqlite\\_stat%' ESCAPE '\\' ORDER BY type, name")
    .all()

/** What tables are made of, and how, is text and numbers in the file: where these are no sentences any more to what opens a database, it is damaged. */
function asSentences<T>(folder: string, work: () => T): T {
  try {
    return work()
  } catch (e) {
    throw (e as { code?: string }).code === 'SQLITE_ERROR' ? damaged(folder) : e
  }
}

/** Takes the steps that are missing, each whole or not at all; before an older database is touched, a copy of it is put beside it. */
export function bringUpToDate(db: Db, folder: string | undefined, steps: readonly Step[] = STEPS): void {
  const found = versionOf(db)
  if (folder !== undefined && found > 0 && steps.some(step => step.to > found)) keepOld(db, folder, found)
  for (const step of steps) {
    if (step.to <= versionOf(db)) continue
    if (step.to !== versionOf(db) + 1) throw new RangeError(`steps of the database have a gap before ${step.to}`)
    db.transaction(() => {
      db.exec(step.sql)
      db.pragma(`application_id = ${APPLICATION}`)
      db.pragma(`user_version = ${step.to}`)
    }).immediate()
  }
}

function keepOld(db: Db, folder: string, version: number): void {
  const beside = join(folder, `ampwright-version-${version}.sqlite`)
  if (existsSync(beside)) return
  rmSync(`${beside}.writing`, { force: true })
  db.prepare('VACUUM INTO ?').run(`${beside}.writing`)
  renameSync(`${beside}.writing`, beside)
}

/** Makes a folder and those above it, one after the other: made all at once, a place that takes no folders is tried for ever. */
function madeFolder(folder: string): void {
  const there = statSync(folder, { throwIfNoEntry: false })
  if (there && !there.isDirectory())
    throw new StoreFault('read-only', `${folder} is a file, not a folder. Choose another place with --data DIR.`)
  if (there) return
  if (dirname(folder) !== folder) madeFolder(dirname(folder))
  mkdirSync(folder, { mode: 0o700 })
}
