import { loadCases } from '../../studies/donor/load-cases.ts'
import { RATED } from '../../studies/donor/ratings.ts'
import { massOf } from '../../studies/donor/room.ts'
import { tyres } from '../../studies/donor/tyres.ts'
import { wantedSpeed } from '../../studies/donor/wanted-speed.ts'
import { from, isGaps } from '../../studies/study.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'

const CAUTION = 'A tyre past its load or speed bursts.'

export const tyreLoad = rule({
  id: 'tyre-load',
  title: 'The tyres may carry each axle, laden, at the top speed wanted',
  stage: 'donor',
  harm: 'S3',
  hazards: [],
  source: { work: 'un-r30', place: 'Annex 4, load index' },
  caution: CAUTION,
  judgements: (m, ask) => {
    const names = Object.keys(m.brief.loads),
      loads = ask(loadCases),
      limit = from(ask(tyres), t => t.axle)
    if (names.length === 0) return doesNotApply('the brief names no load case', ['brief.loads'])
    return names.flatMap(name =>
      RATED.filter(rated => rated !== 'total').map((rated): Judgement => {
        const item = `${name}, ${rated}`,
          about = ['donor.tyre', `brief.loads.${name}`],
          laden = from(loads, l => l.cases[name] ?? { gaps: [] })
        if (isGaps(laden)) return { item, about, says: 'This axle cannot be compared with its tyres yet.', missing: laden }
        return {
          item,
          about,
          found: massOf(laden, rated),
          side: 'at most',
          limit,
          says: 'The axle carries {found}; its two tyres may carry {limit} at the speed wanted.',
          remedies: [
            { do: 'act', says: 'A tyre of the same rolling circumference with a higher load index, if the rim and the papers allow it.' },
          ],
        }
      }),
    )
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'donor.tyre', now: '185/60 R14 72H' }], item: 'two-up, rear axle' },
})

export const tyreSpeed = rule({
  id: 'tyre-speed',
  title: 'The tyres are rated for the top speed wanted',
  stage: 'donor',
  harm: 'S3',
  hazards: [],
  source: { work: 'un-r30', place: 'speed symbols' },
  caution: CAUTION,
  judgements: m => [
    {
      about: ['donor.tyre', 'brief.goals'],
      found: wantedSpeed(m),
      side: 'at most',
      limit: m.donor.tyre.topSpeed,
      says: 'The brief wants {found}; the tyres are rated for {limit}.',
      remedies: [{ do: 'act', says: 'A tyre with a faster speed symbol, or a speed limit set in software.' }],
    },
  ],
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'donor.tyre', now: '185/60 R14 82N' },
      { path: 'brief.goals.top-speed.speed', now: '150 km/h' },
    ],
  },
})
