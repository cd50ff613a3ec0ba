import {
  type Holder,
  holderOf,
  type Issue,
  isError,
  isSameCar,
  type Now,
  readWorkshop,
  type SeenEdit,
  type ShelfCar,
} from '@ampwright/conversion'
import type { Batch } from './changes.ts'
import { needLive, type Summary, summaries } from './conversions.ts'
import type { Db } from './database.ts'
import { StoreFault } from './fault.ts'
import { join } from './importing.ts'
import { type Clash, merge } from './merge.ts'
import type { Clashing, KeptOut, Saves, WorkshopJudge } from './saves.ts'
import {
  appendWorkshop,
  type WorkshopHead,
  type WorkshopRevisionLine,
  workshopHead,
  workshopLines,
  workshopTextAt,
} from './workshop-revisions.ts'

export type WorkshopSaved = { readonly ok: true; readonly revision: number; readonly text: string }
export type WorkshopOutcome = WorkshopSaved | Clashing | KeptOut
/** A piece that is kept for another car already. */
export type Reserved = { readonly ok: false; readonly why: 'reserved'; readonly piece: string; readonly holder: Holder }

type Next = { readonly text: string; readonly what: string; readonly by?: string | undefined; readonly kind?: 'made' | 'edit' }

/** The workshop's own file: what lies on its shelf, in revisions, and which car each piece is kept for. */
export function workshop(s: Saves, judge: WorkshopJudge = plainJudge) {
  function kept(db: Db, head: WorkshopHead, next: Next, edits: readonly SeenEdit[] = []): WorkshopOutcome {
    if (next.text === head.text) return { ok: true, revision: head.revision, text: head.text }
    const issues = judge(next.text, head.text, edits)
    if (issues.length) return { ok: false, why: 'kept out', issues }
    appendWorkshop(db, { at: s.now(), by: next.by ?? '', kind: next.kind ?? 'edit', what: next.what, text: next.text })
    return { ok: true, revision: head.revision + 1, text: next.text }
  }
  const clashing = ({ revision, text }: WorkshopHead, clashes: readonly Clash[]): Clashing => ({
    ok: false,
    why: 'clash',
    clashes,
    revision,
    text,
  })
  /** In one transaction; told, and its copy renewed, where it made a revision. */
  function changed<T extends WorkshopOutcome | Reserved>(work: (db: Db, head: WorkshopHead) => T): T {
    const before = s.reading(workshopHead).revision,
      outcome = s.within(db => work(db, workshopHead(db)))
    if (outcome.ok && outcome.revision !== before) s.workshopTold(outcome.revision)
    return outcome
  }
  function edited(db: Db, head: WorkshopHead, { edits, by, what = '', seen }: Batch): WorkshopOutcome {
    const base = seen === undefined || seen === head.revision ? undefined : workshopTextAt(db, seen),
      merged = merge(head.text, edits, base)
    if (merged.ok) return kept(db, head, { text: merged.text, what, by }, edits)
    return 'clashes' in merged ? clashing(head, merged.clashes) : { ok: false, why: 'kept out', issues: [merged.problem] }
  }

  return {
    workshop: (): WorkshopHead => s.reading(workshopHead),
    workshopRevisions: (): readonly WorkshopRevisionLine[] => s.reading(workshopLines),
    /** The cars a piece can be kept for, deleted ones too. */
    shelfCars: (): readonly ShelfCar[] => s.reading(shelfCars),

    /** A whole text as the workshop's file, where there is none yet. */
    beginWorkshop: (text: string, what: string, by?: string): WorkshopOutcome =>
      changed((db, head) => {
        if (head.revision > 0) throw new StoreFault('content', 'There is a workshop file here already; change that.')
        return kept(db, head, { text, what, by, kind: 'made' })
      }),

    /** A batch of edits: all or none. See `merge` for when it applies. */
    editWorkshop: (batch: Batch): WorkshopOutcome => changed((db, head) => edited(db, head, batch)),

    /** Takes back what one revision changed, whatever came after; refused with both values where somebody changed the same since. */
    undoWorkshop: (revision: number, by?: string): WorkshopOutcome =>
      changed((db, head) => {
        const [after, before] = [revision, revision - 1].map(n => ({ text: workshopTextAt(db, n), files: {} })) as [Base, Base],
          joined = join(after, { text: head.text, files: {} }, before)
        if (!joined.ok) return clashing(head, joined.clashes)
        return kept(db, head, { text: joined.text, what: `undo of revision ${revision}`, by })
      }),

    /** Keeps a piece for a car. Refused where it is kept for another; kept for this one or a variant of it already, it stays so. */
    reserve: (piece: string, conversion: string, by?: string): WorkshopOutcome | Reserved =>
      changed((db, head): WorkshopOutcome | Reserved => {
        needLive(db, conversion)
        const found = readWorkshop(head.text).shelf.find(p => p.key === piece),
          cars = shelfCars(db),
          car = cars.find(c => c.id === conversion)
        if (!found) throw new StoreFault('unknown', `Nothing on the shelf is called «${piece.slice(0, 100)}».`)
        if (found.reserved) {
          const holder = holderOf(found.reserved, cars)
          if (!holder.car || !isSameCar(holder.car.id, conversion, cars)) return { ok: false, why: 'reserved', piece, holder }
          return { ok: true, revision: head.revision, text: head.text }
        }
        const now: Now = { ...(car?.name ? { car: car.name } : {}), conversion },
          what = `«${piece}» reserved for ${car?.name || conversion}`
        return edited(db, head, { edits: [{ path: ['shelf', piece, 'reserved'], was: null, now }], what, by })
      }),
  }
}
type Base = { readonly text: string; readonly files: Record<string, never> }

const shelfCars = (db: Db): readonly ShelfCar[] => summaries(db).map(shelfCar)
const shelfCar = ({ id, name, variant, deletedUntil }: Summary): ShelfCar => ({ id, name, of: variant?.of, deleted: deletedUntil !== null })

const plainJudge: WorkshopJudge = (after): readonly Issue[] => readWorkshop(after).issues.filter(isError)
