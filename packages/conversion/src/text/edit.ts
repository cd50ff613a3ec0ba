import type { Issue } from '../issue.ts'
import { type Change, type Edit, isList, isRename } from './change.ts'
import { type Compiled, compiled } from './compile.ts'
import { type Path, pathKeys } from './path.ts'
import { isSound, readText, type SoundReading, type TextReading } from './read.ts'
import { invertSplice, type Splice, spliceBetween } from './splice.ts'
import { entryAt, type TextTree } from './tree.ts'
import { type Applied, firstError, tried } from './tried.ts'

export type { Change, Edit, Now, Rename } from './change.ts'
export type { Applied } from './tried.ts'

export type AppliedAll =
  | {
      readonly ok: true
      readonly text: string
      readonly splices: readonly Splice[]
      readonly inverse: readonly Splice[]
      readonly reading: TextReading
    }
  | { readonly ok: false; readonly problem: Issue; readonly change: Change }

/** The splice an edit of a text comes to; nothing is changed yet. */
export function compileEdit(text: string, edit: Edit, before?: TextReading): Compiled {
  const applied = applyChange(text, edit, before)
  return applied.ok ? { ok: true, splice: applied.splice } : applied
}

/** The splice that gives the key at a path another name. */
export function renameKey(text: string, path: Path, key: string, before?: TextReading): Compiled {
  const applied = applyChange(text, { path, key }, before)
  return applied.ok ? { ok: true, splice: applied.splice } : applied
}

/**
 * Makes one edit or renaming. The edited text is read again, and unless exactly what the change names is different, the change is
 * refused: so no edit can spoil a file, whatever it looks like. `before` may be a reading of the same or a similar text, to save time.
 */
export function applyChange(text: string, change: Change, before?: TextReading): Applied {
  const reading = before?.text === text ? before : readText(text, undefined, before)
  if (!isSound(reading)) return { ok: false, problem: firstError(reading, 'the file must be mended before it can be edited') }
  return isWholeRow(reading.tree, change) ? appliedRow(reading, change) : appliedOne(reading, change)
}

export const applyEdit: (text: string, edit: Edit, before?: TextReading) => Applied = applyChange

/** Makes several changes one after the other, all or none. `inverse` is in the order in which it is to be applied. */
export function applyEdits(text: string, changes: readonly Change[], before?: TextReading): AppliedAll {
  let reading = before?.text === text ? before : readText(text, undefined, before)
  const splices: Splice[] = []
  for (const change of changes) {
    const applied = applyChange(reading.text ?? text, change, reading)
    if (!applied.ok) return { ...applied, change }
    splices.push(applied.splice)
    reading = applied.reading
  }
  return { ok: true, text: reading.text ?? text, splices, inverse: splices.map(invertSplice).reverse(), reading }
}

function appliedOne(before: SoundReading, change: Change): Applied {
  const outcome = compiled(before.text, before.tree, change)
  return outcome.ok ? tried(before, change, outcome.splice) : outcome
}

/** Named values for a group that stands there already: such an edit goes entry by entry, so that spacing and comments stay. */
const isWholeRow = (tree: TextTree, change: Change): change is Edit & { now: Readonly<Record<string, string>> } => {
  if (isRename(change) || change.now === null || typeof change.now === 'string' || isList(change.now)) return false
  return entryAt(tree, pathKeys(change.path) ?? [])?.node.kind === 'group'
}

function appliedRow(before: SoundReading, change: Edit & { now: Readonly<Record<string, string>> }): Applied {
  const path = pathKeys(change.path) ?? []
  const node = entryAt(before.tree, path)?.node
  const old = node?.kind === 'group' ? [...node.entries.keys()] : []
  const edits: Edit[] = [
    ...Object.entries(change.now).map(([key, now]) => ({ path: [...path, key], now })),
    ...old.filter(key => !Object.hasOwn(change.now, key)).map(key => ({ path: [...path, key], now: null })),
  ]
  const applied = applyEdits(before.text, edits, before)
  if (!applied.ok) return applied
  const splice = spliceBetween(before.text, applied.text)
  return { ok: true, text: applied.text, splice, inverse: invertSplice(splice), reading: applied.reading }
}
