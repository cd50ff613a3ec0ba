import { roadSpeed } from '../../drive/speeds.ts'
import { totalRatio } from '../../drive/wheel-force.ts'
import type { Conditions } from '../../model/brief.ts'
import type { DriveUnit } from '../../model/drive.ts'
import type { Model } from '../../model/model.ts'
import { type Field, type Figure, type Gap, isGap, type Value } from '../../working/value.ts'
import type { Situation } from '../donor/situation-figures.ts'
import { type Ask, from, type Gaps, isGaps, type Known, type Maker, maybe } from '../study.ts'
import { type BatteryHolds, batteryHolds } from './battery-holds.ts'
import { batteryPull, type FromBattery } from './battery-pull.ts'
import { driveUnits } from './drive-units.ts'
import { type Envelope, envelopes } from './envelopes.ts'
import { AXLES, COOL_START, counted, EVEN, FRONT, NORMAL, REAR } from './operating-points.ts'
import { shifts, steps, type TransferRange, usualGear } from './ratios.ts'
import type { UnitFigures } from './unit-figures.ts'

/** A goal's own condition, or the brief's common one where the goal leaves it out. */
const condition = <K extends keyof Conditions>(goal: Conditions, common: Conditions, key: K): Conditions[K] =>
  isGap(goal[key]) ? common[key] : goal[key]
export const conditionsOf = (goal: Conditions, common: Conditions): Conditions => ({
  load: condition(goal, common, 'load'),
  surface: condition(goal, common, 'surface'),
  temperature: condition(goal, common, 'temperature'),
  altitude: condition(goal, common, 'altitude'),
  headWind: condition(goal, common, 'headWind'),
  trailer: condition(goal, common, 'trailer'),
})

type Place = { readonly surface: Conditions['surface']; readonly transfer?: Field<TransferRange> }
/** Share of a unit's pull at the front axle. A part-time 4x4 pulls at the rear only on a dry road, where locked axles would wind up, and with both locked elsewhere. */
function frontShare(m: Model, u: DriveUnit, { surface }: Place): Value | Field {
  if (isGap(u.axle)) return u.axle
  if (u.axle.value !== 'both') return u.axle.value === 'front' ? FRONT : REAR
  if (isGap(m.donor.drivenWheels)) return m.donor.drivenWheels
  if (m.donor.drivenWheels.value !== 'part-time 4x4') return m.drive.frontShare
  return isGap(surface) ? surface : surface.value === 'dry' ? REAR : EVEN
}

const NO_UNIT: Gap = {
  gap: true,
  path: 'drive.units',
  label: 'drive units: motor, inverter and their way to an axle',
  until: 'any time',
  why: 'missing',
}
/** Everything about the motors that a sum about pulling reads: all units must be known; heat and battery may be missing. */
export function pullingReads(m: Model, ask: Ask, place: Place) {
  const units = Object.entries(m.drive.units),
    part = from(ask(envelopes), e => e)
  const ready = (name: string): { name: string } | Gaps =>
    from(ask(envelopes), e => {
      const u = e.units[name] as Envelope | Gaps
      return isGaps(u) ? u : { name }
    })
  const heated = (name: string): { name: string } | Gaps =>
    from(ask(driveUnits), d => {
      const u = d.units[name] as UnitFigures | Gaps
      return isGaps(u) ? u : { name }
    })
  return {
    envelopes: part,
    some: units.length > 0 ? null : NO_UNIT,
    units: units.map(([name, u]) => {
      const shifting = shifts(u),
        { gears, inputSpeed } = m.donor.gearbox
      return {
        ready: ready(name),
        gears: shifting ? Object.keys(gears).map(gear => ({ gear, steps: steps(m, u, gear, place.transfer) })) : null,
        other: !shifting && place.transfer && !isGap(place.transfer) ? steps(m, u, usualGear(m, u), place.transfer) : null,
        shiftTime: shifting ? u.shiftTime : null,
        box: !isGap(u.through) && u.through.value === 'kept gearbox' && !isGap(inputSpeed) ? inputSpeed : null,
        share: frontShare(m, u, place),
      }
    }),
    heat: maybe({ all: ask(driveUnits), each: units.map(([name]) => heated(name)) }),
    battery: maybe(ask(batteryPull)),
    held: maybe(ask(batteryHolds)),
  }
}
export type PullingKnown = Known<ReturnType<typeof pullingReads>>

