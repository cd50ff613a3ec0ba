import type { Curve, Field, Grid } from '../working/value.ts'
import type { Here, Named } from './group.ts'

export type MotorKind = 'permanent-magnet' | 'induction' | 'series-dc'

/** Efficiency of motor with inverter at one torque and speed. */
export type EfficiencyPoint = Here & { readonly torque: Field; readonly speed: Field; readonly efficiency: Field }

/** What a datasheet or a breaker's list says about a motor. */
export type Motor = Here & {
  readonly part: Field<string>
  readonly kind: Field<MotorKind>
  readonly peakTorque: Field
  readonly peakPower: Field
  readonly peakTime: Field
  readonly continuousTorque: Field
  readonly continuousPower: Field
  readonly coolantTemperature: Field
  readonly baseSpeed: Field
  readonly statedVoltage: Field
  readonly topSpeed: Field
  readonly rotorInertia: Field
  readonly mass: Field
  readonly diameter: Field
  readonly length: Field
  readonly x: Field
  readonly y: Field
  readonly z: Field
  readonly bestEfficiency: Field
  readonly efficiencyMap: Field<Grid>
  readonly efficiencyPoints: Named<EfficiencyPoint>
  readonly lossFactor: Field
  readonly unpoweredDrag: Field<Curve>
  readonly thermalTime: Field
  readonly windingLimit: Field
  readonly price: Field
}
/** The power module of an inverter, by its sheet, and the current its efficiency is told for. */
export type InverterBridge = Here & {
  readonly threshold: Field
  readonly resistance: Field
  readonly diodeThreshold: Field
  readonly diodeResistance: Field
  readonly switchingEnergy: Field
  readonly recoveryEnergy: Field
  readonly atCurrent: Field
  readonly atVoltage: Field
  readonly frequency: Field
  readonly phaseCurrent: Field
  readonly modulation: Field
  readonly powerFactor: Field
}
export type Inverter = Here & {
  readonly part: Field<string>
  readonly lowestVoltage: Field
  readonly highestVoltage: Field
  readonly peakCurrent: Field
  readonly continuousCurrent: Field
  readonly efficiency: Field
  readonly bridge: InverterBridge
  readonly mass: Field
  readonly x: Field
  readonly y: Field
  readonly z: Field
  readonly price: Field
}
export type Through = 'drive unit' | 'kept gearbox' | 'single reduction'

/** One motor with its inverter and its way to an axle. */
export type DriveUnit = Here & {
  readonly part: Field<string>
  readonly axle: Field<'front' | 'rear' | 'both'>
  readonly through: Field<Through>
  readonly gear: Field<string>
  readonly shifting: Field<'held in one gear' | 'with clutch' | 'without clutch'>
  readonly shiftTime: Field
  readonly transfer: Field<'none' | 'high' | 'low'>
  readonly reduction: Field
  readonly finalDrive: Field
  readonly efficiency: Field
  readonly gearDrag: Field
  readonly gearDragAtTop: Field
  readonly couplerTorque: Field
  readonly shaftTorque: Field
  readonly torqueLimit: Field
  readonly powerLimit: Field
  readonly limitSealed: Field<'yes' | 'no'>
  readonly disconnect: Field<'yes' | 'no'>
  readonly rotation: Field<'as its maker meant' | 'reversed'>
  readonly reversedOiled: Field<'yes' | 'no'>
  readonly motor: Motor
  readonly inverter: Inverter
}
export type Drive = Here & {
  readonly units: Named<DriveUnit>
  readonly frontShare: Field
  readonly regeneration: Here & { readonly torqueShare: Field; readonly power: Field; readonly cutOffSpeed: Field }
}
