import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { hours, many, number, ratio, share } from './symbols.ts'

const DAY = standard('day', 'one day', 't_d', 86400, 's', { work: 'definition', place: 'one day' })
const EQUIVALENT = { work: 'schmalstieg-2014', place: 'equivalent-time rule: the power law turned round at each new stress' } as const

/** Loss by standing at changing temperature: within one mechanism times add, not losses. Order does not matter. */
export const standingThroughSeasons = formula(
  {
    id: 'standing-through-seasons',
    label: 'Loss by standing through the seasons',
    gives: share('L_t', 'lost or gained by standing'),
    takes: { perDay: many(number('α_k', 'after one day, in each season')), times: many(hours('t_k', 'time in each season')) },
    uses: [DAY],
    text: 'L_t = exp(0.75 · ln(Σ (exp(ln(α_k) / 0.75) · t_k / t_d)))',
    source: EQUIVALENT,
    leavesOut: 'Adding the losses of the seasons instead would be four fifths too high.',
    proof: {
      examples: [
        {
          takes: { perDay: [2.8678e-4, 2.8678e-4], times: [182.5 * 86400, 182.5 * 86400] },
          gives: 0.02395,
          within: 5e-6,
          source: { work: 'schmalstieg-2014', place: 'two half years at the same stress are one; recomputed' },
        },
      ],
    },
  },
  ({ perDay, times }) => {
    let sum = 0
    for (let k = 0; k < perDay.length; k++) sum += ((perDay[k] as number) ** (1 / 0.75) * (times[k] as number)) / DAY.value
    return sum ** 0.75
  },
)

/** The same beginning with a loss already there. */
export const standingOnTop = formula(
  {
    id: 'standing-on-top',
    label: 'Standing, after a loss already there',
    gives: share('L_t', 'lost by standing, the old loss included'),
    takes: { before: share('L_0', 'lost before by standing'), added: share('L_a', 'a new cell would lose') },
    text: 'L_t = exp(0.75 · ln(exp(ln(L_0) / 0.75) + exp(ln(L_a) / 0.75)))',
    source: EQUIVALENT,
    proof: {
      examples: [
        {
          takes: { before: 0.014821, added: 0.014821 },
          gives: 0.014821 * 2 ** 0.75,
          within: 1e-9,
          source: { work: 'schmalstieg-2014', place: 'twice the time by the power law, worked by hand' },
        },
      ],
    },
  },
  ({ before, added }) => (before ** (1 / 0.75) + added ** (1 / 0.75)) ** 0.75,
)
/** Loss on top of loss where it goes with a square root, of the charge moved or of time: squares add. */
export const rootLawOnTop = formula(
  {
    id: 'root-law-on-top',
    label: 'Loss by a square-root law, after a loss already there',
    gives: share('L_c', 'lost, the old loss included'),
    takes: { before: share('L_0', 'lost before by the same mechanism'), added: share('L_a', 'a new cell would lose') },
    text: 'L_c = √(L_0² + L_a²)',
    source: EQUIVALENT,
    proof: {
      examples: [
        {
          takes: { before: 0.03, added: 0.04 },
          gives: 0.05,
          within: 1e-12,
          source: { work: 'statics', place: 'squares of three and four, worked by hand' },
        },
      ],
    },
  },
  ({ before, added }) => Math.hypot(before, added),
)

/** Full cycles from driving: energy out of the battery over what it holds. */
export const fullCycles = formula(
  {
    id: 'full-cycles',
    label: 'Full cycles',
    gives: ratio('n', 'full cycles'),
    takes: {
      distance: { symbol: 's', unit: 'm', label: 'distance', shows: 'distance' },
      consumption: { symbol: 'e', unit: 'J/m', label: 'energy out of the battery per distance', shows: 'consumption' },
      energy: { symbol: 'E', unit: 'J', label: 'energy of the pack' },
    },
    text: 'n = s · e / E',
    source: { work: 'definition', place: 'charge moved over capacity' },
    leavesOut: 'What regeneration puts back and is taken again counts too: use energy out of the battery, not net.',
    proof: {
      examples: [
        {
          takes: { distance: 12e6, consumption: 540, energy: 38.5 * 3.6e6 },
          gives: 46.753,
          within: 5e-4,
          source: { work: 'schmalstieg-2014', place: '12 000 km at 150 Wh/km from 38.5 kWh; recomputed' },
        },
      ],
    },
  },
  ({ distance, consumption, energy }) => (distance * consumption) / energy,
)
/** How far one cell's law may be from another cell of its kind: a factor of two either way. */
export const AGEING_LAW = {
  path: 'class.ageing-law',
  label: 'this cell against the one of the law',
  symbol: 'k_law',
  unit: '1',
  value: 1,
  half: 0.5,
  origin: {
    how: 'assumed',
    note: 'laws come from one small cell each; others of the kind differ by up to a factor of two',
    source: { work: 'practice', place: 'judgement of this project', mark: 'common practice' },
  },
} as const
/** A loss by the law, for another cell of its kind. */
export const lossOfThisCell = formula(
  {
    id: 'loss-of-this-cell',
    label: 'Loss by the law, for this cell',
    gives: share('L_a', 'a new cell would lose'),
    takes: { law: share('L', 'by the law'), factor: ratio('k_law', 'this cell against the one of the law') },
    text: 'L_a = L · k_law',
    source: { work: 'practice', place: 'judgement of this project', mark: 'common practice' },
    proof: { none: 'definition' },
  },
  ({ law, factor }) => law * factor,
)
/** Health left after standing and cycling. */
export const healthLeft = formula(
  {
    id: 'health-left',
    label: 'Health left',
    gives: share('H', 'health'),
    takes: { standing: share('L_t', 'lost by standing'), cycling: share('L_c', 'lost by cycling') },
    text: 'H = max(0, 1 − L_t − L_c)',
    source: { work: 'naumann-2020', place: 'both kinds of loss are tracked apart and added' },
    proof: {
      examples: [
        {
          takes: { standing: 0.116916, cycling: 0.022509 },
          gives: 1 - 0.139425,
          within: 1e-9,
          source: { work: 'naumann-2020', place: 'ten years of a town car; recomputed' },
        },
      ],
    },
  },
  ({ standing, cycling }) => Math.max(0, 1 - standing - cycling),
)
