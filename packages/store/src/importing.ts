import { applyEdits, type Difference, editsBetween, isSound, readText } from '@ampwright/conversion'
import { filesBetween, mergeFiles } from './file-lists.ts'
import { type Clash, merge } from './merge.ts'
import type { Files } from './revisions.ts'

export type Texts = { readonly text: string; readonly files: Files }

export type Joined =
  | {
      readonly ok: true
      readonly text: string
      readonly files: Files
      /** Comments or layout of the coming text that a merge by places could not take over. */
      readonly layoutLeftOut: boolean
    }
  | { readonly ok: false; readonly clashes: readonly Clash[] }

/**
 * Joins a text that comes back with what became of the conversion meanwhile: what differs between the revision it was taken from and the
 * coming text is made on the head. Where nothing happened meanwhile, the coming text stands as it is, byte for byte.
 */
export function join(base: Texts, head: Texts, coming: Texts): Joined {
  const { files, clashes } = mergeFiles(head.files, filesBetween(base.files, coming.files))
  if (head.text === base.text) return clashes.length ? { ok: false, clashes } : { ok: true, text: coming.text, files, layoutLeftOut: false }
  const edits = differences(base.text, coming.text)
  if (!edits) return { ok: false, clashes }
  const merged = merge(head.text, edits, base.text)
  if (!merged.ok) return { ok: false, clashes: [...clashes, ...('clashes' in merged ? merged.clashes : [])] }
  if (clashes.length) return { ok: false, clashes }
  return { ok: true, text: merged.text, files, layoutLeftOut: hasOwnLayout(base.text, coming.text, edits) }
}

/** The edits between two texts; undefined where one of them cannot be read. */
export function differences(before: string, after: string): readonly Difference[] | undefined {
  const a = readText(before),
    b = readText(after)
  return isSound(a) && isSound(b) ? editsBetween(a, b) : undefined
}

function hasOwnLayout(base: string, coming: string, edits: readonly Difference[]): boolean {
  const applied = applyEdits(base, edits)
  return !applied.ok || applied.text !== coming
}