/** Motors as the lists a run takes; `item` tells the figures made on the way apart. Without heat the lists about windings are empty; without a battery the stated power counts. */
export function pulling(make: Maker, k: PullingKnown, item: string) {
  const list = k.units.map(u => k.envelopes.units[u.ready.name] as Envelope)
  const battery = isGaps(k.battery) ? undefined : ((k.battery as unknown as Record<string, FromBattery>)[NORMAL] as FromBattery)
  const heat = isGaps(k.heat)
    ? []
    : list.map(e => (k.heat as { all: { units: Record<string, UnitFigures> } }).all.units[e.name] as UnitFigures)
  const held = isGaps(k.held) ? undefined : (k.held as unknown as BatteryHolds)
  const ratio = (name: string, s: unknown, gear: string): Value =>
    make.work(
      'ratio',
      totalRatio,
      { steps: s as readonly Value[] },
      { item: `${item} ${name}${gear}`, label: `Total ratio of ${name}${gear}, ${item}` },
    )
  const ratios = k.units.map((u, i): readonly Value[] => {
    const e = list[i] as Envelope
    if (u.gears)
      return [...(u.gears as readonly { gear: string; steps: unknown }[])]
        .map(g => ratio(e.name, g.steps, ` ${g.gear}`))
        .sort((a, b) => b.value - a.value)
    return [u.other ? ratio(e.name, u.other, '') : e.ratio]
  })
  return {
    names: list.map(e => e.name),
    /** What each gearbox input is rated for, where a box is kept and its rating known. */
    box: k.units.map(u => u.box as Value | null),
    hasBattery: battery !== undefined,
    /** Peak power of each unit, were the battery to give it. */
    peak: list.map(e => e.peakPower),
    /** What each unit holds for ever, battery included where it is known; empty without a continuous rating. */
    lasting: heat.map(u => ({ power: held?.[u.name]?.power ?? u.continuousPower, battery: held?.[u.name] })),
    motors: {
      torque: list.map(e => e.peakTorque),
      power: list.map(e => battery?.units[e.name]?.power ?? e.peakPower),
      efficiency: list.map(e => e.efficiency),
      topSpeed: list.map(e => e.topSpeed),
      inertia: list.map(e => e.inertia),
      ratios: ratios.flat(),
      gears: ratios.map(r => counted(r.length)),
      frontShare: k.units.map(u => u.share as Value),
      centre: AXLES(
        k.units.some(u => (u.share as Value) === EVEN || (u.share as { path?: string }).path === EVEN.path) ? 'locked' : 'open',
      ),
    },
    winding: {
      shiftTime: k.units.flatMap(u => (u.shiftTime ? [u.shiftTime as Value] : [])),
      ratedTorque: heat.map(u => u.continuousTorque),
      ratedPower: heat.map(u => u.continuousPower),
      windingTime: heat.map(u => u.windingTime),
      start: COOL_START,
    },
  }
}
export type Pulling = ReturnType<typeof pulling>
/** The ratios a unit may use, shortest first. */
export const ratiosOf = ({ motors }: Pulling, u: number): readonly Value[] => {
  const before = motors.gears.slice(0, u).reduce((n, c) => n + c.value, 0)
  return motors.ratios.slice(before, before + (motors.gears[u] as Value).value)
}
/** The gear it is driven in at a speed: the shortest in which motor and gearbox input may turn that fast, else the tallest. */
export function ratioAt(p: Pulling, u: number, speed: Value, radius: Value): Value {
  const most = Math.min((p.motors.topSpeed[u] as Value).value, p.box[u]?.value ?? Number.POSITIVE_INFINITY),
    list = ratiosOf(p, u)
  return list.find(i => speed.value * i.value <= most * radius.value) ?? (list[list.length - 1] as Value)
}
/** The road speeds at which motor and gearbox input of a unit reach their limits in one ratio. */
export function speedLimits(
  make: Maker,
  p: Pulling,
  u: number,
  ratio: Value,
  radius: Value,
  item: string,
): Readonly<Record<string, Figure>> {
  const name = p.names[u] as string,
    box = p.box[u],
    by = (key: string, label: string, speed: Value): Figure =>
      make.work(key, roadSpeed, { speed, radius, ratio }, { item: `${item} ${name}`, label: `Top speed by the ${label} of ${name}` })
  return {
    [`motor of ${name}`]: by('by-motor', 'motor', p.motors.topSpeed[u] as Value),
    ...(box ? { [`gearbox input of ${name}`]: by('by-gearbox', 'gearbox input', box) } : {}),
  }
}
/** The car's side of a run. */
export const carOf = (s: Situation) => ({
  mass: s.mass,
  front: s.front,
  rear: s.rear,
  height: s.height,
  wheelbase: s.wheelbase,
  f0: s.f0,
  f1: s.f1,
  f2: s.f2,
  headWind: s.headWind,
  grip: s.grip,
  radius: s.radius,
  wheelsInertia: s.wheelsInertia,
})
export const roadOf = (s: Situation) => ({ f0: s.f0, f1: s.f1, f2: s.f2, headWind: s.headWind })
