import { standard } from '../working/value.ts'

/** Standard acceleration of free fall. */
export const GRAVITY = standard('gravity', 'Standard acceleration of free fall', 'g', 9.80665, 'm/s²', {
  work: 'iso-80000-3',
  place: 'standard acceleration of free fall',
})
