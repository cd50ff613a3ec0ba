import { type Comparison, compared, demandPositive } from './comparison.ts'
import { NAMED } from './requirement.ts'
import type { Limits } from './sets.ts'

const KMH = 1 / 3.6

/** Design top speed of the finished car against that of the register [m/s], where it may not be lowered. */
export function topSpeedDrop(limits: Limits, speeds: { readonly donor: number; readonly converted: number }): Comparison | undefined {
  const limit = limits('speed.max.drop')
  if (limit?.requirement.test !== 'must-not') return undefined
  demandPositive(speeds)
  return compared(limit, { role: 'limit', found: speeds.converted, low: speeds.donor, unit: 'm/s' })
}

/**
 * What a speedometer may show [m/s] at a true speed [m/s]: never less, and no more than a tenth of it and 6 km/h above.
 * `undefined` where the set has no such row, or outside the 40 to 120 km/h it is for.
 */
export function speedometerReading(limits: Limits, speeds: { readonly actual: number; readonly shown: number }): Comparison | undefined {
  const limit = limits('speedo.over')
  if (limit?.requirement.value !== NAMED.speedometerOverRead) return undefined
  demandPositive(speeds)
  const { actual, shown } = speeds
  // half a millimetre per second of slack, so that a figure typed in km/h still lies on the edge it names
  if (actual < 40 * KMH - 5e-4 || actual > 120 * KMH + 5e-4) return undefined
  return compared(limit, { role: 'limit', found: shown, low: actual, high: actual + 0.1 * actual + 6 * KMH, unit: 'm/s' })
}
