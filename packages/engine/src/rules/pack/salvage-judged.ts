import type { Model } from '../../model/model.ts'
import type { Source } from '../../sources.ts'
import { type OfLot, type Salvage, salvage } from '../../studies/pack/salvage.ts'
import { type Ask, type Gaps, isGaps } from '../../studies/study.ts'
import { type Fact, isGap, type Value } from '../../working/value.ts'
import { doesNotApply, type Judgement } from '../rule.ts'
import { open } from './answers.ts'

export const GRADING: Source = { work: 'practice', place: 'acceptance and grading of used modules', mark: 'common practice' }
export const FIRE =
  'A module with a hidden short can catch fire a day after charging. Test outdoors, store outdoors, never charge unwatched.'

/** Rules on salvaged modules: nothing to say of new ones, and open while a used pack has no records at all. */
export const ofSalvage =
  (judged: (m: Model, s: Salvage | Gaps) => readonly Judgement[]) =>
  (m: Model, ask: Ask): readonly Judgement[] => {
    const { state } = m.pack.module,
      about = ['pack.salvage']
    if (Object.keys(m.pack.salvage).length > 0) return judged(m, ask(salvage))
    if (isGap(state)) return [open([...about, 'pack.module.state'], state)]
    if (state.value === 'new') return doesNotApply('the modules are new', about)
    return [open(about, { gap: true, path: 'pack.salvage', label: 'a record of each salvaged module', until: 'before the part is bought' })]
  }
/** The serial of a module, for a sentence. */
export const named = (m: Model, name: string): Fact<string> => {
  const serial = m.pack.salvage[name]?.serial
  return {
    path: `pack.salvage.${name}`,
    label: 'module',
    symbol: '',
    unit: '',
    value: serial && !isGap(serial) ? `${name} (${serial.value})` : name,
  }
}
const SO_FAR = 'of those recorded so far'
/** One module of a lot held against a limit: the one that stands out most. */
export function judgedLot(
  m: Model,
  s: Salvage | Gaps,
  pick: (s: Salvage) => OfLot | Gaps,
  about: string,
  side: 'at most' | 'at least',
  limit: Value | Gaps,
  says: string,
  remedy: string,
  item?: string,
): readonly Judgement[] {
  const paths = [`pack.salvage`],
    ofItem = item === undefined ? {} : { item }
  if (isGaps(s)) return [open(paths, s, item)]
  const lot = pick(s)
  if (isGaps(lot))
    return lot.gaps.length ? [open(paths, lot, item)] : doesNotApply('one module is no lot', paths).map(j => ({ ...j, ...ofItem }))
  // A bad module is named while the others still wait for the tester.
  const soFar = item === undefined ? SO_FAR : `${item}, ${SO_FAR}`
  return [
    ...(lot.missing ? [open(paths, lot.missing, item)] : []),
    {
      ...(lot.missing ? { item: soFar } : ofItem),
      about: [`pack.salvage.${lot.worst}.${about}`],
      found: lot.found,
      side,
      limit,
      says,
      slots: { worst: named(m, lot.worst) },
      remedies: [{ do: 'act', says: remedy }],
    },
  ]
}

/** Readings of the last three modules and one that spoils the lot. */
export const completed = (bad: Readonly<Record<string, string>>) => [
  ...['m14', 'm15', 'm16'].flatMap(m =>
    Object.entries({
      capacity: '109.5 Ah',
      resistance: '3.0 mΩ',
      'rest-voltage': '22.04 V',
      'rest-voltage-later': '22.036 V',
      'days-apart': '14 d',
      insulation: '400 MΩ',
    }).map(([key, now]) => ({ path: `pack.salvage.${m}.${key}`, now })),
  ),
  ...Object.entries(bad).map(([key, now]) => ({ path: `pack.salvage.m05.${key}`, now })),
]
