import { rearBySplit } from '../../brakes/force-per-pressure.ts'
import { isGap, type Value } from '../../working/value.ts'
import { either, from, type Gaps, isGaps, maybe, study } from '../study.ts'
import { type ByParts, brakeParts } from './brake-parts.ts'
import { NO_PRINT, newest, prints } from './prints.ts'

export type Split = {
  /** Share of the friction brakes at the front; below the knee where there is a valve. */
  readonly front: Value
  readonly by: 'print' | 'parts'
  readonly valve: Valve | null
  /** Brake force over line pressure of both axles, where the parts are known. */
  readonly perPressure: { readonly front: Value; readonly rear: Value } | Gaps
}
export type Valve = { readonly front: Value; readonly rear: Value; readonly knee: Value; readonly slope: Value }

/** How the friction brakes share: by the roller tester’s print first, by their parts second. Through a valve the front parts set the scale. */
export const split = study({
  id: 'split',
  stage: 'brakes & steering',
  asks: 'How do the friction brakes share between the axles?',
  reads: (m, ask) => {
    const printed = from(ask(prints), p => newest(p.prints)?.split ?? ({ gaps: [] } as Gaps)),
      parts = ask(brakeParts),
      { knee, slope } = m.brakes.valve
    const front = from(parts, p => (p as ByParts).front),
      rear = from(parts, p => (p as ByParts).rear)
    const seen = !isGaps(printed)
    return {
      share: either(seen ? printed : NO_PRINT, { parts: from(parts, p => (p as ByParts).split) }),
      valve: isGap(knee) && isGap(slope) ? null : { knee, slope, front, ...(seen ? {} : { rear }) },
      perPressure: maybe({ front, ...(seen ? {} : { rear }) }),
    }
  },
  answer: ({ share, valve, perPressure }, make): Split => {
    const byParts = 'parts' in share,
      front = (byParts ? share.parts : share) as Value
    const both = isGaps(perPressure)
      ? perPressure
      : {
          front: perPressure.front as Value,
          rear: byParts
            ? ((perPressure as { rear: Value }).rear as Value)
            : make.work(
                'rear',
                rearBySplit,
                { front: perPressure.front as Value, split: front },
                { label: 'Brake force over line pressure, rear axle, by the print' },
              ),
        }
    return {
      front,
      by: byParts ? 'parts' : 'print',
      perPressure: both,
      valve: valve === null || isGaps(both) ? null : { ...both, knee: valve.knee as Value, slope: valve.slope as Value },
    }
  },
})
