import type { RangeGoal } from '../../model/brief.ts'
import { isGaps } from '../../studies/study.ts'
import { cabinOn, rangeInWeather } from '../../studies/trips/range-in-weather.ts'
import { rangedTrip, rangeName, ranges } from '../../studies/trips/ranges.ts'
import { isGap } from '../../working/value.ts'
import { doesNotApply, type Judgement, rule } from '../rule.ts'
import { flattered } from './keeps-up.ts'

export const rangeGoal = rule({
  id: 'range',
  title: 'Goes as far as wanted and keeps its reserve',
  stage: 'pack',
  harm: 'S1',
  hazards: [],
  source: { work: 'practice', place: 'a goal of the brief' },
  judgements: (m, ask) => {
    const goals = Object.entries(m.brief.goals).filter((g): g is [string, RangeGoal] => g[1]?.kind === 'range')
    if (goals.length === 0) return doesNotApply('the brief asks for no range', ['brief.goals'])
    const answer = ask(ranges),
      weather = ask(rangeInWeather)
    return goals.map(([item, goal]): Judgement => {
      const about = [
        `brief.goals.${item}.distance`,
        'pack.modules-in-series',
        isGap(goal.trip) ? `brief.goals.${item}.trip` : `trips.named.${goal.trip.value}`,
      ]
      if (isGap(goal.trip)) return { item, about, says: 'How far {item} goes cannot be said yet.', missing: goal.trip }
      const name = rangeName(item, goal) as string,
        r = isGaps(answer) ? answer : answer.trips[name]
      if (!r || isGaps(r)) return { item, about, says: 'How far {item} goes cannot be said yet.', missing: r ?? { gaps: [] } }
      const cold = isGaps(weather) ? undefined : weather.trips[name]?.cold
      const slow = flattered(r.missed)
      const told = cold !== undefined && !isGaps(cold),
        trip = rangedTrip(m, name),
        power = trip && cabinOn('cold', trip),
        coldCabin = power === undefined || isGap(power) ? undefined : power
      return {
        item,
        about,
        found: r.range,
        side: 'at least',
        limit: goal.distance,
        ...(slow === undefined ? {} : { doubted: slow }),
        says: `It goes {found} to the reserve, at {takes} from the battery; the brief asks for {limit}.${
          told ? ' On a cold day, the cabin at {cabin}, {cold}.' : ''
        }${slow === undefined ? '' : ' On the way it falls {missed} short of what the speeds asked come to: driven as asked it goes less far.'}`,
        slots: { takes: r.consumption, missed: r['distance-missed'], ...(told ? { cold: cold.range, cabin: coldCabin } : {}) },
        remedies: [
          ...(slow === undefined
            ? []
            : [{ do: 'act' as const, says: 'More power or more continuous torque, another ratio, or a trip this car is meant for.' }]),
          {
            do: 'act',
            says: 'More energy aboard, less drag or mass, less cabin power, a warmer pack, or a shorter distance in the brief.',
          },
        ],
      }
    })
  },
  spoil: { sample: 'lapwing', edits: [{ path: 'pack.module.cell-capacity', now: '40 Ah' }], item: 'weekend' },
})
