import { brakeHeat, type Heat } from '../../studies/brakes/heat.ts'
import { type Gaps, isGaps } from '../../studies/study.ts'
import { standard } from '../../working/value.ts'
import { type Judgement, rule } from '../rule.ts'

const PADS = {
  ...standard('pads-limit', 'ordinary pads', 'θ', 773.15, 'K', {
    work: 'practice',
    place: 'ordinary pads fade above some 500 °C',
    mark: 'common practice',
  }),
  shows: 'temperature',
} as const

export const brakesStayCool = rule({
  id: 'brakes-stay-cool',
  title: 'Discs and drums stay below what ordinary pads stand',
  stage: 'brakes & steering',
  harm: 'S2',
  hazards: [],
  source: { work: 'practice', place: 'rotors below 500 °C after the heating run and down a long hill' },
  caution:
    'At the top of a hill a full or cold battery takes nothing back: the friction brakes are alone. Charge to less before a long way down.',
  judgements: (_m, ask) => {
    const answer = ask(brakeHeat)
    if (isGaps(answer))
      return [{ about: ['brakes.front', 'brakes.rear'], says: 'How hot the brakes get cannot be said yet.', missing: answer }]
    return (['front', 'rear'] as const).flatMap((axle): readonly Judgement[] => {
      const about = [`brakes.${axle}.rotor-mass`, `brakes.${axle}.cooling`],
        run = (answer as Heat).axles[axle] as Heat['axles']['front'],
        down = (answer as Heat).descent[axle] as { alone: never } | Gaps
      return [
        {
          item: `${axle}, heating run`,
          about,
          found: isGaps(run) ? run : run.run,
          side: 'at most',
          limit: PADS,
          says: `After the fifteen stops of the heating run the ${axle} brakes are at {found}; ordinary pads stand {limit}.`,
          remedies: [{ do: 'act', says: 'Heavier or ventilated discs, air to the brakes, pads for more heat.' }],
        },
        {
          item: `${axle}, down the hill`,
          about: [...about, 'brakes.descent'],
          found: isGaps(down) ? down : down.alone,
          side: 'at most',
          limit: PADS,
          says: `At the foot of the hill, battery full, the ${axle} brakes are at {found}; ordinary pads stand {limit}.`,
          remedies: [{ do: 'act', says: 'Keep room in the battery at the top, go slower, or heavier discs.' }],
        },
      ]
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'brakes.descent.slope', now: '14 %' }], item: 'front, down the hill' },
})
