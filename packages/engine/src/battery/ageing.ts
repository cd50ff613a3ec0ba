import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { ONE_VOLT } from './open-circuit-sets.ts'
import { HOUR } from './pack-resistance.ts'
import { coulombs, hours, kelvins, number, ratio, share, stateOfCharge, volts } from './symbols.ts'

const ONE_KELVIN = standard('one-kelvin', 'one kelvin', 'K_1', 1, 'K', { work: 'definition', place: 'coherent unit' })
const AMPERE_HOUR = standard('ampere-hour', 'one ampere-hour', 'Q_1', 3600, 'C', { work: 'definition', place: 'one ampere-hour' })
const DAY = standard('day', 'one day', 't_d', 86400, 's', { work: 'definition', place: 'one day' })
const SECOND = standard('second', 'one second', 't_1', 1, 's', { work: 'definition', place: 'coherent unit' })
const FACTOR_TWO = 'Fitted to one small cell; other cells of the kind differ by a factor of two. No plating in the cold, no knee.'
const rate = { symbol: 'c', unit: '1/s', label: 'current as capacity per hour', shows: 'charge rate' } as const
const temperature = { ...kelvins('T', 'cell temperature'), holds: [263.15, 333.15] } as const

const B = [31630, 21681, 12934] as const,
  RATES = [0.5, 2, 6] as const
/** Pre-factor of Wang's law between the published rates; ln B runs straight from C/2 over 2C to 6C (a choice of this project) and is held outside. */
export const wangFactor = formula(
  {
    id: 'wang-factor',
    label: 'Pre-factor of Wang’s cycling law',
    gives: number('B', 'pre-factor'),
    takes: { rate },
    uses: [HOUR],
    text: `r = min(6, max(0.5, c · t_h))
B = { exp(ln(31630) + (r − 0.5) / 1.5 · ln(21681 / 31630)) if r < 2; exp(ln(21681) + (r − 2) / 4 · ln(12934 / 21681)) otherwise }`,
    source: { work: 'wang-2011', place: 'table of B against rate' },
    proof: {
      examples: [
        { takes: { rate: 0.5 / 3600 }, gives: 31630, within: 1e-6, source: { work: 'wang-2011', place: 'C/2' } },
        { takes: { rate: 6 / 3600 }, gives: 12934, within: 1e-6, source: { work: 'wang-2011', place: '6C' } },
      ],
    },
  },
  ({ rate }) => {
    const r = Math.min(RATES[2], Math.max(RATES[0], rate * HOUR.value)),
      i = r < RATES[1] ? 0 : 1
    const [from, to] = [B[i] as number, B[i + 1] as number],
      [low, high] = [RATES[i] as number, RATES[i + 1] as number]
    return Math.exp(Math.log(from) + ((r - low) / (high - low)) * Math.log(to / from))
  },
)

/** Capacity an LFP cell of 2.2 Ah loses by cycling; throughput in one direction of that cell. */
export const wangCycling = formula(
  {
    id: 'wang-cycling',
    label: 'Capacity lost by cycling, LFP (Wang)',
    gives: share('L', 'capacity lost'),
    takes: {
      factor: number('B', 'pre-factor'),
      rate,
      temperature: { ...temperature, holds: [288.15, 333.15] },
      throughput: coulombs('Q_t', 'charge taken out, of a cell of 2.2 Ah'),
    },
    uses: [HOUR, ONE_KELVIN, AMPERE_HOUR],
    text: `r = c · t_h
L = B / 100 · exp((−31700 + 370.3 · r) / 8.314 · K_1 / T) · (Q_t / Q_1)^0.55`,
    source: { work: 'wang-2011', place: 'capacity loss of a 2.2 Ah 26650' },
    leavesOut: FACTOR_TWO,
    proof: {
      examples: [
        {
          takes: { factor: 31630, rate: 0.5 / 3600, temperature: 288.15, throughput: 3.6e6 },
          gives: 0.02735,
          within: 5e-6,
          source: { work: 'wang-2011', place: 'recomputed' },
        },
        {
          takes: { factor: 31630, rate: 0.5 / 3600, temperature: 298.15, throughput: 3.6e6 },
          gives: 0.04252,
          within: 5e-6,
          source: { work: 'wang-2011', place: 'recomputed' },
        },
        {
          takes: { factor: 31630, rate: 0.5 / 3600, temperature: 318.15, throughput: 3.6e6 },
          gives: 0.09456,
          within: 5e-6,
          source: { work: 'wang-2011', place: 'recomputed' },
        },
        {
          takes: { factor: 21681, rate: 2 / 3600, temperature: 298.15, throughput: 3.6e6 },
          gives: 0.03647,
          within: 5e-6,
          source: { work: 'wang-2011', place: 'recomputed' },
        },
        {
          takes: { factor: 31630, rate: 0.5 / 3600, temperature: 298.15, throughput: 16693 * 3600 },
          gives: 0.2,
          within: 5e-6,
          source: { work: 'wang-2011', place: 'recomputed' },
        },
        {
          takes: { factor: 21681, rate: 2 / 3600, temperature: 318.15, throughput: 5295 * 3600 },
          gives: 0.2,
          within: 2e-5,
          source: { work: 'wang-2011', place: 'recomputed' },
        },
      ],
    },
  },
  ({ factor, rate, temperature, throughput }) =>
    (factor / 100) * Math.exp((-31700 + 370.3 * rate * HOUR.value) / 8.314 / temperature) * (throughput / AMPERE_HOUR.value) ** 0.55,
)

