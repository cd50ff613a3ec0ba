import { solveLinear } from '../numerics/linear.ts'
import { formula } from '../working/formula.ts'
import { amps, coulombs, joules, ohms, seconds, volts } from './symbols.ts'

const CIRCUITS = { work: 'circuits', place: 'two sources side by side, each with a straight open-circuit curve' } as const
const slope = (symbol: string, label: string) => ({ symbol, unit: 'V/C', label }) as const
const R1 = ohms('R_1', 'first branch, joints included'),
  R2 = ohms('R_2', 'second branch, joints included')
const A1 = slope('a_1', 'first branch: voltage over charge taken'),
  A2 = slope('a_2', 'second branch: voltage over charge taken')
const NMC = { work: 'circuits', place: '0.9 mΩ, 60 Ah and 1.1 mΩ, 54 Ah, 0.7 V over the whole charge; recomputed' } as const
const LFP = { work: 'circuits', place: 'two LFP cells of 105 Ah, 0.5 and 0.6 mΩ, on the plateau; recomputed' } as const
const STRINGS = { work: 'circuits', place: 'two strings of 60 Ah, 5 V apart; recomputed' } as const

/** How two unlike branches share a current at once: by resistance and by their open-circuit voltages. */
export const shareAtOnce = formula(
  {
    id: 'share-at-once',
    label: 'Current of the first of two branches, at once',
    gives: amps('I_1', 'first branch'),
    takes: {
      current: amps('I', 'current of both'),
      first: R1,
      second: R2,
      firstVoltage: volts('U_1', 'first open-circuit voltage'),
      secondVoltage: volts('U_2', 'second open-circuit voltage'),
    },
    text: 'I_1 = (I · R_2 + U_1 − U_2) / (R_1 + R_2)',
    source: CIRCUITS,
    proof: {
      examples: [
        {
          takes: { current: 100, first: 0.002, second: 0.003, firstVoltage: 3.7, secondVoltage: 3.7 },
          gives: 60,
          within: 1e-9,
          source: CIRCUITS,
        },
        {
          takes: { current: 100, first: 0.002, second: 0.003, firstVoltage: 3.71, secondVoltage: 3.7 },
          gives: 62,
          within: 1e-9,
          source: CIRCUITS,
        },
        {
          takes: { current: 0, first: 0.002, second: 0.003, firstVoltage: 3.71, secondVoltage: 3.7 },
          gives: 2,
          within: 1e-9,
          source: CIRCUITS,
          because: 'what circulates with no load',
        },
        {
          takes: { current: 120, first: 0.9e-3, second: 1.1e-3, firstVoltage: 3.7, secondVoltage: 3.7 },
          gives: 66,
          within: 1e-9,
          source: NMC,
        },
      ],
    },
  },
  ({ current, first, second, firstVoltage, secondVoltage }) => (current * second + firstVoltage - secondVoltage) / (first + second),
)

/** How they share in the long run: by capacity, not by resistance. */
export const shareSettled = formula(
  {
    id: 'share-settled',
    label: 'Current of the first of two branches, settled',
    gives: amps('I_1', 'first branch'),
    takes: { current: amps('I', 'current of both'), firstSlope: A1, secondSlope: A2 },
    text: 'I_1 = I · a_2 / (a_1 + a_2)',
    source: CIRCUITS,
    proof: {
      examples: [
        { takes: { current: 120, firstSlope: 0.7 / 216000, secondSlope: 0.7 / 194400 }, gives: 63.1579, within: 5e-5, source: NMC },
      ],
    },
  },
  ({ current, firstSlope, secondSlope }) => (current * secondSlope) / (firstSlope + secondSlope),
)
/** How long that takes: hours on a flat curve, where resistance then decides the whole trip. */
export const settlingTime = formula(
  {
    id: 'settling-time',
    label: 'Time constant of two branches',
    gives: seconds('τ', 'time constant'),
    takes: { first: R1, second: R2, firstSlope: A1, secondSlope: A2 },
    text: 'τ = (R_1 + R_2) / (a_1 + a_2)',
    source: CIRCUITS,
    proof: {
      examples: [
        {
          takes: { first: 0.9e-3, second: 1.1e-3, firstSlope: 0.7 / 216000, secondSlope: 0.7 / 194400 },
          gives: 292.331,
          within: 5e-4,
          source: NMC,
        },
        {
          takes: { first: 0.5e-3, second: 0.6e-3, firstSlope: 0.0415 / 378000, secondSlope: 0.0415 / 378000 },
          gives: 5009.6,
          within: 0.1,
          source: LFP,
        },
      ],
    },
  },
  ({ first, second, firstSlope, secondSlope }) => (first + second) / (firstSlope + secondSlope),
)
/** In between. */
export const shareAfter = formula(
  {
    id: 'share-after',
    label: 'Current of the first of two branches, after a time',
    gives: { current: amps('I_1', 'first branch'), ahead: coulombs('Q_a', 'charge taken ahead of its share') },
    takes: {
      once: amps('I_0', 'first branch at once'),
      settled: amps('I_s', 'first branch settled'),
      time: seconds('t', 'after'),
      constant: seconds('τ', 'time constant'),
    },
    text: `I_1 = I_s + (I_0 − I_s) · exp(−t / τ)
Q_a = τ · (I_0 − I_s)`,
    source: CIRCUITS,
    proof: {
      examples: [
        { takes: { once: 66, settled: 63.15789, time: 300, constant: 292.331 }, gives: { current: 64.17637 }, within: 2e-5, source: NMC },
        { takes: { once: 66, settled: 63.15789, time: 300, constant: 292.331 }, gives: { ahead: 0.2308 * 3600 }, within: 0.3, source: NMC },
        { takes: { once: 114.54545, settled: 105, time: 1800, constant: 5009.6 }, gives: { current: 111.664 }, within: 1e-3, source: LFP },
      ],
    },
  },
  ({ once, settled, time, constant }) => ({
    current: settled + (once - settled) * Math.exp(-time / constant),
    ahead: constant * (once - settled),
  }),
)

