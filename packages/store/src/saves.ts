import type { Edit, Issue } from '@ampwright/conversion'
import { bytesOf, keep } from './contents.ts'
import { headOf, make, type Variant } from './conversions.ts'
import { renewCopy, renewWorkshopCopy } from './copies.ts'
import { type Db, type Opening, openDatabase } from './database.ts'
import { asFault, guarded, StoreFault } from './fault.ts'
import { filesBetween } from './file-lists.ts'
import type { Texts } from './importing.ts'
import type { Clash } from './merge.ts'
import { fileName } from './names.ts'
import { append, type Files, headNumber, type RevisionKind } from './revisions.ts'
import { workshopHead } from './workshop-revisions.ts'

/** All there is to judge a state by; the bytes of a file by its hash. */
export type Judged = Texts & { readonly bytesOf: (hash: string) => Uint8Array }
/** What keeps a state out: problems it has that the state before it had not. Without a state before, all of them. */
export type Judge = (after: Judged, before: Judged | undefined, edits: readonly Edit[]) => readonly Issue[]

/** The same for the text of the workshop's own file. */
export type WorkshopJudge = (after: string, before: string, edits: readonly Edit[]) => readonly Issue[]

export type StoreOptions = Opening & {
  readonly folder: string
  readonly judge: Judge
  /** Left out: what cannot be read as a workshop file is kept out, nothing is looked up. */
  readonly judgeWorkshop?: WorkshopJudge
  /** The clock [ms since 1970]. */
  readonly now: () => number
  /** Told when a copy beside the database could not be renewed; what was saved is saved. */
  readonly warn?: (message: string) => void
  /** Told when every copy is renewed again. */
  readonly well?: () => void
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

/** Stands for the id of a conversion in what is told of the workshop's own file. */
const WORKSHOP = 'workshop'
export type Change = {
  readonly what: 'made' | 'revision' | 'deleted' | 'undeleted' | 'purged' | 'restored' | 'workshop'
  /** Empty where everything may be another, `workshop` where it is of the workshop's own file. */
  readonly id: string
  readonly revision: number
}

/** A first revision: a text, with files by what they hold or by hashes that are kept already. */
export type First = {
  readonly text: string
  readonly files?: Readonly<Record<string, Uint8Array>>
  readonly kept?: Files
  readonly by?: string | undefined
  readonly kind?: RevisionKind
  readonly what?: string
}
export type Next = Texts & { readonly by?: string | undefined; readonly kind: RevisionKind; readonly what: string }

export type Saves = ReturnType<typeof savesIn>

/** The database of a folder, and how anything is written to it: in one transaction, judged before it is kept, told when it is on the disk. */
export function savesIn(o: StoreOptions) {
  const { folder, judge, now } = o
  let db = openDatabase(folder, o)
  const listeners = new Set<(change: Change) => void>()
  const reading = <T>(work: (db: Db) => T): T => guarded(folder, () => work(db))
  const within = <T>(work: (db: Db) => T): T => guarded(folder, () => db.transaction(() => work(db)).immediate())
  const judged = (t: Texts): Judged => ({ ...t, bytesOf: hash => bytesOf(db, hash) })

  /** Throws what carries the outcome out of the transaction, so that whatever the attempt had written goes with it. */
  function needAccepted(after: Texts, before?: Texts, edits: readonly Edit[] = []): void {
    const issues = judge(judged(after), before && judged(before), edits)
    if (issues.length) throw new Withdrawn({ ok: false, why: 'kept out', issues })
  }

  /** Copies that could not be renewed, with what renews them: tried again with the next one. */
  const behind = new Map<string, () => void>()
  function renewed(of: string, renew: () => void): boolean {
    try {
      renew()
      behind.delete(of)
      return true
    } catch (e) {
      const fault = asFault(e, folder)
      // Taken out for good: there is nothing to copy any more.
      if (fault instanceof StoreFault && fault.kind === 'unknown') return behind.delete(of)
      behind.set(of, renew)
      o.warn?.(`The copy of ${of} could not be renewed. ${fault instanceof StoreFault ? fault.message : String(e)}`)
      return false
    }
  }
  /** A copy is no part of the record: where it fails, the save stands and the failure is told until all are renewed. */
  function copied(of: string, renew: () => void): void {
    const wasBehind = behind.size > 0
    if (renewed(of, renew) && wasBehind && [...behind].every(([other, again]) => renewed(other, again))) o.well?.()
  }
  const copy = (id: string): void => copied(`conversion ${id}`, () => renewCopy(db, folder, id))
  function copyWorkshop(): void {
    if (workshopHead(db).revision > 0) copied('the workshop file', () => renewWorkshopCopy(db, folder, workshopHead(db).text))
  }
  const tell = (what: Change['what'], id: string, revision: number): void => listeners.forEach(hear => hear({ what, id, revision }))
  const saved = (id: string): Saved => {
    const { revision, text, files } = headOf(db, id)
    return { ok: true, id, revision, text, files }
  }

  return {
    folder,
    now,
    reading,
    within,
    needAccepted,
    copy,
    copyWorkshop,
    tell,
    saved,
    listeners,
    /** Renews the copy and tells of the change. */
    told(what: Change['what'], id: string): void {
      copy(id)
      tell(what, id, headNumber(db, id))
    },
    workshopTold(revision: number): void {
      copyWorkshop()
      tell('workshop', WORKSHOP, revision)
    },
    /** In one transaction, which does not stand where something is kept out. */
    attempt<T extends { ok: boolean }>(work: (db: Db) => T): T | KeptOut {
      try {
        return within(work)
      } catch (e) {
        if (e instanceof Withdrawn) return e.outcome
        throw e
      }
    },
    /** Hashes of files, their bytes kept. Belongs into a transaction. */
    keptFiles: (files: Readonly<Record<string, Uint8Array>> = {}): Files =>
      Object.fromEntries(Object.entries(files).map(([name, bytes]) => [fileName(name), keep(db, bytes)])),
    /** A conversion with its first revision. Belongs into a transaction. */
    begin(first: First, variant?: Variant): Saved {
      const files = { ...first.kept, ...this.keptFiles(first.files) },
        { text, by = '', kind = 'made', what = '' } = first
      needAccepted({ text, files })
      return saved(make(db, { at: now(), by, kind, what, text, files }, variant))
    },
    /** One new revision behind the head, where it says anything new. Belongs into a transaction. */
    follow(id: string, next: Next, edits: readonly Edit[] = [], isAccepted = false): Saved {
      const head = headOf(db, id)
      if (next.text === head.text && filesBetween(head.files, next.files).length === 0) return saved(id)
      if (!isAccepted) needAccepted(next, head, edits)
      append(db, id, { at: now(), by: next.by ?? '', kind: next.kind, what: next.what, text: next.text, files: next.files })
      return saved(id)
    },
    clashing(id: string, clashes: readonly Clash[]): Clashing {
      const { revision, text } = headOf(db, id)
      return { ok: false, why: 'clash', clashes, revision, text }
    },
    /** Another file takes the place of the database; `swap` runs while it is closed. */
    replace(swap: () => void): void {
      db.close()
      try {
        swap()
      } finally {
        db = openDatabase(folder, o)
      }
    },
    close(): void {
      listeners.clear()
      db.close()
    },
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
