import type { RangeGoal } from '../../model/brief.ts'
import type { Model } from '../../model/model.ts'
import type { Trip } from '../../model/trips.ts'
import { distanceBeyond, distanceShare, wallConsumption } from '../../trip/consumption.ts'
import { type Curve, type Figure, type Gap, isGap, type Value } from '../../working/value.ts'
import { type Gaps, isGaps, type Known, type Maker, maybe, study } from '../study.ts'
import { driveUntilEmpty, type RangeFigures } from './drive-until-empty.ts'
import { journey, journeyReads } from './journey.ts'

/** A range, what it takes at the wall, and how much of the trip the car fell short of. */
export type RangeAnswer = RangeFigures & { readonly wall: Figure | Gaps; readonly missed: Figure }

const OWN = ['load', 'trailer', 'surface', 'temperature', 'altitude', 'headWind', 'cabinPower', 'packTemperature'] as const
/** What a range goal says of load, trailer and weather itself. */
const ownOf = (goal: RangeGoal): Partial<Trip> =>
  Object.fromEntries([
    ...OWN.flatMap(key => (isGap(goal[key]) ? [] : [[key, goal[key]] as const])),
    // A cabin power of its own holds on every day the range is told for.
    ...(isGap(goal.cabinPower) ? [] : [['cabinPowerCold', goal.cabinPower] as const, ['cabinPowerHot', goal.cabinPower] as const]),
  ]) as Partial<Trip>
/** Under what name a range goal is answered: that of its trip, with the goal's own where it changes something about the trip. */
export const rangeName = (name: string, goal: RangeGoal): string | undefined =>
  isGap(goal.trip) ? undefined : Object.keys(ownOf(goal)).length ? `${name} on ${goal.trip.value}` : goal.trip.value

/** Goals of kind range by the name they are answered under. */
export function rangeGoals(m: Model): ReadonlyMap<string, readonly (readonly [name: string, goal: RangeGoal])[]> {
  const out = new Map<string, (readonly [string, RangeGoal])[]>()
  for (const [name, goal] of Object.entries(m.brief.goals)) {
    const answered = goal?.kind === 'range' ? rangeName(name, goal) : undefined
    if (answered !== undefined) out.set(answered, [...(out.get(answered) ?? []), [name, goal as RangeGoal]])
  }
  return out
}
/** The trip a range is told for: as the file has it, or with what its goal says itself. */
export function rangedTrip(m: Model, answered: string): Trip | undefined {
  const [first] = rangeGoals(m).get(answered) ?? []
  const goal = first?.[1],
    trip = m.trips.named[goal && !isGap(goal.trip) ? goal.trip.value : answered]
  return trip && goal ? ({ ...trip, ...ownOf(goal) } as Trip) : trip
}
/** Trips whose range is wanted: those of the range goals, and those a charging goal puts distance back for. */
const rangedTrips = (m: Model): readonly string[] => [
  ...new Set([
    ...rangeGoals(m).keys(),
    ...Object.values(m.brief.goals).flatMap(g => (g?.kind === 'charging' && !isGap(g.trip) ? [g.trip.value] : [])),
  ]),
]
const noTrip = (name: string): Gap => ({ gap: true, path: `trips.named.${name}`, label: `trip ${name}`, until: 'any time' })

/** How far on the trip of each range goal, repeated until the reserve, in the weather the trip names. */
export const ranges = study({
  id: 'range',
  stage: 'pack',
  asks: 'How far does it go on the trips of the brief before the reserve?',
  reads: (m, ask) => ({
    names: rangedTrips(m),
    trips: rangedTrips(m).map(name => {
      const t = rangedTrip(m, name)
      return maybe(t ? { journey: journeyReads(m, ask, t), reserve: m.brief.reserve } : noTrip(name))
    }),
    wanted: [...rangeGoals(m)].flatMap(([trip, goals]) => goals.map(([goal, g]) => ({ trip, goal, distance: maybe(g.distance) }))),
    wall: maybe({ power: m.charging.charger.power, efficiency: m.charging.charger.efficiency, standing: m.charging.charger.standingPower }),
  }),
  answer: ({ names, trips, wanted, wall }, make): { trips: Readonly<Record<string, RangeAnswer | Gaps>> } => {
    const all: Readonly<Record<string, RangeAnswer | Gaps>> = Object.fromEntries(
      trips.map((k, i) => {
        const item = names[i] as string,
          figures = isGaps(k) ? k : ranged(make, k as never, item)
        if (isGaps(figures)) return [item, figures]
        return [
          item,
          {
            ...figures,
            missed: make.work(
              'share-missed',
              distanceShare,
              { part: figures['distance-missed'], whole: figures.range },
              { item, label: `Share of the range missed, ${item}`, symbol: 's_miss' },
            ),
            wall: isGaps(wall)
              ? wall
              : make.work(
                  'wall-consumption',
                  wallConsumption,
                  { battery: figures.consumption, ...wall },
                  { item, label: `Consumption at the wall, charger at full power, ${item}` },
                ),
          },
        ]
      }),
    )
    for (const { trip, goal, distance } of wanted) {
      const r = all[trip]
      if (r !== undefined && !isGaps(r) && !isGaps(distance))
        make.work(
          'beyond',
          distanceBeyond,
          { found: r.range, wanted: distance as Value },
          { item: goal, label: `Range beyond what is wanted, ${goal}` },
        )
    }
    return { trips: all }
  },
})

type RangeKnown = { readonly journey: Known<ReturnType<typeof journeyReads>>; readonly reserve: Value }
export function ranged(make: Maker, { journey: k, reserve }: RangeKnown, item: string): RangeFigures | Gaps {
  const ready = journey(make, k, item)
  return isGaps(ready.coldEnergy)
    ? ready.coldEnergy
    : driveUntilEmpty(make, ready, { reserve, coldEnergy: ready.coldEnergy as Value<Curve> }, item)
}
