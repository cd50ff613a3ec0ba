import type { Model } from '../../model/model.ts'
import { type Field, isGap } from '../../working/value.ts'

export type Rated = 'total' | 'front axle' | 'rear axle'
export const RATED: readonly Rated[] = ['total', 'front axle', 'rear axle']

/** Permitted masses of the finished car: those planned in the brief, and where it leaves one out the donor car's. */
export function ratingsOf({ brief, donor }: Model): Readonly<Record<Rated, Field>> {
  const one = (key: 'total' | 'frontAxle' | 'rearAxle'): Field => (isGap(brief.ratings[key]) ? donor.ratings[key] : brief.ratings[key])
  return { total: one('total'), 'front axle': one('frontAxle'), 'rear axle': one('rearAxle') }
}
