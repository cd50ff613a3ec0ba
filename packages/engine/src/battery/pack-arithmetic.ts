import { along, at, segment } from '../numerics/curve.ts'
import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { TEN_SECONDS } from './cold-resistance.ts'

const PACK = { work: 'definition', place: 'cells in series and in parallel' } as const
const CIRCUITS = { work: 'circuits', place: 'resistances in series and in parallel' } as const
const LAMINATE_PACK = { work: 'wiggins-2019', place: 'cell data, taken 96 in series and 2 in parallel; recomputed' } as const
export const HOUR = standard('hour', 'one hour', 't_h', 3600, 's', { work: 'definition', place: 'one hour' })
const count = (symbol: string, label: string) => ({ symbol, unit: '1', label, shows: 'count' }) as const
const ohms = (symbol: string, label: string) => ({ symbol, unit: 'Ω', label }) as const
const share = (symbol: string, label: string) => ({ symbol, unit: '1', label, shows: 'share' }) as const
const volts = (symbol: string, label: string) => ({ symbol, unit: 'V', label }) as const
const amps = (symbol: string, label: string) => ({ symbol, unit: 'A', label }) as const
const charge = (symbol: string, label: string) => ({ symbol, unit: 'C', label }) as const

/** Cells in series or in parallel: modules times cells of one module. */
export const cellCount = formula(
  {
    id: 'cell-count',
    label: 'Cells by modules',
    gives: count('n', 'cells'),
    takes: { modules: count('n_mod', 'modules'), cells: count('n_c', 'cells of one module') },
    text: 'n = n_mod · n_c',
    source: PACK,
    proof: { none: 'definition' },
  },
  ({ modules, cells }) => modules * cells,
)

/** Voltage of cells in series, each at one voltage. */
export const seriesVoltage = formula(
  {
    id: 'series-voltage',
    label: 'Voltage of cells in series',
    gives: volts('U', 'pack voltage'),
    takes: { cells: count('n_s', 'cells in series'), each: volts('U_cell', 'voltage of one cell') },
    text: 'U = n_s · U_cell',
    source: PACK,
    proof: {
      examples: [
        { takes: { cells: 96, each: 2.5 }, gives: 240, within: 1e-9, source: LAMINATE_PACK },
        { takes: { cells: 96, each: 4.2 }, gives: 403.2, within: 1e-9, source: LAMINATE_PACK },
        {
          takes: { cells: 150, each: 2.7 },
          gives: 405,
          within: 1e-9,
          source: { work: 'cell-sheets', place: '20 Ah LTO cell, 150 in series' },
        },
        {
          takes: { cells: 102, each: 3.65 },
          gives: 372.3,
          within: 1e-9,
          source: { work: 'cell-sheets', place: '105 Ah LFP cell, 102 in series' },
        },
      ],
    },
  },
  ({ cells, each }) => cells * each,
)

/** Capacity of one module from its label and its health. */
export const moduleCapacity = formula(
  {
    id: 'module-capacity',
    label: 'Capacity of a module by its stated health',
    gives: charge('Q_mod', 'capacity of one module'),
    takes: {
      parallel: count('n_p', 'cells in parallel'),
      cell: charge('Q_cell', 'capacity of one cell, new'),
      health: share('H', 'health'),
    },
    text: 'Q_mod = n_p · Q_cell · H',
    source: { work: 'definition', place: 'health: measured over rated capacity' },
    proof: {
      examples: [
        {
          takes: { parallel: 1, cell: 119160, health: 0.917 },
          gives: 109269.7,
          within: 60,
          source: { work: 'wiggins-2019', place: '30.34 Ah of 33.1 Ah rated, 1C' },
          because: 'health is printed with three digits',
        },
      ],
    },
  },
  ({ parallel, cell, health }) => parallel * cell * health,
)

/** A module nobody has tested, against what the seller states for all. */
export const untestedCapacity = formula(
  {
    id: 'untested-capacity',
    label: 'Capacity of an untested module',
    gives: charge('Q_mod', 'capacity of one module'),
    takes: { stated: charge('Q_st', 'as stated for all'), against: share('a', 'untested module against the rest') },
    text: 'Q_mod = Q_st · a',
    source: PACK,
    proof: { none: 'definition' },
  },
  ({ stated, against }) => stated * against,
)
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

/** The weakest module decides for its string. */
export const weakestModule = formula(
  {
    id: 'weakest-module',
    label: 'Capacity of the weakest module',
    gives: charge('Q_weak', 'capacity of the weakest module'),
    takes: { modules: { ...charge('Q_k', 'capacity of each module'), many: true } },
    text: 'Q_weak = min(Q_k)',
    source: { work: 'definition', place: 'in series the same charge leaves every module' },
    leavesOut: 'Modules that do not start at the same charge: then even less comes out.',
    proof: { none: 'definition' },
  },
  ({ modules }) => Math.min(...modules),
)

/** Charge of strings in parallel, each as good as its weakest module. */
export const packCapacity = formula(
  {
    id: 'pack-capacity',
    label: 'Capacity of the pack',
    gives: charge('Q', 'capacity of the pack'),
    takes: { strings: count('n_str', 'strings in parallel'), string: charge('Q_str', 'capacity of one string') },
    text: 'Q = n_str · Q_str',
    source: PACK,
    proof: {
      examples: [{ takes: { strings: 2, string: 119160 }, gives: 238320, within: 1e-6, source: LAMINATE_PACK, because: '66.2 Ah' }],
    },
  },
  ({ strings, string }) => strings * string,
)

