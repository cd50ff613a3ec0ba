import type { Model } from '../model/model.ts'
import type { Source } from '../sources.ts'
import type { Ask, Gaps, Stage } from '../studies/study.ts'
import type { Outcome, Side } from '../working/judge.ts'
import type { Kind } from '../working/kinds.ts'
import type { AnyValue, Gap, Value } from '../working/value.ts'
import type { Limit, Limits } from './sets/sets.ts'

/** What a rule guards: S3 people, S2 costly damage, S1 a nuisance or a goal missed. */
export type Harm = 'S1' | 'S2' | 'S3'

/** What a finding offers. A `set` is an edit, previewed through a full assessment before it is taken; numbers are SI, the file writes them. */
export type Remedy =
  | { readonly do: 'set'; readonly says: string; readonly sets: readonly Setting[] }
  | { readonly do: 'measure'; readonly says: string; readonly path: string }
  | { readonly do: 'act'; readonly says: string }
export type Setting = {
  readonly path: string
  readonly to: { readonly value: number; readonly kind: Kind } | { readonly word: string } | null
}

/** One thing judged. Either a found value against a limit, or a plain yes or no with its reason. Texts have slots `{name}`, filled from `slots` by the views. */
export type Judgement = {
  readonly item?: string
  readonly about: readonly string[]
  readonly says: string
  readonly slots?: Readonly<Record<string, AnyValue | undefined>>
  readonly remedies?: readonly Remedy[]
  /** Row of the rule set that sets the limit; its reading mark says what it may decide. */
  readonly requirement?: Limit
  /** Why a breach is marginal at most: a milder reading of the text, a date too coarse to tell. */
  readonly eased?: string
  /** Why a limit that is kept is marginal at best: the figure was found under easier conditions than asked. */
  readonly doubted?: string
} & (
  | { readonly found: Value | Gap | Gaps; readonly side: Side; readonly limit: Value | Gap | Gaps }
  | { readonly holds: boolean; readonly rests: readonly AnyValue[]; readonly marginal?: boolean }
  | { readonly missing: Gap | Gaps }
  | { readonly doesNotApply: string }
)
export const doesNotApply = (reason: string, about: readonly string[] = []): readonly Judgement[] => [
  { about, says: reason, doesNotApply: reason },
]

/** An edit to a sample that must turn the rule failing: the proof that it can. Paths and texts as in the file. */
export type Spoil = {
  readonly sample: 'lapwing' | 'wren' | 'badger' | 'otter'
  readonly edits: readonly { readonly path: string; readonly now: string | null }[]
  readonly item?: string
  /** Where every row on it was only quoted so far, a breach warns at most. */
  readonly turns?: 'marginal'
}

export type Rule = {
  readonly id: string
  /** What must hold, as a statement. */
  readonly title: string
  readonly stage: Stage
  readonly harm: Harm
  /** Entries of the failure catalogue this rule catches. */
  readonly hazards: readonly string[]
  readonly source: Source
  readonly caution?: string
  /** `limits`: rows of the rule set the brief names, or the gap to close where it names none. */
  readonly judgements: (model: Model, ask: Ask, limits: Limits | Gap) => readonly Judgement[]
  readonly spoil: Spoil
}
export const rule = (r: Rule): Rule => r

export type Finding = {
  readonly rule: string
  readonly item?: string
  readonly title: string
  readonly stage: Stage
  readonly harm: Harm
  readonly outcome: Outcome
  readonly says: string
  readonly slots: Readonly<Record<string, AnyValue | undefined>>
  readonly found?: Value
  readonly required?: { readonly side: Side; readonly limit: Value }
  readonly half?: number
  readonly reason?: string
  /** The reason says why it is no better than marginal, not why it is no worse. */
  readonly doubted?: true
  readonly gaps: readonly Gap[]
  readonly assumed: readonly string[]
  readonly source: Source
  readonly requirement?: Limit
  readonly remedies: readonly Remedy[]
  readonly caution?: string
  readonly about: readonly string[]
  /** Fingerprint of what the finding rests on; what is said of it by hand names it and lapses when it changes. */
  readonly rests: string
  /** Somebody said that it does not apply to this car, and it still holds: who, when, why, and how it would come out otherwise. */
  readonly byHand?: { readonly by: string; readonly date: string; readonly because: string; readonly otherwise: Outcome }
  /** What somebody said of it no longer holds, because what it rests on has changed. */
  readonly lapsed?: boolean
  readonly unheeded?: Unheeded
}
/** As what a finding was set aside by hand. */
export type Said = 'accepted' | 'does not apply'
/** What was said of a finding by hand and does not hold: `lacks` names what is not stated; with nothing lacking it lapsed. */
export type Unheeded = {
  readonly as: Said
  readonly by?: string
  readonly because?: string
  readonly date?: string
  readonly lacks: readonly string[]
}

/** What a finding is called where it is remedied or accepted: its rule, and the item it is about. */
export const findingId = (f: Pick<Finding, 'rule' | 'item'>): string => (f.item === undefined ? f.rule : `${f.rule}@${f.item}`)
/** The same name as a key of the file, which writes no commas, colons, brackets or quotes in a key. */
export const findingKey = (f: Pick<Finding, 'rule' | 'item'>): string =>
  findingId(f)
    .replace(/[,:#[\]{}"'\\]/g, ' ')
    .replace(/\s+/g, ' ')
    .trim()
