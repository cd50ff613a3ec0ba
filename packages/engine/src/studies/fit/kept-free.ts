import type { KeepOut } from '../../model/fit.ts'
import type { Model } from '../../model/model.ts'
import type { Value } from '../../working/value.ts'
import type { Three } from './places.ts'

/** Ends of a room that is kept free, low ones first. */
export type FreeRoom = { readonly is: 'room'; readonly low: Three; readonly high: Three }
export type FreeShaft = {
  readonly is: 'shaft'
  readonly from: Three
  readonly to: Three
  readonly diameter: Value
  readonly bump: Value
  readonly droop: Value
}

/** What is kept free, by name in an order that does not hang on the file. */
export const keptFreeOf = (m: Model): readonly (readonly [string, KeepOut])[] =>
  Object.entries(m.fit.keepOuts)
    .flatMap(([name, k]): [string, KeepOut][] => (k ? [[name, k]] : []))
    .sort(([a], [b]) => (a < b ? -1 : 1))

/** The fields of one that is kept free, as a study reads them. */
export const readsOf = (k: KeepOut) =>
  k.kind === 'shaft'
    ? {
        is: 'shaft' as const,
        from: [k.fromX, k.fromY, k.fromZ] as const,
        to: [k.toX, k.toY, k.toZ] as const,
        diameter: k.diameter,
        bump: k.bump,
        droop: k.droop,
      }
    : { is: 'room' as const, low: [k.front, k.left, k.bottom] as const, high: [k.rear, k.right, k.top] as const }
