import { approachAngle, rampAngle } from '../../vehicle/ground-clearance.ts'
import { overhang } from '../../vehicle/overhang.ts'
import type { Figure, Value } from '../../working/value.ts'
import { tyres } from '../donor/tyres.ts'
import { from, type Gaps, isGaps, type Maker, maybe, study } from '../study.ts'
import { FRONT_AXLE } from './wheel-houses.ts'
import { type PlacedShape, places, shapesOf } from './places.ts'

export type Angle = { readonly shape: PlacedShape; readonly angle: Figure }
export type Ground = {
  /** What hangs lowest of what goes in. */
  readonly lowest: PlacedShape | undefined
  readonly approach: Angle | undefined | Gaps
  readonly departure: Angle | undefined | Gaps
  readonly ramp: Angle | undefined | Gaps
}

/** How low the new parts hang, and over what slopes and crests they come. */
export const ground = study({
  id: 'ground',
  stage: 'fit',
  asks: 'How far off the ground is what goes in, and does it clear ramps and crests?',
  reads: (m, ask) => {
    const answer = ask(places)
    return {
      shapes: shapesOf(m).flatMap(([name, b]) =>
        b.kind === 'stays in the car' ? [] : [maybe({ shape: from(answer, a => a.shapes[name] as PlacedShape | Gaps) })],
      ),
      axles: maybe({ radius: from(ask(tyres), t => t.loaded), wheelbase: m.donor.wheelbase }),
    }
  },
  answer: ({ shapes, axles }, make): Ground => {
    const all = shapes.flatMap(s => (isGaps(s) ? [] : [s.shape as PlacedShape]))
    const lowest = least(all, s => s.ends.bottom.value)
    if (isGaps(axles)) return { lowest, approach: axles, departure: axles, ramp: axles }
    const { radius, wheelbase } = axles as { radius: Value; wheelbase: Value }
    return {
      lowest,
      approach: beyond(make, 'approach', all, radius, undefined),
      departure: beyond(make, 'departure', all, radius, wheelbase),
      ramp: over(make, all, radius, wheelbase),
    }
  },
})

function least<T>(all: readonly T[], of: (t: T) => number): T | undefined {
  return all.reduce<T | undefined>((a, b) => (a === undefined || of(b) < of(a) ? b : a), undefined)
}
/** A point inside the circle of the tyre is no matter of slopes. */
const outside = (radius: number, distance: number, height: number): boolean =>
  distance > 0 && distance ** 2 + (radius - height) ** 2 > radius ** 2

function beyond(
  make: Maker,
  key: 'approach' | 'departure',
  all: readonly PlacedShape[],
  radius: Value,
  wheelbase: Value | undefined,
): Angle | undefined {
  const distance = (s: PlacedShape): number => (wheelbase ? s.ends.rear.value - wheelbase.value : -s.ends.front.value)
  const angle = (s: PlacedShape): number => approachAngle({ radius: radius.value, distance: distance(s), height: s.ends.bottom.value })
  const shape = least(
    all.filter(s => outside(radius.value, distance(s), s.ends.bottom.value)),
    angle,
  )
  if (!shape) return undefined
  const far = wheelbase
    ? make.work(
        'beyond',
        overhang,
        { end: shape.ends.rear, axle: wheelbase },
        { item: key, label: `${shape.name}: rear end behind the rear axle` },
      )
    : make.work(
        'beyond',
        overhang,
        { end: FRONT_AXLE, axle: shape.ends.front },
        { item: key, label: `${shape.name}: front end ahead of the front axle` },
      )
  return {
    shape,
    angle: make.work(
      key,
      approachAngle,
      { radius, distance: far, height: shape.ends.bottom },
      { label: `${key === 'approach' ? 'Approach' : 'Departure'} angle under ${shape.name}` },
    ),
  }
}

function over(make: Maker, all: readonly PlacedShape[], radius: Value, wheelbase: Value): Angle | undefined {
  const { value: R } = radius,
    { value: L } = wheelbase
  const points = all.flatMap(shape =>
    [shape.ends.front, shape.place[0], shape.ends.rear].flatMap(x => {
      const z = shape.ends.bottom.value
      return outside(R, x.value, z) && outside(R, L - x.value, z)
        ? [{ shape, x, ramp: rampAngle({ radius: R, x: x.value, height: z, wheelbase: L }) }]
        : []
    }),
  )
  const worst = least(points, p => p.ramp)
  if (!worst) return undefined
  const { shape, x } = worst
  return {
    shape,
    angle: make.work('ramp', rampAngle, { radius, x, height: shape.ends.bottom, wheelbase }, { label: `Ramp angle under ${shape.name}` }),
  }
}
