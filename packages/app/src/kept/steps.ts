import type { ApiRevisionLine } from '@ampwright/server'

type Line = Pick<ApiRevisionLine, 'revision' | 'what' | 'kind'>
/** Revisions that can be taken back, and those that took something back and can be taken back in turn; the next one last. */
export type Steps = { readonly undo: readonly number[]; readonly redo: readonly number[] }

export const NO_STEPS: Steps = { undo: [], redo: [] }

const UNDO = /^undo of revision (\d+)$/
/** Which revision a revision takes back, where it does. */
export function takesBack({ kind, what }: Line): number | undefined {
  const [, of] = kind === 'edit' ? (UNDO.exec(what) ?? []) : []
  return of === undefined ? undefined : Number(of)
}

const without = (list: readonly number[], n: number): readonly number[] => list.filter(x => x !== n)

/** After a change of one's own: what was undone before it can no longer be done again. */
export const afterChange = (s: Steps, revision: number): Steps =>
  s.undo.includes(revision) || s.redo.includes(revision) ? s : { undo: [...s.undo, revision], redo: [] }

/** After a revision was taken back by a newer one: an undo can be done again, and what was done again can be undone. */
export function afterTakingBack(s: Steps, of: number, revision: number): Steps {
  if (s.undo.includes(of)) return { undo: without(s.undo, of), redo: of === revision ? s.redo : [...s.redo, revision] }
  if (s.redo.includes(of)) return { undo: of === revision ? s.undo : [...s.undo, revision], redo: without(s.redo, of) }
  return afterChange(s, revision)
}

/** Without a revision that cannot be taken back any more. */
export const withoutStep = (s: Steps, revision: number): Steps => ({ undo: without(s.undo, revision), redo: without(s.redo, revision) })

/**
 * The steps of a whole history, oldest line first or last: every change can be undone down to the first revision, but for what was undone already,
 * which can be done again.
 */
export function stepsOf(lines: readonly Line[]): Steps {
  const undo: number[] = [],
    redo: number[] = []
  const moved = (from: number[], of: number): boolean => {
    const at = from.lastIndexOf(of)
    if (at >= 0) from.splice(at, 1)
    return at >= 0
  }
  for (const line of lines.toSorted((a, b) => a.revision - b.revision)) {
    const of = takesBack(line)
    if (line.revision === 1) continue
    if (of !== undefined && moved(undo, of)) redo.push(line.revision)
    else if (of !== undefined && moved(redo, of)) undo.push(line.revision)
    else {
      undo.push(line.revision)
      redo.length = 0
    }
  }
  return { undo, redo }
}

/** What a window did and did not hear the answer of: what took back a step of its own, and its batches by what they were for. */
export function caughtUp(
  s: Steps,
  lines: readonly Line[],
  since: number,
  sent: readonly { readonly what?: string | undefined; readonly after: number }[],
): Steps {
  const open = [...sent]
  let now = s
  for (const line of lines.toSorted((a, b) => a.revision - b.revision)) {
    const of = takesBack(line)
    if (of !== undefined && line.revision > since && (now.undo.includes(of) || now.redo.includes(of)))
      now = afterTakingBack(now, of, line.revision)
    const at = open.findIndex(b => line.kind === 'edit' && line.revision > b.after && line.what === (b.what ?? ''))
    if (at < 0) continue
    open.splice(at, 1)
    now = afterChange(now, line.revision)
  }
  return now
}
