import { topSpeed } from '../../studies/drive/top-speed.ts'
import { isGaps } from '../../studies/study.ts'
import { isGap } from '../../working/value.ts'
import { type Judgement, rule } from '../rule.ts'
import * as gateB from '../sets/feasibility.ts'
import { bySet, silent, waiting } from './by-set.ts'

export const topSpeedKept = rule({
  id: 'top-speed-kept',
  title: 'The design top speed is not lowered where the rule set forbids it',
  stage: 'brief',
  harm: 'S2',
  hazards: [],
  source: { work: 'rule-set', place: 'design top speed' },
  judgements: bySet((limits, m, ask) => {
    const about = ['brief.rules', 'donor.top-speed'],
      row = limits('speed.max.drop')
    if (row?.requirement.test !== 'must-not') return silent(about)
    const registered = m.donor.topSpeed,
      answer = ask(topSpeed)
    if (isGap(registered)) return [waiting(about, registered)]
    if (isGaps(answer)) return [waiting(about, answer)]
    const goals = Object.entries(answer.goals)
    if (goals.length === 0)
      return [waiting(about, { gap: true, path: 'brief.goals', label: 'a goal of top speed, for its conditions', until: 'any time' })]
    return goals.map(([item, reached]): Judgement => {
      if (isGaps(reached)) return waiting(about, reached, item)
      const c = gateB.topSpeedDrop(limits, { donor: registered.value, converted: reached.speed.value })
      return {
        item,
        about,
        found: reached.speed,
        side: 'at least',
        limit: registered,
        says: 'It reaches {found}, the registered top speed is {limit}; a lower one needs a conformity assessment.',
        ...(c ? { requirement: c } : {}),
        remedies: [{ do: 'act', says: 'Agree with the test body on an assessment for the lower top speed.' }],
      }
    })
  }),
  spoil: { sample: 'lapwing', edits: [{ path: 'brief.rules', now: 'ch' }], item: 'top-speed' },
})
