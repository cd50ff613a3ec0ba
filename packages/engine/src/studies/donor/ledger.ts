import type { RemovedItem } from '../../model/donor.ts'
import type { DriveUnit } from '../../model/drive.ts'
import type { Model } from '../../model/model.ts'
import {
  boxOfTwoForms,
  centreOfMassX,
  massByLedger,
  otherAxle,
  rearAxleByLedger,
  severalAlike,
  twoTogether,
  unboxedMass,
  unboxedOfTwoForms,
} from '../../vehicle/mass-and-axles.ts'
import { FUEL_DENSITY, fuelMass } from '../../vehicle/running-order.ts'
import { asWeighed, sinceWeighed } from '../../vehicle/since-weighed.ts'
import { type Field, type Figure, isGap, type Value } from '../../working/value.ts'
import { othersIn, twoForms } from '../pack/other-module.ts'
import { type PackMass, unboxed } from '../pack/pack-mass.ts'
import { type Ask, from, type Known, type Maker, study } from '../study.ts'
import { type Axles, axlesOf, type OnAxles, onAxle } from './on-scales.ts'
import { stripped, weighed } from './weighed.ts'

type Place = { readonly x: Field; readonly y: Field; readonly z: Field }
type Item = Place & { readonly name: string; readonly mass: Field }

/** A mass and where it stands behind the front axle. */
export type Weight = { readonly mass: Value; readonly x: Value }

export type Kerb = {
  readonly kerb: Figure
  readonly front: Value
  readonly rear: Value
  /** The same by the list of parts alone, whatever the finished car weighed on the scales. */
  readonly byParts: Axles
  /** Whether the car is reckoned from the scales it stood on when it was finished. */
  readonly fromScales: boolean
  /** Centre of mass behind the front axle. */
  readonly x: Figure
  /** What went in (parts as `added` lists them, then the battery boxes) and what came out since it was weighed, in the order of the file. */
  readonly added: readonly Value[]
  readonly removed: readonly Value[]
}

/** An inverter that only adds figures to a chosen drive unit is built into it: its mass and price are the unit's. */
export const standsAlone = ({ part, inverter: i }: DriveUnit): boolean =>
  i.given && (isGap(part) || !isGap(i.part) || !isGap(i.mass) || !isGap(i.x))

/** The charger by its own group, unless one is among the parts put in: then it was weighed there. */
export const ownCharger = ({ charging: { charger }, donor }: Model): boolean =>
  charger.given && !Object.keys(donor.added).some(name => name.includes('charger'))

/** The AC inlet by its own group, where it is chosen or weighed there, unless one is among the parts put in. */
export const ownInlet = ({ charging: { inlet }, donor }: Model): boolean =>
  (!isGap(inlet.part) || !isGap(inlet.mass)) && !Object.keys(donor.added).some(name => name.includes('inlet'))

const placeOf = ({ x, y, z }: Place): Place => ({ x, y, z })

/** Everything that goes in, by name: what the donor's list says, motors, inverters, charger, inlet. */
export function added(m: Model): readonly Item[] {
  const units = Object.entries(m.drive.units)
  return [
    ...Object.entries(m.donor.added).map(([name, i]) => ({ name, mass: i.mass, ...placeOf(i) })),
    ...units.map(([name, u]) => ({ name: `motor of ${name}`, mass: u.motor.mass, ...placeOf(u.motor) })),
    ...units
      .filter(([, u]) => standsAlone(u))
      .map(([name, u]) => ({ name: `inverter of ${name}`, mass: u.inverter.mass, ...placeOf(u.inverter) })),
    ...(ownCharger(m) ? [{ name: 'on-board charger', mass: m.charging.charger.mass, ...placeOf(m.charging.charger) }] : []),
    ...(ownInlet(m) ? [{ name: 'AC inlet', mass: m.charging.inlet.mass, ...placeOf(m.charging.inlet) }] : []),
  ]
}

const withoutBox = ({ pack: { module, otherModule, unboxed: u } }: Model, count: ReturnType<typeof unboxed>) =>
  count === null
    ? null
    : { ...count, each: module.mass, otherEach: count.others === null ? null : otherModule.mass, share: u.boxShare, x: u.x }

/** A part that holds the fuel: it says so, or is called so. A tank for washer or coolant is neither. */
const isTank = ([name, part]: readonly [string, RemovedItem]): boolean => !isGap(part.fuel) || /^tank|(fuel|petrol|diesel).*tank/.test(name)
const tanks = (m: Model): readonly (readonly [string, RemovedItem])[] => Object.entries(m.donor.removed).filter(isTank)

