import { randomBytes } from 'node:crypto'
import { dirname } from 'node:path'
import { textOf } from './contents.ts'
import type { Db } from './database.ts'
import { damaged, StoreFault } from './fault.ts'
import { append, headNumber, type NewRevision, nameIn, type Revision, revisionAt } from './revisions.ts'

export const DAYS_KEPT = 30
const DAY = 86_400_000

/** Of which conversion, from which of its revisions, a variant is, and what it is called there. */
export type Variant = { readonly of: string; readonly named: string; readonly revision: number }
export type Summary = {
  readonly id: string
  readonly name: string
  readonly variant: Variant | null
  readonly revision: number
  /** When it was made and last changed, and until when a deleted one can be brought back [ms since 1970]. */
  readonly made: number
  readonly at: number
  readonly deletedUntil: number | null
}
export type Head = Summary & Revision

type Row = { id: string; at: number; variant_of: string | null; named: string | null; from_revision: number | null }
type State = { deleted: number; at: number } | undefined

/** Makes a conversion with its first revision. Belongs into a transaction. */
export function make(db: Db, first: NewRevision, variant?: Variant): string {
  const id = randomBytes(8).toString('hex')
  db.prepare('INSERT INTO conversion (id, at, variant_of, named, from_revision) VALUES (?, ?, ?, ?, ?)').run(
    id,
    first.at,
    variant?.of ?? null,
    variant?.named ?? null,
    variant?.revision ?? null,
  )
  append(db, id, first)
  return id
}

const rowOf = (db: Db, id: string): Row => {
  const row = db.prepare('SELECT * FROM conversion WHERE id = ?').get(id) as Row | undefined
  if (!row) throw new StoreFault('unknown', 'There is no such conversion here.')
  return row
}
const stateOf = (db: Db, id: string): State =>
  db.prepare('SELECT deleted, at FROM removal WHERE conversion = ? ORDER BY n DESC LIMIT 1').get(id) as State

/** A conversion that may be changed: there, and not deleted. */
export function needLive(db: Db, id: string): void {
  rowOf(db, id)
  if (stateOf(db, id)?.deleted) throw new StoreFault('deleted', 'This conversion is deleted; bring it back first.')
}

export function headOf(db: Db, id: string): Head {
  const row = rowOf(db, id)
  return { ...summary(db, row), ...revisionAt(db, id, headNumber(db, id)) }
}

function summary(db: Db, row: Row): Summary {
  const head = db.prepare('SELECT number, at, text FROM revision WHERE conversion = ? ORDER BY number DESC LIMIT 1').get(row.id) as
    | { number: number; at: number; text: string }
    | undefined
  // A conversion is made with its first revision, in one: without any, what holds them is damaged.
  if (!head) throw damaged(dirname(db.name))
  const state = stateOf(db, row.id)
  return {
    id: row.id,
    name: nameIn(() => textOf(db, head.text), head.text),
    variant: row.variant_of === null ? null : { of: row.variant_of, named: row.named ?? '', revision: row.from_revision ?? 0 },
    revision: head.number,
    made: row.at,
    at: head.at,
    deletedUntil: state?.deleted ? state.at + DAYS_KEPT * DAY : null,
  }
}

/** Every conversion, deleted ones too, last changed first. */
export const summaries = (db: Db): readonly Summary[] =>
  (db.prepare('SELECT * FROM conversion').all() as Row[]).map(row => summary(db, row)).sort((a, b) => b.at - a.at || (a.id < b.id ? -1 : 1))

/** Deletes or brings back. Gives whether that changed anything. Belongs into a transaction. */
export function setDeleted(db: Db, id: string, deleted: boolean, at: number): boolean {
  rowOf(db, id)
  if (Boolean(stateOf(db, id)?.deleted) === deleted) return false
  db.prepare('INSERT INTO removal (conversion, at, deleted) VALUES (?, ?, ?)').run(id, at, deleted ? 1 : 0)
  return true
}

/** Takes out for good what was deleted thirty days ago, and what nothing else holds of it. Gives the ids. */
export function purge(db: Db, at: number): readonly string[] {
  const due = summaries(db).filter(s => s.deletedUntil !== null && s.deletedUntil <= at)
  for (const { id } of due) {
    db.prepare('INSERT INTO purge (conversion, at) VALUES (?, ?)').run(id, at)
    for (const [table, key] of [
      ['revision', 'conversion'],
      ['removal', 'conversion'],
      ['conversion', 'id'],
    ] as const)
      db.prepare(`DELETE FROM ${table} WHERE ${key} = ?`).run(id)
  }
  if (due.length)
    db.exec(
      `DELETE FROM content WHERE hash NOT IN (SELECT text FROM revision)
       AND hash NOT IN (SELECT json_each.value FROM revision, json_each(revision.files))
       AND hash NOT IN (SELECT text FROM workshop_revision)`,
    )
  return due.map(s => s.id)
}

/** Whether nothing was ever kept here. */
export const isUnused = (db: Db): boolean =>
  db
    .prepare(
      `SELECT NOT EXISTS (SELECT 1 FROM conversion) AND NOT EXISTS (SELECT 1 FROM purge)
       AND NOT EXISTS (SELECT 1 FROM workshop_revision)`,
    )
    .pluck()
    .get() === 1
