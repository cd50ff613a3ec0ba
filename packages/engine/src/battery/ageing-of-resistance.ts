import { formula } from '../working/formula.ts'
import { coulombs, ohms, ratio, share } from './symbols.ts'

const LAW = { work: 'schmalstieg-2014', place: 'capacity and resistance of one cell, by standing and by cycling' } as const
const HAND = { work: 'definition', place: 'worked by hand' } as const
const FACTOR_TWO = 'Fitted to one small NMC cell; other cells of the kind differ by a factor of two. No plating, no knee.'

/** Resistance gained for capacity lost: the law gives 1.7 to 2.3 by standing and 0.5 to 1.8 by cycling, and nobody knows how a used cell aged. */
export const RESISTANCE_RISE = {
  path: 'class.resistance-rise',
  label: 'resistance gained over capacity lost',
  symbol: 'r_H',
  unit: '1',
  value: 1.4,
  half: 0.9,
  origin: {
    how: 'assumed',
    note: 'class NMC: 1.7 to 2.3 by standing at 3.7 to 4.1 V, 0.5 to 1.8 by cycling',
    source: { ...LAW, place: 'both laws at several stresses; recomputed' },
  },
} as const
/** Health of the cells the class resistance was read from. */
export const CLASS_HEALTH = {
  path: 'class.resistance-health',
  label: 'health at which the class resistance holds',
  symbol: 'H_0',
  unit: '1',
  shows: 'share',
  value: 0.97,
  half: 0.05,
  origin: {
    how: 'assumed',
    note: 'class NMC: one cell new, used ones at 98 and 92 %',
    source: { work: 'pulsebat-2024', place: '52 NMC pouch cells, 21 Ah; 60 Ah car cell new; laminate car cell' },
  },
} as const

/** What the class says of a cell, for the health of this one. A measured resistance needs none of this. */
export const agedResistance = formula(
  {
    id: 'aged-resistance',
    label: 'Class resistance at the health of these cells',
    gives: ohms('R_cell', 'cell, 10 s, 25 °C, half charge'),
    takes: {
      cell: ohms('R_k', 'cell of the class'),
      rise: ratio('r_H', 'resistance gained over capacity lost'),
      classHealth: share('H_0', 'health at which the class holds'),
      health: share('H', 'health'),
    },
    text: 'R_cell = R_k · (1 + r_H · (H_0 − H))',
    source: LAW,
    leavesOut: FACTOR_TWO,
    proof: {
      examples: [
        {
          takes: { cell: 0.001, rise: 0.05065 / 0.02395, classHealth: 1, health: 1 - 0.02395 },
          gives: 0.00105065,
          within: 1e-9,
          source: { work: 'schmalstieg-2014', place: 'a year at 3.7 V and 25 °C; recomputed' },
        },
      ],
    },
  },
  ({ cell, rise, classHealth, health }) => cell * (1 + rise * (classHealth - health)),
)

