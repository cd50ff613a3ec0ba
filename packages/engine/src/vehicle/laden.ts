import { formula } from '../working/formula.ts'

const STATICS = { work: 'statics', place: 'sums and moments' } as const
const mass = (symbol: string, label: string) => ({ symbol, unit: 'kg', label }) as const
const loads = { symbol: 'm_l', unit: 'kg', label: 'people, luggage, nose load', many: true } as const

/** People that sit in one row when rows fill from the front. */
export const peopleInRow = formula(
  {
    id: 'people-in-row',
    label: 'People in the row',
    gives: { symbol: 'n', unit: '1', shows: 'count' },
    takes: {
      people: { symbol: 'N', unit: '1', label: 'people', shows: 'count' },
      ahead: { symbol: 'b', unit: '1', label: 'places in rows ahead', many: true, shows: 'count' },
      places: { symbol: 'p', unit: '1', label: 'places in the row', shows: 'count' },
    },
    text: 'n = max(0, min(p, N − Σ b))',
    source: { work: 'definition', place: 'rows fill from the front' },
    proof: { none: 'definition' },
  },
  ({ people, ahead, places }) => {
    let left = people
    for (const b of ahead) left -= b
    return Math.max(0, Math.min(places, left))
  },
)
export const ladenMass = formula(
  {
    id: 'laden-mass',
    label: 'Laden mass',
    gives: mass('m', 'mass'),
    takes: { kerb: mass('m_k', 'kerb mass'), loads },
    text: 'm = m_k + Σ m_l',
    source: STATICS,
    proof: { none: 'definition' },
  },
  ({ kerb, loads }) => loads.reduce((m, l) => m + l, kerb),
)
/** Rear axle of the laden car: moments about the front axle. */
export const ladenRear = formula(
  {
    id: 'laden-rear',
    label: 'Laden rear axle mass',
    gives: mass('m_R', 'rear axle mass'),
    takes: {
      rear: mass('m_Rk', 'rear axle at kerb'),
      loads,
      x: { symbol: 'x_l', unit: 'm', label: 'behind the front axle', many: true },
      wheelbase: { symbol: 'L', unit: 'm', label: 'wheelbase' },
    },
    text: 'm_R = m_Rk + (Σ m_l · x_l) / L',
    source: STATICS,
    proof: {
      examples: [
        {
          takes: { rear: 500, loads: [75], x: [2.45 + 1.05], wheelbase: 2.45 },
          gives: 607.1,
          within: 0.05,
          source: { work: 'statics', place: 'nose load 75 kg at 1.05 m behind the rear axle, worked by hand' },
        },
      ],
    },
  },
  ({ rear, loads, x, wheelbase }) => {
    let moment = 0
    for (let i = 0; i < loads.length; i++) moment += (loads[i] as number) * (x[i] as number)
    return rear + moment / wheelbase
  },
)
/** What is left to a rating. */
export const roomTo = formula(
  {
    id: 'room-to',
    label: 'Room to the rating',
    gives: mass('Δm', 'room'),
    takes: { rating: mass('m_max', 'rating'), mass: mass('m', 'mass') },
    text: 'Δm = m_max − m',
    source: { work: 'definition', place: 'difference' },
    proof: { none: 'definition' },
  },
  ({ rating, mass }) => rating - mass,
)
/** People of one mass each. */
export const peopleMass = formula(
  {
    id: 'people-mass',
    label: 'Mass of people',
    gives: mass('m_l', 'people'),
    takes: { people: { symbol: 'n', unit: '1', label: 'people', shows: 'count' }, person: mass('m_1', 'one person') },
    text: 'm_l = n · m_1',
    source: STATICS,
    proof: { none: 'definition' },
  },
  ({ people, person }) => people * person,
)
/** Distance behind the front axle of something behind the rear axle. */
export const behindRear = formula(
  {
    id: 'behind-rear',
    label: 'Behind the front axle',
    gives: { symbol: 'x', unit: 'm', shows: 'length' },
    takes: {
      wheelbase: { symbol: 'L', unit: 'm', label: 'wheelbase' },
      overhang: { symbol: 'c', unit: 'm', label: 'behind the rear axle' },
    },
    text: 'x = L + c',
    source: { work: 'definition', place: 'axes' },
    proof: { none: 'definition' },
  },
  ({ wheelbase, overhang }) => wheelbase + overhang,
)
/** What is left to the rating that is reached first. */
export const leastRoom = formula(
  {
    id: 'least-room',
    label: 'Room to the rating reached first',
    gives: mass('Δm_min', 'room'),
    takes: { rooms: { symbol: 'Δm_k', unit: 'kg', label: 'room to one rating', many: true } },
    text: 'Δm_min = min(Δm_k)',
    source: { work: 'definition', place: 'the least' },
    proof: { none: 'definition' },
  },
  ({ rooms }) => Math.min(...rooms),
)
/** Seats that may be used: people sit down one by one, front rows first, until a rating breaks. */
export const usableSeats = formula(
  {
    id: 'usable-seats',
    label: 'Seats that may be used',
    gives: { symbol: 'n', unit: '1', shows: 'count' },
    takes: { rooms: { symbol: 'Δm_n', unit: 'kg', label: 'least room met up to one, two, three … people aboard', many: true } },
    text: 'n = Σ { 1 if Δm_n ≥ 0; 0 otherwise }',
    source: { work: 'definition', place: 'count' },
    proof: {
      examples: [
        {
          takes: { rooms: [120, 45, -30, -105] },
          gives: 2,
          within: 0,
          source: { work: 'statics', place: 'two people fit, the third breaks a rating' },
        },
      ],
    },
  },
  ({ rooms }) => rooms.filter(r => r >= 0).length,
)
