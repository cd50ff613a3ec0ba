import type { Model } from '../../model/model.ts'
import { type Train, towing, train } from '../../studies/donor/train.ts'
import { trainBraking } from '../../studies/donor/train-braking.ts'
import { type Ask, type Gaps, isGaps } from '../../studies/study.ts'
import { isGap } from '../../working/value.ts'
import { limitFact, withoutSet } from '../limits.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'

const PLATE = { work: 'practice', place: 'towing figures on the plate of the car and of its coupling' } as const
const CAUTION =
  'A train that is too heavy, or pressed down too hard behind, takes steering and brakes away. The heavier car has used up part of its towing figure.'

/** One judgement for each load case with a trailer. */
const forTrains = (
  m: Model,
  ask: Ask,
  about: readonly string[],
  judgement: (name: string, t: Train) => Judgement,
): readonly Judgement[] => {
  const pulled = towing(m.brief.loads)
  if (pulled.length === 0) return doesNotApply('no load case has a trailer', ['brief.loads'])
  const answer = ask(train)
  return pulled.map(([name]) => {
    const missing: Gaps | undefined = isGaps(answer) ? answer : undefined,
      t = isGaps(answer) ? undefined : answer.cases[name]
    return t ? judgement(name, t) : { item: name, about, says: 'The train cannot be weighed up yet.', missing: missing ?? { gaps: [] } }
  })
}
const LIGHTER = [{ do: 'act', says: 'A lighter trailer, or less aboard.' }] as const

export const trainMass = rule({
  id: 'train-mass',
  title: 'Car and trailer together stay within the train mass',
  stage: 'donor',
  harm: 'S3',
  hazards: [],
  source: PLATE,
  caution: CAUTION,
  judgements: (m, ask) =>
    forTrains(m, ask, ['donor.ratings.train'], (item, t) => ({
      item,
      about: ['donor.ratings.train', `brief.loads.${item}`, `trips.trailers.${t.trailer}`],
      found: t.mass,
      side: 'at most',
      limit: m.donor.ratings.train,
      says: 'Car and trailer weigh {found}; {limit} is permitted.',
      remedies: LIGHTER,
    })),
  spoil: { sample: 'otter', edits: [{ path: 'donor.ratings.train', now: '3000 kg' }], item: 'towing' },
})

export const noseLoad = rule({
  id: 'nose-load',
  title: 'The nose load stays within what coupling and car may carry',
  stage: 'donor',
  harm: 'S3',
  hazards: [],
  source: PLATE,
  caution: CAUTION,
  judgements: (m, ask) =>
    forTrains(m, ask, ['donor.ratings.nose-load'], (item, t) => ({
      item,
      about: ['donor.ratings.nose-load', `trips.trailers.${t.trailer}.nose-load`],
      found: t.nose,
      side: 'at most',
      limit: m.donor.ratings.noseLoad,
      says: 'The trailer presses on the coupling with {found}; {limit} is permitted.',
      remedies: [{ do: 'act', says: 'Shift the load of the trailer rearwards.' }],
    })),
  spoil: { sample: 'otter', edits: [{ path: 'trips.trailers.caravan.nose-load', now: '90 kg' }], item: 'towing' },
})

export const trailerMass = rule({
  id: 'trailer-mass',
  title: 'The trailer is no heavier than the car may pull',
  stage: 'donor',
  harm: 'S3',
  hazards: [],
  source: PLATE,
  caution: CAUTION,
  judgements: (m, ask) =>
    forTrains(m, ask, ['donor.ratings.tow-braked'], (item, t) => {
      const about = ['donor.ratings.tow-braked', 'donor.ratings.tow-unbraked', `trips.trailers.${t.trailer}`]
      if (typeof t.braked !== 'string') return { item, about, says: 'Whether the trailer has brakes is not known.', missing: t.braked }
      const limit = t.braked === 'yes' ? m.donor.ratings.towBraked : m.donor.ratings.towUnbraked
      return {
        item,
        about,
        found: t.trailed,
        side: 'at most',
        limit,
        says:
          t.braked === 'yes'
            ? 'The braked trailer weighs {found}; {limit} is permitted.'
            : 'The unbraked trailer weighs {found}; {limit} is permitted.',
        remedies: LIGHTER,
      }
    }),
  spoil: { sample: 'badger', edits: [{ path: 'trips.trailers.stock.mass', now: '1600 kg' }], item: 'towing' },
})

export const couplingStrong = rule({
  id: 'coupling-strong',
  title: 'The coupling is strong enough for car and trailer',
  stage: 'donor',
  harm: 'S3',
  hazards: [],
  source: { work: 'un-r55', place: 'D value on the plate of the coupling' },
  caution: 'A coupling that breaks lets the trailer go. The D value needed grows with the gross mass of the car.',
  judgements: (m, ask) =>
    forTrains(m, ask, ['donor.towing.coupling-strength'], (item, t) => ({
      item,
      about: ['donor.towing.coupling-strength', 'donor.ratings.total', `trips.trailers.${t.trailer}.mass`],
      found: t.strength,
      side: 'at most',
      limit: m.donor.towing.couplingStrength,
      says: 'Car and trailer need a D value of {found}; the plate of the coupling says {limit}.',
      remedies: [{ do: 'act', says: 'A stronger coupling, if the body takes it, or a lighter trailer.' }],
    })),
  spoil: { sample: 'otter', edits: [{ path: 'donor.towing.coupling-strength', now: '7 kN' }], item: 'towing' },
})

export const stopsWithTrailer = rule({
  id: 'stops-with-trailer',
  title: 'The car stops a trailer without brakes as the rule set asks',
  stage: 'donor',
  harm: 'S3',
  hazards: [],
  source: { work: 'rule-set', place: 'deceleration with an unbraked trailer' },
  caution: 'A trailer without brakes lengthens every stop and pushes the car.',
  judgements: (m, ask, limits) => {
    const pulled = towing(m.brief.loads)
    if (pulled.length === 0) return doesNotApply('no load case has a trailer', ['brief.loads'])
    if (isGap(limits)) return withoutSet(limits)
    const row = limits('brakes.trailer'),
      answer = ask(trainBraking)
    if (!row || typeof row.requirement.value !== 'number') return doesNotApply('the rule set has no row on this', ['brief.rules'])
    const limit = limitFact(row, row.requirement.value, { unit: 'm/s²', shows: 'acceleration' })
    return pulled.map(([item, name]): Judgement => {
      const about = [`trips.trailers.${name}`, 'donor.brakes.deceleration'],
        braked = m.trips.trailers[name]?.braked
      if (braked && !isGap(braked) && braked.value === 'yes')
        return { item, about, says: 'The trailer brakes.', doesNotApply: 'the trailer has brakes' }
      const found = isGaps(answer) ? answer : (answer.cases[item]?.deceleration ?? (braked && isGap(braked) ? braked : { gaps: [] }))
      return {
        item,
        about,
        found,
        side: 'at least',
        limit,
        requirement: row,
        says: 'With the trailer on, the car slows down by {found} at most; the rule set asks for {limit}.',
        remedies: [{ do: 'act', says: 'A trailer with brakes, or a lighter one.' }],
      }
    })
  },
  spoil: {
    sample: 'badger',
    edits: [
      { path: 'brief.rules', now: 'de' },
      { path: 'trips.trailers.stock.braked', now: 'no' },
      { path: 'donor.brakes.deceleration', now: '6.5 m/s2' },
    ],
    item: 'towing',
  },
})
