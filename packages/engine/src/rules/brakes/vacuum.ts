import { HIGHEST, type VacuumAnswer, type VacuumAt, vacuum } from '../../studies/brakes/vacuum.ts'
import { type Ask, type Gaps, isGaps } from '../../studies/study.ts'
import { isGap, standard } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'

const MOT = { work: 'uk-mot', place: '1.1.3, low vacuum' } as const
const FOUR = standard('assisted-stops', 'assisted stops after the warning, at least', 'n', 4, '1', MOT)
const MINUTE = { ...standard('vacuum-within', 'from empty until the warning goes out, at most', 't', 60, 's', MOT), shows: 'time' } as const
const ABOUT = ['brakes.vacuum', 'donor.brakes.assist-after'] as const
const HARD_PEDAL =
  'Without vacuum the pedal is very hard. Prove the reserve and the warning standing, with the pump unplugged, before the road.'

const eachRoad = (ask: Ask, judgement: (item: string, at: VacuumAt) => Judgement): readonly Judgement[] => {
  const answer = ask(vacuum) as VacuumAnswer | Gaps | null
  if (answer === null) return doesNotApply('no vacuum pump is chosen', ABOUT)
  if (isGaps(answer)) return [{ about: ABOUT, says: 'What the vacuum pump gives is not known yet.', missing: answer }]
  return Object.entries(answer.roads).map(([item, at]) => judgement(item, at))
}

export const vacuumLasts = rule({
  id: 'vacuum-lasts',
  title: 'The tank assists four more stops once the driver is warned',
  stage: 'brakes & steering',
  harm: 'S3',
  hazards: ['J1'],
  source: MOT,
  caution: HARD_PEDAL,
  judgements: (_m, ask) =>
    eachRoad(ask, (item, at) => ({
      item,
      about: ABOUT,
      found: at.stops,
      side: 'at least',
      limit: FOUR,
      says: 'From the warning on, pump dead, the vacuum assists {found} hard stops; {limit} are asked for.',
      remedies: [{ do: 'act', says: 'A larger tank, or a warning that comes sooner.' }],
    })),
  spoil: { sample: 'wren', edits: [{ path: 'brakes.vacuum.volume', now: '2.5 l' }], item: HIGHEST },
})

export const vacuumSoon = rule({
  id: 'vacuum-soon',
  title: 'The pump makes its vacuum within a minute',
  stage: 'brakes & steering',
  harm: 'S3',
  hazards: ['J1'],
  source: MOT,
  caution: HARD_PEDAL,
  judgements: (_m, ask) =>
    eachRoad(ask, (item, at): Judgement => {
      const remedies = [
        { do: 'act', says: 'A faster pump, or one that reaches a lower pressure; a smaller tank keeps fewer stops.' },
      ] as const
      return at.pumpDown === 'never'
        ? {
            item,
            about: ABOUT,
            holds: false,
            rests: [at.reached],
            says: 'The pump never reaches the vacuum at which the warning goes out.',
            remedies,
          }
        : {
            item,
            about: ABOUT,
            found: at.pumpDown,
            side: 'at most',
            limit: MINUTE,
            says: 'From an empty tank the warning goes out after {found}; {limit} are accepted.',
            remedies,
          }
    }),
  spoil: { sample: 'badger', edits: [{ path: 'brakes.vacuum.pump-speed', now: '0.08 l/s' }], item: HIGHEST },
})

export const pumpComesToRest = rule({
  id: 'vacuum-pump-rests',
  title: 'The vacuum pump reaches its switch on the highest road',
  stage: 'brakes & steering',
  harm: 'S2',
  hazards: [],
  source: { work: 'practice', place: 'the air is thinner on a pass; a pump that never reaches its switch runs until it dies' },
  judgements: (m, ask) =>
    eachRoad(ask, (item, at) => ({
      item,
      about: ABOUT,
      found: at.reached,
      side: 'at least',
      limit: m.brakes.vacuum.cutOut,
      says: 'The pump reaches a vacuum of {found}; its switch stops it at {limit}.',
      remedies: [{ do: 'act', says: 'Set the switch lower, or choose a pump that reaches a lower pressure.' }],
    })),
  spoil: { sample: 'wren', edits: [{ path: 'brakes.vacuum.altitude', now: '2600 m' }], item: HIGHEST },
})

export const vacuumOverrunTold = rule({
  id: 'vacuum-overrun-told',
  title: 'A vacuum pump that runs on is told of',
  stage: 'brakes & steering',
  harm: 'S2',
  hazards: ['J2'],
  source: {
    work: 'practice',
    place: 'a leaking hose lets the pump run without end: it empties the 12 V battery and burns out; its running time is watched',
    mark: 'common practice',
  },
  judgements: (m): readonly Judgement[] => {
    const after = m.donor.brakes.assistAfter,
      told = m.brakes.vacuum.overrunTold,
      about = ['brakes.vacuum.overrun-told', 'donor.brakes.assist-after']
    if (isGap(after)) return [{ about, says: 'What takes the place of the engine’s vacuum is not said yet.', missing: after }]
    if (after.value !== 'vacuum pump') return doesNotApply('no vacuum pump is chosen', about)
    if (isGap(told)) return [{ about, says: 'Whether anybody learns of a pump that runs on is not said yet.', missing: told }]
    return [
      {
        about,
        holds: told.value === 'yes',
        rests: [told],
        says: 'A pump that does not come to rest is told of: {told}.',
        slots: { told },
        remedies: [
          {
            do: 'set',
            says: 'Plan a lamp or a message that comes once the pump has run longer than it takes from empty.',
            sets: [{ path: 'brakes.vacuum.overrun-told', to: { word: 'yes' } }],
          },
        ],
      },
    ]
  },
  spoil: { sample: 'wren', edits: [{ path: 'brakes.vacuum.overrun-told', now: 'no' }] },
})
