import { steeringEffort } from '../../studies/steering/effort.ts'
import { isGaps } from '../../studies/study.ts'
import { isGap, standard } from '../../working/value.ts'
import { doesNotApply, rule } from '../rule.ts'

const VTS = { work: 'ch-vts', place: 'Art. 64: assist where more than 300 N are needed; at most 500 N once it fails' } as const
const FAILED = {
  ...standard('steering-assist-failed', 'pull at the rim with the assist failed, at most', 'F', 500, 'N', VTS),
  shows: 'force',
} as const
const NONE = { ...standard('steering-no-assist', 'pull at the rim without assist, at most', 'F', 300, 'N', VTS), shows: 'force' } as const

export const steersWithoutAssist = rule({
  id: 'steers-without-assist',
  title: 'The car can be steered with the assist dead',
  stage: 'brakes & steering',
  harm: 'S3',
  hazards: ['J6'],
  source: VTS,
  caution:
    'Assist that fails in a bend leaves all the effort to the driver at once. Measure with a spring balance on the rim, at 10 km/h on an empty yard.',
  judgements: (m, ask) => {
    const about = ['steering.effort', 'steering.rolling-share', 'donor.steering.assist-after'],
      { assist, assistAfter } = m.donor.steering
    if (isGap(assist)) return [{ about: ['donor.steering.assist'], says: 'What assists the steering is not known yet.', missing: assist }]
    const assisted = !isGap(assistAfter) && assistAfter.value !== 'none',
      answer = ask(steeringEffort)
    return [
      {
        about,
        found: isGaps(answer) ? answer : answer.rolling,
        side: 'at most',
        limit: assisted ? FAILED : NONE,
        says: assisted
          ? 'Rolling at 10 km/h with the assist dead the rim takes {found}; {limit} is accepted.'
          : 'Rolling at 10 km/h the rim takes {found} without assist; above {limit} it needs one.',
        remedies: [
          { do: 'measure', says: 'Measure it with a spring balance on the rim, assist off.', path: 'steering.effort.rolling-after' },
          { do: 'act', says: 'Less load on the front axle, more tyre pressure, or assist that falls back instead of dropping out.' },
        ],
      },
    ]
  },
  spoil: { sample: 'badger', edits: [{ path: 'steering.effort.rolling-after', now: '560 N' }] },
})

export const assistWithoutMessages = rule({
  id: 'steering-assist-without-messages',
  title: 'The steering assist does not drop out without the engine computer',
  stage: 'brakes & steering',
  harm: 'S3',
  hazards: ['J6'],
  source: {
    work: 'practice',
    place: 'some units keep assisting on supply and ignition alone, others need messages of the engine computer',
  },
  caution: 'A unit that waits for a message of an engine that is gone may drop out in a bend. Try it on the bench before it goes in.',
  judgements: m => {
    const about = ['steering.without-messages', 'donor.steering.assist-after'],
      { assistAfter } = m.donor.steering,
      { withoutMessages: does } = m.steering
    if (isGap(assistAfter) || assistAfter.value === 'none') return doesNotApply('no powered steering assist is chosen', about)
    if (isGap(does))
      return [{ about, says: 'What the assist does without messages of the engine computer is not known yet.', missing: does }]
    const holds = does.value !== 'drops out'
    return [
      {
        about,
        holds,
        rests: [does],
        says: holds
          ? 'Without messages of the engine computer the assist still helps.'
          : 'Without messages of the engine computer the assist drops out.',
        remedies: [{ do: 'act', says: 'Another unit, or a box that sends it what it waits for.' }],
      },
    ]
  },
  spoil: { sample: 'otter', edits: [{ path: 'steering.without-messages', now: 'drops out' }] },
})
