import type { DriveUnit } from '../../model/drive.ts'
import type { Model } from '../../model/model.ts'
import {
  axleShare,
  changeOfRatio,
  limitedPower,
  limitedTorque,
  massRatio,
  placesTogether,
  powerRatio,
  powerTogether,
  powerToWeightRatio,
  torqueRatio,
  torqueTogether,
} from '../../vehicle/against-donor.ts'
import { FUEL_DENSITY, massInRunningOrder, massInRunningOrderElectric } from '../../vehicle/running-order.ts'
import { type Field, type Figure, type Gap, isGap, type Value } from '../../working/value.ts'
import { ledger } from '../donor/ledger.ts'
import { weighed } from '../donor/weighed.ts'
import { either, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'

/** Old and new of one quantity. `peaks` are the motors' own figures, of which `now` is what counts once sealed limits are taken. */
export type Compared = { readonly before: Value; readonly now: Value; readonly ratio: Figure; readonly change: Figure }
export type ComparedPeaks = Compared & { readonly peaks: readonly Value[] }
export type Axles = {
  readonly front: Compared
  readonly rear: Compared
  readonly total: Compared
  readonly frontShare: Shares
  readonly rearShare: Shares
}
export type Shares = { readonly before: Figure; readonly now: Figure }
export type AgainstDonor = {
  readonly power: ComparedPeaks | Gaps
  readonly torque: ComparedPeaks | Gaps
  readonly continuous: ComparedPeaks | Gaps
  /** Masses on the basis the law means. */
  readonly runningOrder: Compared | Gaps
  /** Masses as they are weighed: no driver, the fuel that was in the tank. */
  readonly axles: Axles | Gaps
  readonly powerToWeight: Figure | Gaps
  /** Seats of the donor car. */
  readonly seats: Figure | Gaps
}

/** A limit counts only when it is set and sealed; whether it is sealed is asked only where there is one. */
const sealed = (unit: DriveUnit, limit: Field): Field | null =>
  isGap(limit) ? null : isGap(unit.limitSealed) ? unit.limitSealed : unit.limitSealed.value === 'yes' ? limit : null

const NO_UNIT: Gap = {
  gap: true,
  path: 'drive.units',
  label: 'drive units: motor, inverter and their way to an axle',
  until: 'any time',
  why: 'missing',
}

const NO_SEATS: Gap = { gap: true, path: 'donor.seats', label: 'seat rows', until: 'any time', why: 'missing' }

function units<T>(m: Model, pick: (unit: DriveUnit) => T): readonly ({ name: string } & T)[] | Gap {
  const all = Object.entries(m.drive.units)
  return all.length === 0 ? NO_UNIT : all.map(([name, unit]) => ({ name, ...pick(unit) }))
}

/** The finished car beside the donor car: power, torque and mass, as approval looks at them. */
export const againstDonor = study({
  id: 'against-donor',
  stage: 'brief',
  asks: 'How far is the finished car from the donor car, as approval sees it?',
  reads: (m, ask) => ({
    power: maybe({ units: units(m, u => ({ peak: u.motor.peakPower, limit: sealed(u, u.powerLimit) })), before: m.donor.engine.power }),
    torque: maybe({ units: units(m, u => ({ peak: u.motor.peakTorque, limit: sealed(u, u.torqueLimit) })), before: m.donor.engine.torque }),
    continuous: maybe({
      units: units(m, u => ({ peak: u.motor.continuousPower, limit: null })),
      before: either(m.donor.engine.strongest, { engine: m.donor.engine.power }),
    }),
    fuel: maybe({ fuel: m.donor.weighing.fuel, tank: m.donor.weighing.tank, kind: m.donor.engine.fuel }),
    seats: maybe(Object.keys(m.donor.seats).length === 0 ? NO_SEATS : Object.values(m.donor.seats).map(s => s.places)),
    masses: maybe({ donor: ask(weighed), finished: ask(ledger) }),
  }),
  answer: (known, make): AgainstDonor => {
    const { masses, fuel } = known
    const power = isGaps(known.power) ? known.power : powers(make, 'power', known.power.units, known.power.before)
    const runningOrder = isGaps(masses)
      ? masses
      : isGaps(fuel)
        ? fuel
        : inRunningOrder(make, masses.donor.total, masses.finished.kerb, { fuel: fuel.fuel, tank: fuel.tank, kind: fuel.kind.value })
    return {
      power,
      torque: isGaps(known.torque) ? known.torque : torques(make, known.torque.units, known.torque.before),
      continuous: isGaps(known.continuous)
        ? known.continuous
        : powers(
            make,
            'continuous',
            known.continuous.units,
            'engine' in known.continuous.before ? known.continuous.before.engine : known.continuous.before,
          ),
      runningOrder,
      axles: isGaps(masses) ? masses : onAxles(make, masses.donor, masses.finished),
      seats: isGaps(known.seats)
        ? known.seats
        : make.work('seats-before', placesTogether, { rows: known.seats }, { label: 'Seats of the donor car' }),
      powerToWeight: isGaps(power)
        ? power
        : isGaps(runningOrder)
          ? runningOrder
          : make.work(
              'power-to-weight',
              powerToWeightRatio,
              { power: power.now, mass: runningOrder.now, powerBefore: power.before, massBefore: runningOrder.before },
              { label: 'Power to weight against the donor car' },
            ),
    }
  },
})

type Unit = { readonly name: string; readonly peak: Value; readonly limit: Value | null }

function powers(make: Maker, key: 'power' | 'continuous', all: readonly Unit[], before: Value): ComparedPeaks {
  const word = key === 'power' ? 'Peak power' : 'Continuous power'
  const each = all.map(u =>
    u.limit
      ? make.work(
          `${key}-counted`,
          limitedPower,
          { peak: u.peak, limit: u.limit },
          { item: u.name, label: `${word} of ${u.name} that counts` },
        )
      : u.peak,
  )
  const now = make.work(key, powerTogether, { each }, { label: `${word} that counts` })
  const ratio = make.work(`${key}-ratio`, powerRatio, { now, before }, { label: `${word} against the old engine` })
  return { before, now, ratio, change: change(make, `${key}-change`, ratio, `${word}, change`), peaks: all.map(u => u.peak) }
}

function torques(make: Maker, all: readonly Unit[], before: Value): ComparedPeaks {
  const each = all.map(u =>
    u.limit
      ? make.work(
          'torque-counted',
          limitedTorque,
          { peak: u.peak, limit: u.limit },
          { item: u.name, label: `Peak torque of ${u.name} that counts` },
        )
      : u.peak,
  )
  const now = make.work('torque', torqueTogether, { each }, { label: 'Peak torque that counts' })
  const ratio = make.work('torque-ratio', torqueRatio, { now, before }, { label: 'Peak torque against the old engine' })
  return { before, now, ratio, change: change(make, 'torque-change', ratio, 'Peak torque, change'), peaks: all.map(u => u.peak) }
}

const change = (make: Maker, key: string, ratio: Figure, label: string, item?: string): Figure =>
  make.work(key, changeOfRatio, { ratio }, { label, ...(item === undefined ? {} : { item }) })

function inRunningOrder(
  make: Maker,
  donor: Value,
  finished: Value,
  tank: { fuel: Value; tank: Value; kind: 'petrol' | 'diesel' },
): Compared {
  const before = make.work(
    'running-order-before',
    massInRunningOrder,
    { weighed: donor, fuel: tank.fuel, tank: tank.tank, density: FUEL_DENSITY[tank.kind] },
    { label: 'Donor car in running order' },
  )
  const now = make.work('running-order', massInRunningOrderElectric, { kerb: finished }, { label: 'Finished car in running order' })
  const ratio = make.work('mass-ratio', massRatio, { now, before }, { label: 'Mass in running order against the donor car' })
  return { before, now, ratio, change: change(make, 'mass-change', ratio, 'Mass in running order, change') }
}

function onAxles(
  make: Maker,
  donor: { readonly front: Value; readonly rear: Value; readonly total: Value },
  finished: { readonly front: Value; readonly rear: Value; readonly kerb: Value },
): Axles {
  const one = (item: string, before: Value, now: Value): Compared => {
    const ratio = make.work('weighed-ratio', massRatio, { now, before }, { item, label: `As weighed against the donor car, ${item}` })
    return { before, now, ratio, change: change(make, 'weighed-change', ratio, `As weighed, change, ${item}`, item) }
  }
  const share = (item: string, axle: 'front' | 'rear', other: 'front' | 'rear'): Shares => ({
    before: make.work(
      'share-before',
      axleShare,
      { axle: donor[axle], other: donor[other] },
      { item, label: `Share on the ${item}, donor car` },
    ),
    now: make.work('share', axleShare, { axle: finished[axle], other: finished[other] }, { item, label: `Share on the ${item}` }),
  })
  return {
    front: one('front axle', donor.front, finished.front),
    rear: one('rear axle', donor.rear, finished.rear),
    total: one('total', donor.total, finished.kerb),
    frontShare: share('front axle', 'front', 'rear'),
    rearShare: share('rear axle', 'rear', 'front'),
  }
}
