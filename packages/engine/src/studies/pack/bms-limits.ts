import type { Pack } from '../../model/pack.ts'
import { type Fact, type Field, isGap, standard } from '../../working/value.ts'

export const NO_LOWER = standard('charge.table-alone', 'the cells’ own table says from when they charge', 'T_min', 0, 'K', {
  work: 'definition',
  place: 'no further limit',
})
const NOTHING = { pull: null, into: null, lowest: null } as const

/**
 * What the BMS is set to, for drive and charger: a limit it has no way to act on holds nothing back, nor does one the file leaves out. Whether it acts is
 * judged by rules of its own; where that is not said yet, what is set counts.
 */
export function bmsLimits({ limits, bms }: Pack) {
  const set = (f: Field): Fact | null => (isGap(f) ? null : f)
  const without = !isGap(bms.fitted) && bms.fitted.value === 'no'
  return {
    drive:
      without || (!isGap(bms.limitsDrive) && bms.limitsDrive.value === 'no')
        ? NOTHING
        : { pull: set(limits.bms), into: set(limits.bmsCharge), lowest: set(bms.lowestChargeTemperature) },
    charger: without || (!isGap(bms.controlsCharger) && bms.controlsCharger.value === 'no') ? null : set(limits.bmsCharge),
  }
}
