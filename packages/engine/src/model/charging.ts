import type { Curve, Field } from '../working/value.ts'
import type { Here, Named } from './group.ts'

export type Socket = 'household socket' | 'dedicated point' | 'industrial socket' | 'three-phase point' | 'DC post'
export type ChargingPlace = Here & {
  readonly socket: Field<Socket>
  readonly voltage: Field
  readonly current: Field
  readonly phases: Field
  readonly power: Field
  readonly hours: Field
  readonly cable: Field
  /** What the pilot of wall box or lead lets the car draw. */
  readonly setTo: Field
  readonly extension: Field<'yes' | 'no'>
  readonly pricePerEnergy: Field
}
export type ChargerPoint = Here & { readonly power: Field; readonly efficiency: Field }
export type Charger = Here & {
  readonly part: Field<string>
  readonly power: Field
  readonly lowestVoltage: Field
  readonly highestVoltage: Field
  readonly current: Field
  readonly phases: Field
  readonly efficiency: Field
  /** How the loss at full power splits: what stays at any power, what grows with its square. */
  readonly fixedLoss: Field
  readonly squareLoss: Field
  /** Efficiency at powers below the full one, from a sheet or a meter. */
  readonly partLoad: ChargerPoint
  readonly halfLoad: ChargerPoint
  /** What the car's own electronics draw while it charges. */
  readonly standingPower: Field
  readonly setTo: Field
  readonly mass: Field
  readonly x: Field
  readonly y: Field
  readonly z: Field
  readonly price: Field
}
/** Where a mains lead is plugged into the car. */
export type Inlet = Here & {
  readonly part: Field<string>
  readonly current: Field
  readonly phases: Field
  readonly mass: Field
  readonly x: Field
  readonly y: Field
  readonly z: Field
  readonly price: Field
}
export type Charging = Here & {
  /** Share of the charging current the cells take over charge. */
  readonly taper: Field<Curve>
  readonly blocksDrive: Field<'yes' | 'no'>
  readonly charger: Charger
  readonly inlet: Inlet
  readonly dc: Here & { readonly inletCurrent: Field; readonly inletVoltage: Field }
  readonly places: Named<ChargingPlace>
}
