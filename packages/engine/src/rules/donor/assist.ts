import { isGap } from '../../working/value.ts'
import { doesNotApply, rule } from '../rule.ts'

export const brakeAssist = rule({
  id: 'brake-assist',
  title: 'Something takes the place of the engine’s brake assist',
  stage: 'donor',
  harm: 'S3',
  hazards: ['J1'],
  source: { work: 'practice', place: 'vacuum or pressure came from the engine' },
  caution: 'Without assist the pedal is very hard. Do not move the car before its brakes are complete and tested.',
  judgements: ({ donor: { brakes } }) => {
    const about = ['donor.brakes.assist', 'donor.brakes.assist-after']
    if (isGap(brakes.assist)) return [{ about, says: 'What assists the brakes is not known yet.', missing: brakes.assist }]
    const { value: before } = brakes.assist
    if (before === 'none' || before === 'electric') return doesNotApply('the brakes do not lean on the engine', about)
    if (isGap(brakes.assistAfter))
      return [{ about, says: 'The assist came from the engine; what takes its place is not decided.', missing: brakes.assistAfter }]
    const after = brakes.assistAfter
    // A vacuum pump serves a vacuum booster only.
    const holds = after.value === 'electric booster' || (after.value === 'vacuum pump' && before === 'vacuum')
    return [
      {
        about,
        holds,
        rests: [brakes.assist, after],
        says: holds
          ? 'The assist that came from the engine is replaced.'
          : 'The assist came from the engine and nothing fitting takes its place.',
        remedies: [
          {
            do: 'set',
            says: before === 'vacuum' ? 'Fit an electric vacuum pump with reservoir and warning switch.' : 'Fit an electric booster.',
            sets: [{ path: 'donor.brakes.assist-after', to: { word: before === 'vacuum' ? 'vacuum pump' : 'electric booster' } }],
          },
        ],
      },
    ]
  },
  spoil: { sample: 'wren', edits: [{ path: 'donor.brakes.assist-after', now: 'none' }] },
})

export const steeringAssist = rule({
  id: 'steering-assist',
  title: 'Something takes the place of the engine-driven steering pump',
  stage: 'donor',
  harm: 'S3',
  hazards: ['J6'],
  source: { work: 'practice', place: 'the pump left with the engine' },
  caution:
    'Steering made for assist is heavy without it, most of all at a standstill and when it fails in a bend. Do not drive before it is set up and tested.',
  judgements: ({ donor: { steering } }) => {
    const about = ['donor.steering.assist', 'donor.steering.assist-after']
    if (isGap(steering.assist)) return [{ about, says: 'What assists the steering is not known yet.', missing: steering.assist }]
    if (steering.assist.value !== 'hydraulic') return doesNotApply('the steering does not lean on the engine', about)
    const after = steering.assistAfter
    if (isGap(after)) return [{ about, says: 'The pump left with the engine; what takes its place is not decided.', missing: after }]
    const holds = after.value !== 'none'
    return [
      {
        about,
        holds,
        rests: [steering.assist, after],
        says: holds ? 'The steering pump is replaced.' : 'The steering pump left with the engine and nothing takes its place.',
        remedies: [
          {
            do: 'set',
            says: 'Fit an electro-hydraulic pump.',
            sets: [{ path: 'donor.steering.assist-after', to: { word: 'electro-hydraulic' } }],
          },
        ],
      },
    ]
  },
  spoil: { sample: 'badger', edits: [{ path: 'donor.steering.assist-after', now: 'none' }] },
})

export const absKept = rule({
  id: 'anti-lock-kept',
  title: 'Anti-lock brakes keep working',
  stage: 'donor',
  harm: 'S3',
  hazards: [],
  source: { work: 'practice', place: 'equipment the car was approved with' },
  caution: 'Keep sensors, pump, its supply and its lamp. Log its messages before the engine computer goes: some of them come from there.',
  judgements: ({ donor: { brakes } }) => {
    const about = ['donor.brakes.abs', 'donor.brakes.abs-after']
    if (isGap(brakes.abs)) return [{ about, says: 'Whether it has anti-lock brakes is not known yet.', missing: brakes.abs }]
    if (brakes.abs.value === 'none') return doesNotApply('the donor car has no anti-lock brakes', about)
    if (isGap(brakes.absAfter)) return [{ about, says: 'What becomes of the anti-lock brakes is not decided.', missing: brakes.absAfter }]
    const holds = brakes.absAfter.value === 'kept'
    return [
      {
        about,
        holds,
        rests: [brakes.abs, brakes.absAfter],
        says: holds ? 'The anti-lock brakes stay.' : 'The car was approved with anti-lock brakes and is to lose them.',
        remedies: [{ do: 'set', says: 'Keep them.', sets: [{ path: 'donor.brakes.abs-after', to: { word: 'kept' } }] }],
      },
    ]
  },
  spoil: { sample: 'otter', edits: [{ path: 'donor.brakes.abs-after', now: 'taken out' }] },
})
