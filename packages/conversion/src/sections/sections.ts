import { date, group, mapOf, type Node, words } from '../schema/field.ts'
import { brief } from './brief.ts'
import { charging } from './charging.ts'
import { donor } from './donor.ts'
import { drive } from './drive.ts'
import { pack } from './pack.ts'
import { trips } from './trips.ts'

const accepted = mapOf(
  'accepted findings',
  'finding',
  group('acceptance', {
    by: words('accepted by'),
    reason: words('reason'),
    scope: words('scope', { says: 'For what use, until when.' }),
    date: date('day'),
    rests: words('fingerprint', { says: 'What the finding rested on; copied from the finding. When it changes, the acceptance lapses.' }),
  }),
)

/** Every section of the conversion file, in the order of the job. */
export const SECTIONS = { car: words('name of the car'), brief, donor, drive, pack, trips, charging, accepted } as const satisfies Record<
  string,
  Node
>
