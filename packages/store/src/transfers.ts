import { type Bundle, bundled } from './bundle.ts'
import { bytesOf } from './contents.ts'
import { headOf, needLive, type Variant } from './conversions.ts'
import type { Db } from './database.ts'
import { join } from './importing.ts'
import type { Clash } from './merge.ts'
import { type Files, headNumber, revisionAt } from './revisions.ts'
import type { KeptOut, Saved, Saves } from './saves.ts'
import { stamped, unstamped } from './stamp.ts'

export type Coming = Bundle & {
  /** The conversion it belongs to; otherwise what it was exported from. */
  readonly into?: string
  readonly fromRevision?: number
  /** A variant whether it could be merged or not, and what it is called. */
  readonly asVariant?: boolean
  readonly named?: string
  /** A conversion of its own, whatever it was exported from. */
  readonly alone?: boolean
  readonly by?: string
}
export type Imported =
  | (Saved & {
      readonly as: 'new' | 'merged' | 'unchanged' | 'variant'
      readonly clashes: readonly Clash[]
      readonly layoutLeftOut: boolean
    })
  | KeptOut
type Target = { readonly text: string; readonly id?: string; readonly from?: number }

/** What leaves as a file, and what comes back as one. */
export function transfers(s: Saves) {
  return {
    /** The text with a last line that says where it came from. */
    exported: (id: string, revision?: number): string =>
      s.reading(db => {
        const n = revision ?? headOf(db, id).revision
        return stamped(revisionAt(db, id, n).text, id, n)
      }),
    bundle: (id: string, revision?: number): Buffer =>
      s.reading(db => {
        const head = headOf(db, id),
          { text, files, revision: n } = revisionAt(db, id, revision ?? head.revision),
          contents = Object.fromEntries(Object.entries(files).map(([name, hash]) => [name, bytesOf(db, hash)]))
        return bundled(head.name, { text, files: contents, from: { id, revision: n } })
      }),
    /** Takes in a text or bundle: new, merged into what it was exported from, or a variant of that where both changed the same. */
    take(coming: Coming): Imported {
      const target = s.reading(db => targetOf(db, coming)),
        before = target.id === undefined ? 0 : s.reading(db => headNumber(db, target.id as string)),
        outcome = s.attempt((db): Imported => taken(s, db, coming, target))
      if (!outcome.ok) return outcome
      if (outcome.as === 'merged' && outcome.revision === before) return { ...outcome, as: 'unchanged' }
      s.told(outcome.as === 'merged' ? 'revision' : 'made', outcome.id)
      return outcome
    },
  }
}

/** What a coming text is to be joined with: what was asked for, else what its last line or its bundle says, where that is known here. */
function targetOf(db: Db, { text, from, into, fromRevision, alone }: Coming): Target {
  const bare = unstamped(text),
    said = bare.stamp ?? from
  if (alone) return { text: bare.text }
  if (into !== undefined) {
    needLive(db, into)
    const n = fromRevision ?? (said?.id === into ? said.revision : undefined)
    return { text: bare.text, id: into, ...(n === undefined ? {} : { from: n }) }
  }
  const hash = said && db.prepare('SELECT text FROM revision WHERE conversion = ? AND number = ?').pluck().get(said.id, said.revision)
  if (!said || hash === undefined || headOf(db, said.id).deletedUntil !== null) return { text: bare.text }
  if (bare.stamp && !String(hash).startsWith(bare.stamp.hash)) return { text: bare.text }
  return { text: bare.text, id: said.id, from: said.revision }
}

/** A name no variant of a conversion has yet: the one wanted, else with a number behind it. */
function freeName(db: Db, of: string, wanted: string): string {
  const met = new Set(db.prepare('SELECT named FROM conversion WHERE variant_of = ?').pluck().all(of) as string[])
  let name = wanted
  for (let n = 2; met.has(name); n++) name = `${wanted} ${n}`
  return name
}

function taken(s: Saves, db: Db, coming: Coming, { text, id, from }: Target): Imported {
  const { by } = coming
  const alone = (as: 'new' | 'variant', clashes: readonly Clash[], kept: Files, variant?: Variant): Imported => ({
    ...s.begin({ text, kept, files: coming.files, kind: 'import', what: variant?.named ?? '', by }, variant),
    as,
    clashes,
    layoutLeftOut: false,
  })
  if (id === undefined) return alone('new', [], {})
  const head = headOf(db, id),
    base = from === undefined ? undefined : revisionAt(db, id, from),
    beside = base?.files ?? head.files,
    variant = {
      of: id,
      named: freeName(db, id, coming.named ?? `taken in on ${new Date(s.now()).toISOString().slice(0, 10)}`),
      revision: from ?? head.revision,
    }
  if (coming.asVariant || !base) return alone('variant', [], beside, variant)
  const files = { ...beside, ...s.keptFiles(coming.files) }
  s.needAccepted({ text, files }, base)
  const joined = join(base, head, { text, files })
  if (!joined.ok) return alone('variant', joined.clashes, beside, variant)
  const made = s.follow(id, { text: joined.text, files: joined.files, kind: 'import', what: `from revision ${from}`, by })
  return { ...made, as: 'merged', clashes: [], layoutLeftOut: joined.layoutLeftOut }
}
