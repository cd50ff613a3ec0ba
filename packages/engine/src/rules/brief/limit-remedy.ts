import type { Model } from '../../model/model.ts'
import { isGap } from '../../working/value.ts'
import type { Remedy, Setting } from '../rule.ts'

type What = {
  readonly peak: 'peakPower' | 'peakTorque'
  readonly key: 'power-limit' | 'torque-limit'
  readonly kind: 'power' | 'torque'
  /** Steps a limit is written in, so that it reads like one somebody would set. */
  readonly step: number
}
const POWER: What = { peak: 'peakPower', key: 'power-limit', kind: 'power', step: 100 }
const TORQUE: What = { peak: 'peakTorque', key: 'torque-limit', kind: 'torque', step: 0.1 }

/** Limits the motors together to a total, each by its share, and seals the limit. Nothing where a peak is unknown. */
function limitedTo(m: Model, total: number, { peak, key, kind, step }: What, says: string): readonly Remedy[] {
  const units = Object.entries(m.drive.units).map(([name, u]) => [name, u.motor[peak]] as const)
  const known = units.flatMap(([name, p]) => (isGap(p) ? [] : [{ name, peak: p.value }]))
  const all = known.reduce((sum, u) => sum + u.peak, 0)
  if (known.length < units.length || !(all > 0)) return []
  const sets = known.flatMap((u): Setting[] => {
    // a hair of slack, so that a whole number of steps is not lost to rounding
    const value = Math.floor((total * u.peak) / all / step + 1e-9) * step
    const at = `drive.units.${u.name}`
    return [
      { path: `${at}.${key}`, to: { value: Number(value.toPrecision(12)), kind } },
      { path: `${at}.limit-sealed`, to: { word: 'yes' } },
    ]
  })
  return [{ do: 'set', says, sets }]
}

export const powerLimitedTo = (m: Model, total: number): readonly Remedy[] =>
  limitedTo(m, total, POWER, 'Limit the peak power in software, seal the limit and state the limited figure in the papers.')
export const torqueLimitedTo = (m: Model, total: number): readonly Remedy[] =>
  limitedTo(m, total, TORQUE, 'Limit the peak torque in software, seal the limit and state the limited figure in the papers.')
