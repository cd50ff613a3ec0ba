import { surfaceAt } from './lines.ts'

/**
 * The greatest share of the motors' torques at which their electrical power keeps to a limit [W]: drawn while driving, given back while
 * braking. Zero where even the losses at no torque break it.
 *
 * Regula falsi with halved weights (Illinois), to rounding; gives the side that keeps the limit.
 */
export function shareWithin(
  limit: number,
  braking: boolean,
  speeds: Float64Array,
  torques: Float64Array,
  losses: readonly Float64Array[],
): number {
  const lossAt = surfaceAt
  const over = (share: number): number => {
    let power = -limit
    for (let i = 0; i < torques.length; i++) {
      const torque = share * torques[i]!,
        loss = lossAt(losses[i]!, speeds[i]!, torque)
      power += braking ? speeds[i]! * torque - loss : speeds[i]! * torque + loss
    }
    return power
  }
  let low = 0,
    high = 1,
    below = over(0),
    above = over(1)
  if (below >= 0) return 0
  if (above <= 0) return 1
  for (let turn = 0, side = 0; turn < 100 && high - low > 1e-15; turn++) {
    const middle = high - (above * (high - low)) / (above - below),
      found = over(middle)
    if (found <= 0) {
      low = middle
      below = found
      if (side < 0) above /= 2
      side = -1
    } else {
      high = middle
      above = found
      if (side > 0) below /= 2
      side = 1
    }
    if (Math.abs(found) <= 1e-13 * Math.abs(limit)) return middle
  }
  return low
}
