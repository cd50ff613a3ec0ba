import { boosterArea, vacuumAssist } from '../../brakes/booster.ts'
import { pumpDownTime } from '../../brakes/pump-down.ts'
import { airPressure, applicationsLeft, belowAir, depressionReached } from '../../brakes/vacuum-left.ts'
import { type Field, type Figure, isGap, standard, type Value } from '../../working/value.ts'
import { either, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'

const SEA = { ...standard('sea-level', 'at the sea', 'h', 0, 'm', { work: 'definition', place: 'sea level' }), shows: 'altitude' } as const
/** On one road: at the sea or on the highest pass. */
export type VacuumAt = {
  readonly reached: Figure
  readonly assistFull: Figure | Gaps
  readonly assistLow: Figure | Gaps
  /** Hard stops left from the pressure at which the driver is warned, the pump dead. */
  readonly stops: Figure | Gaps
  /** From an empty tank until the warning goes out; none where the pump never gets there. */
  readonly pumpDown: Figure | Gaps | 'never'
}
export type VacuumAnswer = { readonly roads: Readonly<Record<string, VacuumAt>>; readonly area: Value | Gaps }
export const AT_SEA = 'at the sea',
  HIGHEST = 'on the highest road'

const areaReads = (diameter: Field, area: Field) => either(area, { diameter })

/** What a vacuum pump and its tank give the brakes, and what is left once the pump is dead: at the sea and on the highest road. */
export const vacuum = study({
  id: 'vacuum',
  stage: 'brakes & steering',
  asks: 'What does the vacuum give the brakes, how soon, and for how long without the pump?',
  reads: m => {
    const { vacuum: v, booster } = m.brakes,
      after = m.donor.brakes.assistAfter
    const used = !isGap(after) && after.value === 'vacuum pump'
    if (!used) return null
    return {
      altitude: v.altitude,
      least: v.leastPressure,
      cutOut: maybe(v.cutOut),
      cutIn: maybe(v.cutIn),
      area: maybe({ of: areaReads(booster.diameter, booster.area) }),
      stops: maybe({ warning: v.warning, volume: v.volume, swept: v.swept, dead: v.deadVolume }),
      pump: maybe({ warning: v.warning, volume: v.volume, speed: v.pumpSpeed }),
    }
  },
  answer: (k, make): VacuumAnswer | null => {
    if (k === null) return null
    const area = isGaps(k.area) ? k.area : areaOf(make, (k.area as unknown as { of: Value | { diameter: Value } }).of)
    const road = (item: string, altitude: Value): VacuumAt => {
      const air = make.work('air', airPressure, { altitude }, { item, label: `Pressure of the air, ${item}` })
      return vacuumAt(make, item, air, { ...k, area } as unknown as Known)
    }
    return { area, roads: { [AT_SEA]: road(AT_SEA, SEA), [HIGHEST]: road(HIGHEST, k.altitude) } }
  },
})
const areaOf = (make: Maker, of: Value | { diameter: Value }): Value =>
  'diameter' in of ? make.work('area', boosterArea, { diameter: of.diameter }) : of

type Known = {
  readonly least: Value
  readonly cutOut: Value | Gaps
  readonly cutIn: Value | Gaps
  readonly area: Value | Gaps
  readonly stops: { readonly warning: Value; readonly volume: Value; readonly swept: Value; readonly dead: Value } | Gaps
  readonly pump: { readonly warning: Value; readonly volume: Value; readonly speed: Value } | Gaps
}
function vacuumAt(make: Maker, item: string, air: Figure, k: Known): VacuumAt {
  const abs = (key: string, depression: Value, what: string): Figure =>
    make.work(key, belowAir, { atmosphere: air, depression }, { item, label: `${what}, absolute, ${item}` })
  const assist = (key: string, at: Value | Gaps, what: string): Figure | Gaps =>
    isGaps(at)
      ? at
      : isGaps(k.area)
        ? k.area
        : make.work(
            `assist-${key}`,
            vacuumAssist,
            { area: k.area, atmosphere: air, vacuum: abs(key, at, what) },
            { item, label: `Assist, ${what}, ${item}` },
          )
  const warned =
    isGaps(k.stops) && isGaps(k.pump)
      ? undefined
      : abs('warned', (isGaps(k.stops) ? (k.pump as { warning: Value }) : k.stops).warning, 'driver warned')
  return {
    reached: make.work(
      'reached',
      depressionReached,
      { atmosphere: air, least: k.least },
      { item, label: `Vacuum the pump reaches, ${item}` },
    ),
    assistFull: assist('full', k.cutOut, 'pump stops'),
    assistLow: assist('low', k.cutIn, 'pump starts'),
    stops: isGaps(k.stops)
      ? k.stops
      : make.work(
          'stops',
          applicationsLeft,
          { volume: k.stops.volume, swept: k.stops.swept, dead: k.stops.dead, start: warned as Figure, atmosphere: air },
          { item, label: `Assisted stops left after the warning, pump dead, ${item}` },
        ),
    pumpDown: isGaps(k.pump) ? k.pump : pumped(make, item, air, warned as Figure, k.least, k.pump),
  }
}
/** A pump whose lowest pressure lies above what is wanted never gets there. */
const pumped = (
  make: Maker,
  item: string,
  air: Figure,
  to: Figure,
  ultimate: Value,
  { volume, speed }: { volume: Value; speed: Value },
): Figure | 'never' =>
  ultimate.value >= to.value
    ? 'never'
    : make.work(
        'pump-down',
        pumpDownTime,
        { volume, speed, ultimate, from: air, to },
        { item, label: `From empty until the warning goes out, ${item}` },
      )
