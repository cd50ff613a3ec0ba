import { rangeOfOne, rangeOfOneCoarse, rangeOfTwo, rangeOfTwoCoarse } from '../../trip/trip.ts'
import type { Curve, Figure, Value } from '../../working/value.ts'
import type { Maker } from '../study.ts'
import type { Journey } from './journey-figures.ts'

export type RangeFigures = { readonly [K in keyof (typeof rangeOfOne)['card']['gives']]: Figure }

/** Repeats a journey until the reserve, inside the calling study. */
export function driveUntilEmpty(
  make: Maker,
  { inputs, second }: Journey,
  more: { reserve: Value; coldEnergy: Value<Curve> },
  item: string,
): RangeFigures {
  const labels = Object.fromEntries(Object.entries(rangeOfOne.card.gives).map(([key, one]) => [key, `${one.label}, ${item}`]))
  const done = second
    ? make.all('', rangeOfTwo, { ...inputs, ...more, ...second }, { item, labels, rerun: x => rangeOfTwoCoarse(x as never) })
    : make.all('', rangeOfOne, { ...inputs, ...more }, { item, labels, rerun: x => rangeOfOneCoarse(x as never) })
  return done.figures as unknown as RangeFigures
}
