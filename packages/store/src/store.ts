import { existsSync, readdirSync, rmSync } from 'node:fs'
import { join as joinPath } from 'node:path'
import type { Edit, Issue, SeenEdit } from '@ampwright/conversion'
import { backUp, checkBackup, keepBefore, swapIn } from './backup.ts'
import { type Bundle, bundled } from './bundle.ts'
import { bytesOf, keep, sizeOf } from './contents.ts'
import { type Head, headOf, isUnused, make, needLive, purge, type Summary, setDeleted, summaries, type Variant } from './conversions.ts'
import { renewCopy } from './copies.ts'
import { DATABASE, type Opening, openDatabase } from './database.ts'
import { asFault, guarded, StoreFault } from './fault.ts'
import { type FileDifference, filesBetween, hashIn, mergeFiles } from './file-lists.ts'
import { differences, join, type Texts } from './importing.ts'
import { type Clash, merge } from './merge.ts'
import { fileName } from './names.ts'
import {
  append,
  type Files,
  headNumber,
  type Revision,
  type RevisionKind,
  type RevisionLine,
  revisionAt,
  revisionLines,
} from './revisions.ts'
import { stamped, unstamped } from './stamp.ts'

/** All there is to judge a state by; the bytes of a file by its hash. */
export type Judged = Texts & { readonly bytesOf: (hash: string) => Uint8Array }
/** What keeps a state out: problems it has that the state before it had not. Without a state before, all of them. */
export type Judge = (after: Judged, before: Judged | undefined, edits: readonly Edit[]) => readonly Issue[]

export type StoreOptions = Opening & {
  readonly folder: string
  readonly judge: Judge
  /** The clock [ms since 1970]. */
  readonly now: () => number
  /** Told when a copy beside the database could not be renewed; what was saved is saved. */
  readonly warn?: (message: string) => void
}

export type Saved = { readonly ok: true; readonly id: string; readonly revision: number; readonly text: string; readonly files: Files }
export type Clashing = {
  readonly ok: false
  readonly why: 'clash'
  readonly clashes: readonly Clash[]
  readonly revision: number
  readonly text: string
}
export type KeptOut = { readonly ok: false; readonly why: 'kept out'; readonly issues: readonly Issue[] }
export type Outcome = Saved | Clashing | KeptOut

export type Imported =
  | (Saved & {
      readonly as: 'new' | 'merged' | 'unchanged' | 'variant'
      readonly clashes: readonly Clash[]
      readonly layoutLeftOut: boolean
    })
  | KeptOut

export type Change = {
  readonly what: 'made' | 'revision' | 'deleted' | 'undeleted' | 'purged' | 'restored'
  readonly id: string
  readonly revision: number
}
export type Beginning = {
  readonly text: string
  readonly files?: Readonly<Record<string, Uint8Array>>
  readonly by?: string
  readonly what?: string
}
export type Coming = Bundle & {
  readonly into?: string
  readonly fromRevision?: number
  readonly asVariant?: boolean
  /** A conversion of its own, whatever it was exported from. */
  readonly alone?: boolean
  readonly named?: string
  readonly by?: string
}

export type Store = ReturnType<typeof openStore>

