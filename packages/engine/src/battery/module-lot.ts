import { at } from '../numerics/curve.ts'
import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { stringSorting } from './module-grouping.ts'
import { coulombs, count, hours, many, ohms, share, volts } from './symbols.ts'

const PRACTICE = { work: 'practice', place: 'grading of used modules', mark: 'common practice' } as const
/** How much faster than the median a module may lose charge, and what a meter still tells apart. */
const TIMES_MEDIAN = standard('leak-times-median', 'times the median leak', 'f_m', 3, '1', PRACTICE)
const LAST_DIGIT = standard('last-digit', 'last digit of a module reading', 'U_r', 0.001, 'V', PRACTICE)
const DAY = standard('day', 'one day', 't_d', 86400, 's', { work: 'definition', place: 'one day' })
const DEFINITION = { work: 'definition', place: 'statistics of a lot' } as const

/** Spread of a lot, from its lowest to its highest, over its lowest. */
const spreadOf = (each: readonly number[]): number => (Math.max(...each) - Math.min(...each)) / Math.min(...each)
export const capacitySpread = formula(
  {
    id: 'capacity-spread',
    label: 'Spread of capacity',
    gives: share('Δ_Q', 'spread of capacity'),
    takes: { each: many(coulombs('Q_k', 'each module')) },
    text: 'Δ_Q = (max(Q_k) − min(Q_k)) / min(Q_k)',
    source: DEFINITION,
    proof: {
      examples: [
        {
          takes: { each: [90, 93, 92.7] },
          gives: 1 / 30,
          within: 1e-9,
          source: { work: 'definition', place: 'three modules, worked by hand' },
        },
      ],
    },
  },
  ({ each }) => spreadOf(each),
)
export const resistanceSpread = formula(
  {
    id: 'resistance-spread',
    label: 'Spread of resistance',
    gives: share('Δ_R', 'spread of resistance'),
    takes: { each: many(ohms('R_k', 'each module')) },
    text: 'Δ_R = (max(R_k) − min(R_k)) / min(R_k)',
    source: DEFINITION,
    proof: {
      examples: [
        {
          takes: { each: [3, 3.3, 3.1] },
          gives: 0.1,
          within: 1e-9,
          source: { work: 'definition', place: 'three modules, worked by hand' },
        },
      ],
    },
  },
  ({ each }) => spreadOf(each),
)
export const voltageSpread = formula(
  {
    id: 'voltage-spread',
    label: 'Spread of rest voltage, per cell',
    gives: volts('ΔU', 'spread of rest voltage, per cell'),
    takes: { each: many(volts('U_k', 'rest voltage of each module')), cells: count('n_s', 'cells in series in one module') },
    text: 'ΔU = (max(U_k) − min(U_k)) / n_s',
    source: DEFINITION,
    proof: { none: 'definition' },
  },
  ({ each, cells }) => (Math.max(...each) - Math.min(...each)) / cells,
)
/** Capacity against new. */
export const healthOf = formula(
  {
    id: 'health-of-module',
    label: 'Health of a module',
    gives: share('H', 'health'),
    takes: {
      capacity: coulombs('Q', 'measured capacity'),
      parallel: count('n_p', 'cells in parallel'),
      cell: coulombs('Q_cell', 'capacity of one cell, new'),
    },
    text: 'H = Q / (n_p · Q_cell)',
    source: DEFINITION,
    proof: {
      examples: [
        {
          takes: { capacity: 30.34 * 3600, parallel: 1, cell: 33.1 * 3600 },
          gives: 0.917,
          within: 5e-4,
          source: { work: 'wiggins-2019', place: '1C capacity against rated' },
        },
      ],
    },
  },
  ({ capacity, parallel, cell }) => capacity / (parallel * cell),
)
/** Middle of a lot: half of it lies above. */
const medianOf = (each: readonly number[]): number => {
  const s = Float64Array.from(each).sort(),
    m = s.length >> 1
  return s.length % 2 ? s[m]! : (s[m - 1]! + s[m]!) / 2
}
export const medianShare = formula(
  {
    id: 'median-share',
    label: 'Median of the lot',
    gives: share('H_m', 'median of the lot'),
    takes: { each: many(share('H_k', 'each module')) },
    text: 'The value in the middle of the sorted list; of an even number, half way between the two in the middle.',
    words: 'sorting is not arithmetic',
    source: { work: 'probability', place: 'median' },
    proof: {
      examples: [
        { takes: { each: [0.9, 0.95, 0.91] }, gives: 0.91, within: 1e-12, source: { work: 'probability', place: 'three values, by hand' } },
      ],
    },
  },
  ({ each }) => medianOf(each),
)
/** Slope of the open-circuit voltage of one cell over its charge, found from the cell's rest voltage itself. */
export const slopeAtVoltage = formula(
  {
    id: 'slope-at-voltage',
    label: 'Slope of the open-circuit voltage at a rest voltage',
    gives: volts('U_z', 'open-circuit voltage over charge, there'),
    takes: {
      openCircuit: { symbol: 'U_oc', unit: ['1', 'V'], label: 'open-circuit voltage of a cell over charge', curve: true },
      voltage: volts('U', 'rest voltage of the module'),
      cells: count('n_s', 'cells in series in one module'),
    },
    text: 'At the charge where U_oc(z) = U / n_s: rise of U_oc from 2.5 % of the charge below to 2.5 % above, over those 5 %.',
    words: 'a curve turned round',
    source: { work: 'definition', place: 'slope' },
    leavesOut: 'Temperature and hysteresis.',
    proof: {
      examples: [
        {
          takes: { openCircuit: { x: Float64Array.of(0, 1), y: Float64Array.of(3, 4) }, voltage: 21, cells: 6 },
          gives: 1,
          within: 1e-9,
          source: { work: 'definition', place: 'a straight line, by hand' },
        },
      ],
    },
  },
  ({ openCircuit, voltage, cells }) => {
    const z = chargeAtVoltage({ openCircuit, voltage, cells }),
      below = Math.max(0, z - 0.025),
      above = Math.min(1, z + 0.025)
    return (at(openCircuit, above) - at(openCircuit, below)) / (above - below)
  },
)
export const chargeAtVoltage = formula(
  {
    id: 'charge-at-voltage',
    label: 'State of charge by rest voltage',
    gives: share('z', 'state of charge'),
    takes: {
      openCircuit: { symbol: 'U_oc', unit: ['1', 'V'], label: 'open-circuit voltage of a cell over charge', curve: true },
      voltage: volts('U', 'rest voltage of the module'),
      cells: count('n_s', 'cells in series in one module'),
    },
    text: 'The charge at which U_oc(z) = U / n_s; empty below the curve, full above it.',
    words: 'a curve turned round',
    source: { work: 'definition', place: 'inverse of the open-circuit curve' },
    leavesOut: 'LFP between a third and nine tenths: there a voltmeter tells nothing.',
    proof: {
      examples: [
        {
          takes: { openCircuit: { x: Float64Array.of(0, 1), y: Float64Array.of(3, 4) }, voltage: 21, cells: 6 },
          gives: 0.5,
          within: 1e-9,
          source: { work: 'definition', place: 'a straight line, by hand' },
        },
      ],
    },
  },
  ({ openCircuit: { x, y }, voltage, cells }) => {
    const wanted = voltage / cells,
      last = y.length - 1
    if (wanted <= y[0]!) return 0
    if (wanted >= y[last]!) return 1
    let i = 0
    while (i < last - 1 && y[i + 1]! < wanted) i++
    const share = y[i + 1]! === y[i]! ? 0 : (wanted - y[i]!) / (y[i + 1]! - y[i]!)
    return x[i]! + (x[i + 1]! - x[i]!) * Math.min(1, Math.max(0, share))
  },
)

