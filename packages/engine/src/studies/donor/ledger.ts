import type { Model } from '../../model/model.ts'
import { centreOfMassX, massByLedger, otherAxle, rearAxleByLedger, severalAlike } from '../../vehicle/mass-and-axles.ts'
import type { Field, Figure, Value } from '../../working/value.ts'
import { study } from '../study.ts'
import { weighed } from './weighed.ts'

type Item = { readonly name: string; readonly mass: Field; readonly x: Field; readonly z: Field }

export type Kerb = {
  readonly kerb: Figure
  readonly front: Figure
  readonly rear: Figure
  /** Centre of mass behind the front axle. */
  readonly x: Figure
  /** What went in (parts as `added` lists them, then the battery boxes) and what came out, in the order of the file. */
  readonly added: readonly Value[]
  readonly removed: readonly Value[]
}

/** Everything that goes in, by name: what the donor's list says, motors, inverters, charger. */
export function added(m: Model): readonly Item[] {
  const units = Object.entries(m.drive.units)
  return [
    ...Object.entries(m.donor.added).map(([name, i]) => ({ name, mass: i.mass, x: i.x, z: i.z })),
    ...units.map(([name, u]) => ({ name: `motor of ${name}`, mass: u.motor.mass, x: u.motor.x, z: u.motor.z })),
    ...units
      .filter(([, u]) => u.inverter.given)
      .map(([name, u]) => ({ name: `inverter of ${name}`, mass: u.inverter.mass, x: u.inverter.x, z: u.inverter.z })),
  ]
}

/** Mass and axle loads of the finished car at kerb: what was weighed, less what came out, plus what went in. */
export const ledger = study({
  id: 'ledger',
  stage: 'donor',
  asks: 'What will the finished car weigh, and on which axle?',
  reads: (m, ask) => ({
    weighed: ask(weighed),
    wheelbase: m.donor.wheelbase,
    added: added(m).map(({ name, mass, x }) => ({ name, mass, x })),
    removed: Object.entries(m.donor.removed).map(([name, i]) => ({ name, mass: i.mass, x: i.x })),
    module: Object.keys(m.pack.boxes).length > 0 ? m.pack.module.mass : null,
    boxes: Object.entries(m.pack.boxes).map(([name, b]) => ({ name, modules: b.modules, overhead: b.overhead, x: b.x })),
  }),
  answer: (known, make): Kerb => {
    const boxes = known.boxes.map(b => ({
      x: b.x as Value,
      mass: make.work(
        'box',
        severalAlike,
        { count: b.modules, each: known.module as Value, overhead: b.overhead },
        { item: b.name, label: `Battery box ${b.name}` },
      ) as Value,
    }))
    const ins = [...known.added.map(a => ({ mass: a.mass as Value, x: a.x as Value })), ...boxes]
    const masses = { added: ins.map(i => i.mass), removed: known.removed.map(r => r.mass) }
    const kerb = make.work(
      'kerb',
      massByLedger,
      { front: known.weighed.front, rear: known.weighed.rear, ...masses },
      { label: 'Kerb mass' },
    )
    const rear = make.work(
      'rear',
      rearAxleByLedger,
      { rear: known.weighed.rear, ...masses, addedX: ins.map(i => i.x), removedX: known.removed.map(r => r.x), wheelbase: known.wheelbase },
      { label: 'Rear axle at kerb' },
    )
    const front = make.work('front', otherAxle, { total: kerb, one: rear }, { label: 'Front axle at kerb' })
    return { kerb, front, rear, x: make.work('centre-x', centreOfMassX, { rear, total: kerb, wheelbase: known.wheelbase }), ...masses }
  },
})
