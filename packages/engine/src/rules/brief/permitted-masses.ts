import type { Model } from '../../model/model.ts'
import { loadCases } from '../../studies/donor/load-cases.ts'
import { isGaps } from '../../studies/study.ts'
import { type Field, type Gap, isGap, type Value } from '../../working/value.ts'
import { type Judgement, type Remedy, rule } from '../rule.ts'
import type { Comparison, Item, Role } from '../sets/feasibility.ts'
import * as gateB from '../sets/feasibility.ts'
import type { Limits } from '../sets/sets.ts'
import { bySet, inWords, silent, waiting, wordsOf } from './by-set.ts'

const SOURCE = { work: 'rule-set', place: 'permitted masses' } as const
const ABOUT = ['brief.rules', 'brief.ratings', 'donor.ratings']
const PARTS = [
  ['total', 'total', 'total'],
  ['front axle', 'frontAxle', 'front-axle'],
  ['rear axle', 'rearAxle', 'rear-axle'],
] as const satisfies readonly (readonly [Item, string, string])[]

type Masses = Readonly<Record<Item, { readonly donor: Value; readonly planned: Value }>>

/** The donor's permitted masses and those planned; what the brief leaves out stays as it was. */
function masses(m: Model): Masses | Gap {
  const fields = PARTS.map(([item, field]) => {
    const donor: Field = m.donor.ratings[field],
      planned: Field = m.brief.ratings[field]
    return { item, donor, planned: isGap(planned) ? donor : planned }
  })
  const missing = fields.map(f => f.donor).find(isGap)
  return missing ?? (Object.fromEntries(fields.map(({ item, donor, planned }) => [item, { donor, planned }])) as Masses)
}
const ratings = (all: Masses, which: 'donor' | 'planned') => ({
  gross: all.total[which].value,
  front: all['front axle'][which].value,
  rear: all['rear axle'][which].value,
})

/** Both ends of a comparison of masses with masses: the limit is the donor's own figure. */
function sides(c: Comparison, { donor, planned }: Masses[Item], says: string, remedies: readonly Remedy[]): readonly Judgement[] {
  const both = c.low !== undefined && c.high !== undefined
  const judged = (side: 'at most' | 'at least', name: string): Judgement => ({
    item: both ? `${c.item}, ${name}` : `${c.item}`,
    about: ABOUT,
    found: planned,
    side,
    limit: donor,
    says,
    slots: { words: wordsOf(c) },
    remedies,
    requirement: c,
  })
  return [...(c.high === undefined ? [] : [judged('at most', 'raised')]), ...(c.low === undefined ? [] : [judged('at least', 'lowered')])]
}

function permitted(limits: Limits, m: Model, roles: readonly Role[], says: string): readonly Judgement[] {
  const all = masses(m)
  if (isGap(all)) return [waiting(ABOUT, all)]
  const answers = gateB.permittedMasses(limits, { donor: ratings(all, 'donor'), planned: ratings(all, 'planned') })
  const judged = answers.flatMap(answer => {
    if (answer.kind === 'stated' || !roles.includes(answer.role) || !answer.item) return []
    const [, , key] = PARTS.find(([item]) => item === answer.item) as (typeof PARTS)[number]
    return sides(answer, all[answer.item], says, [
      { do: 'set', says: 'Leave the permitted mass as it was.', sets: [{ path: `brief.ratings.${key}`, to: null }] },
    ])
  })
  return judged.length ? judged : silent(ABOUT)
}

export const permittedMassesKept = rule({
  id: 'permitted-masses-kept',
  title: 'Permitted masses change only where the rule set lets them',
  stage: 'brief',
  harm: 'S3',
  hazards: [],
  source: SOURCE,
  caution: 'Brakes, axles and tyres were proven for the permitted masses of the donor car, not for more.',
  judgements: bySet((limits, m) => permitted(limits, m, ['limit'], 'Planned is {found}; the donor car has {limit}, which may not change.')),
  spoil: { sample: 'lapwing', edits: [{ path: 'brief.ratings.total', now: '1500 kg' }], item: 'total, raised' },
})

export const permittedMassesApproval = rule({
  id: 'permitted-masses-approval',
  title: 'A change of permitted masses has its guarantee or consent',
  stage: 'brief',
  harm: 'S2',
  hazards: [],
  source: SOURCE,
  judgements: bySet((limits, m) =>
    permitted(limits, m, ['trigger', 'equivalence'], 'Planned is {found}, the donor car has {limit}; a change asks for more: {words}.'),
  ),
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'brief.rules', now: 'ch' },
      { path: 'brief.ratings.total', now: '1500 kg' },
    ],
    item: 'total',
  },
})

export const ladenByLaw = rule({
  id: 'laden-masses-by-law',
  title: 'The laden car stays within the ratings the rule set names',
  stage: 'brief',
  harm: 'S3',
  hazards: [],
  source: SOURCE,
  caution: 'An overloaded axle lengthens braking and can break wheels, tyres and bearings.',
  judgements: bySet((limits, m, ask) => {
    const about = ['brief.rules', 'brief.loads', 'donor.ratings']
    if (!['mass.gross.max', 'mass.axle.max', 'mass.gross.exceed.trigger'].some(key => limits(key as 'mass.gross.max'))) return silent(about)
    const all = masses(m),
      loads = ask(loadCases)
    if (isGap(all)) return [waiting(about, all)]
    if (isGaps(loads)) return [waiting(about, loads)]
    return Object.entries(loads.cases).flatMap(([name, laden]): readonly Judgement[] => {
      if (isGaps(laden)) return [waiting(about, laden, name)]
      const figures: Readonly<Record<Item, Value>> = { total: laden.mass, 'front axle': laden.front, 'rear axle': laden.rear }
      const answers = gateB.ladenMasses(limits, {
        laden: { total: laden.mass.value, front: laden.front.value, rear: laden.rear.value },
        ratings: ratings(all, 'donor'),
      })
      return answers.flatMap(answer => {
        if (answer.kind === 'stated') return [inWords(answer, about, name)]
        if (!answer.item) return []
        const says =
          answer.role === 'trigger'
            ? 'Laden it weighs {found}; above {limit} a further code starts.'
            : 'Laden it carries {found}; the rule set holds it to the {limit} of its maker.'
        const [judged] = sides(answer, { donor: all[answer.item].donor, planned: figures[answer.item] }, says, [
          { do: 'act', says: 'Move heavy parts, or carry less.' },
        ])
        return judged ? [{ ...judged, about, item: `${name}, ${answer.item}` }] : []
      })
    })
  }),
  spoil: { sample: 'lapwing', edits: [{ path: 'brief.rules', now: 'ca-qc' }], item: 'two-up, rear axle', turns: 'marginal' },
})
