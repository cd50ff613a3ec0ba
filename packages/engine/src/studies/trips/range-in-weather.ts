import type { Trip } from '../../model/trips.ts'
import { type Fact, type Field, isGap, standard } from '../../working/value.ts'
import { type Gaps, isGaps, maybe, study } from '../study.ts'
import type { RangeFigures } from './drive-until-empty.ts'
import { journeyReads } from './journey.ts'
import { ranged, rangedTrip, rangeGoals } from './ranges.ts'

const day = (word: string, temperature: number): Fact => ({
  ...standard(`day.${word}`, `a ${word} day, air and cells alike`, 'T', temperature, 'K', {
    work: 'practice',
    place: 'range is told for −10, 20 and 35 °C',
    mark: 'common practice',
  }),
  shows: 'temperature',
})
/** Days a range is told for. Cells start as warm as the air: the car stood outside. */
export const DAYS = { cold: day('cold', 263.15), mild: day('mild', 293.15), hot: day('hot', 308.15) } as const
export type Day = keyof typeof DAYS
const WORDS = Object.keys(DAYS) as Day[]

/** What the cabin takes that day: as stated for such a day, else as the trip gives it. */
export const cabinOn = (word: Day, t: Trip): Field => {
  const own = word === 'cold' ? t.cabinPowerCold : word === 'hot' ? t.cabinPowerHot : t.cabinPower
  return isGap(own) ? t.cabinPower : own
}

/** The same trips on a cold, a mild and a hot day: air, cells and cabin change. */
export const rangeInWeather = study({
  id: 'range-in-weather',
  stage: 'pack',
  asks: 'How far on a cold, a mild and a hot day?',
  reads: (m, ask) => {
    // A goal that names its own temperature is told for that one.
    const wanted = [...rangeGoals(m)].flatMap(([name, goals]) =>
      rangedTrip(m, name) && goals.every(([, g]) => isGap(g.temperature)) ? [name] : [],
    )
    return {
      items: wanted.flatMap(name => WORDS.map(word => ({ name, word }))),
      trips: wanted.flatMap(name =>
        WORDS.map(word => {
          const trip = rangedTrip(m, name) as Trip
          return maybe({
            journey: journeyReads(m, ask, trip, {
              temperature: DAYS[word],
              packTemperature: DAYS[word],
              cabinPower: cabinOn(word, trip),
            }),
            reserve: m.brief.reserve,
          })
        }),
      ),
    }
  },
  answer: ({ items, trips }, make): { trips: Readonly<Record<string, Readonly<Record<Day, RangeFigures | Gaps>>>> } => {
    const out: Record<string, Record<string, RangeFigures | Gaps>> = {}
    for (const [i, k] of trips.entries()) {
      const { name, word } = items[i] as { name: string; word: Day }
      ;(out[name] ??= {})[word] = isGaps(k) ? k : ranged(make, k as never, `${name} ${word}`)
    }
    make.table('ranges', {
      label: 'Range on a cold, a mild and a hot day',
      columns: WORDS.map(word => ({ key: word, label: `${word} day`, unit: 'm', shows: 'distance' })),
      rows: Object.entries(out).map(([name, days]) => ({
        name,
        cells: Object.fromEntries(
          WORDS.map(word => {
            const f = days[word]
            return [word, f === undefined || isGaps(f) ? undefined : (f as RangeFigures).range]
          }),
        ),
      })),
    })
    return { trips: out as Record<string, Record<Day, RangeFigures | Gaps>> }
  },
})
