import { againstDonor } from '../../studies/brief/against-donor.ts'
import { from, isGaps } from '../../studies/study.ts'
import { type Field, isGap } from '../../working/value.ts'
import { limitFact } from '../limits.ts'
import { doesNotApply, type Judgement, type Remedy, rule } from '../rule.ts'
import * as gateB from '../sets/feasibility.ts'
import type { Limit } from '../sets/sets.ts'
import { bySet, inWords, silent, waiting, wordsOf } from './by-set.ts'

const SOURCE = { work: 'rule-set', place: 'what the donor car has to be' } as const
const OTHER: readonly Remedy[] = [{ do: 'act', says: 'Another donor car, or another route to approval.' }]

export const donorCategory = rule({
  id: 'donor-category',
  title: 'The route is open to the category of the donor car',
  stage: 'brief',
  harm: 'S2',
  hazards: [],
  source: SOURCE,
  judgements: bySet((limits, m) => {
    const about = ['brief.rules', 'donor.category'],
      limit = limits('donor.category')
    if (!limit) return silent(about)
    const category = m.donor.category
    if (isGap(category)) return [waiting(about, category)]
    const { value } = limit.requirement,
      open = Array.isArray(value) ? (value as readonly string[]) : [String(value)]
    return [
      {
        about,
        holds: open.some(word => word === category.value || word === category.value.charAt(0)),
        rests: [category, wordsOf(limit)],
        says: 'The donor car is of category {category}; the route is open to {words}.',
        slots: { category, words: wordsOf(limit) },
        requirement: limit,
        remedies: OTHER,
      },
    ]
  }),
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'brief.rules', now: 'be' },
      { path: 'donor.category', now: 'L7' },
    ],
  },
})

export const donorGross = rule({
  id: 'donor-gross-mass',
  title: 'The donor car is light enough for the rule set',
  stage: 'brief',
  harm: 'S1',
  hazards: [],
  source: SOURCE,
  judgements: bySet((limits, m) => {
    const about = ['brief.rules', 'donor.ratings.total']
    if (!limits('donor.gross.max')) return silent(about)
    const total = m.donor.ratings.total
    if (isGap(total)) return [waiting(about, total)]
    const c = gateB.donorGross(limits, total.value)
    if (c?.high === undefined) return silent(about)
    const limit = limitFact(c, c.high, { unit: 'kg' })
    return [
      {
        about,
        found: total,
        side: 'at most',
        limit,
        says: 'Its gross mass is {found}; the rule set holds up to {limit}.',
        requirement: c,
        remedies: [{ do: 'act', says: 'Ask which rules hold for heavier cars.' }],
      },
    ]
  }),
  spoil: {
    sample: 'otter',
    edits: [
      { path: 'brief.rules', now: 'au' },
      { path: 'donor.ratings.total', now: '5000 kg' },
    ],
  },
})

const asWanted = (
  field: Field<string>,
  limit: Limit,
  about: readonly string[],
  holds: (word: string) => boolean,
  says: string,
): Judgement =>
  isGap(field)
    ? waiting(about, field)
    : {
        about,
        holds: holds(field.value),
        rests: [field],
        says,
        slots: { found: field, words: wordsOf(limit) },
        requirement: limit,
        remedies: OTHER,
      }

export const donorRegistered = rule({
  id: 'donor-registered',
  title: 'The donor car is registered where the rule set wants it',
  stage: 'brief',
  harm: 'S2',
  hazards: [],
  source: SOURCE,
  judgements: bySet((limits, m) => {
    const about = ['brief.rules', 'donor.registered-in'],
      limit = limits('donor.registered')
    if (!limit) return silent(about)
    return [asWanted(m.donor.registeredIn, limit, about, word => word === limit.from, 'Registered in {found}; the rule set asks: {words}.')]
  }),
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'brief.rules', now: 'es' },
      { path: 'donor.registered-in', now: 'de' },
    ],
  },
})

export const donorNotExcluded = rule({
  id: 'donor-not-excluded',
  title: 'The donor car is none of those shut out',
  stage: 'brief',
  harm: 'S2',
  hazards: [],
  source: SOURCE,
  judgements: bySet((limits, m) => {
    const about = ['brief.rules', 'donor.historic'],
      limit = limits('donor.excluded')
    if (!limit) return silent(about)
    const words = wordsOf(limit)
    if (!words.value.includes('collection vehicle')) return [inWords(limit, about)]
    return [
      asWanted(
        m.donor.historic,
        limit,
        about,
        word => word === 'no',
        'Registered as a historic or collection vehicle: {found}; shut out are: {words}.',
      ),
    ]
  }),
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'brief.rules', now: 'fr' },
      { path: 'donor.historic', now: 'yes' },
    ],
    turns: 'marginal',
  },
})

export const donorRoadworthy = rule({
  id: 'donor-roadworthy',
  title: 'The donor car is in good condition before work starts',
  stage: 'brief',
  harm: 'S2',
  hazards: [],
  source: { work: 'practice', place: 'a rusty shell takes months of body work; some authorities ask for a valid inspection' },
  judgements: bySet((limits, m) => {
    const about = ['donor.roadworthy'],
      limit = limits('donor.condition'),
      found = m.donor.roadworthy
    if (isGap(found)) return [waiting(about, found)]
    const row = limit ? { requirement: limit } : {}
    return [
      {
        about,
        holds: found.value === 'yes',
        rests: [found],
        says: 'In good condition, with its inspection in order: {found}.',
        slots: { found },
        remedies: OTHER,
        ...row,
      },
    ]
  }),
  spoil: { sample: 'lapwing', edits: [{ path: 'donor.roadworthy', now: 'no' }] },
})

export const seatsRegistered = rule({
  id: 'seats-registered',
  title: 'No more seats than registered',
  stage: 'brief',
  harm: 'S1',
  hazards: [],
  source: SOURCE,
  judgements: bySet((limits, m, ask) => {
    const about = ['brief.seats', 'donor.seats'],
      limit = limits('seats.change')
    if (!limit) return silent(about)
    const wanted = m.brief.seats,
      registered = from(ask(againstDonor), a => a.seats)
    if (isGap(wanted)) return [waiting(about, wanted)]
    if (isGaps(registered)) return [waiting(about, registered)]
    const answer = gateB.seats(limits, { registered: registered.value, planned: wanted.value })
    if (answer?.kind !== 'compared') return answer ? [inWords(answer, about)] : doesNotApply('the rule set has no row on this', about)
    return [
      {
        about,
        found: wanted,
        side: 'at most',
        limit: registered,
        says: '{found} seats are wanted, {limit} are registered; more start an approval.',
        requirement: answer,
        remedies: [{ do: 'act', says: 'Keep the seats the car has, or plan for the approval.' }],
      },
    ]
  }),
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'brief.rules', now: 'nl' },
      { path: 'brief.seats', now: '4' },
    ],
  },
})