/** Furthest any module lies from the median of its lot, as a share of the median. */
const furthest = (each: readonly number[]): number => {
  const m = medianOf(each)
  return Math.max(...each.map(x => Math.abs(x - m))) / m
}
const WORDS = 'sorting is not arithmetic'
const FURTHEST = 'The largest distance of any value from the median of the list, over that median.'
export const capacityOff = formula(
  {
    id: 'capacity-off',
    label: 'Furthest capacity from the median',
    gives: share('d_Q', 'furthest from the median'),
    takes: { each: many(coulombs('Q_k', 'each module')) },
    text: FURTHEST,
    words: WORDS,
    source: PRACTICE,
    proof: {
      examples: [
        {
          takes: { each: [100, 110, 101] },
          gives: 9 / 101,
          within: 1e-12,
          source: { work: 'probability', place: 'three values, by hand' },
        },
      ],
    },
  },
  ({ each }) => furthest(each),
)
export const resistanceOff = formula(
  {
    id: 'resistance-off',
    label: 'Furthest resistance from the median',
    gives: share('d_R', 'furthest from the median'),
    takes: { each: many(ohms('R_k', 'each module')) },
    text: FURTHEST,
    words: WORDS,
    source: PRACTICE,
    proof: {
      examples: [
        {
          takes: { each: [3, 3.3, 3.1] },
          gives: 0.2 / 3.1,
          within: 1e-12,
          source: { work: 'probability', place: 'three values, by hand' },
        },
      ],
    },
  },
  ({ each }) => furthest(each),
)
/** How much faster than the median the fastest falls: on the same shelf, so that the weather of the room drops out. */
export const fallOff = formula(
  {
    id: 'fall-off',
    label: 'Fastest fall of the rest voltage above the median',
    gives: volts('d_U', 'above the median, in a day, one cell'),
    takes: { each: many(volts('U_k', 'fall in a day of each module, one cell')) },
    text: 'The largest value of the list less its median.',
    words: WORDS,
    source: PRACTICE,
    proof: {
      examples: [
        {
          takes: { each: [0.001, 0.004, 0.002] },
          gives: 0.002,
          within: 1e-12,
          source: { work: 'probability', place: 'three values, by hand' },
        },
      ],
    },
  },
  ({ each }) => Math.max(...each) - medianOf(each),
)
export const medianFall = formula(
  {
    id: 'median-fall',
    label: 'Median fall of the rest voltage',
    gives: volts('U_m', 'median fall in a day, one cell'),
    takes: { each: many(volts('U_k', 'fall in a day of each module, one cell')) },
    text: 'The value in the middle of the sorted list; of an even number, half way between the two in the middle.',
    words: WORDS,
    source: { work: 'probability', place: 'median' },
    proof: {
      examples: [
        {
          takes: { each: [0.001, 0.004, 0.002] },
          gives: 0.002,
          within: 1e-12,
          source: { work: 'probability', place: 'three values, by hand' },
        },
      ],
    },
  },
  ({ each }) => medianOf(each),
)
export const fastestFall = formula(
  {
    id: 'fastest-fall',
    label: 'Fastest fall of the rest voltage',
    gives: volts('U_f', 'fastest fall in a day, one cell'),
    takes: { each: many(volts('U_k', 'fall in a day of each module, one cell')) },
    text: 'U_f = max(U_k)',
    source: { work: 'definition', place: 'the worst of several' },
    proof: { none: 'definition' },
  },
  ({ each }) => Math.max(...each),
)
/** Leaks of a lot on one shelf stand to each other as their falls do: the slope of the curve drops out. */
export const fallAllowed = formula(
  {
    id: 'fall-allowed',
    label: 'Fall of the rest voltage allowed beside the others',
    gives: volts('U_lim', 'fall allowed in a day, one cell'),
    takes: {
      median: volts('U_m', 'median fall in a day, one cell'),
      cells: count('n_s', 'cells in series in one module'),
      apart: many(hours('t_k', 'time between the two readings of each module')),
    },
    uses: [TIMES_MEDIAN, LAST_DIGIT, DAY],
    text: 'U_lim = f_m · max(U_m, U_r / n_s · t_d / min(t_k))',
    source: PRACTICE,
    leavesOut: 'Modules that rest at other voltages than the lot: there the slope does not drop out.',
    proof: {
      examples: [
        {
          takes: { median: 1e-4, cells: 6, apart: [14 * 86400, 20 * 86400] },
          gives: 3e-4,
          within: 1e-12,
          source: { work: 'definition', place: 'three times a tenth of a millivolt, by hand' },
        },
        {
          takes: { median: 0, cells: 6, apart: [14 * 86400, 20 * 86400] },
          gives: 3 / 84000,
          within: 1e-12,
          source: { work: 'definition', place: 'a lot that does not fall, read to a millivolt over six cells and 14 days; by hand' },
        },
      ],
    },
  },
  ({ median, cells, apart }) => TIMES_MEDIAN.value * Math.max(median, ((LAST_DIGIT.value / cells) * DAY.value) / Math.min(...apart)),
)
export const greatestLeak = formula(
  {
    id: 'greatest-leak',
    label: 'Greatest self-discharge of a module',
    gives: share('s_max', 'greatest self-discharge in thirty days'),
    takes: { each: many(share('s_k', 'self-discharge of each module in thirty days')) },
    text: 's_max = max(s_k)',
    source: { work: 'definition', place: 'the worst of several' },
    proof: { none: 'definition' },
  },
  ({ each }) => Math.max(...each),
)
/** Lowest rest voltage per cell of any module. */
export const lowestRest = formula(
  {
    id: 'lowest-rest',
    label: 'Lowest rest voltage of a cell',
    gives: volts('U_low', 'lowest rest voltage, one cell'),
    takes: { each: many(volts('U_k', 'rest voltage of each module')), cells: count('n_s', 'cells in series in one module') },
    text: 'U_low = min(U_k) / n_s',
    source: { work: 'definition', place: 'mean of the cells of a module' },
    leavesOut: 'One low cell hidden among good ones: look at every group.',
    proof: { none: 'definition' },
  },
  ({ each, cells }) => Math.min(...each) / cells,
)
export const lowestInsulation = formula(
  {
    id: 'lowest-insulation',
    label: 'Lowest insulation resistance of a module',
    gives: ohms('R_low', 'lowest insulation resistance'),
    takes: { each: many(ohms('R_k', 'each module')) },
    text: 'R_low = min(R_k)',
    source: { work: 'definition', place: 'the worst of several' },
    proof: { none: 'definition' },
  },
  ({ each }) => Math.min(...each),
)

/** Charge of strings joined at their ends, modules sorted: each is as good as its weakest, so like goes with like. */
export const sortedStrings = formula(
  {
    id: 'sorted-strings',
    label: 'Capacity with modules sorted into strings',
    gives: coulombs('Q', 'capacity of the pack'),
    takes: {
      each: many(coulombs('Q_k', 'each module')),
      size: { ...count('n_mod', 'modules in series'), holds: [1, 1.4] },
      strings: { ...count('n_str', 'strings in parallel'), holds: [1, 2.4] },
    },
    text: 'Strongest first, string by string: the sum of the weakest of each string.',
    words: WORDS,
    source: { work: 'probability', place: 'exchange argument' },
    proof: {
      examples: [
        {
          takes: { each: [5, 1, 4, 2, 3, 6], size: 3, strings: 2 },
          gives: 5,
          within: 1e-12,
          source: { work: 'probability', place: '6, 5, 4 and 3, 2, 1, by hand' },
        },
      ],
    },
  },
  ({ each, size, strings }) => stringSorting(each, Math.round(strings), Math.round(size)).together,
)
