import { totalRatio } from '../../drive/wheel-force.ts'
import type { DriveUnit } from '../../model/drive.ts'
import type { Model } from '../../model/model.ts'
import type { Trip } from '../../model/trips.ts'
import { curve } from '../../numerics/curve.ts'
import { INVERTER_CAPACITY, INVERTER_SHARE, inverterConductance } from '../../trip/inverter-heat.ts'
import { FULL } from '../../trip/journey.ts'
import { equivalentMass } from '../../vehicle/rotating-inertia.ts'
import { type Curve, type Fact, type Field, type Figure, type Gap, isGap, standard, type Value } from '../../working/value.ts'
import { situation, situationReads } from '../donor/situation.ts'
import { driveUnits } from '../drive/drive-units.ts'
import { shifts, steps, usualGear } from '../drive/ratios.ts'
import type { UnitFigures } from '../drive/unit-figures.ts'
import { packModel } from '../pack/pack-model.ts'
import { type Ask, from, isGaps, type Known, type Maker } from '../study.ts'
import type { Journey } from './journey-figures.ts'
import { speedReads, speedWanted } from './speed-wanted.ts'

const DEFINITION = { work: 'definition', place: 'layout' } as const
const WHEELS = standard('wheels', 'wheels turn with themselves', 'i_w', 1, '1', DEFINITION)
const REAR_ONLY: Fact<'rear'> = {
  path: 'standard.part-time',
  label: 'a part-time 4x4 pulls at the rear on a dry road',
  symbol: '',
  unit: '',
  value: 'rear',
  origin: {
    how: 'standard',
    source: { work: 'practice', place: 'axles without a centre differential wind up on a dry road', mark: 'common practice' },
  },
}
const UNCOUPLED: Fact<Curve> = {
  path: 'standard.uncoupled',
  label: 'no drag: uncoupled',
  symbol: 'M_d',
  unit: 'N·m',
  value: curve([0, 1], [0, 0]),
  origin: { how: 'standard', source: DEFINITION },
}
const TURNS_FREE = standard('uncoupled.gears', 'no drag of gears: uncoupled', 'a', 0, 'N·m', DEFINITION)
const RISES_NOT = standard('uncoupled.gears-rising', 'no drag of gears: uncoupled', 'b', 0, 'N·m·s', DEFINITION)
const ALL_OF_IT = standard('all-of-the-pull', 'the only unit gives all of the pull', 's_1', 1, '1', DEFINITION)

/** The other conditions of a trip with another air and cell temperature, and another power of the cabin. */
export type Weather = { readonly temperature: Field; readonly packTemperature: Field; readonly cabinPower: Field }

/** Everything a trip is worked out from; gaps stand inside. `weather` stands in for the trip's own. */
export function journeyReads(m: Model, ask: Ask, t: Trip, weather?: Weather) {
  const entries = Object.entries(m.drive.units).sort(([, a], [, b]) => place(a) - place(b))
  const many: Gap | null =
    entries.length === 0 || entries.length > 2
      ? {
          gap: true,
          path: 'drive.units',
          label: entries.length === 0 ? 'drive units' : 'drive units: a trip is reckoned with one or two',
          until: 'any time',
        }
      : null
  const partTime =
    !isGap(m.donor.drivenWheels) && m.donor.drivenWheels.value === 'part-time 4x4' && !isGap(t.surface) && t.surface.value === 'dry'
  return {
    speed: speedReads(t),
    road: situationReads(m, ask, {
      load: t.load,
      surface: t.surface,
      temperature: weather?.temperature ?? t.temperature,
      altitude: t.altitude,
      headWind: t.headWind,
      trailer: t.trailer,
    }),
    many,
    // The answers are taken whole, so that a unit's figures stay the same objects; gaps of the units used are asked for beside.
    all: from(ask(driveUnits), d => d),
    units: entries.map(([name, u]) => ({
      name,
      ready: from(ask(driveUnits), d => {
        const f = d.units[name] as UnitFigures | { gaps: readonly Gap[] }
        return isGaps(f) ? f : null
      }),
      axle: partTime && !isGap(u.axle) && u.axle.value === 'both' ? REAR_ONLY : u.axle,
      steps:
        !shifts(u) && !isGap(t.transfer) && !isGap(u.transfer) && u.transfer.value !== 'none'
          ? steps(m, u, usualGear(m, u), t.transfer)
          : null,
      gears: shifts(u) ? Object.keys(m.donor.gearbox.gears).map(gear => ({ gear, steps: steps(m, u, gear, t.transfer) })) : null,
      box: shifts(u) && !isGap(m.donor.gearbox.inputSpeed) ? m.donor.gearbox.inputSpeed : null,
      uncoupled: !isGap(u.disconnect) && u.disconnect.value === 'yes',
    })),
    share: entries.length === 2 ? m.drive.frontShare : null,
    regeneration: {
      torqueShare: m.drive.regeneration.torqueShare,
      power: m.drive.regeneration.power,
      cutOffSpeed: m.drive.regeneration.cutOffSpeed,
    },
    pack: ask(packModel),
    chargeShare: from(ask(packModel), p => p.held.chargeShare),
    packTemperature: weather?.packTemperature ?? t.packTemperature,
    cabinPower: weather?.cabinPower ?? t.cabinPower,
    otherPower: t.otherPower,
  }
}
const place = (u: DriveUnit): number => (isGap(u.axle) || u.axle.value === 'front' ? 0 : 1)
export type JourneyKnown = Known<ReturnType<typeof journeyReads>>

