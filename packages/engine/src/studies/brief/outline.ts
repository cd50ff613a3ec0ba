import type { Gap, Measure, Until } from '../../working/value.ts'
import { maybe, study } from '../study.ts'

const empty = (path: string, label: string, map: object, until: Until = 'any time', measure?: Measure): Gap | null =>
  Object.keys(map).length > 0 ? null : { gap: true, path, label, until, ...(measure ? { measure } : {}), why: 'missing' }
/** What comes off is weighed then or never. */
const OFF_THE_CAR: Measure = { tool: 'hanging scale and tape, as each part comes off', accuracy: '± 0.5 kg, ± 20 mm', minutes: 5 }

/** Sets of things a conversion cannot do without: while one is empty, it is asked for. */
export const outline = study({
  id: 'outline',
  stage: 'brief',
  asks: 'Is there enough of a plan to judge?',
  reads: m => ({
    goals: maybe(empty('brief.goals', 'goals: what the finished car must do', m.brief.goals)),
    loads: maybe(empty('brief.loads', 'load cases: who and what it carries', m.brief.loads)),
    seats: maybe(empty('donor.seats', 'seat rows', m.donor.seats)),
    removed: maybe(empty('donor.removed', 'parts taken out', m.donor.removed, 'before the engine comes out', OFF_THE_CAR)),
    units: maybe(empty('drive.units', 'drive units: motor, inverter and their way to an axle', m.drive.units)),
    boxes: maybe(empty('pack.boxes', 'battery boxes', m.pack.boxes)),
    trips: maybe(empty('trips.named', 'trips the car is judged by', m.trips.named)),
    places: maybe(empty('charging.places', 'charging places', m.charging.places)),
  }),
  answer: () => ({}),
})
