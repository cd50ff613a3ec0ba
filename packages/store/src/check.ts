import { bytesOf, sizeOf, textOf } from './contents.ts'
import type { Db } from './database.ts'
import { StoreFault } from './fault.ts'
import { oneByOne, type Watch } from './long-work.ts'
import { nameIn } from './revisions.ts'

/** What a look through everything found: how much it looked at [bytes], and what is not as it was kept, each with its place. */
export type StoreCheck = { readonly contents: number; readonly bytes: number; readonly problems: readonly string[] }

type Read = <T>(work: (db: Db) => T) => T

/**
 * Looks through everything that is kept: the tables of the database, whether anything leads nowhere, and every content against its own hash. Nothing is
 * changed; saving goes on meanwhile. What was taken out for good on the way is no problem.
 */
export async function checkAll(read: Read, watch: Watch): Promise<StoreCheck> {
  const problems: string[] = []
  const tables = read(db => db.prepare("SELECT name FROM sqlite_schema WHERE type = 'table'").pluck().all() as string[])
  await oneByOne(tables, 'looking through the tables', watch, table => {
    const found = read(db => db.pragma(`integrity_check("${table}")`) as { integrity_check: string }[]).map(row => row.integrity_check)
    if (found[0] !== 'ok') problems.push(`The table ${table} is damaged.`)
  })
  if (read(db => db.pragma('foreign_key_check') as unknown[]).length) problems.push('Something that is named elsewhere is missing.')
  const hashes = read(db => db.prepare('SELECT hash FROM content ORDER BY rowid').pluck().all() as string[])
  let bytes = 0
  await oneByOne(hashes, 'holding every content against its hash', watch, hash =>
    read(db => {
      try {
        bytes += bytesOf(db, hash).length
      } catch (e) {
        if (!(e instanceof StoreFault)) throw e
        if (isKept(db, hash)) problems.push(`${placesOf(db, hash)} does not come back as it was kept.`)
        bytes += sizeOf(db, hash)
      }
    }),
  )
  return { contents: hashes.length, bytes, problems }
}

const isKept = (db: Db, hash: string): boolean => db.prepare('SELECT 1 FROM content WHERE hash = ?').get(hash) !== undefined

type Use = { conversion: string; number: number; file: string | null }
const USES = `SELECT conversion, number, NULL AS file FROM revision WHERE text = :hash
  UNION ALL SELECT conversion, number, json_each.key FROM revision, json_each(revision.files) WHERE json_each.value = :hash
  ORDER BY number`

/** Where a content is used, in words. */
function placesOf(db: Db, hash: string): string {
  const uses = db.prepare(USES).all({ hash }) as Use[],
    [first] = uses
  if (!first) return 'A content nothing uses'
  const more = uses.length > 1 ? ` and ${uses.length - 1} more` : '',
    of = `revision ${first.number} of ${carOf(db, first.conversion)}${more}`
  return first.file === null ? `The text of ${of}` : `The file «${first.file}» of ${of}`
}

/** The name of a car by the newest of its texts that can still be read. */
function carOf(db: Db, id: string): string {
  const texts = db.prepare('SELECT text FROM revision WHERE conversion = ? ORDER BY number DESC').pluck().all(id) as string[]
  for (const hash of texts) {
    try {
      const name = nameIn(() => textOf(db, hash), hash)
      if (name) return name
    } catch {
      // This one is damaged too: an older one may say it.
    }
  }
  return `the conversion ${id}`
}
