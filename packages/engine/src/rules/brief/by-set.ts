import type { Model } from '../../model/model.ts'
import type { Ask, Gaps } from '../../studies/study.ts'
import type { Kind } from '../../working/kinds.ts'
import { type AnyValue, type Fact, type Gap, isGap, type Value } from '../../working/value.ts'
import { limitFact, rowSource, withoutSet } from '../limits.ts'
import { doesNotApply, type Judgement, type Remedy, type Rule } from '../rule.ts'
import type { Caveat, Comparison, MarginalReason } from '../sets/feasibility.ts'
import type { Requirement } from '../sets/requirement.ts'
import type { Limit, Limits } from '../sets/sets.ts'

/** Hands a rule the rows of the chosen set; while none is chosen, the rule is unanswered and asks for it. */
export const bySet =
  (judgements: (limits: Limits, m: Model, ask: Ask) => readonly Judgement[]): Rule['judgements'] =>
  (m, ask, limits) =>
    isGap(limits) ? withoutSet(limits) : judgements(limits, m, ask)

/** Neither the set nor common practice has a row. */
export const silent = (about: readonly string[]): readonly Judgement[] => doesNotApply('the rule set has no row on this', about)

/** A row in words that no figure can be held against: somebody has to answer it. */
export const inWords = (limit: Limit, about: readonly string[], item?: string): Judgement => ({
  about,
  says: 'The rule set puts it in words: {words}. Ask whoever will sign, in writing.',
  slots: { words: wordsOf(limit) },
  missing: { gaps: [] },
  requirement: limit,
  ...(item === undefined ? {} : { item }),
})

/** Words of rows already told: the same row gives the same object. */
const told = new WeakMap<Requirement, Fact<string>>()

/** What a row says, as a word a sentence can hold. */
export function wordsOf(limit: Limit): Fact<string> {
  const { key, variant, value } = limit.requirement,
    path = `rule-set.${limit.from}.${key}${variant === undefined ? '' : `@${variant}`}`,
    before = told.get(limit.requirement)
  if (before?.path === path) return before
  const words: Fact<string> = {
    path,
    label: 'what the rule set says',
    symbol: '',
    unit: '',
    value: value === true ? 'yes' : Array.isArray(value) ? value.join(', ') : String(value),
    origin: { how: 'standard', note: rowSource(limit) },
  }
  told.set(limit.requirement, words)
  return words
}

export const waiting = (about: readonly string[], missing: Gap | Gaps, item?: string): Judgement => ({
  about,
  says: 'This cannot be compared yet.',
  missing,
  ...(item === undefined ? {} : { item }),
})

const CAVEATS: Readonly<Record<Caveat, string>> = {
  'limited-figure':
    'The limited figure counts only if the limit is fixed and sealed, is stated in the papers, and whoever signs agrees that it counts.',
  'locked-gear-may-count-as-change': 'A gearbox held in one gear may be taken for a changed driveline: ask.',
  'mass-as-weighed': 'Masses are compared as weighed.',
  'axle-band-may-mean-share': 'The text may mean the share of each axle instead of its mass: ask.',
  'share-has-two-readings': 'A tenth of the share can be read in two ways; this is the stricter one.',
}
const EASED: Readonly<Record<MarginalReason, string>> = {
  'within-wider-reading': 'it holds by the milder reading of the text',
  'date-too-coarse': 'the date is known too coarsely to tell',
}

type Side = { readonly says: string; readonly remedies?: readonly Remedy[] }
export type Ends = {
  readonly about: readonly string[]
  readonly found: Value
  /** Text and remedies of a band's upper and lower end; slots {found}, {limit} and the given ones. */
  readonly upper?: Side
  readonly lower?: Side
  readonly slots?: Readonly<Record<string, AnyValue>>
  readonly shows?: Kind
  /** SI value of one unit of the comparison, 0.01 for per cent. */
  readonly scale?: number
  /** Why a breach is marginal at most, beside what the comparison itself says. */
  readonly eased?: string | undefined
}

/** One judgement for each end of the band a comparison gives. */
export function onEnds(c: Comparison, { about, found, upper, lower, slots = {}, shows, scale = 1, eased }: Ends): readonly Judgement[] {
  const ends = [
    ...(c.high !== undefined && upper ? [{ end: 'high', name: 'upper end', side: 'at most', value: c.high, text: upper } as const] : []),
    ...(c.low !== undefined && lower ? [{ end: 'low', name: 'lower end', side: 'at least', value: c.low, text: lower } as const] : []),
  ]
  const both = c.low !== undefined && c.high !== undefined
  const caveats = c.caveats.map(caveat => ` ${CAVEATS[caveat]}`).join('')
  const mild = c.marginalReason === undefined ? eased : EASED[c.marginalReason]
  return ends.map(({ end, name, side, value, text }): Judgement => {
    const item = [c.item, both ? name : undefined].filter(Boolean).join(', ')
    return {
      ...(item === '' ? {} : { item }),
      about,
      found,
      side,
      limit: limitFact(c, value * scale, { unit: found.unit, end, ...(shows ? { shows } : {}) }),
      says: `${text.says}${caveats}`,
      slots,
      requirement: c,
      remedies: text.remedies ?? [],
      ...(mild === undefined ? {} : { eased: mild }),
    }
  })
}
