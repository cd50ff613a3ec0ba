import { at } from '../numerics/curve.ts'
import { formula } from '../working/formula.ts'
import { amps, coulombs, count, share, volts } from './symbols.ts'

const PACK = { work: 'definition', place: 'cells in series and in parallel' } as const
const CIRCUITS = { work: 'circuits', place: 'resistances in series and in parallel' } as const
const LAMINATE_PACK = { work: 'wiggins-2019', place: 'cell data, taken 96 in series and 2 in parallel; recomputed' } as const

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
    gives: coulombs('Q_mod', 'capacity of one module'),
    takes: {
      parallel: count('n_p', 'cells in parallel'),
      cell: coulombs('Q_cell', 'capacity of one cell, new'),
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
    gives: coulombs('Q_mod', 'capacity of one module'),
    takes: { stated: coulombs('Q_st', 'as stated for all'), against: share('a', 'untested module against the rest') },
    text: 'Q_mod = Q_st · a',
    source: PACK,
    proof: { none: 'definition' },
  },
  ({ stated, against }) => stated * against,
)

/** The weakest module decides for its string. */
export const weakestModule = formula(
  {
    id: 'weakest-module',
    label: 'Capacity of the weakest module',
    gives: coulombs('Q_weak', 'capacity of the weakest module'),
    takes: { modules: { ...coulombs('Q_k', 'capacity of each module'), many: true } },
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
    gives: coulombs('Q', 'capacity of the pack'),
    takes: { strings: count('n_str', 'strings in parallel'), string: coulombs('Q_str', 'capacity of one string') },
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
    takes: { capacity: coulombs('Q', 'capacity of the pack'), voltage: volts('U', 'mean voltage') },
    text: 'E = Q · U',
    source: PACK,
    proof: {
      examples: [
        { takes: { capacity: 238320, voltage: 364.8 }, gives: 86.94e6, within: 2e3, source: LAMINATE_PACK, because: '24.150 kWh' },
        {
          takes: { capacity: 2 * 30.34 * 3600, voltage: 96 * 3.752 },
          gives: 21.857 * 3.6e6,
          within: 3.6e3,
          source: {
            work: 'wiggins-2019',
            place: '192 cells of the 113.84 Wh measured of one at 1C: 30.34 Ah at a mean of 3.752 V; recomputed',
          },
          because: 'the mean voltage is given with four digits',
        },
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
