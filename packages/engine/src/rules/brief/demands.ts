import type { Brief } from '../../model/brief.ts'
import type { Model } from '../../model/model.ts'
import { towing } from '../../studies/donor/train.ts'
import { isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'
import type { Key } from '../sets/keys.ts'
import type { Limits } from '../sets/sets.ts'
import { bySet, wordsOf } from './by-set.ts'

type Demanded = {
  readonly key: Key
  readonly field: keyof Omit<Brief['demands'], 'at' | 'given'>
  readonly path: string
  /** Why this car has nothing to do with it. */
  readonly notHere?: (m: Model) => string | undefined
}
const noTrailer = (m: Model): string | undefined => (towing(m.brief.loads).length ? undefined : 'no load case has a trailer')

const COSTLY: readonly Demanded[] = [
  { key: 'structure.points', field: 'identityPoints', path: 'identity-points' },
  { key: 'structure.keep-share', field: 'originalStructure', path: 'original-structure' },
  { key: 'register.mark', field: 'registrationMark', path: 'registration-mark' },
  { key: 'emc.rule', field: 'radioCompatibility', path: 'radio-compatibility' },
  { key: 'power.measure', field: 'powerMeasure', path: 'power-measure' },
  { key: 'route.series', field: 'series', path: 'series' },
  { key: 'tow.mass', field: 'towedMass', path: 'towed-mass', notHere: noTrailer },
]
const HURTING: readonly Demanded[] = [
  { key: 'crash.proof', field: 'crashProof', path: 'crash-proof' },
  { key: 'charge.charger-mark', field: 'chargerMark', path: 'charger-mark' },
]

function judged(limits: Limits, m: Model, { key, field, path, notHere }: Demanded): readonly Judgement[] {
  const row = limits(key)
  if (!row) return []
  const item = path,
    about = [`brief.demands.${path}`, 'brief.rules'],
    words = wordsOf(row),
    answer = m.brief.demands[field],
    reason = notHere?.(m)
  if (reason) return [{ item, about, says: reason, doesNotApply: reason }]
  if (isGap(answer)) return [{ item, about, says: 'The rule set asks: {words}.', slots: { words }, requirement: row, missing: answer }]
  return [
    {
      item,
      about,
      holds: answer.value !== 'cannot be met',
      rests: [answer, words],
      says: 'The rule set asks: {words}. Agreed: {answer}.',
      slots: { words, answer },
      requirement: row,
      remedies: [{ do: 'act', says: 'Change the plan until it can be met, and have that in writing before the first part is bought.' }],
    },
  ]
}

const all = (list: readonly Demanded[]) =>
  bySet((limits, m) => {
    const found = list.flatMap(d => judged(limits, m, d))
    return found.length ? found : doesNotApply('the rule set has no such demand', ['brief.rules'])
  })

export const demandsAgreed = rule({
  id: 'demands-agreed',
  title: 'What the rule set asks in words is agreed with whoever signs',
  stage: 'brief',
  harm: 'S2',
  hazards: [],
  source: { work: 'rule-set', place: 'demands in words, answered before the first part is bought' },
  judgements: all(COSTLY),
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'brief.rules', now: 'fr' },
      { path: 'brief.demands.radio-compatibility', now: 'cannot be met' },
    ],
    item: 'radio-compatibility',
  },
})

export const protectionAgreed = rule({
  id: 'protection-agreed',
  title: 'What the rule set asks for the protection of people is agreed with whoever signs',
  stage: 'brief',
  harm: 'S3',
  hazards: [],
  source: { work: 'rule-set', place: 'crash regulations and mark of the charger, answered before the first part is bought' },
  caution: 'A heavier car, or one with another mass in front, crashes differently from the one that was tested.',
  judgements: all(HURTING),
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'brief.rules', now: 'it' },
      { path: 'brief.demands.crash-proof', now: 'cannot be met' },
    ],
    item: 'crash-proof',
  },
})
