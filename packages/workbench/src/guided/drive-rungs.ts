import type { Part } from '@ampwright/catalogue'
import { atLeast, classFigure, inOrder } from './class-figures.ts'
import type { Way } from './layouts.ts'

/** A motor, with an inverter of its own where it does not bring one. */
export type Motor = { readonly part: Part; readonly inverter?: Part }
/** What drives the car: one motor, or one for each axle, front first. */
export type DriveRung = readonly [Motor, ...Motor[]]

/** Drive units that bring inverter, reducer and differential, and state what they give for long. */
const unitParts = (): readonly Part[] => inOrder('peak-power', 'drive-unit-pm-front', 'drive-unit-pm-rear', 'drive-unit-im-rear')
const motorParts = (): readonly Part[] => inOrder('peak-power', 'motor-pm')

/** Motors to be tried for a way of the torque, weakest first. */
export function driveRungs(way: Way): readonly DriveRung[] {
  const units = unitParts().map((part): DriveRung => [{ part }])
  if (way === 'drive unit') return units
  if (way === 'two drive units') return units.map(([unit]): DriveRung => [unit, unit])
  const inverters = inOrder('power', 'inverter-400v')
  return motorParts().map((part): DriveRung => {
    const inverter = atLeast(inverters, 'power', classFigure(part, 'peak-power') as number)
    return [{ part, ...(inverter ? { inverter } : {}) }]
  })
}
