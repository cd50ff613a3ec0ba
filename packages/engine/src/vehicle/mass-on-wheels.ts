import { formula } from '../working/formula.ts'

const STATICS = { work: 'statics', place: 'moments about the front axle and about the centre line' } as const
const mass = (symbol: string, label: string) => ({ symbol, unit: 'kg', label }) as const
const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const hand = (place: string) => ({ work: 'statics', place: `worked by hand: ${place}` }) as const
const thing = {
  mass: mass('m', 'the thing'),
  x: length('x', 'behind the front axle'),
  wheelbase: length('L', 'wheelbase'),
} as const

/** What one thing puts on each axle; ahead of the front axle or behind the rear one it takes load off the other. */
export const massOnAxles = formula(
  {
    id: 'mass-on-axles',
    label: 'What a thing puts on each axle',
    gives: { front: mass('m_F', 'on the front axle'), rear: mass('m_R', 'on the rear axle') },
    takes: thing,
    text: 'm_R = m · x / L\nm_F = m − m_R',
    source: STATICS,
    proof: {
      examples: [
        {
          takes: { mass: 100, x: 0.5775, wheelbase: 2.31 },
          gives: { front: 75, rear: 25 },
          within: 1e-9,
          source: hand('a quarter of the way back'),
        },
        {
          takes: { mass: 100, x: 2.772, wheelbase: 2.31 },
          gives: { front: -20, rear: 120 },
          within: 1e-9,
          source: hand('a fifth of the wheelbase behind the rear axle lifts the front one'),
        },
      ],
    },
  },
  ({ mass, x, wheelbase }) => {
    const rear = (mass * x) / wheelbase
    return { front: mass - rear, rear }
  },
)

/** What one thing puts on the left and on the right wheels, each axle sharing by its own track. */
export const massOnSides = formula(
  {
    id: 'mass-on-sides',
    label: 'What a thing puts on each side',
    gives: { left: mass('m_L', 'on the left wheels'), right: mass('m_Ri', 'on the right wheels') },
    takes: {
      ...thing,
      y: length('y', 'to the right of the centre line'),
      trackFront: length('T_F', 'front track'),
      trackRear: length('T_R', 'rear track'),
    },
    text: 'm_Ri = m · (1 / 2 + (1 − x / L) · y / T_F + x / L · y / T_R)\nm_L = m − m_Ri',
    source: STATICS,
    leavesOut: 'What springs and anti-roll bars pass from one axle to the other; the sum of a side stays right.',
    proof: {
      examples: [
        {
          takes: { mass: 100, x: 1, y: 0.35, wheelbase: 2, trackFront: 1.4, trackRear: 1.4 },
          gives: { left: 25, right: 75 },
          within: 1e-9,
          source: hand('a quarter of the track to the right: three quarters on that side'),
        },
        {
          takes: { mass: 100, x: 1, y: -0.3, wheelbase: 2, trackFront: 1.2, trackRear: 1.5 },
          gives: { left: 72.5, right: 27.5 },
          within: 1e-9,
          source: hand('50 kg a quarter of 1.2 m to the left, 50 kg a fifth of 1.5 m to the left: 37.5 and 35 kg on the left'),
        },
      ],
    },
  },
  ({ mass, x, y, wheelbase, trackFront, trackRear }) => {
    const right = mass * (0.5 + ((1 - x / wheelbase) * y) / trackFront + ((x / wheelbase) * y) / trackRear)
    return { left: mass - right, right }
  },
)

/** Several things together. */
export const massesTogether = formula(
  {
    id: 'masses-together',
    label: 'Things together',
    gives: mass('m', 'together'),
    takes: { masses: { symbol: 'm_i', unit: 'kg', label: 'each', many: true } },
    text: 'm = Σ m_i',
    source: { work: 'definition', place: 'sum' },
    proof: { none: 'definition' },
  },
  ({ masses }) => masses.reduce((sum, m) => sum + m, 0),
)

/** A wheel of a laden car, people and luggage on the centre line. */
export const ladenWheel = formula(
  {
    id: 'laden-wheel',
    label: 'Wheel of the laden car',
    gives: mass('m_w', 'wheel, laden'),
    takes: { wheel: mass('m_w0', 'wheel at kerb'), axle: mass('m_ax', 'its axle, laden'), before: mass('m_ax0', 'its axle at kerb') },
    text: 'm_w = m_w0 + (m_ax − m_ax0) / 2',
    source: STATICS,
    leavesOut:
      'Where people sit across the car: all are taken on the centre line. A driver alone loads the wheels of that side more than this says.',
    proof: {
      examples: [
        {
          takes: { wheel: 240, axle: 540, before: 480 },
          gives: 270,
          within: 1e-9,
          source: hand('60 kg more on the axle, half of it on each wheel'),
        },
      ],
    },
  },
  ({ wheel, axle, before }) => wheel + (axle - before) / 2,
)

/** How far what the scales say is from what the ledger expects, as a share of that. */
export const offTheLedger = formula(
  {
    id: 'off-the-ledger',
    label: 'Weighed, off the ledger',
    gives: { symbol: 'Δs', unit: '1', label: 'off the ledger', shows: 'share' },
    takes: { weighed: mass('m_1', 'on the scales'), expected: mass('m_e', 'by the ledger') },
    text: 'Δs = abs(m_1 − m_e) / m_e',
    source: { work: 'definition', place: 'relative difference' },
    proof: { none: 'definition' },
  },
  ({ weighed, expected }) => Math.abs(weighed - expected) / expected,
)
