import { along, at, segment } from '../numerics/curve.ts'
import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { TEN_SECONDS } from './cold-resistance.ts'
import { coulombs, count, ohms, ratio, share, volts } from './symbols.ts'

const CIRCUITS = { work: 'circuits', place: 'resistances in series and in parallel' } as const
const LAMINATE_PACK = { work: 'wiggins-2019', place: 'cell data, taken 96 in series and 2 in parallel; recomputed' } as const
export const HOUR = standard('hour', 'one hour', 't_h', 3600, 's', { work: 'definition', place: 'one hour' })

/** Resistance of one cell from the voltage it loses at one-hour current. */
export const cellResistance = formula(
  {
    id: 'cell-resistance',
    label: 'Cell resistance from the drop at one-hour current',
    gives: ohms('R_cell', 'cell, 10 s, 25 °C, half charge'),
    takes: {
      drop: volts('ΔU_h', 'voltage lost after 10 s at one-hour current'),
      capacity: coulombs('Q_cell', 'capacity of one cell, new'),
    },
    uses: [HOUR],
    text: 'R_cell = ΔU_h · t_h / Q_cell',
    source: { work: 'circuits', place: 'resistance times capacity' },
    leavesOut: 'A class value good to a third: measure the cells.',
    proof: {
      examples: [
        {
          takes: { drop: 0.048, capacity: 216000 },
          gives: 0.0008,
          within: 1e-9,
          source: { work: 'cell-sheets', place: '60 Ah NMC car cell: 0.80 mΩ direct current, new' },
        },
      ],
    },
  },
  ({ drop, capacity }) => (drop * HOUR.value) / capacity,
)

/** One module: cells in series, groups in parallel. */
export const moduleResistance = formula(
  {
    id: 'module-resistance',
    label: 'Resistance of a module',
    gives: ohms('R_mod', 'resistance of one module'),
    takes: {
      cell: ohms('R_cell', 'resistance of one cell'),
      series: count('n_s', 'cells in series'),
      parallel: count('n_p', 'cells in parallel'),
    },
    text: 'R_mod = n_s · R_cell / n_p',
    source: CIRCUITS,
    proof: { examples: [{ takes: { cell: 2.033e-3, series: 96, parallel: 2 }, gives: 97.58e-3, within: 5e-6, source: LAMINATE_PACK }] },
  },
  ({ cell, series, parallel }) => (series * cell) / parallel,
)

/** Cells of the whole pack: modules one after another in each string, strings side by side; strings are taken alike. */
export const modulesResistance = formula(
  {
    id: 'modules-resistance',
    label: 'Resistance of all cells',
    gives: ohms('R_c', 'all cells, 10 s, 25 °C, half charge'),
    takes: { modules: { ...ohms('R_k', 'resistance of each module'), many: true }, strings: count('n_str', 'strings in parallel') },
    text: 'R_c = Σ R_k / n_str²',
    source: CIRCUITS,
    leavesOut: 'Unlike strings: the sum counts them as alike.',
    proof: {
      examples: [
        {
          takes: { modules: [0.002, 0.003, 0.002, 0.003], strings: 2 },
          gives: 0.0025,
          within: 1e-12,
          source: { work: 'circuits', place: 'two strings of 2 and 3 mΩ side by side, worked by hand' },
        },
      ],
    },
  },
  ({ modules, strings }) => {
    let sum = 0
    for (const r of modules) sum += r
    return sum / strings ** 2
  },
)
/** The same where every module is alike. */
export const alikeResistance = formula(
  {
    id: 'alike-resistance',
    label: 'Resistance of all cells',
    gives: ohms('R_c', 'all cells, 10 s, 25 °C, half charge'),
    takes: {
      module: ohms('R_mod', 'resistance of one module'),
      modules: count('n_mod', 'modules in series'),
      strings: count('n_str', 'strings in parallel'),
    },
    text: 'R_c = n_mod · R_mod / n_str',
    source: CIRCUITS,
    proof: { examples: [{ takes: { module: 2.033e-3, modules: 96, strings: 2 }, gives: 97.58e-3, within: 5e-6, source: LAMINATE_PACK }] },
  },
  ({ module, modules, strings }) => (modules * module) / strings,
)

/** Part of the 10 s resistance that shows at once; the rest is what the branch builds up in 10 s. */
export const ohmicResistance = formula(
  {
    id: 'ohmic-resistance',
    label: 'Ohmic part of the resistance',
    gives: ohms('R_0', 'ohmic resistance of all cells'),
    takes: {
      tenSeconds: ohms('R_c', 'resistance after 10 s'),
      share: share('s_1', 'branch over 10 s resistance'),
      time: { symbol: 'τ_1', unit: 's', label: 'time constant of the branch' },
    },
    uses: [TEN_SECONDS],
    text: 'R_0 = R_c · (1 − s_1 · (1 − exp(−t_10 / τ_1)))',
    source: { work: 'plett', place: 'vol. I, ch. 2, equivalent circuit' },
    proof: {
      examples: [
        {
          takes: { tenSeconds: 35.92e-3, share: 0.465, time: 25.5 },
          gives: 30.5e-3,
          within: 6e-5,
          source: { work: 'kollmeyer-2018', place: 'one-branch fit at half charge: 30.5 mΩ, 16.7 mΩ, 25.5 s' },
          because: 'the share is rounded to three digits',
        },
      ],
    },
  },
  ({ tenSeconds, share, time }) => tenSeconds * (1 - share * (1 - Math.exp(-10 / time))),
)
/** Resistance of the branch of all cells. */
export const branchResistance = formula(
  {
    id: 'branch-resistance',
    label: 'Resistance of the RC branch',
    gives: ohms('R_1', 'branch resistance of all cells'),
    takes: { tenSeconds: ohms('R_c', 'resistance after 10 s'), share: share('s_1', 'branch over 10 s resistance') },
    text: 'R_1 = R_c · s_1',
    source: { work: 'plett', place: 'vol. I, ch. 2, equivalent circuit' },
    proof: { none: 'definition' },
  },
  ({ tenSeconds, share }) => tenSeconds * share,
)

