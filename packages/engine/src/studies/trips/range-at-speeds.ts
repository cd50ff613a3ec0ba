import type { RangeGoal } from '../../model/brief.ts'
import type { Model } from '../../model/model.ts'
import type { Trip } from '../../model/trips.ts'
import { type Fact, isGap, standard } from '../../working/value.ts'
import { type Gaps, isGaps, maybe, study } from '../study.ts'
import type { RangeFigures } from './drive-until-empty.ts'
import { journeyReads } from './journey.ts'
import { cabinOn, DAYS, type Day } from './range-in-weather.ts'
import { ranged, rangedTrip, rangeGoals } from './ranges.ts'

const speed = (kmh: number): Fact => ({
  ...standard(`steady.${kmh}`, `a steady ${kmh} km/h on the level`, 'v', kmh / 3.6, 'm/s', {
    work: 'practice',
    place: 'range is told for 50, 80, 100 and 120 km/h',
    mark: 'common practice',
  }),
  shows: 'speed',
})
/** Speeds a range is told for: town, country road, main road, motorway. */
const SPEEDS: Readonly<Record<string, Fact>> = {
  '50 km/h': speed(50),
  '80 km/h': speed(80),
  '100 km/h': speed(100),
  '120 km/h': speed(120),
}
const LEVEL = standard('steady.level', 'a level road', 'p', 0, '1', { work: 'definition', place: 'steady driving' })
/** A car that falls further behind than this share of the way does not hold the speed: that is no range at it. */
const FALLS_BEHIND = 0.02
const NOT_HELD = 'not held'
const WORDS = Object.keys(DAYS) as Day[]

/** The range goal that wants to go farthest, however the file is ordered: its load, trailer and cabin count. */
function farthest(m: Model): string | undefined {
  const wants = (goals: readonly (readonly [string, RangeGoal])[]): number =>
    Math.max(0, ...goals.map(([, g]) => (isGap(g.distance) ? 0 : g.distance.value)))
  return [...rangeGoals(m)]
    .map(([name, goals]) => ({ name, distance: wants(goals) }))
    .sort((a, b) => b.distance - a.distance || (a.name < b.name ? -1 : 1))[0]?.name
}

/** How far at one speed held all the way, on a cold, a mild and a hot day; load, trailer and what the cabin takes are those of the goal that wants to go farthest. */
export const rangeAtSpeeds = study({
  id: 'range-at-speeds',
  stage: 'pack',
  asks: 'How far at a steady speed, on a cold, a mild and a hot day?',
  reads: (m, ask) => {
    const name = farthest(m),
      trip = name === undefined ? undefined : rangedTrip(m, name)
    const items = trip ? Object.keys(SPEEDS).flatMap(at => WORDS.map(word => ({ at, word }))) : []
    return {
      name,
      items,
      runs: items.map(({ at, word }) => {
        const steady = { ...(trip as Trip), kind: 'steady', speed: SPEEDS[at], slope: LEVEL } as Trip
        return maybe({
          journey: journeyReads(m, ask, steady, {
            temperature: DAYS[word],
            packTemperature: DAYS[word],
            cabinPower: cabinOn(word, steady),
          }),
          reserve: m.brief.reserve,
        })
      }),
    }
  },
  answer: ({ name, items, runs }, make): { speeds: Readonly<Record<string, Readonly<Partial<Record<Day, RangeFigures | Gaps>>>>> } => {
    const out: Record<string, Partial<Record<Day, RangeFigures | Gaps>>> = {}
    for (const [i, k] of runs.entries()) {
      const { at, word } = items[i] as { at: string; word: Day }
      ;(out[at] ??= {})[word] = isGaps(k) ? k : ranged(make, k as never, `${at} ${word}`)
    }
    const held = (f: RangeFigures | Gaps | undefined) => {
      if (f === undefined || isGaps(f)) return undefined
      return f['distance-missed'].value > FALLS_BEHIND * f.range.value ? NOT_HELD : f.range
    }
    if (items.length && runs.some(k => !isGaps(k)))
      make.table('ranges', {
        label: `Range at a steady speed on a cold, a mild and a hot day, loaded as for ${name}`,
        columns: WORDS.map(word => ({ key: word, label: `${word} day`, unit: 'm', shows: 'distance' })),
        rows: Object.entries(out).map(([name, days]) => ({ name, cells: Object.fromEntries(WORDS.map(word => [word, held(days[word])])) })),
      })
    return { speeds: out }
  },
})