/** How fast an NMC cell ages by standing: capacity lost and resistance gained after one day. */
export const schmalstiegStanding = formula(
  {
    id: 'schmalstieg-standing',
    label: 'Ageing by standing after one day, NMC (Schmalstieg)',
    gives: { capacity: number('α_c', 'capacity lost after a day'), resistance: number('α_r', 'resistance gained after a day') },
    takes: { voltage: volts('U', 'voltage it stands at'), temperature },
    uses: [ONE_VOLT, ONE_KELVIN],
    text: `α_c = max(0, (7.543 · U / U_1 − 23.75) · 1e6 · exp(−6976 · K_1 / T))
α_r = max(0, (5.270 · U / U_1 − 16.32) · 1e5 · exp(−5986 · K_1 / T))`,
    source: { work: 'schmalstieg-2014', place: 'calendar ageing of a 2.05 Ah 18650' },
    leavesOut: FACTOR_TWO,
    proof: {
      examples: [
        {
          takes: { voltage: 3.7, temperature: 298.15 },
          gives: { capacity: 2.8678e-4 },
          within: 5e-9,
          source: { work: 'schmalstieg-2014', place: 'recomputed' },
          because: 'one print has 7.542 for 7.543',
        },
      ],
    },
  },
  ({ voltage, temperature }) => ({
    capacity: Math.max(0, (7.543 * voltage - 23.75) * 1e6 * Math.exp(-6976 / temperature)),
    resistance: Math.max(0, (5.27 * voltage - 16.32) * 1e5 * Math.exp(-5986 / temperature)),
  }),
)
/** What standing costs after a time. */
export const standingLoss = formula(
  {
    id: 'standing-loss',
    label: 'Loss by standing',
    gives: share('L_t', 'lost or gained by standing'),
    takes: { perDay: number('α', 'after one day'), time: hours('t', 'time') },
    uses: [DAY],
    text: 'L_t = α · (t / t_d)^0.75',
    source: { work: 'schmalstieg-2014', place: 'calendar ageing of a 2.05 Ah 18650' },
    proof: {
      examples: [
        {
          takes: { perDay: 2.8678e-4, time: 365 * 86400 },
          gives: 0.02395,
          within: 5e-6,
          source: { work: 'schmalstieg-2014', place: '3.7 V, 25 °C; recomputed' },
        },
        {
          takes: { perDay: 1.774894e-4, time: 3650 * 86400 },
          gives: 0.083347,
          within: 5e-7,
          source: { work: 'schmalstieg-2014', place: 'ten years at 3.90 V through the seasons; recomputed' },
        },
      ],
    },
  },
  ({ perDay, time }) => perDay * (time / DAY.value) ** 0.75,
)
/** What cycling costs an NMC cell; charge moved in both directions, of a cell of 2.05 Ah. */
export const schmalstiegCycling = formula(
  {
    id: 'schmalstieg-cycling',
    label: 'Ageing by cycling, NMC (Schmalstieg)',
    gives: { capacity: share('L_c', 'capacity lost'), resistance: share('L_r', 'resistance gained') },
    takes: {
      voltage: volts('U_m', 'rms voltage of the cycle'),
      depth: share('d', 'depth of the cycles'),
      throughput: coulombs('Q_t', 'charge moved both ways, of a cell of 2.05 Ah'),
    },
    uses: [ONE_VOLT, AMPERE_HOUR],
    text: `v = U_m / U_1
b_c = 0.007348 · (v − 3.667)² + 0.00076 + 0.004081 · d
b_r = max(0.000015, 0.0002153 · (v − 3.725)² − 0.00001521 + 0.0002798 · d)
L_c = b_c · √(Q_t / Q_1)
L_r = b_r · Q_t / Q_1`,
    source: { work: 'schmalstieg-2014', place: 'cycle ageing of a 2.05 Ah 18650' },
    leavesOut: FACTOR_TWO,
    proof: {
      examples: [
        {
          takes: { voltage: 3.7, depth: 0.8, throughput: 1197.2 * 3600 },
          gives: { capacity: 0.13954 },
          within: 5e-6,
          source: { work: 'schmalstieg-2014', place: 'one 80 % cycle a day for a year; recomputed' },
        },
        {
          takes: { voltage: 3.7, depth: 0.8, throughput: 1197.2 * 3600 },
          gives: { resistance: 0.2499 },
          within: 6e-5,
          source: { work: 'schmalstieg-2014', place: 'one 80 % cycle a day for a year; recomputed' },
        },
        {
          takes: { voltage: 3.8, depth: 0.4, throughput: 46.753 * 2 * 2.05 * 3600 },
          gives: { capacity: 0.034923, resistance: 0.01877 },
          within: 5e-6,
          source: { work: 'schmalstieg-2014', place: '46.753 full cycles; recomputed' },
        },
      ],
    },
  },
  ({ voltage, depth, throughput }) => {
    const q = throughput / AMPERE_HOUR.value
    return {
      capacity: (0.007348 * (voltage - 3.667) ** 2 + 0.00076 + 0.004081 * depth) * Math.sqrt(q),
      resistance: Math.max(0.000015, 0.0002153 * (voltage - 3.725) ** 2 - 0.00001521 + 0.0002798 * depth) * q,
    }
  },
)

