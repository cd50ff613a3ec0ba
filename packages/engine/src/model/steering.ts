import type { Field } from '../working/value.ts'
import type { Here } from './group.ts'

/** Steering gear and what assists it. Efforts are pulls at the rim with the assist off. */
export type Steering = Here & {
  readonly wheelRadius: Field
  readonly rackTravel: Field
  readonly arm: Field
  readonly linkageEfficiency: Field
  readonly gearEfficiency: Field
  readonly tyrePressure: Field
  readonly turns: Field
  readonly effort: Here & {
    readonly standingBefore: Field
    readonly standingAfter: Field
    readonly rollingAfter: Field
  }
  readonly rollingShare: Field
  readonly hydraulic: Here & {
    readonly bore: Field
    readonly rod: Field
    readonly leakage: Field
    readonly pumpFlow: Field
    readonly relief: Field
    readonly pumpEfficiency: Field
    readonly motorEfficiency: Field
  }
  readonly column: Here & {
    readonly driverTorque: Field
    readonly efficiency: Field
    readonly motorCurrent: Field
    readonly windingResistance: Field
  }
  /** Of the unit that assists, hydraulic or electric. */
  readonly fuse: Field
  readonly withoutMessages: Field<'keeps assisting' | 'falls back' | 'drops out'>
}
