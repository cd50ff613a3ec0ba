import type { Field } from '../working/value.ts'
import type { Here, Named } from './group.ts'

/** A print of a roller brake tester: force under each wheel, with what stood on the rollers. */
export type BrakePrint = Here & {
  readonly when: Field<'before' | 'after'>
  readonly mass: Field
  readonly frontLeft: Field
  readonly frontRight: Field
  readonly rearLeft: Field
  readonly rearRight: Field
  readonly pedalForce: Field
  readonly parkingLeft: Field
  readonly parkingRight: Field
}
/** The brake of one wheel: a disc or a drum, as the donor's choice says. */
export type WheelBrake = Here & {
  /** Diameter of one piston, and how many press from one side. */
  readonly piston: Field
  readonly pistons: Field
  readonly padFriction: Field
  readonly effectiveRadius: Field
  readonly wheelCylinder: Field
  readonly brakeFactor: Field
  readonly drumRadius: Field
  readonly rotorMass: Field
  readonly cooling: Field
}
export type ParkingBrake = Here & {
  readonly axle: Field<'front' | 'rear'>
  readonly by: Field<'hand' | 'foot'>
  readonly leverRatio: Field
  readonly cableEfficiency: Field
  readonly shoeRatio: Field
  readonly brakeFactor: Field
  readonly radius: Field
}
/** Everything that gives and keeps vacuum: pressures of the switches are below the air, that of the pump is absolute. */
export type Vacuum = Here & {
  readonly volume: Field
  readonly swept: Field
  readonly deadVolume: Field
  readonly pumpSpeed: Field
  readonly leastPressure: Field
  readonly cutIn: Field
  readonly cutOut: Field
  readonly warning: Field
  /** The driver learns of a pump that runs on: a hose leaks, or the switch failed. */
  readonly overrunTold: Field<'yes' | 'no'>
  readonly altitude: Field
}
export type Brakes = Here & {
  readonly prints: Named<BrakePrint>
  readonly front: WheelBrake
  readonly rear: WheelBrake
  readonly masterCylinder: Field
  readonly pedalRatio: Field
  readonly pedalEfficiency: Field
  readonly valve: Here & { readonly knee: Field; readonly slope: Field }
  readonly booster: Here & { readonly diameter: Field; readonly area: Field; readonly gain: Field }
  readonly vacuum: Vacuum
  readonly electricBooster: Here & { readonly force: Field; readonly rodSpeed: Field; readonly efficiency: Field; readonly fuse: Field }
  readonly parking: ParkingBrake
  readonly absSensors: Field<'where they were' | 'moved with their rings' | 'taken out'>
  readonly recovery: Here & {
    readonly lampOn: Field
    readonly cutBy: Field<'anti-lock brakes' | 'slip of the motor' | 'a switch' | 'nothing'>
    readonly underPedal: Field<'stays' | 'gives way'>
    readonly fadesTo: Field
  }
  /** The longest hill the car is taken down. */
  readonly descent: Here & { readonly slope: Field; readonly length: Field; readonly speed: Field; readonly load: Field<string> }
}
