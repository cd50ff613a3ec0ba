import type { Field } from '../working/value.ts'
import type { Here, Named } from './group.ts'

/** A tyre size, read by the marking's own rules. One text stands behind all of it. */
export type Tyre = {
  readonly text: Field<string>
  readonly width: Field
  readonly aspect: Field
  readonly rim: Field
  readonly diameter: Field
  readonly construction: Field<'radial' | 'bias'>
  readonly loadEach: Field
  readonly topSpeed: Field
}
export type LedgerItem = Here & { readonly mass: Field; readonly x: Field; readonly y: Field; readonly z: Field }
/** A part taken out; a fuel tank says whether fuel was in it on the scale. */
export type RemovedItem = LedgerItem & { readonly fuel: Field<'still in it' | 'drained'> }
export type BoughtItem = LedgerItem & { readonly part: Field<string>; readonly price: Field }
export type SeatRow = Here & { readonly places: Field; readonly x: Field }
/** One step of speed of the coast-down: the times the car took for it in each run, out and back. Runs are paired by number. */
export type CoastDownStep = Here & { readonly from: Field; readonly to: Field } & {
  readonly [K in 'out1' | 'out2' | 'out3' | 'out4' | 'out5' | 'out6' | 'back1' | 'back2' | 'back3' | 'back4' | 'back5' | 'back6']: Field
}

/** A car on the scales, by wheels or by axles. */
export type Scales = {
  readonly frontLeft: Field
  readonly frontRight: Field
  readonly rearLeft: Field
  readonly rearRight: Field
  readonly front: Field
  readonly rear: Field
}

/** Where a usual part is, that no part put in is named after. */
export type NotListed = Field<'with another part' | 'not fitted'>
export type EnginePosition = 'transverse front' | 'longitudinal front' | 'rear' | 'mid'
export type DrivenWheels = 'front' | 'rear' | 'part-time 4x4' | 'all'
export type BodyClass = 'open two-seater' | 'saloon' | 'estate' | 'hatchback' | 'off-road' | 'pickup' | 'van'

export type Donor = Here & {
  readonly enginePosition: Field<EnginePosition>
  readonly drivenWheels: Field<DrivenWheels>
  readonly body: Field<BodyClass>
  readonly category: Field<'M1' | 'M2' | 'N1' | 'N2' | 'L7'>
  readonly firstRegistered: Field<string>
  readonly built: Field<string>
  readonly registeredIn: Field<string>
  readonly historic: Field<'yes' | 'no'>
  readonly roadworthy: Field<'yes' | 'no'>
  /** Mass in running order on the papers: driver and fuel in it. */
  readonly registeredMass: Field
  readonly wheelbase: Field
  readonly trackFront: Field
  readonly trackRear: Field
  readonly centreHeight: Field
  readonly width: Field
  readonly height: Field
  readonly tyre: Tyre
  /** The tyre the speedometer was set for, where another is on now. */
  readonly tyreBefore: Tyre
  readonly speedometerDrive: Field<'output shaft' | 'wheels'>
  readonly speedometerDriveAfter: Field<'speed sender' | 'wheels' | 'none'>
  readonly rollingCircumference: Field
  /** Wheel centre above the ground with the car standing, and its class value as a share of the unloaded radius. */
  readonly loadedRadius: Field
  readonly loadedShare: Field
  readonly dragArea: Field
  readonly dragCoefficient: Field
  readonly rollingResistance: Field
  /** Rolling resistance on a surface against dry asphalt. */
  readonly rollingFactor: Here & { readonly wet: Field; readonly gravel: Field; readonly snow: Field }
  readonly wheelInertia: Field
  readonly grip: Here & { readonly dry: Field; readonly wet: Field; readonly gravel: Field; readonly snow: Field }
  readonly topSpeed: Field
  readonly engine: Here & {
    readonly power: Field
    /** Strongest engine the maker offered in this body, where that is another one. */
    readonly strongest: Field
    readonly torque: Field
    readonly torqueSpeed: Field
    readonly redLine: Field
    readonly fuel: Field<'petrol' | 'diesel'>
  }
  readonly weighing: Here & Scales & { readonly fuel: Field; readonly tank: Field }
  readonly ratings: Here & {
    readonly frontAxle: Field
    readonly rearAxle: Field
    readonly total: Field
    readonly train: Field
    readonly noseLoad: Field
    readonly towBraked: Field
    readonly towUnbraked: Field
  }
  readonly gearbox: Here & {
    readonly gears: Named<Field>
    readonly reverse: Field
    readonly inputTorque: Field
    readonly inputSpeed: Field
    readonly efficiency: Field
    readonly inputInertia: Field
  }
  readonly transferCase: Here & { readonly high: Field; readonly low: Field; readonly inputTorque: Field }
  readonly finalDrive: Field
  readonly finalDriveTorque: Field
  readonly towing: Here & {
    readonly couplingOverhang: Field
    readonly couplingHeight: Field
    /** D value on the plate of the coupling. */
    readonly couplingStrength: Field
    /** How the finished car is moved when stranded. */
    readonly recovery: Field<'on a flatbed' | 'driven wheels raised' | 'on its wheels'>
  }
  readonly seats: Named<SeatRow>
  readonly luggageX: Field
  readonly brakes: Here & {
    readonly front: Field<'disc' | 'drum'>
    readonly rear: Field<'disc' | 'drum'>
    readonly assist: Field<'vacuum' | 'electric' | 'hydraulic' | 'none'>
    readonly assistAfter: Field<'vacuum pump' | 'electric booster' | 'none'>
    readonly abs: Field<'none' | 'rear axle' | 'four channels'>
    readonly absAfter: Field<'kept' | 'taken out'>
    /** Of the finished car alone, laden. */
    readonly deceleration: Field
  }
  readonly steering: Here & {
    readonly assist: Field<'none' | 'hydraulic' | 'electric'>
    readonly assistAfter: Field<'none' | 'electro-hydraulic' | 'electric column' | 'electric rack'>
  }
  readonly immobiliser: Here & {
    readonly fitted: Field<'none' | 'apart from the engine computer' | 'in the engine computer'>
    readonly after: Field<'kept' | 'moved' | 'replaced' | 'left out'>
  }
  readonly airConditioning: Field<'none' | 'belt' | 'electric'>
  readonly removed: Named<RemovedItem>
  readonly added: Named<BoughtItem>
  readonly notListed: Here & {
    readonly dcDc: NotListed
    readonly highVoltageCable: NotListed
    readonly junctionBox: NotListed
    readonly starterBattery: NotListed
    readonly bms: NotListed
    readonly cooling: NotListed
    readonly cabinHeater: NotListed
    readonly chargeInlet: NotListed
  }
  readonly coastDown: Here & {
    readonly steps: Named<CoastDownStep>
    readonly mass: Field
    readonly temperature: Field
    readonly pressure: Field
    readonly f0: Field
    readonly f1: Field
    readonly f2: Field
  }
}
