import { chargingGoals } from '../../studies/charging/charging.ts'
import { isGaps } from '../../studies/study.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'

export const chargesAsWanted = rule({
  id: 'charging',
  title: 'Charges as quickly as wanted',
  stage: 'pack',
  harm: 'S1',
  hazards: [],
  source: { work: 'practice', place: 'a goal of the brief' },
  judgements: (m, ask) => {
    const names = Object.entries(m.brief.goals).flatMap(([name, g]) => (g?.kind === 'charging' ? [name] : []))
    if (names.length === 0) return doesNotApply('the brief asks for no charging time', ['brief.goals'])
    const answer = ask(chargingGoals)
    return names.map((item): Judgement => {
      const about = [`brief.goals.${item}`, 'charging'],
        a = isGaps(answer) ? answer : answer.goals[item]
      if (!a || isGaps(a)) return { item, about, says: 'How quickly {item} goes cannot be said yet.', missing: a ?? { gaps: [] } }
      const held = a.charge['held-back'].value > 0.2 * a.charge.time.value
      const remedies = [
        {
          do: 'act',
          says: held
            ? 'The cells hold it back: warmer cells, a heater, or a maker’s own charging table.'
            : 'A stronger outlet or charger, or more time.',
        },
      ] as const
      return a.by === 'time'
        ? {
            item,
            about,
            found: a.found,
            side: 'at most',
            limit: a.limit,
            remedies,
            slots: { held: a.charge['held-back'] },
            says: held
              ? 'It takes {found}, {held} of it held back by the cells; the brief asks for {limit}.'
              : 'It takes {found}; the brief asks for {limit}.',
          }
        : {
            item,
            about,
            found: a.found,
            side: 'at least',
            limit: a.limit,
            remedies,
            slots: { stored: a.charge.stored },
            says: 'In that time {stored} go into the charge, good for {found}; the brief asks for {limit}.',
          }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'charging.places.garage.cable', now: '10 A' }], item: 'overnight' },
})
