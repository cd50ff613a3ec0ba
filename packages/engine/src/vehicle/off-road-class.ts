import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'

const DEGREE = Math.PI / 180
const EU = { work: 'eu-2018-858', place: 'category M1G, five of six', mark: 'from memory' } as const
const US = { work: 'cfr-523', place: '523.5, off-highway operation, four of five', mark: 'from memory' } as const
const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const angle = (symbol: string, label: string) => ({ symbol, unit: 'rad', label, shows: 'angle' }) as const
const least = (name: string, label: string, symbol: string, value: number, unit: 'rad' | 'm', source: typeof EU | typeof US) =>
  standard(`off-road-${name}`, label, symbol, value, unit, source)

const APPROACH = least('approach-eu', 'Approach angle, M1G', 'α_A', 25 * DEGREE, 'rad', EU)
const DEPARTURE = least('departure-eu', 'Departure angle, M1G', 'α_D', 20 * DEGREE, 'rad', EU)
const RAMP = least('ramp-eu', 'Ramp angle, M1G', 'β_0', 20 * DEGREE, 'rad', EU)
const AXLES = least('axles-eu', 'Clearance under an axle, M1G', 'z_a', 0.18, 'm', EU)
const MIDDLE = least('between-eu', 'Clearance between the axles, M1G', 'z_b', 0.2, 'm', EU)
const APPROACH_US = least('approach-us', 'Approach angle, US', 'α_A', 28 * DEGREE, 'rad', US)
const DEPARTURE_US = least('departure-us', 'Departure angle, US', 'α_D', 20 * DEGREE, 'rad', US)
const RAMP_US = least('ramp-us', 'Ramp angle, US', 'β_0', 14 * DEGREE, 'rad', US)
const RUNNING_US = least('running-us', 'Running clearance, US', 'z_b', 0.2, 'm', US)
const AXLES_US = least('axles-us', 'Clearance under the axles, US', 'z_a', 0.18, 'm', US)

const met = { symbol: 'n', unit: '1', label: 'met', shows: 'count' } as const
const angles = { approach: angle('α_1', 'approach angle'), departure: angle('α_2', 'departure angle'), ramp: angle('β', 'ramp angle') }
const WHY = 'the count itself; the limits are not re-read'
const HANDBOOK =
  'A box hung low may cost the class, and the towing rights that come with it. In the handbook only: no study asks for these angles yet.'

/** How many of the six measures of the EU off-road class a car meets: five are asked for. */
export const offRoadMeasuresEu = formula(
  {
    id: 'off-road-measures-eu',
    label: 'Measures of the EU off-road class met, of six',
    gives: met,
    takes: {
      ...angles,
      front: length('z_1', 'clearance under the front axle'),
      rear: length('z_2', 'clearance under the rear axle'),
      middle: length('z_3', 'clearance between the axles'),
    },
    uses: [APPROACH, DEPARTURE, RAMP, AXLES, MIDDLE],
    text: [
      'n_1 = { 1 if α_1 ≥ α_A; 0 otherwise }',
      'n_2 = { 1 if α_2 ≥ α_D; 0 otherwise }',
      'n_3 = { 1 if β ≥ β_0; 0 otherwise }',
      'n_4 = { 1 if z_1 ≥ z_a; 0 otherwise }',
      'n_5 = { 1 if z_2 ≥ z_a; 0 otherwise }',
      'n_6 = { 1 if z_3 ≥ z_b; 0 otherwise }',
      'n = n_1 + n_2 + n_3 + n_4 + n_5 + n_6',
    ].join('\n'),
    source: EU,
    leavesOut: `What else the class asks for: driven axles, locks, slope climbed. ${HANDBOOK}`,
    proof: { none: WHY },
  },
  x =>
    [
      x.approach >= APPROACH.value,
      x.departure >= DEPARTURE.value,
      x.ramp >= RAMP.value,
      x.front >= AXLES.value,
      x.rear >= AXLES.value,
      x.middle >= MIDDLE.value,
    ].filter(Boolean).length,
)

/** How many of the five measures of the US off-highway class a car meets: four are asked for. */
export const offRoadMeasuresUs = formula(
  {
    id: 'off-road-measures-us',
    label: 'Measures of the US off-highway class met, of five',
    gives: met,
    takes: { ...angles, running: length('z_3', 'running clearance'), axles: length('z_1', 'clearance under the lower axle') },
    uses: [APPROACH_US, DEPARTURE_US, RAMP_US, RUNNING_US, AXLES_US],
    text: [
      'n_1 = { 1 if α_1 ≥ α_A; 0 otherwise }',
      'n_2 = { 1 if α_2 ≥ α_D; 0 otherwise }',
      'n_3 = { 1 if β ≥ β_0; 0 otherwise }',
      'n_4 = { 1 if z_3 ≥ z_b; 0 otherwise }',
      'n_5 = { 1 if z_1 ≥ z_a; 0 otherwise }',
      'n = n_1 + n_2 + n_3 + n_4 + n_5',
    ].join('\n'),
    source: US,
    leavesOut: `What else the class asks for: four driven wheels or a gross mass. ${HANDBOOK}`,
    proof: { none: WHY },
  },
  x =>
    [
      x.approach >= APPROACH_US.value,
      x.departure >= DEPARTURE_US.value,
      x.ramp >= RAMP_US.value,
      x.running >= RUNNING_US.value,
      x.axles >= AXLES_US.value,
    ].filter(Boolean).length,
)