/** A trip made ready inside the calling study; figures on the way are told apart by `item`. */
export function journey(make: Maker, k: JourneyKnown, item: string): Journey {
  const road = situation(make, k.road, item),
    { trace, slope } = speedWanted(make, k.speed, item),
    pack = k.pack
  const all = (k.all as { units: Readonly<Record<string, UnitFigures>> }).units,
    units = k.units.map(u => all[u.name] as UnitFigures)
  const driven = k.units.map((u, i): { ratio: Value; gear?: string } => {
    const unit = units[i] as UnitFigures
    const ratioBy = (s: unknown, gear = ''): Figure =>
      make.work(
        'ratio',
        totalRatio,
        { steps: s as readonly Value[] },
        { item: `${item} ${u.name}${gear && ` ${gear}`}`, label: `Total ratio of ${u.name}${gear && ` in ${gear}`}, ${item}` },
      )
    if (!u.gears) return { ratio: u.steps === null ? unit.ratio : ratioBy(u.steps) }
    // Who shifts drives the whole trip in one gear: the shortest in which motor and gearbox input stand its highest speed, else the tallest.
    const list = u.gears.map(({ gear, steps: s }) => ({ gear, ratio: ratioBy(s, gear) })).sort((a, b) => b.ratio.value - a.ratio.value),
      turns = Math.max(...trace.value.y) / road.radius.value,
      most = Math.min(unit.topSpeed.value, (u.box as Value | null)?.value ?? Number.POSITIVE_INFINITY)
    return list.find(g => turns * g.ratio.value <= most) ?? (list[list.length - 1] as { ratio: Value; gear: string })
  })
  const ratio = driven.map(d => d.ratio)
  const rotating = make.work(
    'rotating',
    equivalentMass,
    { inertias: [road.wheelsInertia, ...units.map(u => u.inertia)], ratios: [WHEELS, ...ratio], radius: road.radius },
    { item, label: `Equivalent mass of what turns, ${item}` },
  )
  const inverterConductances = units.map(u =>
    make.work(
      'inverter-conductance',
      inverterConductance,
      { share: INVERTER_SHARE, loss: u.ratedLoss },
      { item: `${item} ${u.name}`, label: `Inverter of ${u.name} to coolant, ${item}` },
    ),
  )
  const axle = k.units.map(u => u.axle as Fact<'front' | 'rear' | 'both'>),
    drag = (i: number): Value<Curve> => (k.units[i]?.uncoupled ? UNCOUPLED : (units[i] as UnitFigures).drag)
  const asked = (k.share ?? ALL_OF_IT) as Value,
    // Uncoupled it is only while nothing is asked of it.
    apart = (i: number): boolean => k.units[i]?.uncoupled === true && (i === 0 ? asked.value <= 0 : asked.value >= 1)
  const [first, other] = units as [UnitFigures, UnitFigures?]
  const each = (pick: (u: UnitFigures) => Value): readonly Value[] => units.map(pick)
  return {
    inputs: {
      trace,
      slope,
      mass: road.mass,
      rotating,
      f0: road.f0,
      f1: road.f1,
      f2: road.f2,
      headWind: road.headWind,
      radius: road.radius,
      grip: road.grip,
      front: road.front,
      rear: road.rear,
      height: road.height,
      wheelbase: road.wheelbase,
      axle: axle[0]!,
      ratio,
      efficiency: each(u => u.teeth),
      gearDrag: units.map((u, i) => (apart(i) ? TURNS_FREE : u.gearDrag)),
      gearDragRise: units.map((u, i) => (apart(i) ? RISES_NOT : u.gearDragRise)),
      peakTorque: each(u => u.peakTorque),
      peakPower: each(u => u.peakPower),
      continuousTorque: each(u => u.continuousTorque),
      continuousPower: each(u => u.continuousPower),
      baseSpeed: each(u => u.baseSpeed),
      statedVoltage: each(u => u.statedVoltage),
      topSpeed: each(u => u.topSpeed),
      losses: first.losses,
      lossFactor: each(u => u.lossFactor),
      drag: drag(0),
      windingCapacity: each(u => u.heatCapacity),
      windingConductance: each(u => u.conductance),
      windingLimit: each(u => u.windingLimit),
      coolant: each(u => u.coolant),
      inverterShare: units.map(() => INVERTER_SHARE),
      inverterCapacity: units.map(() => INVERTER_CAPACITY),
      inverterConductance: inverterConductances,
      regenTorque: k.regeneration.torqueShare,
      regenPower: k.regeneration.power,
      cutOffSpeed: k.regeneration.cutOffSpeed,
      openCircuit: pack.openCircuit,
      resistance: pack.resistance,
      resistanceFactor: pack.resistanceFactor,
      branchResistance: pack.branchResistance,
      branchTime: pack.branchTime,
      coldFactor: pack.coldFactor,
      capacity: pack.capacity,
      lowestVoltage: pack.lowestVoltage,
      highestVoltage: pack.highestVoltage,
      peakCurrent: pack.held.peak,
      chargeCurrent: pack.held.charge,
      chargeShare: k.chargeShare,
      packCapacity: pack.heatCapacity,
      packConductance: pack.conductance,
      packTemperature: k.packTemperature,
      air: road.temperature,
      cabinPower: k.cabinPower,
      otherPower: k.otherPower,
      startCharge: FULL,
    },
    second: other ? { otherAxle: axle[1]!, otherLosses: other.losses, otherDrag: drag(1), firstShare: k.share ?? ALL_OF_IT } : null,
    coldEnergy: pack.coldEnergy,
    gear: driven.find(d => d.gear !== undefined)?.gear,
    units: k.units.map(u => u.name),
  }
}