/** Energy at one mean voltage. */
export const energyAtVoltage = formula(
  {
    id: 'energy-at-voltage',
    label: 'Energy at a mean voltage',
    gives: { symbol: 'E', unit: 'J', label: 'energy' },
    takes: { capacity: charge('Q', 'capacity of the pack'), voltage: volts('U', 'mean voltage') },
    text: 'E = Q · U',
    source: PACK,
    proof: {
      examples: [
        { takes: { capacity: 238320, voltage: 364.8 }, gives: 86.94e6, within: 2e3, source: LAMINATE_PACK, because: '24.150 kWh' },
        {
          takes: { capacity: 72000, voltage: 345 },
          gives: 24.84e6,
          within: 1,
          source: { work: 'cell-sheets', place: '150 LTO cells of 20 Ah, 2.3 V: 6.9 kWh' },
        },
        {
          takes: { capacity: 378000, voltage: 102 * 3.2605 },
          gives: 34.92 * 3.6e6,
          within: 0.005 * 3.6e6,
          source: { work: 'bpx-lfp-2022', place: '102 cells of 105 Ah at the mean of the open-circuit curve' },
        },
      ],
    },
  },
  ({ capacity, voltage }) => capacity * voltage,
)

/** Resistance of one cell from the voltage it loses at one-hour current. */
export const cellResistance = formula(
  {
    id: 'cell-resistance',
    label: 'Cell resistance from the drop at one-hour current',
    gives: ohms('R_cell', 'cell, 10 s, 25 °C, half charge'),
    takes: { drop: volts('ΔU_h', 'voltage lost after 10 s at one-hour current'), capacity: charge('Q_cell', 'capacity of one cell, new') },
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
/** Open-circuit voltage of the pack at a charge. */
export const packOpenCircuit = formula(
  {
    id: 'pack-open-circuit',
    label: 'Open-circuit voltage of the pack',
    gives: volts('U_oc', 'open-circuit voltage'),
    takes: {
      cells: count('n_s', 'cells in series'),
      cell: { symbol: 'U_cell', unit: ['1', 'V'], label: 'open-circuit voltage of a cell over charge', curve: true },
      charge: { symbol: 'z', unit: '1', label: 'state of charge', shows: 'share', holds: [0, 1] },
    },
    text: 'U_oc = n_s · U_cell(z)',
    source: PACK,
    proof: {
      examples: [
        {
          takes: { cells: 96, cell: { x: Float64Array.of(0, 1), y: Float64Array.of(3.909, 3.909) }, charge: 0.5 },
          gives: 375.26,
          within: 0.005,
          source: LAMINATE_PACK,
        },
      ],
    },
  },
  ({ cells, cell, charge }) => cells * at(cell, charge),
)

/** Current of strings in parallel, taken alike. */
export const stringsCurrent = formula(
  {
    id: 'strings-current',
    label: 'Current of strings in parallel',
    gives: amps('I', 'pack current'),
    takes: { strings: count('n_str', 'strings in parallel'), each: amps('I_mod', 'current of one module') },
    text: 'I = n_str · I_mod',
    source: CIRCUITS,
    leavesOut: 'Unlike strings share unequally.',
    proof: { none: 'definition' },
  },
  ({ strings, each }) => strings * each,
)
/** Mass of all modules. */
export const modulesMass = formula(
  {
    id: 'modules-mass',
    label: 'Mass of all modules',
    gives: { symbol: 'm_mods', unit: 'kg', label: 'all modules' },
    takes: {
      series: count('n_mod', 'modules in series'),
      strings: count('n_str', 'strings in parallel'),
      each: { symbol: 'm_mod', unit: 'kg', label: 'mass of one module' },
    },
    text: 'm_mods = n_mod · n_str · m_mod',
    source: PACK,
    proof: { none: 'definition' },
  },
  ({ series, strings, each }) => series * strings * each,
)

/** Specific heat of cells of every kind, J/(kg·K), where none is measured. */
export const SPECIFIC_HEAT = {
  path: 'class.specific-heat-of-cells',
  label: 'specific heat of cells',
  symbol: 'c_cell',
  unit: 'J/(kg·K)',
  value: 1000,
  half: 100,
  origin: {
    how: 'assumed',
    note: 'cells and modules of every kind: 900 to 1100',
    source: { work: 'bpx-nmc-2022', place: 'thermal values of two cells, stated as estimated', mark: 'common practice' },
  },
} as const
/** Heat taken up by the modules per kelvin. */
export const packHeatCapacity = formula(
  {
    id: 'pack-heat-capacity',
    label: 'Heat capacity of the modules',
    gives: { symbol: 'C_pack', unit: 'J/K', label: 'heat capacity' },
    takes: {
      mass: { symbol: 'm_mods', unit: 'kg', label: 'all modules' },
      specific: { symbol: 'c_cell', unit: 'J/(kg·K)', label: 'specific heat of cells' },
    },
    text: 'C_pack = m_mods · c_cell',
    source: { work: 'heat', place: 'heat capacity' },
    leavesOut: 'Box, plates and coolant.',
    proof: { none: 'definition' },
  },
  ({ mass, specific }) => mass * specific,
)
