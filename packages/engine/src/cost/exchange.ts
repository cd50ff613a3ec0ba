import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'

const PROPORTION = { work: 'definition', place: 'proportion' } as const
const LEAVES_OUT = 'That a heavier car also takes more energy: a few per cent for ten. Modules come whole.'
const mass = (symbol: string, label: string) => ({ symbol, unit: 'kg', label }) as const
const money = (symbol: string, label: string) => ({ symbol, unit: '€', label }) as const
const range = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'distance' }) as const

const STEP = {
  ...standard('step-of-range', 'step of range', 'd', 10_000, 'm', { work: 'definition', place: '10 km, to speak of' }),
  shows: 'distance' as const,
}
const NOTE = standard('step-of-money', 'step of money', 'k', 100, '€', { work: 'definition', place: '100 €, to speak of' })

/** What the battery boxes weigh together. */
export const packMass = formula(
  {
    id: 'pack-mass-fitted',
    label: 'Pack as fitted',
    gives: mass('m_b', 'pack as fitted'),
    takes: { boxes: { ...mass('m_i', 'each box'), many: true } },
    text: 'm_b = Σ m_i',
    source: { work: 'definition', place: 'sum' },
    proof: { none: 'definition' },
  },
  ({ boxes }) => boxes.reduce((a, b) => a + b, 0),
)
/** What of the pack stands on the rear axle: moments about the front axle. */
export const packOnRear = formula(
  {
    id: 'pack-on-rear',
    label: 'Pack on the rear axle',
    gives: mass('m_bR', 'pack on the rear axle'),
    takes: {
      boxes: { ...mass('m_i', 'each box'), many: true },
      x: { symbol: 'x_i', unit: 'm', label: 'each box behind the front axle', many: true },
      wheelbase: { symbol: 'L', unit: 'm', label: 'wheelbase' },
    },
    text: 'm_bR = (Σ m_i · x_i) / L',
    source: { work: 'statics', place: 'sums and moments' },
    proof: {
      examples: [
        {
          takes: { boxes: [80, 100], x: [0, 2], wheelbase: 2.5 },
          gives: 80,
          within: 1e-9,
          source: { work: 'statics', place: 'two boxes, one over the front axle, worked by hand' },
        },
      ],
    },
  },
  ({ boxes, x, wheelbase }) => boxes.reduce((moment, m, i) => moment + m * (x[i] as number), 0) / wheelbase,
)
/** Battery mass that a step of range takes. */
export const massOfRange = formula(
  {
    id: 'mass-of-range',
    label: 'Mass of 10 km',
    gives: mass('m', 'mass'),
    takes: { pack: mass('m_b', 'pack as fitted'), range: range('s', 'range') },
    uses: [STEP],
    text: 'm = m_b · d / s',
    source: PROPORTION,
    leavesOut: LEAVES_OUT,
    proof: { none: 'definition' },
  },
  ({ pack, range }) => (pack * STEP.value) / range,
)
/** Battery money that a step of range takes. */
export const moneyOfRange = formula(
  {
    id: 'money-of-range',
    label: 'Price of 10 km',
    gives: money('K', 'money'),
    takes: { pack: money('K_b', 'price of the pack'), range: range('s', 'range') },
    uses: [STEP],
    text: 'K = K_b · d / s',
    source: PROPORTION,
    leavesOut: LEAVES_OUT,
    proof: { none: 'definition' },
  },
  ({ pack, range }) => (pack * STEP.value) / range,
)
/** Range that a mass is worth, carried as battery instead. */
export const rangeOfMass = formula(
  {
    id: 'range-of-mass',
    label: 'Range a mass is worth',
    gives: range('Δs', 'range'),
    takes: { mass: mass('m', 'mass'), pack: mass('m_b', 'pack as fitted'), range: range('s', 'range') },
    text: 'Δs = m / m_b · s',
    source: PROPORTION,
    leavesOut: LEAVES_OUT,
    proof: { none: 'definition' },
  },
  ({ mass, pack, range }) => (mass / pack) * range,
)
/** Range that a step of money is worth, spent on battery. */
export const rangeOfMoney = formula(
  {
    id: 'range-of-money',
    label: 'Range 100 € are worth',
    gives: range('Δs', 'range'),
    takes: { pack: money('K_b', 'price of the pack'), range: range('s', 'range') },
    uses: [NOTE],
    text: 'Δs = k / K_b · s',
    source: PROPORTION,
    leavesOut: LEAVES_OUT,
    proof: { none: 'definition' },
  },
  ({ pack, range }) => (NOTE.value / pack) * range,
)
/** Range if the pack grew or shrank until the room left by mass is used up. */
export const rangeByRoom = formula(
  {
    id: 'range-by-room',
    label: 'Range the room allows',
    gives: range('s_R', 'range'),
    takes: { range: range('s', 'range'), room: mass('Δm', 'room to the rating'), pack: mass('m_b', 'what of the pack counts there') },
    text: 's_R = s · (1 + Δm / m_b)',
    source: PROPORTION,
    leavesOut: LEAVES_OUT,
    proof: { none: 'definition' },
  },
  ({ range, room, pack }) => range * (1 + room / pack),
)
/** Range if the pack grew or shrank until the budget is used up. */
export const rangeByBudget = formula(
  {
    id: 'range-by-budget',
    label: 'Range the budget allows',
    gives: range('s_K', 'range'),
    takes: { range: range('s', 'range'), left: money('ΔK', 'left of the budget'), pack: money('K_b', 'price of the pack') },
    text: 's_K = s · (1 + ΔK / K_b)',
    source: PROPORTION,
    leavesOut: LEAVES_OUT,
    proof: { none: 'definition' },
  },
  ({ range, left, pack }) => range * (1 + left / pack),
)
/** Mass that has to go elsewhere for the wanted range to fit. */
export const massLacking = formula(
  {
    id: 'mass-lacking',
    label: 'Mass to give up elsewhere',
    gives: mass('m_l', 'to give up'),
    takes: {
      wanted: range('s_w', 'range wanted'),
      allowed: range('s_R', 'range the room allows'),
      range: range('s', 'range'),
      pack: mass('m_b', 'what of the pack counts there'),
    },
    text: 'm_l = max(0, (s_w − s_R) / s · m_b)',
    source: PROPORTION,
    leavesOut: LEAVES_OUT,
    proof: { none: 'definition' },
  },
  ({ wanted, allowed, range, pack }) => Math.max(0, ((wanted - allowed) / range) * pack),
)
/** Money that has to be found for the wanted range to fit. */
export const moneyLacking = formula(
  {
    id: 'money-lacking',
    label: 'Money to find',
    gives: money('K_l', 'to find'),
    takes: {
      wanted: range('s_w', 'range wanted'),
      allowed: range('s_K', 'range the budget allows'),
      range: range('s', 'range'),
      pack: money('K_b', 'price of the pack'),
    },
    text: 'K_l = max(0, (s_w − s_K) / s · K_b)',
    source: PROPORTION,
    leavesOut: LEAVES_OUT,
    proof: { none: 'definition' },
  },
  ({ wanted, allowed, range, pack }) => Math.max(0, ((wanted - allowed) / range) * pack),
)
/** Range to give up so that the rest fits. */
export const rangeLacking = formula(
  {
    id: 'range-lacking',
    label: 'Range to give up',
    gives: range('s_l', 'to give up'),
    takes: { wanted: range('s_w', 'range wanted'), allowed: range('s_R', 'range allowed') },
    text: 's_l = max(0, s_w − s_R)',
    source: { work: 'definition', place: 'difference' },
    proof: { none: 'definition' },
  },
  ({ wanted, allowed }) => Math.max(0, wanted - allowed),
)
/** Top speed at which one ratio meets both goals, where none does: as much slower as the ratios lie apart. */
export const speedToSettleFor = formula(
  {
    id: 'speed-to-settle-for',
    label: 'Top speed to settle for',
    gives: { symbol: 'v_s', unit: 'm/s', label: 'speed to settle for', shows: 'speed' },
    takes: {
      wanted: { symbol: 'v_w', unit: 'm/s', label: 'speed wanted' },
      shortest: { symbol: 'i_s', unit: '1', label: 'shortest ratio for that speed', shows: 'ratio' },
      tallest: { symbol: 'i_t', unit: '1', label: 'tallest ratio for the other goal', shows: 'ratio' },
    },
    text: 'v_s = v_w · i_s / i_t',
    source: { work: 'statics', place: 'road speed times ratio is motor speed' },
    proof: {
      examples: [
        {
          takes: { wanted: 40, shortest: 5, tallest: 6.25 },
          gives: 32,
          within: 1e-12,
          source: { work: 'statics', place: 'a quarter more ratio, a fifth less speed, worked by hand' },
        },
      ],
    },
  },
  ({ wanted, shortest, tallest }) => (wanted * shortest) / tallest,
)