/** Opens the store in a data folder. What it answers is on the disk when it answers. Throws `StoreFault` with one message for people. */
export function openStore(o: StoreOptions) {
  const { folder, judge, now } = o
  let db = openDatabase(folder, o)
  const listeners = new Set<(change: Change) => void>()
  const within = <T>(work: () => T): T => guarded(folder, () => db.transaction(work).immediate())
  const reading = <T>(work: () => T): T => guarded(folder, work)
  const tell = (what: Change['what'], id: string, revision: number): void => listeners.forEach(hear => hear({ what, id, revision }))

  /** The copy is no part of the record: where it fails, the save stands and the failure is told. */
  const copy = (id: string): void => {
    try {
      renewCopy(db, folder, id)
    } catch (e) {
      const fault = asFault(e, folder)
      o.warn?.(`The copy of conversion ${id} could not be renewed. ${fault instanceof StoreFault ? fault.message : String(e)}`)
    }
  }
  const told = (what: Change['what'], id: string): void => {
    copy(id)
    tell(what, id, headNumber(db, id))
  }
  const judged = (t: Texts): Judged => ({ ...t, bytesOf: hash => bytesOf(db, hash) })
  const saved = (id: string): Saved => {
    const { revision, text, files } = headOf(db, id)
    return { ok: true, id, revision, text, files }
  }
  const kept = (files: Readonly<Record<string, Uint8Array>>): Files =>
    Object.fromEntries(Object.entries(files).map(([name, bytes]) => [fileName(name), keep(db, bytes)]))

  /** One new revision from the head, judged before it is kept. Belongs into a transaction. */
  function follow(
    id: string,
    next: Texts & { by?: string; kind: RevisionKind; what: string },
    edits: readonly Edit[] = [],
  ): KeptOut | Saved {
    const head = headOf(db, id)
    if (next.text === head.text && filesBetween(head.files, next.files).length === 0) return saved(id)
    const issues = judge(judged(next), judged(head), edits)
    if (issues.length) throw new Withdrawn({ ok: false, why: 'kept out', issues })
    append(db, id, { at: now(), by: next.by ?? '', kind: next.kind, what: next.what, text: next.text, files: next.files })
    return saved(id)
  }

  function begin(b: Beginning & { kept?: Files; kind?: RevisionKind }, variant?: Variant): Saved | KeptOut {
    const files = { ...b.kept, ...kept(b.files ?? {}) },
      issues = judge(judged({ text: b.text, files }), undefined, [])
    if (issues.length) throw new Withdrawn({ ok: false, why: 'kept out', issues })
    const id = make(db, { at: now(), by: b.by ?? '', kind: b.kind ?? 'made', what: b.what ?? '', text: b.text, files }, variant)
    return saved(id)
  }

  /** What is kept out takes with it whatever the attempt had written. */
  function attempt<T extends { ok: boolean }>(work: () => T): T | KeptOut {
    try {
      return within(work)
    } catch (e) {
      if (e instanceof Withdrawn) return e.outcome
      throw e
    }
  }

  function changed<T extends Outcome | Imported>(before: number, outcome: T): T {
    if (outcome.ok && outcome.revision !== before) told(before === 0 ? 'made' : 'revision', outcome.id)
    return outcome
  }

  const clashing = (id: string, clashes: readonly Clash[]): Clashing => {
    const { revision, text } = headOf(db, id)
    return { ok: false, why: 'clash', clashes, revision, text }
  }

  for (const leftover of readdirSync(folder)) if (leftover.endsWith('.writing')) rmSync(joinPath(folder, leftover), { force: true })
  within(() => purge(db, now()))
  for (const { id } of reading(() => summaries(db))) copy(id)

  return {
    folder,
    /** Whether nothing was ever kept here. */
    isUnused: (): boolean => isUnused(db),
    conversions: (): readonly Summary[] => reading(() => summaries(db)),
    conversion: (id: string): Head => reading(() => headOf(db, id)),
    revisions: (id: string): readonly RevisionLine[] => reading(() => (headOf(db, id), revisionLines(db, id))),
    revision: (id: string, n: number): Revision => reading(() => (headOf(db, id), revisionAt(db, id, n))),

    make: (b: Beginning): Saved | KeptOut =>
      changed(
        0,
        attempt(() => begin(b)),
      ),
    /** Another conversion of its own with the text and files of a revision. */
    duplicate: (id: string, revision?: number, by?: string): Saved | KeptOut =>
      changed(
        0,
        attempt(() => beginFrom(id, revision, `duplicate of ${id}`, by)),
      ),
    /** A conversion that remembers of which it is a variant, and what it is called there. */
    variant: (of: string, named: string, revision?: number, by?: string): Saved | KeptOut =>
      changed(
        0,
        attempt(() => beginFrom(of, revision, named, by, named)),
      ),

    /** A batch of edits: all or none. See `merge` for when it applies. `seen` is the revision the edits were made on, where it is known. */
    edit(id: string, batch: { edits: readonly SeenEdit[]; by?: string; what?: string; seen?: number }): Outcome {
      const before = reading(() => (needLive(db, id), headNumber(db, id)))
      return changed(
        before,
        attempt((): Outcome => {
          const head = headOf(db, id),
            seen = batch.seen === undefined || batch.seen === head.revision ? undefined : revisionAt(db, id, batch.seen).text,
            merged = merge(head.text, batch.edits, seen)
          if (merged.ok)
            return follow(id, { ...batch, kind: 'edit', what: batch.what ?? '', text: merged.text, files: head.files }, merged.edits)
          return 'clashes' in merged ? clashing(id, merged.clashes) : { ok: false, why: 'kept out', issues: [merged.problem] }
        }),
      )
    },

    /** Takes back what one revision changed, whatever came after; refused with both values where somebody changed the same since. */
    undo(id: string, revision: number, by?: string): Outcome {
      const before = reading(() => (needLive(db, id), headNumber(db, id)))
      return changed(
        before,
        attempt((): Outcome => {
          if (revision === 1) throw new StoreFault('content', 'The first revision cannot be undone: nothing was before it.')
          const made = revisionAt(db, id, revision),
            earlier = revisionAt(db, id, revision - 1),
            head = headOf(db, id)
          const joined = join(made, head, earlier)
          if (!joined.ok) return clashing(id, joined.clashes)
          return follow(id, {
            text: joined.text,
            files: joined.files,
            kind: 'edit',
            what: `undo of revision ${revision}`,
            ...(by === undefined ? {} : { by }),
          })
        }),
      )
    },

    /** An earlier revision once more, as a new one. Whatever was accepted once is accepted again. */
    restore(id: string, revision: number, by = ''): Saved {
      const before = reading(() => (needLive(db, id), headNumber(db, id)))
      const outcome = within(() => {
        const { text, files } = revisionAt(db, id, revision),
          head = headOf(db, id)
        if (text === head.text && filesBetween(files, head.files).length === 0) return saved(id)
        append(db, id, { at: now(), by, kind: 'restore', what: `revision ${revision}`, text, files })
        return saved(id)
      })
      return changed(before, outcome)
    },

    /** What differs between two revisions of one conversion, or of two. */
    compare(a: { id: string; revision: number }, b: { id: string; revision: number }) {
      const x = reading(() => revisionAt(db, a.id, a.revision)),
        y = reading(() => revisionAt(db, b.id, b.revision))
      return { edits: differences(x.text, y.text), files: filesBetween(x.files, y.files) as readonly FileDifference[] }
    },

    remove(id: string): Summary {
      if (within(() => setDeleted(db, id, true, now()))) told('deleted', id)
      return reading(() => headOf(db, id))
    },
    bringBack(id: string): Summary {
      if (within(() => setDeleted(db, id, false, now()))) told('undeleted', id)
      return reading(() => headOf(db, id))
    },

    /** The files of a list with the size of each [bytes]. */
    listed: (files: Files): readonly { name: string; sha256: string; size: number }[] =>
      reading(() => Object.entries(files).map(([name, sha256]) => ({ name, sha256, size: sizeOf(db, sha256) }))),
    /** Puts a file beside a conversion, or another in its place, as a revision. A file that its text cannot use is kept out. */
    putFile(id: string, name: string, bytes: Uint8Array | null, by?: string): Outcome {
      const before = reading(() => (needLive(db, id), headNumber(db, id))),
        word = fileName(name)
      return changed(
        before,
        attempt((): Outcome => {
          const head = headOf(db, id),
            was = hashIn(head.files, word) ?? null
          if (bytes === null && was === null) throw new StoreFault('unknown', `There is no file «${word}» beside this conversion.`)
          const { files } = mergeFiles(head.files, [{ file: word, was, now: bytes === null ? null : keep(db, bytes) }])
          return follow(id, { text: head.text, files, kind: 'file', what: word, ...(by === undefined ? {} : { by }) })
        }),
      )
    },
    file(id: string, name: string, revision?: number): Buffer {
      return reading(() => {
        const { files } = revision === undefined ? headOf(db, id) : revisionAt(db, id, revision),
          hash = hashIn(files, fileName(name))
        if (hash === undefined) throw new StoreFault('unknown', `There is no file «${name}» beside this conversion.`)
        return bytesOf(db, hash)
      })
    },

    /** The text with a last line that says where it came from. */
    exported(id: string, revision?: number): string {
      const { text, revision: n } = reading(() => revisionAt(db, id, revision ?? headOf(db, id).revision))
      return stamped(text, id, n)
    },
    bundle(id: string, revision?: number): Buffer {
      return reading(() => {
        const head = headOf(db, id),
          { text, files, revision: n } = revisionAt(db, id, revision ?? head.revision)
        const contents = Object.fromEntries(Object.entries(files).map(([name, hash]) => [name, bytesOf(db, hash)]))
        return bundled(head.name, { text, files: contents, from: { id, revision: n } })
      })
    },

    /** Takes in a text or bundle: new, merged into what it was exported from, or a variant of that where both changed the same. */
    take(coming: Coming): Imported {
      const target = reading(() => targetOf(coming)),
        before = target.id === undefined ? 0 : reading(() => headNumber(db, target.id as string))
      const outcome = attempt((): Imported => taken(coming, target))
      if (outcome.ok && outcome.as !== 'unchanged') told(outcome.as === 'merged' ? 'revision' : 'made', outcome.id)
      return outcome.ok && outcome.as === 'merged' && outcome.revision === before ? { ...outcome, as: 'unchanged' } : outcome
    },

    /** Takes out for good what was deleted thirty days ago. */
    purge(): readonly string[] {
      const gone = within(() => purge(db, now()))
      for (const id of gone) tell('purged', id, 0)
      return gone
    },

    backUp: (file: string): Promise<void> => backUp(db, file),
    /** Puts a backup in the place of everything here; what was here is kept in a file beside it, whose name is given. */
    restoreBackup(file: string): string {
      checkBackup(file)
      const name = guarded(folder, () => keepBefore(db, folder, now()))
      db.close()
      try {
        swapIn(folder, file)
      } finally {
        db = openDatabase(folder, o)
      }
      for (const { id } of summaries(db)) copy(id)
      tell('restored', '', 0)
      return name
    },

    /** Tells of every change from now on; gives the way to stop. */
    heard(hear: (change: Change) => void): () => void {
      listeners.add(hear)
      return () => void listeners.delete(hear)
    },
    close(): void {
      listeners.clear()
      db.close()
    },
  }

  function beginFrom(id: string, revision: number | undefined, what: string, by?: string, named?: string): Saved | KeptOut {
    needLive(db, id)
    const n = revision ?? headNumber(db, id),
      { text, files } = revisionAt(db, id, n)
    const first = { text, kept: files, what, ...(by === undefined ? {} : { by }) }
    return begin(first, named === undefined ? undefined : { of: id, named, revision: n })
  }

  type Target = { readonly text: string; readonly id?: string; readonly from?: number }
  function targetOf({ text, from, into, fromRevision, alone }: Coming): Target {
    const bare = unstamped(text),
      said = bare.stamp ?? from
    if (alone) return { text: bare.text }
    if (into !== undefined) {
      needLive(db, into)
      const n = fromRevision ?? (said?.id === into ? said.revision : undefined)
      return { text: bare.text, id: into, ...(n === undefined ? {} : { from: n }) }
    }
    const known = said && db.prepare('SELECT text FROM revision WHERE conversion = ? AND number = ?').pluck().get(said.id, said.revision)
    if (!said || known === undefined || headOf(db, said.id).deletedUntil !== null) return { text: bare.text }
    if (bare.stamp && !String(known).startsWith(bare.stamp.hash)) return { text: bare.text }
    return { text: bare.text, id: said.id, from: said.revision }
  }

  function taken(coming: Coming, { text, id, from }: Target): Imported {
    const { by } = coming,
      who = by === undefined ? {} : { by },
      plain = { clashes: [], layoutLeftOut: false }
    const alone = (as: 'new' | 'variant', clashes: readonly Clash[], under: Files, variant?: Variant): Imported => {
      const made = begin({ text, kept: under, files: coming.files, kind: 'import', what: variant?.named ?? '', ...who }, variant)
      return made.ok ? { ...made, ...plain, as, clashes } : made
    }
    if (id === undefined) return alone('new', [], {})
    const head = headOf(db, id),
      base = from === undefined ? undefined : revisionAt(db, id, from),
      under = base?.files ?? head.files
    const variant = { of: id, named: coming.named ?? 'imported', revision: from ?? head.revision }
    if (coming.asVariant || !base) return alone('variant', [], under, variant)
    const files = { ...under, ...kept(coming.files) },
      issues = judge(judged({ text, files }), judged(base), [])
    if (issues.length) throw new Withdrawn({ ok: false, why: 'kept out', issues })
    const joined = join(base, head, { text, files })
    if (!joined.ok) return alone('variant', joined.clashes, under, variant)
    const made = follow(id, { text: joined.text, files: joined.files, kind: 'import', what: `from revision ${from}`, ...who })
    return made.ok ? { ...made, as: 'merged', clashes: [], layoutLeftOut: joined.layoutLeftOut } : made
  }
}

/** Carries an outcome out of a transaction that must not stand. */
class Withdrawn extends Error {
  readonly outcome: KeptOut
  constructor(outcome: KeptOut) {
    super('kept out')
    this.outcome = outcome
  }
}

/** Whether a folder holds a database already. */
export const hasDatabase = (folder: string): boolean => existsSync(joinPath(folder, DATABASE))
