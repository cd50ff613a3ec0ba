import { exchange } from '../../studies/brief/exchange.ts'
import { isGaps } from '../../studies/study.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'
import { waiting } from './by-set.ts'

export const goalsAgree = rule({
  id: 'goals-agree',
  title: 'Range, load and budget can all be had in one car',
  stage: 'brief',
  harm: 'S1',
  hazards: [],
  source: { work: 'practice', place: 'goals that contradict each other are found out after the money is spent' },
  judgements: (m, ask) => {
    const wanted = Object.entries(m.brief.goals).filter(([, g]) => g?.kind === 'range')
    if (wanted.length === 0) return doesNotApply('the brief asks for no range', ['brief.goals'])
    const answer = ask(exchange)
    return wanted.flatMap(([goal]): readonly Judgement[] => {
      const about = [`brief.goals.${goal}.distance`],
        list = isGaps(answer) ? answer : (answer.goals[goal] ?? { gaps: [] })
      if (isGaps(list)) return [waiting(about, list, goal)]
      return list.map((a): Judgement => {
        const item = `${goal} and ${a.name}`
        if ('gaps' in a) return waiting(about, a.gaps, item)
        return {
          item,
          about: a.about,
          found: a.allowed,
          side: 'at least',
          limit: a.wanted,
          says:
            a.lacking.value === 0
              ? a.name === 'budget'
                ? 'The budget allows battery for {found}; the brief asks for {limit}.'
                : 'With the boxes where they are, this rating allows battery for {found}; the brief asks for {limit}.'
              : a.name === 'budget'
                ? 'The budget allows battery for {found}; the brief asks for {limit}. For both, find {lacking} or give up {giveUp}.'
                : 'With the boxes where they are, this rating allows battery for {found}; the brief asks for {limit}. For both, give up {lacking} elsewhere or {giveUp} of range.',
          slots: { lacking: a.lacking, giveUp: a.giveUp },
          remedies: [
            {
              do: 'act',
              says: a.name.endsWith('axle')
                ? 'Move a battery box towards the other axle.'
                : a.name === 'budget'
                  ? 'Cheaper modules, a larger budget, or less range.'
                  : 'Fewer seats or less luggage, lighter parts, or less range.',
            },
          ],
        }
      })
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'brief.budget', now: '12000 €' }], item: 'weekend and budget' },
})