/** What happens when two strings at different voltage are joined: the heat is the same whatever the resistor. */
export const joiningStrings = formula(
  {
    id: 'joining-strings',
    label: 'Joining two strings at different voltage',
    gives: {
      peak: amps('I_max', 'peak current'),
      constant: seconds('τ', 'time constant'),
      moved: coulombs('Q_m', 'charge that moves over'),
      heat: joules('E_q', 'heat, most of it in the smallest conductor'),
    },
    takes: {
      apart: volts('ΔU', 'voltage between the strings'),
      first: R1,
      second: R2,
      lead: ohms('R_l', 'lead between them'),
      firstSlope: A1,
      secondSlope: A2,
    },
    text: `R = R_1 + R_2 + R_l
I_max = ΔU / R
τ = R / (a_1 + a_2)
Q_m = ΔU / (a_1 + a_2)
E_q = ΔU² / (2 · (a_1 + a_2))`,
    source: CIRCUITS,
    proof: {
      examples: [
        {
          takes: { apart: 5, first: 0.12, second: 0.12, lead: 0.01, firstSlope: 1.12 / 3600, secondSlope: 1.12 / 3600 },
          gives: { peak: 20 },
          within: 1e-9,
          source: STRINGS,
        },
        {
          takes: { apart: 5, first: 0.12, second: 0.12, lead: 0.01, firstSlope: 1.12 / 3600, secondSlope: 1.12 / 3600 },
          gives: { constant: 401.79, moved: 2.2321 * 3600, heat: 20089 },
          within: 0.6,
          source: STRINGS,
        },
      ],
    },
  },
  ({ apart, first, second, lead, firstSlope, secondSlope }) => {
    const r = first + second + lead,
      a = firstSlope + secondSlope
    return { peak: apart / r, constant: r / a, moved: apart / a, heat: apart ** 2 / (2 * a) }
  },
)
/** Resistor that keeps the first connection below a current. */
export const joiningResistor = formula(
  {
    id: 'joining-resistor',
    label: 'Resistor for the first connection',
    gives: ohms('R_j', 'resistor in the lead'),
    takes: {
      apart: volts('ΔU', 'voltage between the strings'),
      most: amps('I_lim', 'current allowed'),
      first: R1,
      second: R2,
      lead: ohms('R_l', 'lead between them'),
    },
    text: 'R_j = max(0, ΔU / I_lim − R_1 − R_2 − R_l)',
    source: CIRCUITS,
    proof: {
      examples: [{ takes: { apart: 5, most: 12, first: 0.12, second: 0.12, lead: 0.01 }, gives: 0.1667, within: 5e-5, source: STRINGS }],
    },
  },
  ({ apart, most, first, second, lead }) => Math.max(0, apart / most - first - second - lead),
)

/**
 * Currents of equal cells on one bar [A], nearest the feed first. `link` is the loop resistance of the bars between neighbours [Ω]; fed at one end, or
 * at opposite ends of the two bars (half the link in each bar), which is symmetric.
 *
 * Throws RangeError when there are fewer than two cells or a resistance is not above zero.
 * Source: elementary circuit theory: neighbours differ by the drop of the bar between them, all together carry the load.
 */
export function ladderCurrents(
  cells: number,
  resistance: number,
  link: number,
  current: number,
  feed: 'one end' | 'opposite ends',
): Float64Array {
  if (!Number.isInteger(cells) || cells < 2 || !(resistance > 0) || !(link >= 0))
    throw new RangeError(`ladderCurrents: two cells or more with resistance above zero, found ${cells} and ${resistance}`)
  const n = cells,
    a = new Float64Array(n * n),
    b = new Float64Array(n)
  for (let j = 1; j < n; j++) {
    // Cell j against cell j − 1: what flows beyond the gap drops in the bar; fed diagonally, what has already left flows back in the other bar.
    a[(j - 1) * n + j] = resistance
    a[(j - 1) * n + j - 1] = -resistance
    for (let m = 0; m < n; m++) a[(j - 1) * n + m]! += feed === 'one end' ? (m >= j ? link : 0) : m >= j ? link / 2 : -link / 2
  }
  for (let m = 0; m < n; m++) a[(n - 1) * n + m] = 1
  b[n - 1] = current
  return solveLinear(a, b) as Float64Array
}
