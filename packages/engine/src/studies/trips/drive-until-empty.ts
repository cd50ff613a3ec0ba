import { rangeOfOne, rangeOfTwo } from '../../trip/trip.ts'
import type { Curve, Figure, Value } from '../../working/value.ts'
import type { Maker } from '../study.ts'
import type { Journey } from './journey-figures.ts'

export type RangeFigures = { readonly [K in keyof (typeof rangeOfOne)['card']['gives']]: Figure }

/**
 * Repeats a journey until the reserve, inside the calling study. Its spread takes the whole way each time: on the first laps cells that warm give more of
 * theirs, and a lap carried on would carry that gain on with it.
 */
export function driveUntilEmpty(
  make: Maker,
  { inputs, second }: Journey,
  more: { reserve: Value; coldEnergy: Value<Curve> },
  item: string,
): RangeFigures {
  const labels = Object.fromEntries(Object.entries(rangeOfOne.card.gives).map(([key, one]) => [key, `${one.label}, ${item}`]))
  const done = second
    ? make.all('', rangeOfTwo, { ...inputs, ...more, ...second }, { item, labels })
    : make.all('', rangeOfOne, { ...inputs, ...more }, { item, labels })
  return done.figures as unknown as RangeFigures
}
