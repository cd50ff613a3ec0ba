import { readdirSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { backUp, checkBackup, keepBefore, swapIn } from './backup.ts'
import { changes } from './changes.ts'
import { checkAll, type StoreCheck } from './check.ts'
import { bytesOf, sizeOf } from './contents.ts'
import { type Head, headOf, isUnused, purge, type Summary, summaries } from './conversions.ts'
import { asFault, StoreFault } from './fault.ts'
import { type FileDifference, filesBetween, hashIn } from './file-lists.ts'
import { differences } from './importing.ts'
import { goOn, type Watch } from './long-work.ts'
import { fileName } from './names.ts'
import { type Files, type Revision, type RevisionLine, revisionAt, revisionLines } from './revisions.ts'
import { type Change, type Saves, type StoreOptions, savesIn } from './saves.ts'
import { transfers } from './transfers.ts'
import { workshop } from './workshop.ts'

export type Store = ReturnType<typeof openStore>

/** Opens the store in a data folder. What it answers is on the disk when it answers. Throws `StoreFault` with one message for people. */
export function openStore(o: StoreOptions) {
  const s = savesIn(o)
  for (const leftover of readdirSync(o.folder)) if (leftover.endsWith('.writing')) rmSync(join(o.folder, leftover), { force: true })
  s.within(db => purge(db, s.now()))
  for (const { id } of s.reading(summaries)) s.copy(id)
  s.copyWorkshop()
  return {
    folder: o.folder,
    ...reads(s),
    ...changes(s),
    ...transfers(s),
    ...keeping(s),
    ...workshop(s, o.judgeWorkshop),
    /** Tells of every change from now on; gives the way to stop. */
    heard(hear: (change: Change) => void): () => void {
      s.listeners.add(hear)
      return () => void s.listeners.delete(hear)
    },
    close: (): void => s.close(),
  }
}

type At = { readonly id: string; readonly revision: number }

const reads = (s: Saves) => ({
  /** Whether nothing was ever kept here. */
  isUnused: (): boolean => s.reading(isUnused),
  conversions: (): readonly Summary[] => s.reading(summaries),
  conversion: (id: string): Head => s.reading(db => headOf(db, id)),
  revisions: (id: string): readonly RevisionLine[] => s.reading(db => (headOf(db, id), revisionLines(db, id))),
  revision: (id: string, n: number): Revision => s.reading(db => (headOf(db, id), revisionAt(db, id, n))),
  /** What differs between two revisions, of one conversion or of two; edits are undefined where a text cannot be read. */
  compare: (a: At, b: At) =>
    s.reading(db => {
      const [x, y] = [a, b].map(({ id, revision }) => (headOf(db, id), revisionAt(db, id, revision))) as [Revision, Revision]
      return { edits: differences(x.text, y.text), files: filesBetween(x.files, y.files) as readonly FileDifference[] }
    }),
  /** The files of a list with the size of each [bytes]. */
  listed: (files: Files): readonly { name: string; sha256: string; size: number }[] =>
    s.reading(db => Object.entries(files).map(([name, sha256]) => ({ name, sha256, size: sizeOf(db, sha256) }))),
  file: (id: string, name: string, revision?: number): Buffer =>
    s.reading(db => {
      const { files } = revision === undefined ? headOf(db, id) : revisionAt(db, id, revision),
        hash = hashIn(files, fileName(name))
      if (hash === undefined) throw new StoreFault('unknown', `There is no file «${name}» beside this conversion.`)
      return bytesOf(db, hash)
    }),
})

function keeping(s: Saves) {
  let reading = 0,
    isReplacing = false
  const BEING_REPLACED = 'A backup is being put in the place of everything. Try again when it is done.'
  /** Long work on the database as it stands: it may not be replaced meanwhile. */
  async function standing<T>(work: () => Promise<T>): Promise<T> {
    if (isReplacing) throw new StoreFault('in use', BEING_REPLACED)
    reading++
    try {
      return await work()
    } catch (e) {
      throw asFault(e, s.folder)
    } finally {
      reading--
    }
  }
  return {
    /** Takes out for good what was deleted thirty days ago. */
    purge(): readonly string[] {
      const gone = s.within(db => purge(db, s.now()))
      for (const id of gone) s.tell('purged', id, 0)
      return gone
    },
    /** Everything into one file, made while it is in use. Throws `Stopped`, and leaves no file, where it is stopped on the way. */
    backUp: (file: string, watch: Watch = {}): Promise<void> => standing(() => s.reading(db => backUp(db, file, watch))),
    /** Looks through everything that is kept, each content against its hash; saving goes on meanwhile. */
    check: (watch: Watch = {}): Promise<StoreCheck> => standing(() => checkAll(s.reading, watch)),
    /**
     * Puts a backup in the place of everything here; what was here is kept in a file beside it, whose name is given. Throws `Stopped` where it is stopped
     * before that: everything is as it was then.
     */
    async restoreBackup(file: string, watch: Watch = {}): Promise<string> {
      if (isReplacing) throw new StoreFault('in use', BEING_REPLACED)
      if (reading) throw new StoreFault('in use', 'A backup is being made, or everything looked through. Try again when it is done.')
      isReplacing = true
      try {
        await checkBackup(file, watch)
        goOn(watch)
        const name = await s.reading(db => keepBefore(db, s.folder, s.now(), watch))
        // From here to the end nobody else is let in: what was kept aside is what stood here last.
        s.replace(() => swapIn(s.folder, file))
        for (const { id } of s.reading(summaries)) s.copy(id)
        s.copyWorkshop()
        s.tell('restored', '', 0)
        return name
      } catch (e) {
        throw asFault(e, s.folder)
      } finally {
        isReplacing = false
      }
    },
  }
}
