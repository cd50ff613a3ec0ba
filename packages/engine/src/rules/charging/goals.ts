import type { Model } from '../../model/model.ts'
import { type ChargeAnswer, chargingGoals } from '../../studies/charging/charging.ts'
import { type Ask, isGaps } from '../../studies/study.ts'
import { ranges } from '../../studies/trips/ranges.ts'
import { isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, type Remedy, rule } from '../rule.ts'
import { flattered } from '../trips/keeps-up.ts'

type Said = { readonly says: string; readonly act: string }
/** Why a charge never comes to its end. */
const never = ({ stopped, heated }: ChargeAnswer): Said | undefined => {
  if (stopped === 'cold')
    return heated
      ? {
          says: 'It never gets there: at {cells} the cells take no charge, and the pack heater does not warm them enough.',
          act: 'A stronger pack heater, boxes that hold the warmth better, or a warmer place.',
        }
      : {
          says: 'It never gets there: at {cells} the cells take no charge, and no pack heater warms them.',
          act: 'A pack heater, or a warmer place.',
        }
  if (stopped === 'voltage')
    return {
      says: 'It never gets there: the charger is set to {set}, and at {reached} charge the pack stands as high as that.',
      act: 'Set the charger to the full voltage of the pack.',
    }
  return stopped === 'power'
    ? {
        says: 'It never gets there: what the car draws meanwhile leaves nothing of the outlet for the pack.',
        act: 'A stronger outlet.',
      }
    : undefined
}
/** Why a charge takes as long as it does, and what would help. */
function pace(a: ChargeAnswer): Said {
  if (a.bms) return { says: ' The BMS lets no more than {bms} in.', act: 'Raise the charge limit of the BMS, as far as the cells allow.' }
  return a.charge['held-back'].value > 0.2 * a.charge.time.value
    ? {
        says: ' The cells hold it back for {held}.',
        act: 'The cells hold it back: warmer cells, a heater, or a maker’s own charging table.',
      }
    : { says: '', act: 'A stronger outlet or charger, or more time.' }
}

/** Distance is put back by what a trip takes; one the car cannot follow takes too little. */
function tooSlow(m: Model, ask: Ask, name: string): string | undefined {
  const goal = m.brief.goals[name],
    answer = ask(ranges)
  if (goal?.kind !== 'charging' || isGap(goal.trip) || isGaps(answer)) return undefined
  const r = answer.trips[goal.trip.value]
  return r && !isGaps(r) ? flattered(r.missed) : undefined
}

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
      if (a.from.value >= a.to.value)
        return {
          item,
          about,
          holds: true,
          marginal: true,
          rests: [a.from, a.to],
          slots: { from: a.from, to: a.to },
          says: 'At {from} it already is above the {to} wanted: nothing is charged. Look at both again.',
        }
      const why = never(a),
        { says, act } = why ?? pace(a),
        remedies: readonly Remedy[] = [{ do: 'act', says: act }]
      const slots = {
        held: a.charge['held-back'],
        bms: a.bms,
        cells: a.cells,
        set: a.supply.voltage,
        reached: a.charge.charge,
        stored: a.charge.stored,
        to: a.to,
      }
      const judged = { item, about, found: a.found, limit: a.limit, remedies, slots }
      if (a.by === 'distance') {
        const slow = tooSlow(m, ask, item)
        return {
          ...judged,
          ...(slow === undefined ? {} : { doubted: slow }),
          side: 'at least',
          says: why
            ? `${says} {found} come back; the brief asks for {limit}.`
            : `In that time {stored} go into the charge, good for {found}; the brief asks for {limit}.${says}`,
        }
      }
      const short = a.to.value < 1 && a.charge.charge.value < a.to.value - 1e-6
      return {
        ...judged,
        side: 'at most',
        says: why
          ? `${says} The brief asks for {limit}.`
          : short
            ? `After {found} it stands at {reached}, and {to} are wanted; the brief asks for {limit}.${says}`
            : `It takes {found}; the brief asks for {limit}.${says}`,
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'charging.places.garage.cable', now: '10 A' }], item: 'overnight' },
})
