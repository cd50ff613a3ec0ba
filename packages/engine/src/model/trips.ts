import type { Curve, Field } from '../working/value.ts'
import type { Surface } from './brief.ts'
import type { Here, Named } from './group.ts'

/** What every trip says: load, weather, what the cabin takes. */
export type TripConditions = {
  readonly load: Field<string>
  readonly trailer: Field<string>
  readonly temperature: Field
  readonly altitude: Field
  readonly headWind: Field
  readonly surface: Field<Surface>
  readonly cabinPower: Field
  /** On a cold and on a hot day, where the range is told for those beside the trip's own weather. */
  readonly cabinPowerCold: Field
  readonly cabinPowerHot: Field
  readonly otherPower: Field
  readonly packTemperature: Field
  /** Range of a transfer case; left out: the one the unit is usually in. */
  readonly transfer: Field<'high' | 'low'>
}
export type CycleTrip = Here & TripConditions & { readonly kind: 'cycle'; readonly cycle: Field<string>; readonly trace: Field<Curve> }
export type SteadyTrip = Here & TripConditions & { readonly kind: 'steady'; readonly speed: Field; readonly slope: Field }
export type ClimbTrip = Here &
  TripConditions & { readonly kind: 'climb'; readonly speed: Field; readonly slope: Field; readonly length: Field }
export type RouteTrip = Here &
  TripConditions & {
    readonly kind: 'route'
    readonly track: Field<string>
    readonly profile: Field<Curve>
    readonly timing: Field<Curve>
    readonly speed: Field
  }
export type Trip = CycleTrip | SteadyTrip | ClimbTrip | RouteTrip

export type Trailer = Here & {
  readonly mass: Field
  readonly noseLoad: Field
  readonly dragArea: Field
  readonly rollingResistance: Field
  readonly braked: Field<'yes' | 'no'>
  /** What its own brakes hold it back with, where it has any. */
  readonly brakeForce: Field
  readonly centreHeight: Field
  /** Coupling to axle; to the middle of several. */
  readonly axleDistance: Field
}

export type Trips = Here & { readonly named: Named<Trip>; readonly trailers: Named<Trailer> }
