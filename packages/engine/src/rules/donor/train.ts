import type { Model } from '../../model/model.ts'
import { type Train, towing, train } from '../../studies/donor/train.ts'
import { type Ask, type Gaps, isGaps } from '../../studies/study.ts'

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
