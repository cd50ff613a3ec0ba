import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { amps, coulombs, count, hours, share, volts } from './symbols.ts'

const MONTH = standard('month', 'thirty days', 't_m', 30 * 86400, 's', { work: 'definition', place: '30 days' })
const DAY = standard('day', 'one day', 't_d', 86400, 's', { work: 'definition', place: 'one day' })
const DERIVED = { work: 'circuits', place: 'charge lost is what the voltage fell by, over the slope of the open-circuit curve' } as const

/** How far the rest voltage of one cell falls in a day. */
export const dailyFall = formula(
  {
    id: 'daily-fall',
    label: 'Fall of the rest voltage in a day, one cell',
    gives: volts('U_d', 'fall of the rest voltage in a day, one cell'),
    takes: {
      first: volts('U_1', 'rest voltage'),
      later: volts('U_2', 'rest voltage later'),
      cells: count('n_s', 'cells in series in one module'),
      apart: hours('t', 'time between the two'),
    },
    uses: [DAY],
    text: 'U_d = (U_1 − U_2) / n_s · t_d / t',
    source: { work: 'definition', place: 'slope in time' },
    leavesOut: 'Relaxation: start a day or more after charging. Temperature: keep the room within a kelvin.',
    proof: {
      examples: [
        {
          takes: { first: 22.041, later: 22.027, cells: 6, apart: 14 * 86400 },
          gives: 1 / 6000,
          within: 1e-9,
          source: { work: 'definition', place: '14 mV over six cells in 14 days, worked by hand' },
        },
      ],
    },
  },
  ({ first, later, cells, apart }) => ((first - later) / cells) * (DAY.value / apart),
)

/** Share of the charge that leaks in thirty days, from the fall of the rest voltage. */
export const monthlyLeak = formula(
  {
    id: 'monthly-leak',
    label: 'Self-discharge in thirty days',
    gives: share('s_m', 'self-discharge in thirty days'),
    takes: {
      fall: volts('U_d', 'fall of the rest voltage in a day, one cell'),
      slope: volts('U_z', 'open-circuit voltage over charge, there'),
    },
    uses: [MONTH, DAY],
    text: 's_m = U_d · t_m / t_d / U_z',
    source: DERIVED,
    leavesOut: 'Says nothing where the curve is flat: LFP is tested at about a fifth, or by charge after 28 days.',
    proof: {
      examples: [
        {
          takes: { fall: 1e-3, slope: 0.514 },
          gives: 0.058,
          within: 5e-4,
          source: { work: 'bpx-nmc-2022', place: '1 mV a day at half charge; recomputed' },
        },
        {
          takes: { fall: 1e-3, slope: 0.874 },
          gives: 0.034,
          within: 5e-4,
          source: { work: 'chen-2020', place: '1 mV a day at half charge; recomputed' },
        },
        {
          takes: { fall: 1e-3, slope: 0.041 },
          gives: 0.72,
          within: 0.02,
          source: { work: 'bpx-lfp-2022', place: '1 mV a day at half charge; recomputed' },
        },
      ],
    },
  },
  ({ fall, slope }) => (fall * MONTH.value) / DAY.value / slope,
)

/** The mean current that balances leaks of different size. */
export const balanceCurrent = formula(
  {
    id: 'balance-current',
    label: 'Mean current that holds a leak',
    gives: amps('I_bal', 'mean current'),
    takes: { spread: share('s_m', 'spread of self-discharge in thirty days'), capacity: coulombs('Q', 'capacity') },
    uses: [MONTH],
    text: 'I_bal = s_m · Q / t_m',
    source: DERIVED,
    proof: {
      examples: [
        {
          takes: { spread: 0.01, capacity: 60.6 * 3600 },
          gives: 0.84e-3,
          within: 5e-6,
          source: { work: 'circuits', place: '1 % a month of 60.6 Ah; recomputed' },
        },
      ],
    },
  },
  ({ spread, capacity }) => (spread * capacity) / MONTH.value,
)

/** How long a balancer needs to level a difference. */
export const balanceTime = formula(
  {
    id: 'balance-time',
    label: 'Time to level a difference of charge',
    gives: hours('t', 'time to level'),
    takes: {
      difference: share('Δz', 'difference of charge'),
      capacity: coulombs('Q', 'capacity'),
      current: amps('I_bal', 'balancing current'),
      duty: share('d', 'part of the time it balances'),
    },
    text: 't = Δz · Q / (I_bal · d)',
    source: DERIVED,
    proof: {
      examples: [
        {
          takes: { difference: 0.03, capacity: 60.6 * 3600, current: 0.1, duty: 1 },
          gives: 18.18 * 3600,
          within: 1,
          source: { work: 'circuits', place: '3 % of 60.6 Ah at 100 mA; recomputed' },
        },
        {
          takes: { difference: 0.03, capacity: 60.6 * 3600, current: 0.1, duty: 0.5 },
          gives: 36.36 * 3600,
          within: 2,
          source: { work: 'circuits', place: 'the same, half the time; recomputed' },
        },
      ],
    },
  },
  ({ difference, capacity, current, duty }) => (difference * capacity) / (current * duty),
)
