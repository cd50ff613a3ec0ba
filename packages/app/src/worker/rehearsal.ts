import type { Desk } from '@ampwright/workbench'
import { breath } from './slices.ts'
import type { TrialDesk } from './trial-desk.ts'

/** How long nothing was changed before it rehearses [ms]. */
const REST = 700
/** Ratios tried, as shares of the one there is: as many times as it takes until the browser has made fast code of it. */
const SHARES = [1.02, 0.98, 1.01]

/**
 * Goes through what an edit takes, once, on a desk of its own and while nobody waits: a browser makes fast code only of what ran a few times, and the first
 * edit somebody makes is to be as quick as the next.
 */
export class Rehearsal {
  private isDone = false
  private readonly trial: TrialDesk

  constructor(trial: TrialDesk) {
    this.trial = trial
  }
  /** Once a car is told: waits, and does nothing where something was changed meanwhile. */
  after(desk: Desk, wanted: () => boolean): void {
    if (!this.isDone) setTimeout(() => void this.rehearse(desk, () => wanted() && !this.isDone), REST)
  }
  private async rehearse(desk: Desk, wanted: () => boolean): Promise<void> {
    const [unit = ''] = Object.keys(desk.current().model.drive.units),
      now = desk.assessment?.figures.get(`ratio.total@${unit}`)?.value
    for (const share of now === undefined ? [] : SHARES) {
      await breath()
      if (!wanted()) return
      const edit = desk.ratioEdit(unit, Number(now) * share),
        tried = edit && desk.tried([edit])
      if (tried?.ok) this.trial.headline(tried.text, desk.system)
    }
    this.isDone = true
  }
}
