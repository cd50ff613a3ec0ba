import type { Model } from '../../model/model.ts'
import { type Parked, parking } from '../../studies/brakes/parking.ts'
import { type Ask, type Gaps, isGaps } from '../../studies/study.ts'
import { standard } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'

const MOT = { work: 'uk-mot', place: '1.4.2, parking brake: 16 % of the weight' } as const
const YEARLY = { ...standard('parking-yearly', 'slope the parking brake holds on, at least', 'p', 0.16, '1', MOT), shows: 'slope' } as const
const ABOUT = ['brakes.parking', 'brakes.prints'] as const

const eachLoad = (m: Model, ask: Ask, judgement: (item: string, p: Parked) => Judgement | undefined): readonly Judgement[] => {
  const names = Object.keys(m.brief.loads)
  if (names.length === 0) return doesNotApply('the brief has no load case', ['brief.loads'])
  const answer = ask(parking)
  if (isGaps(answer)) return [{ about: ABOUT, says: 'What the parking brake holds is not known yet.', missing: answer }]
  return names.flatMap((item): readonly Judgement[] => {
    const p = answer.cases[item] as Parked | Gaps
    if (isGaps(p)) return [{ item, about: ABOUT, says: 'This load cannot be weighed up yet.', missing: p }]
    const judged = judgement(item, p)
    return judged ? [judged] : []
  })
}
const HARDER = [{ do: 'act', says: 'Adjust it, renew cables and linings, or a lever with more ratio; a parking lock beside it.' }] as const

export const parkingBrakeHolds = rule({
  id: 'parking-brake-holds',
  title: 'The parking brake holds the car by itself',
  stage: 'brakes & steering',
  harm: 'S3',
  hazards: [],
  source: MOT,
  caution:
    'An engine left in gear held the car as well; a motor without power holds nothing. Chock the wheels until the parking brake is proven on a hill, laden.',
  judgements: (m, ask) =>
    eachLoad(m, ask, (item, p) =>
      p.train
        ? undefined
        : {
            item,
            about: ABOUT,
            found: p.slope,
            side: 'at least',
            limit: YEARLY,
            says: 'The parking brake holds on {found}; the yearly test asks for {limit}. Leaving it in gear adds nothing any more.',
            remedies: HARDER,
          },
    ),
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'brakes.prints.donor.parking-left', now: '0.9 kN' },
      { path: 'brakes.prints.donor.parking-right', now: '0.9 kN' },
    ],
    item: 'two-up',
  },
})

export const parkingBrakeOnSlope = rule({
  id: 'parking-brake-on-slope',
  title: 'The parking brake holds laden on 20 %, and a train on 12 %',
  stage: 'brakes & steering',
  harm: 'S2',
  hazards: [],
  source: { work: 'un-r13-h', place: 'Annex 3, parking brake', mark: 'from memory' },
  judgements: (m, ask) =>
    eachLoad(m, ask, (item, p) => ({
      item,
      about: ABOUT,
      found: p.slope,
      side: 'at least',
      limit: p.asked,
      says: p.train
        ? 'With its trailer the parking brake holds on {found}; {limit} is asked for.'
        : 'The parking brake holds on {found}; {limit} is asked for.',
      remedies: HARDER,
    })),
  spoil: {
    sample: 'badger',
    edits: [
      { path: 'brakes.prints.donor.parking-left', now: '1.8 kN' },
      { path: 'brakes.prints.donor.parking-right', now: '1.8 kN' },
    ],
    item: 'towing',
  },
})

export const parkedAxleGrips = rule({
  id: 'parked-axle-grips',
  title: 'The parked axle has the grip to hold there',
  stage: 'brakes & steering',
  harm: 'S2',
  hazards: [],
  source: { work: 'statics', place: 'load moves off one axle on a hill' },
  judgements: (m, ask) =>
    eachLoad(m, ask, (item, p) =>
      p.train
        ? undefined
        : {
            item,
            about: [...ABOUT, 'brakes.parking.axle', 'donor.grip.dry'],
            found: p.grip,
            side: 'at least',
            limit: p.asked,
            says: 'By grip the parked axle holds on {found}, the worse way round; {limit} is asked for.',
            remedies: [{ do: 'act', says: 'Bring load onto the parked axle, or hold all four wheels.' }],
          },
    ),
  spoil: { sample: 'lapwing', edits: [{ path: 'donor.grip.dry', now: '0.3' }], item: 'driver' },
})