/** Fuel that was in the car when it was weighed, but not in the tank: it leaves with the tank it stood in. */
const drained = (m: Model): readonly (readonly [string, RemovedItem])[] =>
  tanks(m)
    .filter(([, { fuel }]) => !isGap(fuel) && fuel.value === 'drained')
    .slice(0, 1)

/** Where everything that leaves was: parts as the list has them, then drained fuel. */
export const removedPlaces = (m: Model): readonly Place[] => [...Object.entries(m.donor.removed), ...drained(m)].map(([, i]) => placeOf(i))

/** Where everything that goes in stands, in the order of the ledger: parts, modules in no box yet, boxes. */
export const addedPlaces = (m: Model, ask: Ask): readonly Place[] => [
  ...added(m).map(placeOf),
  ...(unboxed(m, ask) ? [placeOf(m.pack.unboxed)] : []),
  ...Object.values(m.pack.boxes).map(placeOf),
]

/** What everything that leaves is called, in the order of the ledger. */
export const removedNames = (m: Model): readonly string[] => [
  ...Object.keys(m.donor.removed),
  ...drained(m).map(([name]) => `fuel drained from ${name}`),
]

/** What everything that goes in is called, in the order of the ledger. */
export const addedNames = (m: Model, ask: Ask): readonly string[] => [
  ...added(m).map(({ name }) => name),
  ...(unboxed(m, ask) ? ['modules in no box yet'] : []),
  ...Object.keys(m.pack.boxes).map(name => `battery box ${name}`),
]

/** The car the ledger starts from: as it came, or stripped where it was on the scales then. */
export const reckonedFrom = (m: Model, ask: Ask) => (m.fit.stripped.given ? from(ask(stripped), s => s.axles as Axles) : ask(weighed))

/** Whether the finished car was weighed and what the ledger said that day is known: then the scales count. */
export const fromScales = ({ fit: { weighed: w } }: Model): boolean => w.given && !isGap(w.reckonedFront) && !isGap(w.reckonedRear)
/** Up to this, the ledger has not changed since the car was weighed, but a number was written down to the hundredth [kg]. */
const WRITTEN = 0.005

/**
 * Mass and axle loads of the finished car at kerb: what was weighed, less what came out and the fuel drained, plus what went in. Weighed once more with all of that
 * out, the car is reckoned from there: what came out no longer matters. Weighed when it was finished, it is reckoned from those scales and from what the list says has changed since.
 */
export const ledger = study({
  id: 'ledger',
  stage: 'donor',
  asks: 'What will the finished car weigh, and on which axle?',
  reads: (m, ask) => ({
    weighed: reckonedFrom(m, ask),
    scales: fromScales(m)
      ? { axles: axlesOf(m.fit.weighed), before: { front: m.fit.weighed.reckonedFront, rear: m.fit.weighed.reckonedRear } }
      : null,
    wheelbase: m.donor.wheelbase,
    added: added(m).map(({ name, mass, x }) => ({ name, mass, x })),
    leaves: m.fit.stripped.given ? null : leaving(m),
    unboxed: withoutBox(m, unboxed(m, ask)),
    module: Object.keys(m.pack.boxes).length > 0 ? m.pack.module.mass : null,
    otherModule: Object.keys(m.pack.boxes).length > 0 && twoForms(m) ? m.pack.otherModule.mass : null,
    boxes: Object.entries(m.pack.boxes).map(([name, b]) => ({
      name,
      modules: b.modules,
      // A box without the other form is summed as if there were none.
      others: isGap(b.otherModules) || b.otherModules.value === 0 ? null : othersIn(b.otherModules),
      overhead: b.overhead,
      x: b.x,
    })),
  }),
  answer: (known, make): Kerb => {
    const boxes = known.boxes.map(b => {
      const named = { item: b.name, label: `Battery box ${b.name}` },
        alike = { count: b.modules, each: known.module as Value, overhead: b.overhead }
      const mass: Value = b.others
        ? make.work('box', boxOfTwoForms, { ...alike, others: b.others, otherEach: known.otherModule as Value }, named)
        : make.work('box', severalAlike, alike, named)
      return { x: b.x as Value, mass }
    })
    // Before the boxes: who reads the boxes alone takes them from the end.
    const others = known.unboxed ? [{ x: known.unboxed.x as Value, mass: unboxedOf(make, known.unboxed) }] : []
    const ins = [...known.added.map(a => ({ mass: a.mass as Value, x: a.x as Value })), ...others, ...boxes]
    const outs = known.leaves ? gone(make, known.leaves) : []
    const masses = { added: ins.map(i => i.mass), removed: outs.map(o => o.mass) }
    const { weighed, wheelbase } = known,
      places = { addedX: ins.map(i => i.x), removedX: outs.map(o => o.x) },
      parts = byList(make, { weighed, wheelbase, ...masses, ...places }, known.scales !== null),
      { total, front, rear } = known.scales ? onScales(make, known.scales, parts) : parts
    return {
      kerb: total as Figure,
      front,
      rear,
      byParts: parts,
      fromScales: known.scales !== null,
      x: make.work('centre-x', centreOfMassX, { rear, total, wheelbase: known.wheelbase }),
      ...masses,
    }
  },
})

