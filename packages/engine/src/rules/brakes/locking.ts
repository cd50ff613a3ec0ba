import type { Model } from '../../model/model.ts'
import { type Judged, type Utilised, utilisation } from '../../studies/brakes/utilisation.ts'
import { type Ask, type Gaps, isGaps } from '../../studies/study.ts'
import { type AnyValue, type Field, isGap, standard, type Value } from '../../working/value.ts'
import { doesNotApply, type Judgement, type Remedy, rule } from '../rule.ts'

const NONE = { work: 'definition', place: 'nothing' } as const
const NO_LEAD = standard('no-lead', 'both axles use the same grip', 'd', 0, '1', NONE)
const ON_THE_LINE = standard('on-the-line', 'on the line of least braking', 'r', 0, '1', NONE)
const ABOUT = ['brakes.prints', 'brakes.front', 'brakes.rear', 'brakes.valve'] as const
const RECOVERY = ['brakes.recovery.under-pedal', 'drive.regeneration.torque-share'] as const

type Kept = 'none' | 'rear axle' | 'four channels'
/** Anti-lock brakes the finished car has, or what is not known of them. */
export function antiLock({ donor: { brakes } }: Model): Kept | Gaps {
  const { abs, absAfter } = brakes
  if (isGap(abs)) return { gaps: [abs] }
  if (abs.value === 'none') return 'none'
  if (isGap(absAfter)) return { gaps: [absAfter] }
  return absAfter.value === 'kept' ? abs.value : 'none'
}
const isWord = (f: Field<string>, word: string): boolean => !isGap(f) && f.value === word
/** Recovery on top of the friction brakes counts unless the pedal or the anti-lock brakes take it away. */
const onTop = (m: Model, abs: Kept): boolean =>
  Object.keys(m.drive.units).length > 0 &&
  !isWord(m.brakes.recovery.underPedal, 'gives way') &&
  !(abs !== 'none' && isWord(m.brakes.recovery.cutBy, 'anti-lock brakes'))

const GIVES_WAY: Remedy = {
  do: 'set',
  says: 'Let recovery give way as soon as the brake pedal is pressed.',
  sets: [{ path: 'brakes.recovery.under-pedal', to: { word: 'gives way' } }],
}
const REBALANCE: Remedy = {
  do: 'act',
  says: 'Less brake at the rear: a valve with a lower knee, other pads or cylinders. Or move mass rearwards. Have it tested before the road.',
}

type Asked = {
  readonly friction: boolean
  readonly says: readonly [friction: string, motors: string]
  readonly found: (j: Judged) => Value
  readonly limit: Value
  readonly slots: (j: Judged) => Readonly<Record<string, AnyValue>>
}
/** One judgement for each load by friction alone, and one with the motors at their strongest where they brake under the pedal. */
function eachLoad(m: Model, ask: Ask, abs: Kept, a: Asked): readonly Judgement[] {
  const answer = ask(utilisation)
  if (isGaps(answer)) return [{ about: ABOUT, says: 'How the brakes share between the axles is not known yet.', missing: answer }]
  const motors = onTop(m, abs)
  return Object.entries(answer.cases as Readonly<Record<string, Utilised | Gaps>>).flatMap(([load, c]): readonly Judgement[] => {
    const judged = (item: string, about: readonly string[], j: Judged | Gaps, says: string, remedies: readonly Remedy[]): Judgement =>
      isGaps(j)
        ? { item, about, says: 'This load cannot be weighed up yet.', missing: j }
        : { item, about, found: a.found(j), side: 'at least', limit: a.limit, says, slots: a.slots(j), remedies }
    return [
      ...(a.friction ? [judged(load, ABOUT, isGaps(c) ? c : c.friction, a.says[0], [REBALANCE])] : []),
      ...(motors
        ? [judged(`${load}, motors braking`, [...ABOUT, ...RECOVERY], isGaps(c) ? c : c.recovering, a.says[1], [GIVES_WAY, REBALANCE])]
        : []),
    ]
  })
}

export const frontLocksFirst = rule({
  id: 'front-locks-first',
  title: 'The front axle locks before the rear one',
  stage: 'brakes & steering',
  harm: 'S3',
  hazards: ['J4'],
  source: { work: 'un-r13-h', place: 'Annex 5: order of locking between 0.15 and 0.8 of the weight, every load', mark: 'from memory' },
  caution:
    'A car whose rear wheels lock first turns round. A conversion moves mass and adds braking by motors to one axle: have the brakes tested before the road, and try hard braking first in an empty yard.',
  judgements: (m, ask) => {
    const abs = antiLock(m)
    if (typeof abs !== 'string')
      return [{ about: ['donor.brakes.abs'], says: 'Whether it has anti-lock brakes is not known yet.', missing: abs }]
    if (abs !== 'none' && !onTop(m, abs))
      return doesNotApply('anti-lock brakes watch the rear axle', ['donor.brakes.abs', 'brakes.recovery.cut-by'])
    return eachLoad(m, ask, abs, {
      friction: abs === 'none',
      says: [
        'The front axle uses {found} more grip than the rear at {at} of the weight, where it leads least; below {limit} the rear locks first.',
        'With the motors braking as well the front axle uses {found} more grip than the rear at {at} of the weight; below {limit} the rear locks first.',
      ],
      found: j => j.lead,
      limit: NO_LEAD,
      slots: j => ({ at: j.at }),
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'brakes.recovery.under-pedal', now: 'stays' }], item: 'two-up, motors braking' },
})

export const brakesUseTheGrip = rule({
  id: 'brakes-use-the-grip',
  title: 'The car brakes as hard as its grip asks before an axle locks',
  stage: 'brakes & steering',
  harm: 'S2',
  hazards: [],
  source: { work: 'un-r13-h', place: 'Annex 5: z at least 0.1 + 0.7·(k − 0.2) for grips from 0.2 to 0.8', mark: 'from memory' },
  judgements: (m, ask) => {
    const abs = antiLock(m)
    if (typeof abs !== 'string')
      return [{ about: ['donor.brakes.abs'], says: 'Whether it has anti-lock brakes is not known yet.', missing: abs }]
    if (abs === 'four channels') return doesNotApply('anti-lock brakes on all wheels use the grip', ['donor.brakes.abs'])
    return eachLoad(m, ask, abs, {
      friction: true,
      says: [
        'Where it is least the car brakes by {found} of its weight above the line of the regulation.',
        'With the motors braking the car brakes by {found} of its weight above the line of the regulation, where it is least.',
      ],
      found: j => j.room,
      limit: ON_THE_LINE,
      slots: () => ({}),
    })
  },
  spoil: {
    sample: 'lapwing',
    edits: [
      { path: 'brakes.prints.donor.rear-left', now: '0.2 kN' },
      { path: 'brakes.prints.donor.rear-right', now: '0.2 kN' },
    ],
    item: 'two-up',
  },
})
