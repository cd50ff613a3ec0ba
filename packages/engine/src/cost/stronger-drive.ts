import { formula } from '../working/formula.ts'

const BY_HAND = (place: string) => ({ work: 'statics', place: `${place}, worked by hand` }) as const
const TRADE = {
  work: 'practice',
  place: 'motors of one kind: mass and price about in proportion to torque',
  mark: 'common practice',
} as const
const LEAVES_OUT =
  'That motors come in sizes, that a stronger one may need a larger inverter, fuse and battery, and that its own mass slows the car a little.'
const times = { symbol: 'k', unit: '1', label: 'times as strong', shows: 'ratio' } as const

/** How much stronger the motor would have to be for one ratio to meet two goals: torque does what the taller ratio takes away. */
export const strengthForBoth = formula(
  {
    id: 'strength-for-both',
    label: 'Motor strong enough for both',
    gives: times,
    takes: {
      tallest: { symbol: 'i_t', unit: '1', label: 'tallest ratio the one goal allows', shows: 'ratio' },
      shortest: { symbol: 'i_s', unit: '1', label: 'shortest ratio the other allows', shows: 'ratio' },
    },
    text: 'k = i_t / i_s',
    source: { work: 'statics', place: 'wheel force is torque times ratio over radius' },
    leavesOut: LEAVES_OUT,
    proof: { examples: [{ takes: { tallest: 6, shortest: 5 }, gives: 1.2, within: 1e-12, source: BY_HAND('a fifth more torque') }] },
  },
  ({ tallest, shortest }) => tallest / shortest,
)

/** How much stronger for a time: at constant power the time to a speed goes with one over power. */
export const strengthForTime = formula(
  {
    id: 'strength-for-time',
    label: 'Motor strong enough for the time',
    gives: times,
    takes: {
      quickest: { symbol: 't_0', unit: 's', label: 'time at the quickest ratio' },
      within: { symbol: 't_max', unit: 's', label: 'within' },
    },
    text: 'k = t_0 / t_max',
    source: { work: 'definition', place: 'kinetic energy over power' },
    leavesOut: `Road load and wheelspin, which ask for more. ${LEAVES_OUT}`,
    proof: { examples: [{ takes: { quickest: 9, within: 6 }, gives: 1.5, within: 1e-12, source: BY_HAND('half as much again') }] },
  },
  ({ quickest, within }) => quickest / within,
)

/** How much stronger for a pull at a speed. */
export const strengthForPull = formula(
  {
    id: 'strength-for-pull',
    label: 'Motors strong enough for the pull',
    gives: times,
    takes: {
      need: { symbol: 'F', unit: 'N', label: 'pull needed' },
      speed: { symbol: 'v', unit: 'm/s', label: 'at the speed', shows: 'speed' },
      powers: { symbol: 'P_i', unit: 'W', label: 'power of each motor', many: true },
      efficiencies: { symbol: 'η_i', unit: '1', label: 'efficiency to the wheels', shows: 'share', many: true },
    },
    text: 'k = F · v / Σ (P_i · η_i)',
    source: { work: 'definition', place: 'power is force times speed' },
    leavesOut: LEAVES_OUT,
    proof: {
      examples: [
        {
          takes: { need: 2000, speed: 25, powers: [25e3, 25e3], efficiencies: [0.8, 0.8] },
          gives: 1.25,
          within: 1e-12,
          source: BY_HAND('50 kW at the wheels from two motors that give 40'),
        },
      ],
    },
  },
  ({ need, speed, powers, efficiencies }) => (need * speed) / powers.reduce((sum, p, i) => sum + p * (efficiencies[i] as number), 0),
)

/** What the stronger motor weighs more. */
export const massOfStronger = formula(
  {
    id: 'mass-of-stronger',
    label: 'Mass of a stronger motor',
    gives: { symbol: 'Δm', unit: 'kg', label: 'more mass' },
    takes: { times, masses: { symbol: 'm_i', unit: 'kg', label: 'each motor', many: true } },
    text: 'Δm = max(0, k − 1) · (Σ m_i)',
    source: TRADE,
    leavesOut: LEAVES_OUT,
    proof: { examples: [{ takes: { times: 1.25, masses: [40, 40] }, gives: 20, within: 1e-12, source: BY_HAND('a quarter of 80 kg') }] },
  },
  ({ times: k, masses }) => Math.max(0, k - 1) * masses.reduce((a, b) => a + b, 0),
)

/** What it costs more. */
export const moneyOfStronger = formula(
  {
    id: 'money-of-stronger',
    label: 'Price of a stronger motor',
    gives: { symbol: 'ΔK', unit: '€', label: 'more money' },
    takes: { times, prices: { symbol: 'k_i', unit: '€', label: 'each motor', many: true } },
    text: 'ΔK = max(0, k − 1) · (Σ k_i)',
    source: TRADE,
    leavesOut: LEAVES_OUT,
    proof: { examples: [{ takes: { times: 1.25, prices: [2000] }, gives: 500, within: 1e-12, source: BY_HAND('a quarter of 2 000 €') }] },
  },
  ({ times: k, prices }) => Math.max(0, k - 1) * prices.reduce((a, b) => a + b, 0),
)
