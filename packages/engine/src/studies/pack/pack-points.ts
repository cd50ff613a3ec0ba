import type { Model } from '../../model/model.ts'
import { type Fact, type Gap, isGap, standard } from '../../working/value.ts'

const DEFINITION = { work: 'definition', place: 'operating point' } as const
/** How long a load lasts. Continuous is taken as five minutes: by then the branch has settled and the charge taken still counts little. */
export const DURATIONS = {
  '2 s': standard('load.2', '2 s', 't', 2, 's', DEFINITION),
  '10 s': standard('load.10', '10 s', 't', 10, 's', DEFINITION),
  '30 s': standard('load.30', '30 s', 't', 30, 's', DEFINITION),
  continuous: standard('load.300', 'five minutes', 't', 300, 's', DEFINITION),
} as const
export type Duration = keyof typeof DURATIONS
const at = (name: string, label: string, value: number): Fact => ({
  ...standard(`charge.${name}`, label, 'z', value, '1', DEFINITION),
  shows: 'share',
})
export const HALF = at('half', 'half charge', 0.5)
export const NEARLY_FULL = at('nearly-full', 'nine tenths charged', 0.9)
export const MILD: Fact = { ...standard('cells.mild', 'mild cells', 'T', 293.15, 'K', DEFINITION), shows: 'temperature' }

/** Coldest the cells start any of the planned trips; the gap to close where no trip says. */
export function coldestCells(m: Model): Fact | Gap {
  const starts = Object.values(m.trips.named).map(t => t.packTemperature),
    known = starts.filter((t): t is Fact => !isGap(t))
  const first = known[0]
  if (!first)
    return starts[0] ?? { gap: true, path: 'trips.named', label: 'a trip with the temperature its cells start at', until: 'any time' }
  return known.reduce((a, b) => (b.value < a.value ? b : a), first)
}
