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

export type OnAxles = { readonly front: OnAxle; readonly rear: OnAxle }

/** The mass of an axle, from its wheels where it was weighed by these. */
export const onAxle = (make: Maker, axle: OnAxle, id: string, label: string): Value =>
  'left' in axle ? make.work(id, twoTogether, { one: axle.left, other: axle.right }, { label }) : axle

/** Axle masses and their sum. `car` is what the labels call it. */
export function axlesTogether(make: Maker, { front, rear }: OnAxles, car: string): Axles {
  const f = onAxle(make, front, 'front', `${car}, front axle`),
    r = onAxle(make, rear, 'rear', `${car}, rear axle`)
  return { front: f, rear: r, total: make.work('total', twoTogether, { one: f, other: r }, { label: `${car} as weighed` }) }
}
