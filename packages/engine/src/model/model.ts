import type { Field } from '../working/value.ts'
import type { Brakes } from './brakes.ts'
import type { Brief } from './brief.ts'
import type { Charging } from './charging.ts'
import type { Donor } from './donor.ts'
import type { Drive } from './drive.ts'
import type { Fit } from './fit.ts'
import type { Here, Named } from './group.ts'
import type { HighVoltage } from './high-voltage.ts'
import type { Pack } from './pack.ts'
import type { Steering } from './steering.ts'
import type { SurveyedMeshes, Surveys } from './survey.ts'
import type { Trips } from './trips.ts'

/** Somebody took responsibility for a finding that is not sound. It lapses when what the finding rests on changes. */
export type Acceptance = Here & {
  readonly by: Field<string>
  readonly reason: Field<string>
  readonly scope: Field<string>
  readonly date: Field<string>
  readonly rests: Field<string>
}

/** Somebody said that a finding does not apply to this car. It lapses as an acceptance does. */
export type NotApplying = Here & {
  readonly by: Field<string>
  readonly reason: Field<string>
  readonly date: Field<string>
  readonly rests: Field<string>
}

/** The resolved car: SI, with gaps left visible. */
export type Model = {
  readonly car: Field<string>
  readonly brief: Brief
  readonly donor: Donor
  readonly drive: Drive
  readonly pack: Pack
  readonly trips: Trips
  readonly charging: Charging
  readonly fit: Fit
  /** What was measured of the scans outside of the engine, as far as that has come. */
  readonly surveys?: Surveys
  /** The same of the meshes of parts. */
  readonly meshes?: SurveyedMeshes
  readonly highVoltage: HighVoltage
  readonly brakes: Brakes
  readonly steering: Steering
  readonly accepted: Named<Acceptance>
  readonly doesNotApply: Named<NotApplying>
}
