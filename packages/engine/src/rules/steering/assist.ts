import { type SteeringAssist, steeringAssistance } from '../../studies/steering/assist.ts'
import { type Gaps, isGaps } from '../../studies/study.ts'
import { isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'

export const steeringPumpSuffices = rule({
  id: 'steering-pump-suffices',
  title: 'The electric steering pump gives the pressure and flow the rack asks for',
  stage: 'brakes & steering',
  harm: 'S2',
  hazards: [],
  source: { work: 'statics', place: 'force on the rack over its piston; travel in one turn times turns' },
  judgements: (m, ask) => {
    const about = ['steering.hydraulic'],
      after = m.donor.steering.assistAfter
    if (isGap(after) || after.value !== 'electro-hydraulic')
      return doesNotApply('no electric steering pump is chosen', ['donor.steering.assist-after'])
    const answer = ask(steeringAssistance) as SteeringAssist | Gaps,
      h = isGaps(answer) ? answer : (answer.hydraulic ?? { gaps: [] })
    const judged = (item: string, found: 'pressure' | 'needed', limit: 'relief' | 'pumpFlow', says: string): Judgement => ({
      item,
      about,
      found: isGaps(h) ? h : h[found],
      side: 'at most',
      limit: m.steering.hydraulic[limit],
      says,
      remedies: [{ do: 'act', says: 'A stronger pump, more tyre pressure, or less load on the front axle.' }],
    })
    return [
      judged('pressure', 'pressure', 'relief', 'Parking takes {found}; the relief valve opens at {limit}.'),
      judged('flow', 'needed', 'pumpFlow', 'A brisk turn takes {found}; the pump gives {limit}.'),
    ]
  },
  spoil: { sample: 'badger', edits: [{ path: 'steering.hydraulic.pump-flow', now: '2 l/min' }], item: 'flow' },
})

export const steeringFuse = rule({
  id: 'steering-fuse',
  title: 'Fuse and supply carry the steering assist while parking',
  stage: 'brakes & steering',
  harm: 'S2',
  hazards: ['G2'],
  source: { work: 'practice', place: 'a fuse carries the current of what it feeds' },
  judgements: (m, ask) => {
    const about = ['steering.fuse', 'donor.steering.assist-after'],
      after = m.donor.steering.assistAfter
    if (isGap(after) || after.value === 'none') return doesNotApply('no powered steering assist is chosen', about)
    const answer = ask(steeringAssistance) as SteeringAssist | Gaps
    const found = isGaps(answer)
      ? answer
      : after.value === 'electro-hydraulic'
        ? answer.hydraulic && (isGaps(answer.hydraulic) ? answer.hydraulic : answer.hydraulic.current)
        : answer.electric && (isGaps(answer.electric) ? answer.electric : answer.electric.current)
    return [
      {
        about,
        found: found ?? { gaps: [] },
        side: 'at most',
        limit: m.steering.fuse,
        says: 'Parking, the steering assist draws {found}; its fuse is {limit}.',
        remedies: [{ do: 'act', says: 'A larger fuse and wire, as its maker says, and a DC-DC that gives this beside the lamps.' }],
      },
    ]
  },
  spoil: { sample: 'otter', edits: [{ path: 'steering.fuse', now: '20 A' }] },
})
