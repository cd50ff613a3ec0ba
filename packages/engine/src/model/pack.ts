import type { Curve, Field } from '../working/value.ts'
import type { Here, Named } from './group.ts'

export type Chemistry = 'NMC' | 'NCA' | 'LFP' | 'LTO'

/** A module as its label or its seller states it. One module may be a single cell. */
export type Module = Here & {
  readonly part: Field<string>
  readonly chemistry: Field<Chemistry>
  readonly cellsInSeries: Field
  readonly cellsInParallel: Field
  readonly cellCapacity: Field
  readonly state: Field<'new' | 'used'>
  readonly cellResistance: Field
  readonly dropAtHourRate: Field
  readonly branchShare: Field
  readonly branchTime: Field
  readonly coldCoefficient: Field
  readonly openCircuit: Field<Curve>
  readonly resistanceOverCharge: Field<Curve>
  readonly chargeTable: Field<Curve>
  readonly coldEnergy: Field<Curve>
  readonly cellShape: Field<'pouch' | 'prismatic' | 'cylindrical'>
  readonly cellFuses: Field<'yes' | 'no'>
  readonly pressureLeast: Field
  readonly pressureMost: Field
  readonly mass: Field
  readonly length: Field
  readonly width: Field
  readonly height: Field
  readonly peakCurrent: Field
  readonly peakTime: Field
  readonly continuousCurrent: Field
  readonly chargeCurrent: Field
  readonly health: Field
  readonly price: Field
  /** Modules there are to use. */
  readonly have: Field
}
/** A second form of module: the same cells, as many side by side in each group, another number of groups in series. */
export type OtherModule = Here & {
  readonly sameCells: Field<'yes' | 'no'>
  readonly cellsInSeries: Field
  /** Modules of it in each string. */
  readonly inSeries: Field
  readonly have: Field
  readonly mass: Field
  readonly length: Field
  readonly width: Field
  readonly height: Field
  readonly price: Field
}
/** One salvaged module on the bench. */
export type ModuleRecord = Here & {
  readonly form: Field<'main' | 'other'>
  readonly serial: Field<string>
  readonly source: Field<string>
  readonly history: Field<string>
  readonly capacity: Field
  readonly resistance: Field
  readonly restVoltage: Field
  readonly restVoltageLater: Field
  readonly daysApart: Field
  readonly insulation: Field
  readonly place: Field<string>
  readonly use: Field<'in the pack' | 'spare' | 'rejected'>
  readonly againstOthers: Field
}
export type PackBox = Here & {
  readonly modules: Field
  readonly otherModules: Field
  readonly x: Field
  readonly y: Field
  readonly z: Field
  readonly overhead: Field
  readonly price: Field
  readonly where: Field<'engine bay' | 'under floor' | 'tank space' | 'boot' | 'cabin' | 'tunnel'>
  readonly sealed: Field<'yes' | 'no'>
}
/** A part that hangs on the pack voltage, as the range it works in. */
export type VoltageUser = Here & { readonly lowest: Field; readonly highest: Field; readonly part: Field<string> }

export type Pack = Here & {
  readonly module: Module
  readonly otherModule: OtherModule
  readonly modulesInSeries: Field
  readonly strings: Field
  readonly cellLowest: Field
  readonly cellHighest: Field
  readonly chargeTo: Field
  readonly wiringResistance: Field
  readonly boxConductance: Field
  readonly compression: Field<'module housing' | 'fixture' | 'none'>
  readonly pressingForce: Field
  readonly levelled: Field<'charged full one by one' | 'not yet'>
  readonly stringsApart: Field
  readonly limits: Here & {
    /** Parts of the catalogue; their mass and price stand with the box they sit in. */
    readonly fusePart: Field<string>
    readonly stringFusePart: Field<string>
    readonly contactorPart: Field<string>
    readonly fuse: Field
    readonly fuseVoltage: Field
    readonly stringFuse: Field
    readonly contactor: Field
    readonly contactorVoltage: Field
    /** Melts the fuse, and carried by the contactor, for as long as the motors give their peak. */
    readonly fuseMelts: Field
    readonly contactorPeak: Field
    readonly bms: Field
    readonly bmsCharge: Field
  }
  readonly bms: Here & {
    readonly part: Field<string>
    readonly fitted: Field<'yes' | 'no'>
    readonly controlsCharger: Field<'yes' | 'no'>
    readonly limitsDrive: Field<'by lowest cell' | 'by pack voltage' | 'no'>
    readonly countsCharge: Field<'yes' | 'no'>
    readonly watchesRest: Field<'yes' | 'no'>
    readonly watchesTemperature: Field<'yes' | 'no'>
    readonly cells: Field
    readonly lowestChargeTemperature: Field
  }
  readonly heater: Here & { readonly power: Field; readonly to: Field }
  readonly life: Here & {
    readonly years: Field
    readonly distancePerYear: Field
    readonly parkedAt: Field
    readonly depth: Field
    readonly temperature: Field
    readonly swing: Field
  }
  /** Modules the boxes do not hold: what their boxes add, and where they will stand. */
  readonly unboxed: Here & { readonly boxShare: Field; readonly x: Field; readonly y: Field; readonly z: Field }
  /** Left unplugged: what leaves the pack then, and for how long. */
  readonly standing: Here & { readonly draw: Field; readonly longest: Field }
  readonly users: Named<VoltageUser>
  readonly boxes: Named<PackBox>
  readonly salvage: Named<ModuleRecord>
  readonly lampTest: Here & {
    readonly current: Field
    readonly time: Field
    readonly before: Field
    readonly after: Field
    readonly temperature: Field
    readonly charge: Field
    readonly modules: Field
  }
}
