import { EMPTY_WORKSHOP } from '@ampwright/conversion'
import { keepText, textOf } from './contents.ts'
import type { Db } from './database.ts'
import { StoreFault } from './fault.ts'

/** A revision of the workshop's own file, without its text. */
export type WorkshopRevisionLine = {
  readonly revision: number
  readonly at: number
  readonly by: string
  readonly kind: 'made' | 'edit'
  readonly what: string
  readonly hash: string
}
/** The file as it stands; revision 0 and no time where nothing was ever kept. */
export type WorkshopHead = { readonly revision: number; readonly at: number | null; readonly text: string }

const LINE = 'number AS revision, at, by, kind, what, text AS hash'

/** Adds a revision behind the last one. Belongs into a transaction. */
export function appendWorkshop(db: Db, r: Omit<WorkshopRevisionLine, 'revision' | 'hash'> & { readonly text: string }): void {
  db.prepare('INSERT INTO workshop_revision (number, at, by, kind, what, text) VALUES (?, ?, ?, ?, ?, ?)').run(
    workshopHead(db).revision + 1,
    r.at,
    r.by,
    r.kind,
    r.what,
    keepText(db, r.text),
  )
}

export function workshopHead(db: Db): WorkshopHead {
  const row = db.prepare('SELECT number, at, text FROM workshop_revision ORDER BY number DESC LIMIT 1').get() as
    | { number: number; at: number; text: string }
    | undefined
  return row ? { revision: row.number, at: row.at, text: textOf(db, row.text) } : { revision: 0, at: null, text: EMPTY_WORKSHOP }
}

/** The text of a revision; 0 is the empty file every workshop begins with. */
export function workshopTextAt(db: Db, number: number): string {
  if (number === 0) return EMPTY_WORKSHOP
  const hash = db.prepare('SELECT text FROM workshop_revision WHERE number = ?').pluck().get(number) as string | undefined
  if (hash === undefined)
    throw new StoreFault('unknown', `The workshop file has no revision ${number}; it has 1 to ${workshopHead(db).revision}.`)
  return textOf(db, hash)
}

/** Newest first. */
export const workshopLines = (db: Db): readonly WorkshopRevisionLine[] =>
  db.prepare(`SELECT ${LINE} FROM workshop_revision ORDER BY number DESC`).all() as WorkshopRevisionLine[]
