import { type Node, words } from '../schema/field.ts'
import { brakes } from './brakes.ts'
import { brief } from './brief.ts'
import { charging } from './charging.ts'
import { donor } from './donor.ts'
import { drive } from './drive.ts'
import { fit } from './fit.ts'
import { highVoltage } from './high-voltage.ts'
import { pack } from './pack.ts'
import { accepted, doesNotApply } from './said-by-hand.ts'
import { steering } from './steering.ts'
import { trips } from './trips.ts'

/** Every section of the conversion file, in the order of the job. */
export const SECTIONS = {
  car: words('name of the car'),
  brief,
  donor,
  drive,
  pack,
  trips,
  charging,
  fit,
  'high-voltage': highVoltage,
  brakes,
  steering,
  accepted,
  'does-not-apply': doesNotApply,
} as const satisfies Record<string, Node>