type Listed = {
  readonly weighed: Axles
  readonly wheelbase: Value
  readonly added: readonly Value[]
  readonly addedX: readonly Value[]
  readonly removed: readonly Value[]
  readonly removedX: readonly Value[]
}
/** The finished car by its list of parts; figures of their own where the scales count instead. */
function byList(make: Maker, { weighed, wheelbase, ...changes }: Listed, aside: boolean): Axles {
  const [id, by] = aside ? ['parts-', ', by the ledger alone'] : ['', ''],
    { added, removed } = changes
  const total = make.work(
    `${id}kerb`,
    massByLedger,
    { front: weighed.front, rear: weighed.rear, added, removed },
    { label: `Kerb mass${by}` },
  )
  const rear = make.work(`${id}rear`, rearAxleByLedger, { rear: weighed.rear, ...changes, wheelbase }, { label: `Rear axle at kerb${by}` })
  return { total, rear, front: make.work(`${id}front`, otherAxle, { total, one: rear }, { label: `Front axle at kerb${by}` }) }
}

type ByAxle = { readonly front: Value; readonly rear: Value }
const AXLES = ['front', 'rear'] as const
/** The car on the scales, and what the list says has changed since. */
function onScales(make: Maker, { axles, before }: { readonly axles: OnAxles; readonly before: ByAxle }, now: Axles): Axles {
  const [front, rear] = AXLES.map(axle => {
    const weighed = onAxle(make, axles[axle], `weighed-${axle}`, `Finished car, ${axle} axle`),
      named = { label: `${axle === 'front' ? 'Front' : 'Rear'} axle at kerb` }
    return Math.abs(now[axle].value - before[axle].value) <= WRITTEN
      ? make.work(axle, asWeighed, { weighed }, named)
      : make.work(axle, sinceWeighed, { weighed, now: now[axle], before: before[axle] }, named)
  }) as [Figure, Figure]
  return { front, rear, total: make.work('kerb', twoTogether, { one: front, other: rear }, { label: 'Kerb mass' }) }
}

/** What a study reads of all that leaves: the parts, and fuel that was aboard when the car was weighed but leaves with no tank. */
export const leaving = (m: Model) => ({
  removed: Object.entries(m.donor.removed).map(([name, i]) => ({ name, mass: i.mass, x: i.x })),
  fuelIn: tanks(m).map(([, { fuel }]) => fuel),
  drained: drained(m).map(([name, { x }]) => ({ name, x, volume: m.donor.weighing.fuel, kind: m.donor.engine.fuel })),
})
/** Masses that leave, with their places: parts as the list has them, then drained fuel. */
export const gone = (make: Maker, { removed, drained: fuel }: Known<ReturnType<typeof leaving>>): readonly Weight[] => [
  ...removed.map(r => ({ mass: r.mass as Value, x: r.x as Value })),
  ...fuel.map(({ name, x, volume, kind }) => ({
    x: x as Value,
    mass: make.work('fuel', fuelMass, { volume, density: FUEL_DENSITY[kind.value] }, { item: name, label: 'Fuel drained' }) as Value,
  })),
]

type Unboxed = Pick<PackMass, 'wanted' | 'boxed' | 'others'> & {
  readonly each: Value
  readonly otherEach: Value | null
  readonly share: Value
}
function unboxedOf(make: Maker, { wanted, boxed, each, others, otherEach, share }: Unboxed): Value {
  const label = 'Modules in no box yet, with boxes'
  return others && otherEach
    ? make.work(
        'unboxed',
        unboxedOfTwoForms,
        { wanted, boxed, each, othersWanted: others.wanted, othersBoxed: others.boxed, otherEach, share },
        { label },
      )
    : make.work('unboxed', unboxedMass, { wanted, boxed, each, share }, { label })
}
