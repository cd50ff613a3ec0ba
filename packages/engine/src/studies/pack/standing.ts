import { currentsTogether } from '../../battery/pack-sums.ts'
import { balanceCurrent } from '../../battery/self-discharge.ts'
import { standingTime } from '../../battery/standing-time.ts'
import type { Figure } from '../../working/value.ts'
import { from, type Gaps, isGaps, maybe, study } from '../study.ts'
import { packModel } from './pack-model.ts'
import { salvage } from './salvage.ts'

export type Standing = {
  /** Everything that leaves the parked pack: what hangs on it, and the leak of the cells where it was measured. */
  readonly draw: Figure
  readonly parked: Figure | Gaps
  readonly reserve: Figure | Gaps
}

/** How long the car may be left unplugged before its cells are at their lowest. */
export const standing = study({
  id: 'standing',
  stage: 'pack',
  asks: 'How long may it stand unplugged?',
  reads: (m, ask) => ({
    capacity: from(ask(packModel), p => p.capacity),
    draw: m.pack.standing.draw,
    // Cells of which nobody recorded a leak are taken to hold their charge; the card says so.
    leak: maybe(from(ask(salvage), s => (isGaps(s.leak) ? s.leak : s.leak.found))),
    parkedAt: maybe(m.pack.life.parkedAt),
    reserve: maybe(m.brief.reserve),
  }),
  answer: ({ capacity, draw, leak, parkedAt, reserve }, make): Standing => {
    const all = make.work(
      'draw',
      currentsTogether,
      {
        each: isGaps(leak)
          ? [draw]
          : [
              draw,
              make.work('leak', balanceCurrent, { spread: leak, capacity }, { label: 'Current that the worst module loses by itself' }),
            ],
      },
      { label: 'Current out of the parked pack' },
    )
    const last = (key: string, charge: typeof parkedAt, label: string): Figure | Gaps =>
      isGaps(charge) ? charge : make.work(key, standingTime, { charge, capacity, draw: all }, { label })
    return {
      draw: all,
      parked: last('parked', parkedAt, 'Time it lasts, left as it is usually parked'),
      reserve: last('reserve', reserve, 'Time it lasts, left on the reserve'),
    }
  },
})
