import type { Source } from '../sources.ts'
import { formula } from '../working/formula.ts'
import type { ChargingClassValue } from './class-values.ts'

const watts = (symbol: string, label: string) => ({ symbol, unit: 'W', label }) as const
const share = (symbol: string, label: string) => ({ symbol, unit: '1', label, shows: 'share' }) as const
const LAW: Source = { work: 'practice', place: 'loss of a converter over its power: fixed, in proportion, with the square' }
const worked = (place: string): Source => ({ work: 'definition', place: `${place}, worked by hand` })
/** One charger, of 0.10 kW, 0.035 and 0.0035 per kW, at three powers. */
const ONE = { fixed: 100, linear: 0.035, square: 3.5e-6 } as const
const FULL = { input: 6600, efficiency: 1 - 483.46 / 6600 } as const
const SPLIT = { fixed: 100 / 483.46, square: 152.46 / 483.46 } as const
const PARTS = {
  fixed: watts('p_0', 'lost at any power'),
  linear: { symbol: 'p_1', unit: '1', label: 'lost of each watt' },
  square: { symbol: 'p_2', unit: '1/W', label: 'lost with the square' },
} as const
const FULL_POWER = {
  input: watts('P_r', 'at the wall at full power'),
  efficiency: share('η_ch', 'efficiency at full power, wall to pack'),
} as const
const SHARES = {
  fixed: share('s_0', 'share of the loss at full power that stays at any power'),
  square: share('s_2', 'share of it that grows with the square of the power'),
} as const

const FROM_MEMORY: Source = {
  work: 'practice',
  place: 'on-board chargers: 0.88 to 0.90 at 1.4 kW beside 0.92 to 0.95 at full power',
  mark: 'from memory',
}
/** How the loss at full power splits in the class of on-board chargers. */
export const classChargerLoss: Readonly<Record<'fixed' | 'square', ChargingClassValue>> = {
  fixed: { value: 0.24, half: 0.08, note: 'on-board chargers of 3.3 to 11 kW', source: FROM_MEMORY },
  square: { value: 0.3, half: 0.15, note: 'on-board chargers of 3.3 to 11 kW', source: FROM_MEMORY },
}

/** What a charger loses at a power. */
export const chargerLoss = formula(
  {
    id: 'charger-loss',
    label: 'Loss of a charger',
    gives: watts('P_loss', 'lost in the charger'),
    takes: { ...PARTS, power: watts('P', 'power at the wall') },
    text: 'P_loss = p_0 + p_1 · P + p_2 · P²',
    source: LAW,
    leavesOut: 'The pack voltage, and a charger that switches a part of itself off at low power.',
    proof: {
      examples: [
        { takes: { ...ONE, power: 3300 }, gives: 253.6, within: 0.05, source: worked('3.3 kW at the wall: 0.2536 kW') },
        { takes: { ...ONE, power: 6600 }, gives: 483.5, within: 0.05, source: worked('6.6 kW at the wall: 0.4835 kW') },
      ],
    },
  },
  ({ fixed, linear, square, power }) => fixed + linear * power + square * power ** 2,
)
/** Efficiency from the loss at a power. */
export const efficiencyOfLoss = formula(
  {
    id: 'efficiency-of-charger-loss',
    label: 'Efficiency of a charger at a power',
    gives: share('η_P', 'wall to pack at this power'),
    takes: { loss: watts('P_loss', 'lost in the charger'), power: watts('P', 'power at the wall') },
    text: 'η_P = max(0, 1 − P_loss / P)',
    source: { work: 'definition', place: 'efficiency' },
    proof: {
      examples: [
        { takes: { loss: 253.615, power: 3300 }, gives: 0.92315, within: 5e-6, source: worked('0.2536 kW of 3.3 kW') },
        { takes: { loss: 483.46, power: 6600 }, gives: 0.92675, within: 5e-6, source: worked('0.4835 kW of 6.6 kW') },
      ],
    },
  },
  ({ loss, power }) => Math.max(0, 1 - loss / power),
)
/** What a charger takes at the wall when it gives its full power. */
export const chargerInput = formula(
  {
    id: 'charger-input',
    label: 'Power at the wall of a charger at full power',
    gives: watts('P_r', 'at the wall at full power'),
    takes: { power: watts('P_ch', 'power the charger gives'), efficiency: FULL_POWER.efficiency },
    text: 'P_r = P_ch / η_ch',
    source: { work: 'definition', place: 'efficiency' },
    proof: { none: 'definition of an efficiency' },
  },
  ({ power, efficiency }) => power / efficiency,
)
/** What is drawn of what an outlet gives: no more than the charger takes. */
export const chargerTakes = formula(
  {
    id: 'charger-takes',
    label: 'Power a charger takes of an outlet',
    gives: watts('P', 'power at the wall'),
    takes: { outlet: watts('P_ac', 'power of the outlet'), input: FULL_POWER.input },
    text: 'P = min(P_ac, P_r)',
    source: { work: 'definition', place: 'the lesser governs' },
    proof: { none: 'definition' },
  },
  ({ outlet, input }) => Math.min(outlet, input),
)
/** The law of one charger, so that it loses at full power what its efficiency says. */
export const chargerLossParts = formula(
  {
    id: 'charger-loss-parts',
    label: 'Loss law of a charger',
    gives: PARTS,
    takes: { ...FULL_POWER, ...SHARES },
    text: 'p_0 = s_0 · (1 − η_ch) · P_r\np_1 = (1 − s_0 − s_2) · (1 − η_ch)\np_2 = s_2 · (1 − η_ch) / P_r',
    source: LAW,
    proof: {
      examples: [{ takes: { ...FULL, ...SPLIT }, gives: ONE, within: 1e-9, source: worked('100 W, 231 W and 152 W of 483 W at 6.6 kW') }],
    },
  },
  ({ input, efficiency, fixed, square }) => ({
    fixed: fixed * (1 - efficiency) * input,
    linear: (1 - fixed - square) * (1 - efficiency),
    square: (square * (1 - efficiency)) / input,
  }),
)

