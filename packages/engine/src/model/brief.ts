import type { Field } from '../working/value.ts'
import type { Here, Named } from './group.ts'

export type Surface = 'dry' | 'wet' | 'gravel' | 'snow'

/** Under what a goal is to be met. Each goal may say its own; what it leaves out comes from the brief's common conditions. */
export type Conditions = {
  readonly load: Field<string>
  readonly surface: Field<Surface>
  readonly temperature: Field
  readonly altitude: Field
  readonly headWind: Field
  readonly trailer: Field<string>
}
export type TopSpeedGoal = Here & Conditions & { readonly kind: 'top speed'; readonly speed: Field }
export type AccelerationGoal = Here &
  Conditions & { readonly kind: 'acceleration'; readonly from: Field; readonly to: Field; readonly within: Field }
export type HillStartGoal = Here &
  Conditions & { readonly kind: 'hill start'; readonly slope: Field; readonly transfer: Field<'high' | 'low'> }
export type ClimbGoal = Here &
  Conditions & {
    readonly kind: 'climb'
    readonly slope: Field
    readonly transfer: Field<'high' | 'low'>
    readonly speed: Field
    readonly duration: Field
  }
/** A speed held on the level; a hill is a climb. */
export type SteadySpeedGoal = Here & Conditions & { readonly kind: 'steady speed'; readonly speed: Field; readonly duration: Field }
/** What a range goal says of load, trailer and weather itself stands in for what its trip says. */
export type RangeGoal = Here &
  Conditions & {
    readonly kind: 'range'
    readonly trip: Field<string>
    readonly distance: Field
    readonly cabinPower: Field
    readonly packTemperature: Field
  }
export type ChargingGoal = Here & {
  readonly kind: 'charging'
  readonly place: Field<string>
  readonly within: Field
  readonly from: Field
  readonly to: Field
  readonly distance: Field
  readonly trip: Field<string>
  readonly temperature: Field
}
export type Goal = TopSpeedGoal | AccelerationGoal | HillStartGoal | ClimbGoal | SteadySpeedGoal | RangeGoal | ChargingGoal

export type LoadCase = Here & { readonly people: Field; readonly luggage: Field; readonly trailer: Field<string> }

/** What whoever signs said to a demand that is put in words. */
export type Demand = Field<'can be met' | 'does not concern this car' | 'cannot be met'>

export type Brief = Here & {
  readonly rules: Field<string>
  readonly convertedOn: Field<string>
  /** Answers in writing, ahead of the first part. */
  readonly asked: Here & { readonly inspector: Field<string>; readonly insurer: Field<string> }
  readonly partsBoughtFrom: Field<string>
  readonly approvedKit: Field<'yes' | 'no'>
  readonly individualApproval: Field<'yes' | 'no'>
  readonly packApproval: Field<'approved pack' | 'tested with the car' | 'none'>
  /** Demands of the rule set that no figure can be held against. */
  readonly demands: Here & {
    readonly identityPoints: Demand
    readonly originalStructure: Demand
    readonly crashProof: Demand
    readonly radioCompatibility: Demand
    readonly powerMeasure: Demand
    readonly series: Demand
    readonly registrationMark: Demand
    readonly chargerMark: Demand
    readonly towedMass: Demand
  }
  /** What of the car stays as it was. */
  readonly keeps: Here & {
    readonly body: Field<'yes' | 'no'>
    readonly dimensions: Field<'yes' | 'no'>
    readonly safetyEquipment: Field<'yes' | 'no'>
  }
  /** Permitted masses planned for the finished car; what is left out stays as it was. */
  readonly ratings: Here & { readonly frontAxle: Field; readonly rearAxle: Field; readonly total: Field }
  readonly prices: Named<Field>
  readonly workshop: Field<'business' | 'owner'>
  readonly seats: Field
  readonly luggage: Field
  readonly person: Field
  readonly budget: Field
  readonly reserve: Field
  readonly conditions: Here & Conditions
  readonly loads: Named<LoadCase>
  readonly goals: Named<Goal>
}