/** Ohmic resistance of the pack at a charge: cells by their shape over charge, and the wiring. */
export const packResistance = formula(
  {
    id: 'pack-resistance',
    label: 'Ohmic resistance of the pack',
    gives: ohms('R', 'pack, 25 °C'),
    takes: {
      cells: ohms('R_0', 'ohmic resistance of all cells at half charge'),
      shape: { symbol: 'r', unit: ['1', '1'], label: 'resistance over charge', curve: true },
      wiring: ohms('R_w', 'links, cables, contactors, fuse'),
      charge: { symbol: 'z', unit: '1', label: 'state of charge', shows: 'share', holds: [0, 1] },
    },
    text: 'R = R_0 · r(z) + R_w',
    source: CIRCUITS,
    proof: {
      examples: [
        {
          takes: { cells: 97.58e-3, shape: { x: Float64Array.of(0, 1), y: Float64Array.of(1, 1) }, wiring: 0.01, charge: 0.5 },
          gives: 107.58e-3,
          within: 5e-6,
          source: LAMINATE_PACK,
        },
      ],
    },
  },
  ({ cells, shape, wiring, charge }) => cells * at(shape, charge) + wiring,
)
/** What carries the spread of the resistance into a run that looks it up in a curve: 1 at the best values. */
export const resistanceFactor = formula(
  {
    id: 'resistance-factor',
    label: 'Factor on the resistance curve',
    gives: { symbol: 'k_R', unit: '1', label: 'factor on the resistance curve', shows: 'ratio' },
    takes: {
      cells: ohms('R_0', 'ohmic resistance of all cells at half charge'),
      wiring: ohms('R_w', 'links, cables, contactors, fuse'),
      curve: { symbol: 'R', unit: ['1', 'Ω'], label: 'resistance of the pack over charge', curve: true },
    },
    text: 'k_R = (R_0 + R_w) / R(0.5)',
    source: CIRCUITS,
    proof: { none: 'definition: 1 where the curve was made from the same values' },
  },
  ({ cells, wiring, curve }) => (cells + wiring) / along(curve, segment(curve.x, 0.5), 0.5),
)

/** The same for a module nobody has tested. */
export const untestedResistance = formula(
  {
    id: 'untested-resistance',
    label: 'Resistance of an untested module',
    gives: ohms('R_mod', 'resistance of one module'),
    takes: { stated: ohms('R_st', 'as known for all'), against: share('a', 'untested module against the rest') },
    text: 'R_mod = R_st / a',
    source: { work: 'practice', place: 'a module that lost capacity gained resistance' },
    proof: { none: 'project choice: capacity and resistance move together' },
  },
  ({ stated, against }) => stated / against,
)

/** One of several equal strings: wiring counted in. */
export const stringResistance = formula(
  {
    id: 'string-resistance',
    label: 'Resistance of one string',
    gives: ohms('R_str', 'one string, half charge, 25 °C'),
    takes: {
      curve: { symbol: 'R', unit: ['1', 'Ω'], label: 'resistance of the pack over charge', curve: true },
      factor: ratio('k_R', 'factor on the resistance curve'),
      branch: ohms('R_1', 'branch resistance'),
      strings: count('n_str', 'strings in parallel'),
    },
    text: 'R_str = n_str · (R(0.5) · k_R + R_1)',
    source: CIRCUITS,
    leavesOut: 'Wiring they share counts once too often.',
    proof: { none: 'strings side by side, turned round' },
  },
  ({ curve, factor, branch, strings }) => strings * (at(curve, 0.5) * factor + branch),
)
/** How far the voltage of one string falls for the charge it gives, about half charge. */
export const stringSlope = formula(
  {
    id: 'string-slope',
    label: 'Voltage of a string over charge taken',
    gives: { symbol: 'a', unit: 'V/C', label: 'voltage over charge taken' },
    takes: {
      openCircuit: { symbol: 'E', unit: ['1', 'V'], label: 'open-circuit voltage over charge', curve: true },
      capacity: coulombs('Q', 'capacity of the pack'),
      strings: count('n_str', 'strings in parallel'),
    },
    text: 'a = (E(0.6) − E(0.4)) / (0.2 · Q / n_str)',
    source: { work: 'definition', place: 'slope' },
    proof: {
      examples: [
        {
          takes: { openCircuit: { x: Float64Array.of(0, 1), y: Float64Array.of(300, 367.2) }, capacity: 60 * 3600, strings: 1 },
          gives: 1.12 / 3600,
          within: 1e-12,
          source: { work: 'circuits', place: 'string of 60 Ah, 1.12 V/Ah' },
        },
      ],
    },
  },
  ({ openCircuit, capacity, strings }) => (at(openCircuit, 0.6) - at(openCircuit, 0.4)) / ((0.2 * capacity) / strings),
)
