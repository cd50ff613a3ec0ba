import type { Model } from '../../model/model.ts'
import { ratioWindow, type UnitWindow } from '../../studies/drive/ratio-window.ts'
import { type Ask, type Gaps, isGaps } from '../../studies/study.ts'
import { isGap } from '../../working/value.ts'
import type { Remedy } from '../rule.ts'

/** Away from an end of the window by this much, where only one end is known. */
const MARGIN = 1.03

/** The ratio windows of the units, those that are known. */
export function windows(ask: Ask): readonly UnitWindow[] | Gaps {
  const answer = ask(ratioWindow)
  return isGaps(answer) ? answer : Object.values(answer.units).flatMap(w => (isGaps(w) ? [] : [w]))
}

/**
 * What the window of the ratio offers for one unit: a gear of the kept box inside it, or a reduction in its middle, which turns nothing too fast and leaves
 * recovery its grip. Nothing where there is none.
 */
export function toWindow(m: Model, { unit, present, goals, low, high, empty, inside, stands }: UnitWindow): readonly Remedy[] {
  const u = m.drive.units[unit]
  if (!u || empty) return []
  const at = `drive.units.${unit}`,
    asked = Object.values(m.brief.goals).filter(g => g && g.kind !== 'range' && g.kind !== 'charging').length,
    kept = !isGap(u.through) && u.through.value === 'kept gearbox'
  if (kept)
    return inside[0] === undefined || (!isGap(u.gear) && inside.includes(u.gear.value))
      ? []
      : [
          {
            do: 'set',
            says:
              goals.length < asked
                ? 'Hold it in the gear that meets the goals that can be judged so far.'
                : 'Hold it in the gear that meets every goal.',
            sets: [{ path: `${at}.gear`, to: { word: inside[0] } }],
          },
        ]
  const middle =
    low && high
      ? Math.sqrt(Math.max(low.value, high.value / 4) * high.value)
      : high
        ? high.value / MARGIN
        : low
          ? low.value * MARGIN
          : undefined
  if (middle === undefined || isGap(u.reduction)) return []
  const wanted = Math.min(middle, stands / MARGIN)
  if (low && wanted < low.value) return []
  const value = Math.round(((u.reduction.value * wanted) / present.value) * 100) / 100
  return [
    {
      do: 'set',
      says: 'A unit with a reduction in the middle of the window.',
      sets: [{ path: `${at}.reduction`, to: { value, kind: 'ratio' } }],
    },
  ]
}
/** The same for every unit, gathered into one edit: the first that offers something. */
export function anyToWindow(m: Model, ask: Ask): readonly Remedy[] {
  const all = windows(ask)
  return isGaps(all) ? [] : (all.map(w => toWindow(m, w)).find(r => r.length > 0) ?? [])
}
