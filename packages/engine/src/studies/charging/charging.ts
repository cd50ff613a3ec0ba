import { charge, chargeCoarse, FULL_CHARGE, FULL_CURRENT, LONGEST, NO_HEATER } from '../../charging/charge.ts'
import type { ChargeTraces, Stopped } from '../../charging/charge-run.ts'
import { lesserCurrent } from '../../charging/outlet.ts'
import { distanceBack, energyCost, wallEnergy } from '../../charging/power-to-pack.ts'
import { aboveLowest, timeToSpare } from '../../charging/room.ts'
import type { ChargingGoal } from '../../model/brief.ts'
import type { Model } from '../../model/model.ts'
import { distanceBeyond } from '../../trip/consumption.ts'
import { type Fact, type Figure, type Gap, isGap, type Value } from '../../working/value.ts'
import { bmsLimits, NO_LOWER } from '../pack/bms-limits.ts'
import { packModel } from '../pack/pack-model.ts'
import { type Ask, from, type Gaps, isGaps, type Known, type Maker, maybe, study } from '../study.ts'
import type { RangeFigures } from '../trips/drive-until-empty.ts'
import { ranges } from '../trips/ranges.ts'
import { outlets, type Supply } from './outlets.ts'

export type ChargeFigures = { readonly [K in keyof (typeof charge)['card']['gives']]: Figure }
/** A charging goal answered: by its time, or by the distance put back within its time. */
export type ChargeAnswer = {
  readonly charge: ChargeFigures
  readonly by: 'time' | 'distance'
  readonly found: Figure
  readonly limit: Fact
  readonly supply: Supply
  /** The charge it starts from and is to reach. */
  readonly from: Value
  readonly to: Value
  /** Why it never gets there. */
  readonly stopped: Stopped | undefined
  /** The limit of the BMS where it is what keeps the current down. */
  readonly bms: Value | undefined
  readonly cells: Value
  readonly heated: boolean
}

const missing = (path: string, label: string): Gap => ({ gap: true, path, label, until: 'any time', why: 'missing' })

/** What every charge reads of the pack and the place. */
export function chargeReads(m: Model, ask: Ask, place: string) {
  const { heater, bms } = m.pack,
    p = m.charging.places[place]
  return {
    pack: ask(packModel),
    share: from(ask(packModel), p => p.chargeShare),
    taper: m.charging.taper,
    lowest: isGap(bms.lowestChargeTemperature) ? NO_LOWER : bms.lowestChargeTemperature,
    set: bmsLimits(m.pack).charger,
    heaterPower: isGap(heater.power) ? NO_HEATER.power : heater.power,
    heaterTo: isGap(heater.power) ? NO_HEATER.to : heater.to,
    all: from(ask(outlets), o => o),
    place: from(ask(outlets), o => {
      const s = o.places[place]
      return s === undefined ? missing(`charging.places.${place}`, `charging place ${place}`) : isGaps(s) ? s : { name: place }
    }),
    standing: maybe(m.charging.charger.standingPower),
    price: p && !isGap(p.pricePerEnergy) ? p.pricePerEnergy : null,
  }
}
export type ChargeKnown = Known<ReturnType<typeof chargeReads>>

