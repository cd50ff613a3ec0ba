import type { SeenEdit } from '@ampwright/conversion'
import { keep } from './contents.ts'
import { headOf, needLive, type Summary, setDeleted } from './conversions.ts'
import { StoreFault } from './fault.ts'
import { hashIn, mergeFiles } from './file-lists.ts'
import { join } from './importing.ts'
import { merge } from './merge.ts'
import { fileName } from './names.ts'
import { headNumber, revisionAt } from './revisions.ts'
import type { First, KeptOut, Outcome, Saved, Saves } from './saves.ts'

export type Batch = {
  readonly edits: readonly SeenEdit[]
  readonly by?: string | undefined
  readonly what?: string | undefined
  /** The revision the edits were made on, where it is known. */
  readonly seen?: number | undefined
}

/** Everything that changes a conversion or makes one; each answers when it is on the disk. */
export function changes(s: Saves) {
  const made = <T extends { ok: boolean; id?: string }>(outcome: T): T => {
    if (outcome.ok && outcome.id !== undefined) s.told('made', outcome.id)
    return outcome
  }
  /** A change of a conversion that is there and not deleted; told where it made a revision. */
  function changed(id: string, work: (db: Parameters<typeof headOf>[0]) => Outcome): Outcome {
    const before = s.reading(db => (needLive(db, id), headNumber(db, id))),
      outcome = s.attempt(work)
    if (outcome.ok && outcome.revision !== before) s.told('revision', id)
    return outcome
  }
  function from(id: string, revision: number | undefined, first: Omit<First, 'text' | 'kept'>, named?: string): Saved | KeptOut {
    return made(
      s.attempt(db => {
        needLive(db, id)
        const n = revision ?? headNumber(db, id),
          { text, files } = revisionAt(db, id, n)
        return s.begin({ ...first, text, kept: files }, named === undefined ? undefined : { of: id, named, revision: n })
      }),
    )
  }
  function setTo(deleted: boolean, id: string): Summary {
    if (s.within(db => setDeleted(db, id, deleted, s.now()))) s.told(deleted ? 'deleted' : 'undeleted', id)
    return s.reading(db => headOf(db, id))
  }

  return {
    make: (first: First): Saved | KeptOut => made(s.attempt(() => s.begin(first))),
    /** Another conversion of its own with the text and files of a revision. */
    duplicate: (id: string, revision?: number, by?: string): Saved | KeptOut => from(id, revision, { by, what: `duplicate of ${id}` }),
    /** A conversion that remembers of which it is a variant, and what it is called there. */
    variant: (of: string, named: string, revision?: number, by?: string): Saved | KeptOut => from(of, revision, { by, what: named }, named),

    /** A batch of edits: all or none. See `merge` for when it applies. */
    edit: (id: string, batch: Batch): Outcome =>
      changed(id, db => {
        const head = headOf(db, id),
          seen = batch.seen === undefined || batch.seen === head.revision ? undefined : revisionAt(db, id, batch.seen).text,
          merged = merge(head.text, batch.edits, seen),
          said = { by: batch.by, kind: 'edit', what: batch.what ?? '' } as const
        if (merged.ok) return s.follow(id, { ...said, text: merged.text, files: head.files }, merged.edits)
        return 'clashes' in merged ? s.clashing(id, merged.clashes) : { ok: false, why: 'kept out', issues: [merged.problem] }
      }),

    /** Takes back what one revision changed, whatever came after; refused with both values where somebody changed the same since. */
    undo: (id: string, revision: number, by?: string): Outcome =>
      changed(id, db => {
        if (revision === 1) throw new StoreFault('content', 'The first revision cannot be undone: nothing was before it.')
        const joined = join(revisionAt(db, id, revision), headOf(db, id), revisionAt(db, id, revision - 1))
        if (!joined.ok) return s.clashing(id, joined.clashes)
        return s.follow(id, { text: joined.text, files: joined.files, kind: 'edit', what: `undo of revision ${revision}`, by })
      }),

    /** An earlier revision once more, as a new one. What was accepted once is accepted again. */
    restore(id: string, revision: number, by?: string): Saved {
      const outcome = changed(id, db => {
        const { text, files } = revisionAt(db, id, revision)
        return s.follow(id, { text, files, kind: 'restore', what: `revision ${revision}`, by }, [], true)
      })
      if (!outcome.ok) throw new RangeError('a restored revision cannot be kept out')
      return outcome
    },

    remove: (id: string): Summary => setTo(true, id),
    bringBack: (id: string): Summary => setTo(false, id),

    /** Puts a file beside a conversion, or another in its place, or takes it away (null), as a revision. A file its text cannot use is kept out. */
    putFile(id: string, name: string, bytes: Uint8Array | null, by?: string): Outcome {
      const word = fileName(name)
      return changed(id, db => {
        const head = headOf(db, id),
          was = hashIn(head.files, word) ?? null
        if (bytes === null && was === null) throw new StoreFault('unknown', `There is no file «${word}» beside this conversion.`)
        const { files } = mergeFiles(head.files, [{ file: word, was, now: bytes === null ? null : keep(db, bytes) }])
        return s.follow(id, { text: head.text, files, kind: 'file', what: word, by })
      })
    },
  }
}
