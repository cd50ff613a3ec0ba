import { electricBooster } from '../../studies/brakes/electric-booster.ts'
import { unassisted } from '../../studies/brakes/unassisted.ts'
import { isGaps } from '../../studies/study.ts'
import { isGap, standard } from '../../working/value.ts'
import { doesNotApply, rule } from '../rule.ts'

const SECTION_41 = { work: 'stvzo', place: 'section 41 (4) and (4a): 44 % of 5.0 m/s² with part of the brakes failed' } as const
const LEAST = {
  ...standard('secondary-least', 'deceleration with the assist failed, at least', 'a', 0.44 * 5, 'm/s²', SECTION_41),
  shows: 'acceleration',
} as const

export const brakesWithoutAssist = rule({
  id: 'brakes-without-assist',
  title: 'The foot alone still stops the car',
  stage: 'brakes & steering',
  harm: 'S3',
  hazards: ['J1'],
  source: SECTION_41,
  caution: 'Pump, hose, fuse and booster fail one day. Try one stop with the assist dead on an empty yard, so that you know the pedal.',
  judgements: (m, ask) => {
    const about = ['brakes.pedal-ratio', 'brakes.master-cylinder', 'brakes.pedal-efficiency'],
      { assist, assistAfter } = m.donor.brakes
    if (isGap(assist)) return [{ about: ['donor.brakes.assist'], says: 'What assists the brakes is not known yet.', missing: assist }]
    if (assist.value === 'none' && (isGap(assistAfter) || assistAfter.value === 'none'))
      return doesNotApply('the brakes have no assist to lose', about)
    const answer = ask(unassisted)
    return [
      {
        about,
        found: isGaps(answer) ? answer : answer.deceleration,
        side: 'at least',
        limit: LEAST,
        ...(isGaps(answer) ? {} : { slots: { pedal: answer.pedal } }),
        says: isGaps(answer)
          ? 'What the foot alone brakes is not known yet.'
          : 'With 500 N on the pedal and no assist the heaviest load slows down by {found}; {limit} is asked for. 2.44 m/s² take {pedal}.',
        remedies: [{ do: 'act', says: 'A smaller master cylinder, a longer pedal, or assist from two sources.' }],
      },
    ]
  },
  spoil: { sample: 'badger', edits: [{ path: 'brakes.pedal-ratio', now: '2.6' }] },
})

export const electricBoosterFuse = rule({
  id: 'electric-booster-fuse',
  title: 'Fuse and supply carry the electric booster in a hard stop',
  stage: 'brakes & steering',
  harm: 'S2',
  hazards: ['G2'],
  source: { work: 'practice', place: 'a fuse carries the current of what it feeds' },
  judgements: (m, ask) => {
    const about = ['brakes.electric-booster'],
      answer = ask(electricBooster)
    if (answer === null) return doesNotApply('no electric booster is chosen', ['donor.brakes.assist-after'])
    return [
      {
        about,
        found: isGaps(answer) ? answer : answer.current,
        side: 'at most',
        limit: m.brakes.electricBooster.fuse,
        says: 'In a hard stop the electric booster draws {found}; its fuse is {limit}.',
        remedies: [{ do: 'act', says: 'A larger fuse and wire, as its maker says, and a DC-DC that gives this beside the lamps.' }],
      },
    ]
  },
  spoil: { sample: 'otter', edits: [{ path: 'brakes.electric-booster.fuse', now: '40 A' }] },
})