/** One charge inside the calling study. */
export function charged(
  make: Maker,
  k: ChargeKnown,
  x: { from: Value; to: Value; most: Value; within: Value; temperature: Value },
  item: string,
): Pick<ChargeAnswer, 'charge' | 'supply' | 'stopped' | 'bms' | 'from' | 'to' | 'cells' | 'heated'> {
  const { pack } = k,
    supply = (k.all as { places: Record<string, Supply> }).places[k.place.name] as Supply,
    named = (label: string): { item: string; label: string } => ({ item, label: `${label}, ${item}` })
  // The BMS tells charger and post how much; what the fuse stands is no matter of telling.
  const current = k.set
    ? make.work('current', lesserCurrent, { one: supply.current, other: k.set }, named('Charging current outlet and BMS allow'))
    : supply.current
  const labels = Object.fromEntries(Object.entries(charge.card.gives).map(([key, one]) => [key, `${one.label}, ${item}`]))
  const { figures, run } = make.all(
    '',
    charge,
    {
      openCircuit: pack.openCircuit,
      resistance: pack.resistance,
      resistanceFactor: pack.resistanceFactor,
      branchResistance: pack.branchResistance,
      branchTime: pack.branchTime,
      coldFactor: pack.coldFactor,
      capacity: pack.capacity,
      cellCurrent: pack.chargeCurrent,
      temperatureShare: k.share,
      chargeTaper: k.taper,
      lowestTemperature: k.lowest,
      power: supply.power,
      current,
      voltage: supply.voltage,
      heaterPower: k.heaterPower,
      heaterTo: k.heaterTo,
      heatCapacity: pack.heatCapacity,
      conductance: pack.conductance,
      outside: x.temperature,
      startTemperature: x.temperature,
      from: x.from,
      to: x.to,
      fullCurrent: FULL_CURRENT,
      most: x.most,
    },
    { item, labels, rerun: y => chargeCoarse(y as never) },
  )
  const { traces: t, stopped } = run as unknown as { traces: ChargeTraces; stopped: Stopped | undefined }
  make.trace(
    'course',
    {
      label: `Course of the charge, ${item}`,
      axis: { label: 'time', unit: 's', values: t.times },
      series: [
        { name: 'charge', label: 'charge', unit: '1', shows: 'share', values: t.charges },
        { name: 'power', label: 'power to the pack', unit: 'W', values: t.powers },
        { name: 'current', label: 'current', unit: 'A', values: t.currents },
        { name: 'voltage', label: 'voltage', unit: 'V', values: t.voltages },
        { name: 'cells', label: 'cells', unit: 'K', values: t.temperatures },
      ],
    },
    item,
  )
  if (stopped === undefined) make.work('spare', timeToSpare, { within: x.within, time: figures.time }, named('Time to spare'))
  if (k.lowest.path !== NO_LOWER.path)
    make.work('above-lowest', aboveLowest, { cells: x.temperature, lowest: k.lowest }, named('Cells above the lowest charging temperature'))
  // What never ends has no bill.
  if (supply.losses && !isGaps(k.standing) && stopped === undefined) {
    const energy = make.work(
      'wall-energy',
      wallEnergy,
      { taken: figures.taken, heater: figures.heater, time: figures.time, standing: k.standing as Value, ...supply.losses },
      named('Energy at the wall'),
    )
    if (k.price) make.work('price', energyCost, { energy, price: k.price }, named('Price of the energy'))
  }
  return {
    charge: figures as ChargeFigures,
    supply,
    from: x.from,
    to: x.to,
    stopped,
    bms: k.set && k.set.value < supply.current.value && figures['highest-current'].value > 0.98 * k.set.value ? k.set : undefined,
    cells: x.temperature,
    heated: k.heaterPower !== NO_HEATER.power,
  }
}

function goalReads(m: Model, ask: Ask, goal: ChargingGoal) {
  if (isGap(goal.place)) return { by: 'gap' as const, place: goal.place }
  const base = { charge: chargeReads(m, ask, goal.place.value), within: goal.within, temperature: goal.temperature }
  if (isGap(goal.distance)) {
    const neither = isGap(goal.from) && isGap(goal.to)
    return { by: 'time' as const, ...base, from: goal.from, to: goal.to, ...(neither ? { distance: goal.distance } : {}) }
  }
  const trip = isGap(goal.trip)
    ? goal.trip
    : from(ask(ranges), r => {
        const t = r.trips[(goal.trip as Fact<string>).value]
        return t === undefined ? missing(goal.at, 'trip') : isGaps(t) ? t : { name: (goal.trip as Fact<string>).value }
      })
  return { by: 'distance' as const, ...base, distance: goal.distance, ranges: from(ask(ranges), r => r), trip, reserve: m.brief.reserve }
}

/** Whether the brief's charging goals are met. */
export const chargingGoals = study({
  id: 'charge',
  stage: 'pack',
  asks: 'How long does it charge, and how much distance comes back?',
  reads: (m, ask) => {
    const goals = Object.entries(m.brief.goals).filter((g): g is [string, ChargingGoal] => g[1]?.kind === 'charging')
    return { names: goals.map(([name]) => name), goals: goals.map(([, goal]) => maybe(goalReads(m, ask, goal))) }
  },
  answer: ({ names, goals }, make): { goals: Readonly<Record<string, ChargeAnswer | Gaps>> } => ({
    goals: Object.fromEntries(
      goals.map((k, i): [string, ChargeAnswer | Gaps] => [
        names[i] as string,
        isGaps(k) ? k : answered(make, k as never, names[i] as string),
      ]),
    ),
  }),
})

function answered(make: Maker, k: Known<ReturnType<typeof goalReads>>, item: string): ChargeAnswer {
  if (k.by === 'gap') throw new RangeError('a charging goal without a place has no answer')
  if (k.by === 'time') {
    const done = charged(make, k.charge, { from: k.from, to: k.to, most: LONGEST, within: k.within, temperature: k.temperature }, item)
    return { ...done, by: 'time', found: done.charge.time, limit: k.within }
  }
  const done = charged(
    make,
    k.charge,
    { from: k.reserve, to: FULL_CHARGE, most: k.within, within: k.within, temperature: k.temperature },
    item,
  )
  const range = (k.ranges as { trips: Record<string, RangeFigures> }).trips[k.trip.name] as RangeFigures
  const found = make.work(
    'distance-back',
    distanceBack,
    { stored: done.charge.stored, range: range.range, used: range['from-charge'] },
    { item, label: `Distance put back, ${item}` },
  )
  make.work('beyond', distanceBeyond, { found, wanted: k.distance }, { item, label: `Distance beyond what is wanted, ${item}` })
  return { ...done, by: 'distance', found, limit: k.distance }
}
