import type { System } from '@ampwright/conversion'
import type { One } from '@ampwright/engine'
import { shownNumber } from '../shown.ts'
import { kindOfOne } from './inputs.ts'

/** The range in which a formula holds, in the reader's units. */
export function heldRange(one: One, system: System): string | undefined {
  if (one.holds === undefined) return undefined
  const [low, high] = one.holds.map(v => shownNumber(v, kindOfOne(one), one.unit, system))
  return `${low} … ${high}`
}
