import type { Model } from '../../model/model.ts'
import { exchange } from '../../studies/brief/exchange.ts'
import { type Stronger, strongerDrive } from '../../studies/brief/stronger-drive.ts'
import { room } from '../../studies/donor/room.ts'
import { type Ask, from, type Gaps, isGaps } from '../../studies/study.ts'
import type { Value } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'

/** The room to the gross mass in the load case that leaves least. */
function leastRoom(m: Model, ask: Ask): Value | Gaps {
  const rooms = Object.keys(m.brief.loads).map(load =>
    from(ask(room), r => {
      const total = r.cases[load]?.total ?? { gaps: [] }
      return isGaps(total) ? total : total.room
    }),
  )
  const open = rooms.flatMap(r => (isGaps(r) ? r.gaps : [])),
    known = rooms.flatMap(r => (isGaps(r) ? [] : [r]))
  const [least] = known.sort((a, b) => a.value - b.value)
  return open.length || !least ? { gaps: open } : least
}

function judged(m: Model, ask: Ask, s: Stronger): readonly Judgement[] {
  const goals = s.goals.join(' and '),
    about = s.goals.map(g => `brief.goals.${g}`),
    slots = { times: s.times, settle: s.settle },
    instead = s.settle ? ` Or give way: at the shortest ratio ${s.goals[1]} allows, ${s.goals[0]} takes {settle}.` : ''
  const wants = `For ${goals} the motor of ${s.unit} would have to be {times} times as strong`
  const remedies = [
    { do: 'act' as const, says: `A motor of that strength in place of this one, two gears, or a lesser ${s.goals.join(' or ')}.` },
  ]
  const against = (name: string, found: Value | Gaps, limit: Value | Gaps, says: string): Judgement => {
    const base = { item: `${goals} and ${name}`, about: [...about, name === 'budget' ? 'brief.budget' : 'brief.loads'], slots, remedies }
    if (isGaps(found)) return { ...base, says: `${wants}.`, missing: found }
    if (isGaps(limit)) return { ...base, says: `${wants}.`, missing: limit }
    return { ...base, found, side: 'at most', limit, says: `${wants}: ${says}${instead}` }
  }
  return [
    against(
      'budget',
      s.money,
      from(ask(exchange), e => e.left),
      'about {found} more, where {limit} is left of the budget.',
    ),
    against(
      'gross mass',
      s.mass,
      leastRoom(m, ask),
      'about {found} more, where {limit} is left to the gross mass in the fullest load case.',
    ),
  ]
}

export const strongerMotorFits = rule({
  id: 'stronger-motor-fits',
  title: 'Goals no ratio of this motor meets can be met within budget and gross mass',
  stage: 'brief',
  harm: 'S1',
  hazards: [],
  source: { work: 'practice', place: 'goals that contradict each other are found out after the money is spent' },
  judgements: (m, ask) => {
    const answer = ask(strongerDrive)
    if (isGaps(answer)) return [{ about: ['brief.goals'], says: 'What the goals take cannot be said yet.', missing: answer }]
    return answer.list.length === 0
      ? doesNotApply('no goal is known that a ratio of this motor could not meet', ['brief.goals'])
      : answer.list.flatMap(s => judged(m, ask, s))
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'brief.goals.sprint.within', now: '4 s' }], item: 'sprint and budget' },
})