/** How fast an LFP cell ages by standing: per square root of a second. */
export const naumannStanding = formula(
  {
    id: 'naumann-standing',
    label: 'Ageing by standing, LFP (Naumann)',
    gives: share('L_t', 'capacity lost by standing'),
    takes: { charge: stateOfCharge, temperature, time: hours('t', 'time') },
    uses: [ONE_KELVIN, SECOND],
    text: `k = 0.000012571 · exp(−17126 / 8.314 · (K_1 / T − 1 / 298.15))
L_t = k · (2.8575 · (z − 0.5)³ + 0.60225) · √(t / t_1)`,
    source: { work: 'naumann-2018', place: 'calendar ageing of a 3 Ah 26650' },
    leavesOut: FACTOR_TWO,
    proof: {
      examples: [
        {
          takes: { charge: 0.5, temperature: 298.15, time: 365.25 * 86400 },
          gives: 0.04253,
          within: 5e-6,
          source: { work: 'naumann-2018', place: 'recomputed' },
        },
        {
          takes: { charge: 1, temperature: 298.15, time: 365.25 * 86400 },
          gives: 0.06776,
          within: 6e-6,
          source: { work: 'naumann-2018', place: 'recomputed' },
        },
      ],
    },
  },
  ({ charge, temperature, time }) =>
    1.2571e-5 * Math.exp((-17126 / 8.314) * (1 / temperature - 1 / 298.15)) * (2.8575 * (charge - 0.5) ** 3 + 0.60225) * Math.sqrt(time),
)
/** What cycling costs an LFP cell. */
export const naumannCycling = formula(
  {
    id: 'naumann-cycling',
    label: 'Ageing by cycling, LFP (Naumann)',
    gives: share('L_c', 'capacity lost by cycling'),
    takes: { rate, depth: share('d', 'depth of the cycles'), cycles: ratio('n', 'full cycles') },
    uses: [HOUR],
    text: 'L_c = (0.0630 · c · t_h + 0.0971) · (4.0253 · (d − 0.6)³ + 1.0923) · √n / 100',
    source: { work: 'naumann-2020', place: 'cycle ageing of a 3 Ah 26650' },
    leavesOut: FACTOR_TWO,
    proof: {
      examples: [
        {
          takes: { rate: 0.5 / 3600, depth: 0.8, cycles: 100 },
          gives: 0.01446,
          within: 5e-6,
          source: { work: 'naumann-2020', place: 'recomputed' },
        },
        {
          takes: { rate: 1 / 3600, depth: 0.8, cycles: 1000 },
          gives: 0.05693,
          within: 5e-6,
          source: { work: 'naumann-2020', place: 'recomputed' },
        },
        {
          takes: { rate: 0.3 / 3600, depth: 0.4, cycles: 33.505 },
          gives: 0.007118,
          within: 5e-7,
          source: { work: 'naumann-2020', place: 'a town car for a year; recomputed' },
        },
      ],
    },
  },
  ({ rate, depth, cycles }) => ((0.063 * rate * HOUR.value + 0.0971) * (4.0253 * (depth - 0.6) ** 3 + 1.0923) * Math.sqrt(cycles)) / 100,
)
