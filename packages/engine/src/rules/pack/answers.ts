import type { Source } from '../../sources.ts'
import type { Gaps } from '../../studies/study.ts'
import { type Fact, type Gap, isGap, standard } from '../../working/value.ts'
import type { Judgement } from '../rule.ts'

export const PRACTICE: Source = { work: 'practice', place: 'common practice of pack building', mark: 'common practice' }
/** A limit of the trade or of a standard, as a leaf that a finding can name. */
export const limitOf = (name: string, label: string, value: number, unit: string, source: Source, shows?: Fact['shows']): Fact => ({
  ...standard(`limit.${name}`, label, 'lim', value, unit, source),
  ...(shows ? { shows } : {}),
})
/** Nothing to say yet. */
export const open = (about: readonly string[], missing: Gap | Gaps, item?: string): Judgement => ({
  about,
  says: 'This cannot be answered yet.',
  missing,
  ...(item === undefined ? {} : { item }),
})
export const isTyped = <V extends string | number>(f: Fact<V> | Gap): f is Fact<V> => !isGap(f)
