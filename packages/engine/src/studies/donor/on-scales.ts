import type { Scales } from '../../model/donor.ts'
import { twoTogether } from '../../vehicle/mass-and-axles.ts'
import type { Value } from '../../working/value.ts'
import { either, type Maker } from '../study.ts'

/** An axle by itself, or its two wheels. */
export type OnAxle = Value | { readonly left: Value; readonly right: Value }
export type Axles = { readonly front: Value; readonly rear: Value; readonly total: Value }

/** What a study reads of a car on the scales: each axle as a whole, or by its wheels. */
export const axlesOf = (w: Scales) => ({
  front: either(w.front, { left: w.frontLeft, right: w.frontRight }),
  rear: either(w.rear, { left: w.rearLeft, right: w.rearRight }),
})

/** Axle masses and their sum. `car` is what the labels call it. */
export function axlesTogether(make: Maker, { front, rear }: { readonly front: OnAxle; readonly rear: OnAxle }, car: string): Axles {
  const axle = (name: 'front' | 'rear', x: OnAxle): Value =>
    'left' in x ? make.work(name, twoTogether, { one: x.left, other: x.right }, { label: `${car}, ${name} axle` }) : x
  const f = axle('front', front),
    r = axle('rear', rear)
  return { front: f, rear: r, total: make.work('total', twoTogether, { one: f, other: r }, { label: `${car} as weighed` }) }
}