/** Both grow with the same power of time, so that resistance gained goes with capacity lost. */
export const gainedByStanding = formula(
  {
    id: 'gained-by-standing',
    label: 'Resistance gained by standing',
    gives: share('G_t', 'resistance gained by standing'),
    takes: {
      lost: share('L_t', 'capacity lost by standing'),
      lawGained: share('G_l', 'resistance gained, by the law'),
      lawLost: share('L_l', 'capacity lost, by the law'),
    },
    text: 'G_t = { 0 if L_l < 0.000000001; G_l · L_t / L_l otherwise }',
    source: LAW,
    leavesOut: FACTOR_TWO,
    proof: {
      examples: [
        {
          takes: { lost: 0.083347, lawGained: 0.03361, lawLost: 0.014821 },
          gives: 0.189,
          within: 5e-5,
          source: { ...LAW, place: 'ten years from one, 3.90 V through the seasons; recomputed' },
        },
        { takes: { lost: 0.1, lawGained: 0.03, lawLost: 0 }, gives: 0, within: 1e-12, source: HAND },
      ],
    },
  },
  ({ lost, lawGained, lawLost }) => (lawLost < 1e-9 ? 0 : (lawGained * lost) / lawLost),
)
/** Capacity goes with the root of the charge moved, resistance with the charge itself: twice the loss is four times the gain. */
export const gainedByCycling = formula(
  {
    id: 'gained-by-cycling',
    label: 'Resistance gained by cycling',
    gives: share('G_c', 'resistance gained by cycling'),
    takes: {
      lost: share('L_c', 'capacity lost by cycling'),
      lawGained: share('G_l', 'resistance gained, by the law'),
      factor: ratio('k_law', 'this cell against the one of the law'),
      added: share('L_a', 'a new cell of this kind would lose'),
    },
    text: 'G_c = { 0 if L_a < 0.000000001; k_law · G_l · (L_c / L_a)² otherwise }',
    source: LAW,
    leavesOut: FACTOR_TWO,
    proof: {
      examples: [
        {
          takes: { lost: 0.110435, lawGained: 0.01877, factor: 1, added: 0.034923 },
          gives: 0.1877,
          within: 5e-5,
          source: { ...LAW, place: 'ten years from one, 46.753 full cycles a year; recomputed' },
        },
        { takes: { lost: 0.1, lawGained: 0.02, factor: 1, added: 0 }, gives: 0, within: 1e-12, source: HAND },
      ],
    },
  },
  ({ lost, lawGained, factor, added }) => (added < 1e-9 ? 0 : factor * lawGained * (lost / added) ** 2),
)
/** Resistance by then over that of today, which holds what was gained before. */
export const resistanceByThen = formula(
  {
    id: 'resistance-by-then',
    label: 'Resistance by then over that of today',
    gives: ratio('g_R', 'resistance by then over that of today'),
    takes: {
      stood: share('G_t0', 'gained so far by standing'),
      driven: share('G_c0', 'gained so far by cycling'),
      standing: share('G_t', 'gained by then by standing'),
      cycling: share('G_c', 'gained by then by cycling'),
    },
    text: 'g_R = (1 + G_t + G_c) / (1 + G_t0 + G_c0)',
    source: LAW,
    proof: {
      examples: [{ takes: { stood: 0.1, driven: 0.1, standing: 0.2, cycling: 0.3 }, gives: 1.25, within: 1e-12, source: HAND }],
    },
  },
  ({ stood, driven, standing, cycling }) => (1 + standing + cycling) / (1 + stood + driven),
)

const LINKS = 'Links and cables do not age: taking them along is on the cautious side.'
/** Ohmic part of the pack by then, as a factor on its curve. */
export const factorByThen = formula(
  {
    id: 'resistance-factor-by-then',
    label: 'Factor on the resistance curve by then',
    gives: ratio('k_R', 'factor on the resistance curve'),
    takes: { factor: ratio('k_0', 'factor today'), growth: ratio('g_R', 'resistance by then over that of today') },
    text: 'k_R = k_0 · g_R',
    source: { work: 'definition', place: 'resistance over resistance' },
    leavesOut: LINKS,
    proof: { none: 'definition' },
  },
  ({ factor, growth }) => factor * growth,
)
/** Slow part of the pack by then. */
export const branchByThen = formula(
  {
    id: 'branch-resistance-by-then',
    label: 'Branch resistance by then',
    gives: ohms('R_1', 'branch resistance, 25 °C'),
    takes: { branch: ohms('R_10', 'branch resistance today'), growth: ratio('g_R', 'resistance by then over that of today') },
    text: 'R_1 = R_10 · g_R',
    source: { work: 'definition', place: 'resistance over resistance' },
    proof: { none: 'definition' },
  },
  ({ branch, growth }) => branch * growth,
)
export const capacityByThen = formula(
  {
    id: 'capacity-by-then',
    label: 'Capacity of the pack by then',
    gives: coulombs('Q', 'capacity of the pack'),
    takes: { capacity: coulombs('Q_0', 'capacity today'), now: share('H_0', 'health today'), later: share('H', 'health by then') },
    text: 'Q = Q_0 · H / H_0',
    source: { work: 'definition', place: 'health' },
    proof: { none: 'definition' },
  },
  ({ capacity, now, later }) => (capacity * later) / now,
)
