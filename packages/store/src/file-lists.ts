import type { Clash } from './merge.ts'
import type { Files } from './revisions.ts'

/** The hash a name stands for, never what an object has by itself. */
export const hashIn = (files: Files, name: string): string | undefined => (Object.hasOwn(files, name) ? files[name] : undefined)

/** What of a list of files became another between two lists: by name, null where there is none. */
export type FileDifference = { readonly file: string; readonly was: string | null; readonly now: string | null }

export function filesBetween(before: Files, after: Files): readonly FileDifference[] {
  const names = [...new Set([...Object.keys(before), ...Object.keys(after)])].sort()
  return names
    .map(file => ({ file, was: hashIn(before, file) ?? null, now: hashIn(after, file) ?? null }))
    .filter(({ was, now }) => was !== now)
}

/** Makes differences on the list as it stands now; a file somebody else changed since clashes, both by their hashes. */
export function mergeFiles(
  head: Files,
  differences: readonly FileDifference[],
): { readonly files: Files; readonly clashes: readonly Clash[] } {
  const files = new Map(Object.entries(head)),
    clashes: Clash[] = []
  for (const { file, was, now } of differences) {
    const theirs = files.get(file) ?? null
    if (theirs === now) continue
    if (theirs !== was) clashes.push({ path: file, yours: now, theirs, was })
    else if (now === null) files.delete(file)
    else files.set(file, now)
  }
  return { files: Object.fromEntries(files), clashes }
}
