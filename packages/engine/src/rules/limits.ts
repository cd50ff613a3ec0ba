import type { Model } from '../model/model.ts'
import type { Kind } from '../working/kinds.ts'
import { type Fact, type Gap, isGap } from '../working/value.ts'
import type { Judgement } from './rule.ts'
import { keyMeaning } from './sets/keys.ts'
import type { Requirement, SetId } from './sets/requirement.ts'
import { type Limit, type Limits, limitsFor } from './sets/sets.ts'
import { WORKS } from './sets/works.ts'

/** Rows of the rule set the brief names, or the gap to close where it names none. */
export const chosenLimits = ({ brief: { rules } }: Model): Limits | Gap => (isGap(rules) ? rules : limitsFor(rules.value as SetId))

/** What a rule that needs a rule set says while none is chosen. */
export const withoutSet = (gap: Gap): readonly Judgement[] => [
  { about: ['brief.rules'], says: 'The brief does not name yet under whose rules the car is approved.', missing: gap },
]

/** Title, clause and date of the text a row was taken from. */
export function rowSource({ requirement: { work, clause, date } }: Limit): string {
  return [WORKS[work].title, clause, date].filter(Boolean).join(', ')
}

/** Facts of rows already made: the same row gives the same object, so that what rests on it need not be looked at again. */
const made = new WeakMap<Requirement, Fact[]>()

/** A figure of a row as a value to compare with: SI, named by set and key, so that a working and an acceptance can point to it. */
export function limitFact(
  limit: Limit,
  value: number,
  { unit, shows, end }: { readonly unit: string; readonly shows?: Kind; readonly end?: 'low' | 'high' },
): Fact {
  const { key, variant } = limit.requirement
  const path = `rule-set.${limit.from}.${key}${variant === undefined ? '' : `@${variant}`}${end === undefined ? '' : `#${end}`}`
  const before = made.get(limit.requirement)?.find(f => f.path === path && f.value === value && f.unit === unit && f.shows === shows)
  if (before) return before
  const fact: Fact = {
    path,
    label: keyMeaning(key).meaning,
    symbol: '',
    unit,
    ...(shows ? { shows } : {}),
    value,
    origin: { how: 'standard', note: rowSource(limit) },
  }
  made.set(limit.requirement, [...(made.get(limit.requirement) ?? []), fact])
  return fact
}
