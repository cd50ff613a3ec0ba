import { at } from '../numerics/curve.ts'
import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { naumannStanding, schmalstiegStanding, standingLoss } from './ageing.ts'
import { coulombs, hours, kelvins, kelvinsApart, ratio, share, stateOfCharge, volts } from './symbols.ts'

const MONTHS = Float64Array.from({ length: 12 }, (_, k) => Math.cos((Math.PI * (2 * k + 1)) / 12))
const SEASONS = 'Twelve equal months at T_m + ΔT·cos(15° + 30°·k); within the mechanism times add, not losses.'
const season = {
  mean: kelvins('T_m', 'mean temperature of the cells'),
  swing: kelvinsApart('ΔT', 'summer above the mean'),
  time: hours('t', 'time'),
}
const WORDS = 'twelve months in one sum'
const TWICE = 'Fitted to one small cell; other cells of the kind differ by a factor of two. No plating, no knee below about three quarters.'

/** Loss by standing of an NMC cell through the seasons. */
export const standingNmc = formula(
  {
    id: 'standing-nmc',
    label: 'Loss by standing through the seasons, NMC',
    gives: { capacity: share('L_t', 'capacity lost by standing'), resistance: share('L_r', 'resistance gained by standing') },
    takes: { voltage: volts('U', 'voltage it stands at'), ...season },
    text: `Schmalstieg’s law of standing. ${SEASONS}`,
    words: WORDS,
    source: { work: 'schmalstieg-2014', place: 'calendar ageing of a 2.05 Ah 18650' },
    leavesOut: TWICE,
    proof: {
      examples: [
        {
          takes: { voltage: 3.9, mean: 288.421, swing: 0, time: 3650 * 86400 },
          gives: { capacity: 0.083347 },
          within: 5e-6,
          source: { work: 'schmalstieg-2014', place: 'ten years at an effective 15.271 °C; recomputed' },
        },
      ],
    },
  },
  ({ voltage, mean, swing, time }) => {
    const over = (key: 'capacity' | 'resistance'): number => {
      let sum = 0
      for (const c of MONTHS) sum += schmalstiegStanding({ voltage, temperature: mean + swing * c })[key] ** (1 / 0.75) / 12
      return standingLoss({ perDay: sum ** 0.75, time })
    }
    return { capacity: over('capacity'), resistance: over('resistance') }
  },
)
/** Loss by standing of an LFP cell through the seasons. */
export const standingLfp = formula(
  {
    id: 'standing-lfp',
    label: 'Loss by standing through the seasons, LFP',
    gives: share('L_t', 'capacity lost by standing'),
    takes: { charge: stateOfCharge, ...season },
    text: `Naumann’s law of standing. ${SEASONS}`,
    words: WORDS,
    source: { work: 'naumann-2018', place: 'calendar ageing of a 3 Ah 26650' },
    leavesOut: TWICE,
    proof: {
      examples: [
        {
          takes: { charge: 0.5, mean: 298.15, swing: 0, time: 365.25 * 86400 },
          gives: 0.04253,
          within: 5e-6,
          source: { work: 'naumann-2018', place: 'a year at half charge and 25 °C; recomputed' },
        },
      ],
    },
  },
  ({ charge, mean, swing, time }) => {
    let sum = 0
    for (const c of MONTHS) sum += naumannStanding({ charge, temperature: mean + swing * c, time }) ** 2 / 12
    return Math.sqrt(sum)
  },
)

/** Charge the cell of the law would have moved for so many full cycles. */
export const throughputOfLaw = formula(
  {
    id: 'throughput-of-law',
    label: 'Charge moved by the cell of the law',
    gives: coulombs('Q_t', 'charge moved both ways, of a cell of 2.05 Ah'),
    takes: { cycles: ratio('n', 'full cycles') },
    uses: [
      standard('law-cell', 'capacity of the cell of the law', 'Q_law', 2.05 * 3600, 'C', {
        work: 'schmalstieg-2014',
        place: '2.05 Ah 18650',
      }),
    ],
    text: 'Q_t = 2 · n · Q_law',
    source: { work: 'schmalstieg-2014', place: 'a full cycle moves the capacity twice' },
    proof: {
      examples: [
        {
          takes: { cycles: 365 * 0.8 },
          gives: 1197.2 * 3600,
          within: 1,
          source: { work: 'schmalstieg-2014', place: 'one 80 % cycle a day for a year; recomputed' },
        },
      ],
    },
  },
  ({ cycles }) => 2 * cycles * 2.05 * 3600,
)
/** Voltage half way down the daily cycle. */
export const cycleVoltage = formula(
  {
    id: 'cycle-voltage',
    label: 'Mean voltage of the cycle',
    gives: volts('U_m', 'mean voltage of the cycle'),
    takes: {
      openCircuit: { symbol: 'U_oc', unit: ['1', 'V'], label: 'open-circuit voltage of a cell over charge', curve: true },
      top: share('z_p', 'parked at'),
      depth: share('d', 'depth of the cycles'),
    },
    text: 'U_m = U_oc(max(0, z_p − d / 2))',
    source: { work: 'definition', place: 'middle of the cycle' },
    leavesOut: 'The law wants the rms voltage, a few millivolts above.',
    proof: { none: 'a curve looked up' },
  },
  ({ openCircuit, top, depth }) => at(openCircuit, Math.max(0, top - depth / 2)),
)
/** Voltage a cell stands at. */
export const parkedVoltage = formula(
  {
    id: 'parked-voltage',
    label: 'Voltage a parked cell stands at',
    gives: volts('U', 'voltage it stands at'),
    takes: {
      openCircuit: { symbol: 'U_oc', unit: ['1', 'V'], label: 'open-circuit voltage of a cell over charge', curve: true },
      top: share('z_p', 'parked at'),
    },
    text: 'U = U_oc(z_p)',
    source: { work: 'definition', place: 'open-circuit curve' },
    proof: { none: 'a curve looked up' },
  },
  ({ openCircuit, top }) => at(openCircuit, top),
)
/** Distance driven in all. */
export const distanceInAll = formula(
  {
    id: 'distance-in-all',
    label: 'Distance in all',
    gives: { symbol: 's', unit: 'm', label: 'distance', shows: 'distance' },
    takes: { perYear: { symbol: 's_a', unit: 'm', label: 'distance in a year', shows: 'distance' }, time: hours('t', 'time') },
    uses: [standard('year', 'one year', 't_a', 365 * 86400, 's', { work: 'definition', place: '365 days' })],
    text: 's = s_a · t / t_a',
    source: { work: 'definition', place: 'sum over years' },
    proof: { none: 'definition' },
  },
  ({ perYear, time }) => (perYear * time) / (365 * 86400),
)
/** What is lost before, split between the two kinds of loss: nobody knows how. */
export const lossBefore = formula(
  {
    id: 'loss-before',
    label: 'Loss before',
    gives: share('L_0', 'lost before, of this kind'),
    takes: { health: share('H', 'health'), part: share('a', 'part of the loss that is of this kind') },
    text: 'L_0 = max(0, 1 − H) · a',
    source: { work: 'definition', place: 'health' },
    proof: { none: 'definition' },
  },
  ({ health, part }) => Math.max(0, 1 - health) * part,
)
