import { hillStart as study } from '../../studies/drive/hill-start.ts'
import { isGaps } from '../../studies/study.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'

export const hillStart = rule({
  id: 'hill-start',
  title: 'Pulls away on the steepest hill wanted',
  stage: 'drive',
  harm: 'S1',
  hazards: [],
  source: { work: 'practice', place: 'a goal of the brief' },
  judgements: (m, ask) => {
    const wanted = Object.entries(m.brief.goals).filter(([, g]) => g?.kind === 'hill start')
    if (wanted.length === 0) return doesNotApply('the brief asks for no hill start', ['brief.goals'])
    const answer = ask(study)
    return wanted.map(([item]): Judgement => {
      const about = [`brief.goals.${item}.slope`, 'drive.units']
      if (isGaps(answer)) return { item, about, says: 'Hill start {item} cannot be answered yet.', missing: answer }
      const start = answer.goals[item]
      if (!start || isGaps(start)) return { item, about, says: 'Hill start {item} cannot be answered yet.', missing: start ?? { gaps: [] } }
      const byGrip = start.byGrip.value < start.byPull.value,
        byAxle = start.slope.value < 0.999 * Math.min(start.byGrip.value, start.byPull.value)
      return {
        item,
        about,
        found: start.slope,
        side: 'at least',
        limit: start.goal,
        says: byAxle
          ? 'It pulls away on {found}: the tyres of one axle slip while the motor of the other gives all it has. The brief asks for {limit}; grip would allow {grip}, pull {pull}.'
          : byGrip
            ? 'Grip lets it pull away on {found}; the brief asks for {limit}. The motor would hold {pull}.'
            : 'It pulls away on {found}; the brief asks for {limit}. Grip would allow {grip}.',
        slots: { pull: start.byPull, grip: start.byGrip },
        remedies: byGrip
          ? [{ do: 'act', says: 'More load on the driven axle, or a second driven axle.' }]
          : [{ do: 'act', says: 'A shorter total ratio, or a motor with more torque.' }],
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'drive.units.main.motor.peak-torque', now: '90 Nm' }], item: 'pull-away' },
})
