import {
  applyEdits,
  type Edit,
  holdsAlready,
  type Issue,
  isSound,
  type Now,
  type Path,
  pathKeys,
  pathText,
  readText,
  type SeenEdit,
  type SoundReading,
  type Standing,
  standingAt,
  stands,
} from '@ampwright/conversion'

/** Where two people changed the same place: what one wants there, what the other put there, and what the first had seen. */
export type Clash = { readonly path: string; readonly yours: Now; readonly theirs: Standing; readonly was: Now }

export type Merged =
  | { readonly ok: true; readonly text: string; readonly edits: readonly Edit[] }
  | { readonly ok: false; readonly clashes: readonly Clash[] }
  | { readonly ok: false; readonly problem: Issue }

/**
 * Makes a batch of edits on the text as it stands now, all or none. Each edit says what was seen at its place: where that still stands, or
 * what is wanted stands there already, it applies, whatever else has changed since; everywhere else it clashes, and both values are said.
 * With `seen`, the whole text that was seen, adding to a group that somebody took away since clashes too.
 */
export function merge(head: string, edits: readonly SeenEdit[], seen?: string): Merged {
  const before = readText(head)
  if (!isSound(before)) return { ok: false, problem: torn(before.issues[0]) }
  const base = seen === undefined || seen === head ? undefined : readText(seen)
  const clashes: Clash[] = [],
    made: Edit[] = []
  let now: SoundReading = before
  for (const [i, edit] of edits.entries()) {
    if (pathKeys(edit.path) === undefined) return { ok: false, problem: notAPath(head, edit) }
    const gone = base && isSound(base) ? takenAway(base, before, edit.path) : undefined
    if (gone !== undefined) clashes.push({ path: gone, yours: edit.now, theirs: null, was: standingAt(base as SoundReading, gone) })
    else if (holdsAlready(now, edit.path, edit.now)) continue
    else if (isFree(edit, edits.slice(0, i), before, now)) {
      const applied = applyEdits(now.text, [{ path: edit.path, now: edit.now }], now)
      if (!applied.ok) return { ok: false, problem: applied.problem }
      if (!isSound(applied.reading)) return { ok: false, problem: torn(applied.reading.issues[0]) }
      now = applied.reading
      made.push({ path: edit.path, now: edit.now })
    } else clashes.push({ path: wordOf(edit.path), yours: edit.now, theirs: standingAt(before, edit.path), was: edit.was })
  }
  return clashes.length ? { ok: false, clashes } : { ok: true, text: now.text, edits: made }
}

/** What an earlier edit of the batch wrote is the batch's own; elsewhere what was seen must stand, before the batch or after its edits so far. */
function isFree(edit: SeenEdit, earlier: readonly SeenEdit[], before: SoundReading, now: SoundReading): boolean {
  const path = pathKeys(edit.path) ?? []
  const isOwn = earlier.some(e => {
    const above = pathKeys(e.path) ?? []
    return above.length <= path.length && above.every((key, i) => key === path[i])
  })
  return isOwn || stands(before, edit.path, edit.was) || stands(now, edit.path, edit.was)
}

/** The group above a path that was seen and stands no more. */
function takenAway(base: SoundReading, head: SoundReading, path: Path): string | undefined {
  const keys = pathKeys(path) ?? []
  for (let depth = 1; depth < keys.length; depth++) {
    const above = pathText(keys.slice(0, depth))
    if (!stands(base, above, null) && standingAt(head, above) === null) return above
  }
  return undefined
}

function notAPath(head: string, { path, now }: SeenEdit): Issue {
  const tried = applyEdits(head, [{ path, now: now ?? '' }])
  return tried.ok ? torn(undefined) : tried.problem
}

const wordOf = (path: Path): string => (typeof path === 'string' ? path : pathText(path))

const torn = (issue: Issue | undefined): Issue => ({
  ...(issue ?? { line: 1, column: 1, path: '', found: '', accepted: '' }),
  what: `the text must be mended before it can be edited${issue ? `: ${issue.what}` : ''}`,
})