const POINT = (n: 1 | 2) =>
  ({ power: watts(`P_${n}`, 'power at the wall of a point'), efficiency: share(`η_${n}`, 'efficiency there') }) as const
const [P1, P2] = [POINT(1), POINT(2)]
/** Loss of a point above what its share of the loss at full power would be, at no power. */
const above = (power: number, efficiency: number, full: { readonly input: number; readonly efficiency: number }): number =>
  ((1 - efficiency) * power - (1 - full.efficiency) * power) / (1 - power / full.input)
/** The law from one measured point below full power. */
export const chargerLossByPoint = formula(
  {
    id: 'charger-loss-by-point',
    label: 'Loss law of a charger by one more point',
    gives: PARTS,
    takes: { ...FULL_POWER, power: P1.power, partly: P1.efficiency, square: SHARES.square },
    text: 'g = ((1 − η_1) · P_1 − (1 − η_ch) · P_1) / (1 − P_1 / P_r)\np_2 = max(s_2 · (1 − η_ch) / P_r, −g / (P_1 · P_r))\np_0 = g + p_2 · P_1 · P_r\np_1 = 1 − η_ch − p_0 / P_r − p_2 · P_r',
    source: LAW,
    leavesOut: 'How the loss bends between the two: from the class, unless a negative fixed loss would come out.',
    proof: {
      examples: [
        {
          takes: { ...FULL, power: 3300, partly: 1 - 253.615 / 3300, square: SPLIT.square },
          gives: ONE,
          within: 1e-9,
          source: worked('253.6 W at 3.3 kW, 483.5 W at 6.6 kW'),
        },
      ],
    },
  },
  ({ power, partly, square: share, ...full }) => {
    const { input, efficiency } = full,
      g = above(power, partly, full),
      square = Math.max((share * (1 - efficiency)) / input, -g / (power * input)),
      fixed = g + square * power * input
    return { fixed, linear: 1 - efficiency - fixed / input - square * input, square }
  },
)
/** The law from two measured points below full power. */
export const chargerLossByPoints = formula(
  {
    id: 'charger-loss-by-points',
    label: 'Loss law of a charger by two more points',
    gives: PARTS,
    takes: { ...FULL_POWER, power: P1.power, partly: P1.efficiency, otherPower: P2.power, otherwise: P2.efficiency },
    text: 'g_1 = ((1 − η_1) · P_1 − (1 − η_ch) · P_1) / (1 − P_1 / P_r)\ng_2 = ((1 − η_2) · P_2 − (1 − η_ch) · P_2) / (1 − P_2 / P_r)\np_2 = (g_1 − g_2) / ((P_2 − P_1) · P_r)\np_0 = g_1 + p_2 · P_1 · P_r\np_1 = 1 − η_ch − p_0 / P_r − p_2 · P_r',
    source: LAW,
    proof: {
      examples: [
        {
          takes: { ...FULL, power: 1400, partly: 1 - 155.86 / 1400, otherPower: 3300, otherwise: 1 - 253.615 / 3300 },
          gives: ONE,
          within: 1e-9,
          source: worked('155.9 W at 1.4 kW, 253.6 W at 3.3 kW, 483.5 W at 6.6 kW'),
        },
      ],
    },
  },
  ({ power, partly, otherPower, otherwise, ...full }) => {
    const { input, efficiency } = full,
      one = above(power, partly, full),
      square = (one - above(otherPower, otherwise, full)) / ((otherPower - power) * input),
      fixed = one + square * power * input
    return { fixed, linear: 1 - efficiency - fixed / input - square * input, square }
  },
)
