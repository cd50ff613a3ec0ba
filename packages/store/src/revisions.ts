import { dirname } from 'node:path'
import { isSound, readText } from '@ampwright/conversion'
import { keepText, textOf } from './contents.ts'
import type { Db } from './database.ts'
import { damaged, StoreFault } from './fault.ts'

/** Files beside a conversion: their names, and the hash of what each holds. */
export type Files = Readonly<Record<string, string>>
export type RevisionKind = 'made' | 'edit' | 'restore' | 'import' | 'file'
/** What a revision is, without its text. */
export type RevisionLine = {
  readonly revision: number
  readonly at: number
  readonly by: string
  readonly kind: RevisionKind
  readonly what: string
  readonly hash: string
}
export type Revision = RevisionLine & { readonly text: string; readonly files: Files }
export type NewRevision = {
  readonly at: number
  readonly by: string
  readonly kind: RevisionKind
  readonly what: string
  readonly text: string
  readonly files: Files
}

const LINE = 'number AS revision, at, by, kind, what, text AS hash'

/** Adds a revision behind the last one. Gives its number. Belongs into a transaction. */
export function append(db: Db, id: string, r: NewRevision): number {
  const number = headNumber(db, id) + 1
  db.prepare('INSERT INTO revision (conversion, number, at, by, kind, what, text, files) VALUES (?, ?, ?, ?, ?, ?, ?, ?)').run(
    id,
    number,
    r.at,
    r.by,
    r.kind,
    r.what,
    keepText(db, r.text),
    JSON.stringify(r.files),
  )
  return number
}

/** Number of the last revision, 0 where there is none. */
export const headNumber = (db: Db, id: string): number =>
  db.prepare('SELECT coalesce(max(number), 0) FROM revision WHERE conversion = ?').pluck().get(id) as number

export function revisionAt(db: Db, id: string, number: number): Revision {
  const row = db.prepare(`SELECT ${LINE}, files FROM revision WHERE conversion = ? AND number = ?`).get(id, number) as
    | (RevisionLine & { files: string })
    | undefined
  if (!row) throw new StoreFault('unknown', `This conversion has no revision ${number}; it has 1 to ${headNumber(db, id)}.`)
  return { ...row, text: textOf(db, row.hash), files: filesIn(db, row.files) }
}

function filesIn(db: Db, list: string): Files {
  try {
    return JSON.parse(list) as Files
  } catch {
    throw damaged(dirname(db.name))
  }
}

/** Newest first. */
export const revisionLines = (db: Db, id: string): readonly RevisionLine[] =>
  db.prepare(`SELECT ${LINE} FROM revision WHERE conversion = ? ORDER BY number DESC`).all(id) as RevisionLine[]

const kept = new Map<string, string>()
/** What a text calls its car, empty where it does not say. */
export function nameIn(text: () => string, hash: string): string {
  const known = kept.get(hash)
  if (known !== undefined) return known
  const reading = readText(text()),
    node = reading.tree?.entries.get('car')?.node,
    name = isSound(reading) && node?.kind === 'value' ? node.source.slice(0, 200) : ''
  if (kept.size > 500) kept.clear()
  kept.set(hash, name)
  return name
}
