import type { ApiRevisionLine } from '@ampwright/server'
import type { Unsent } from './outbox.ts'
import { afterChange, afterTakingBack, caughtUp, NO_STEPS, type Steps, stepsOf, withoutStep } from './steps.ts'
import { keep, kept } from './window-store.ts'

type Mark = Pick<ApiRevisionLine, 'revision' | 'at' | 'sha256'>
type Kept = Steps & { readonly mark: Mark; readonly known: number }
const keyOf = (id: string): string => `steps.${id}`

/**
 * What this window can undo and redo. The steps are kept in the window, so that a reload goes on with its own and leaves out what others did meanwhile;
 * a window that has none takes them from the revisions, back to the very first.
 */
export class StepsBack {
  private steps: Steps = NO_STEPS
  private mark: Mark | undefined
  private readonly id: string
  constructor(id: string) {
    this.id = id
  }
  get undoable(): number {
    return this.steps.undo.length
  }
  get redoable(): number {
    return this.steps.redo.length
  }
  /** The revision the next undo, or redo, takes back. */
  next(way: 'undo' | 'redo'): number | undefined {
    return this.steps[way].at(-1)
  }
  /** Reads the steps anew from what the window kept and the revisions there are, newest first; `sent` are batches whose answer nobody heard. */
  recall(lines: readonly ApiRevisionLine[], sent: readonly Unsent[]): void {
    const was = kept<Kept>(keyOf(this.id)),
      [head] = lines
    const stands =
      was !== undefined && lines.some(l => l.revision === was.mark.revision && l.at === was.mark.at && l.sha256 === was.mark.sha256)
    this.steps = stands ? caughtUp({ undo: was.undo, redo: was.redo }, lines, was.known, sent) : stepsOf(lines)
    this.mark = head && { revision: head.revision, at: head.at, sha256: head.sha256 }
    this.keep(head?.revision ?? 0)
  }
  /** Forgets what the window kept: another history stands there now. */
  forget(): void {
    keep(keyOf(this.id), undefined)
  }
  changed(revision: number): void {
    this.steps = afterChange(this.steps, revision)
    this.keep(revision)
  }
  tookBack(of: number, revision: number): void {
    this.steps = afterTakingBack(this.steps, of, revision)
    this.keep(revision)
  }
  drop(revision: number): void {
    this.steps = withoutStep(this.steps, revision)
    this.keep(0)
  }
  private keep(known: number): void {
    const before = kept<Kept>(keyOf(this.id))?.known ?? 0
    if (this.mark) keep(keyOf(this.id), { ...this.steps, mark: this.mark, known: Math.max(known, before) } satisfies Kept)
  }
}
