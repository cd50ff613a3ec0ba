import { formula } from '../working/formula.ts'
import { count, joules, kilograms, many, metres, ohms, volts } from './symbols.ts'

const PACK = { work: 'definition', place: 'cells in series and in parallel' } as const
const BY_HAND = 'a string of six long modules of 12 groups and three short ones of 8, worked by hand'
const IN_STRING = { modules: count('n_mod', 'modules in series'), others: count('n_o', 'modules of the other form in series') } as const

/** Cells in series where two forms of module stand in one string. */
export const cellsOfTwoForms = formula(
  {
    id: 'cells-of-two-forms',
    label: 'Cells in series, two forms of module',
    gives: count('n', 'cells'),
    takes: { ...IN_STRING, cells: count('n_c', 'cells of one module'), otherCells: count('n_c,o', 'cells of one of the other form') },
    text: 'n = n_mod · n_c + n_o · n_c,o',
    source: PACK,
    proof: {
      examples: [
        {
          takes: { modules: 6, cells: 12, others: 3, otherCells: 8 },
          gives: 96,
          within: 0,
          source: { work: 'definition', place: BY_HAND },
        },
      ],
    },
  },
  ({ modules, cells, others, otherCells }) => modules * cells + others * otherCells,
)

/** Modules of both forms in a string. */
export const modulesOfBothForms = formula(
  {
    id: 'modules-of-both-forms',
    label: 'Modules of both forms in a string',
    gives: count('n', 'modules of both forms'),
    takes: IN_STRING,
    text: 'n = n_mod + n_o',
    source: PACK,
    proof: { none: 'definition' },
  },
  ({ modules, others }) => modules + others,
)

const OWN = { cells: count('n_c', 'cells in series of a module of the main form'), own: count('n_c,o', 'of the module itself') } as const
/** What a module of the main form would show whose cells are those of a module of the other form: so that both can be held against each other. */
export const voltageAsMain = formula(
  {
    id: 'voltage-as-main-form',
    label: 'Voltage as of a module of the main form',
    gives: volts('U', 'as of the main form'),
    takes: { reading: volts('U_o', 'as measured'), ...OWN },
    text: 'U = U_o · n_c / n_c,o',
    source: PACK,
    proof: { none: 'definition' },
  },
  ({ reading, cells, own }) => (reading * cells) / own,
)
export const resistanceAsMain = formula(
  {
    id: 'resistance-as-main-form',
    label: 'Resistance as of a module of the main form',
    gives: ohms('R', 'as of the main form'),
    takes: { reading: ohms('R_o', 'as measured'), ...OWN },
    text: 'R = R_o · n_c / n_c,o',
    source: PACK,
    proof: { none: 'definition' },
  },
  ({ reading, cells, own }) => (reading * cells) / own,
)

/** Cells of the whole pack where each string holds two forms of module; strings are taken alike. */
export const resistanceOfTwoForms = formula(
  {
    id: 'resistance-of-two-forms',
    label: 'Resistance of all cells, two forms of module',
    gives: ohms('R_c', 'all cells, 10 s, 25 °C, half charge'),
    takes: {
      ...IN_STRING,
      module: ohms('R_mod', 'resistance of one module'),
      other: ohms('R_o', 'resistance of one of the other form'),
      strings: count('n_str', 'strings in parallel'),
    },
    text: 'R_c = (n_mod · R_mod + n_o · R_o) / n_str',
    source: { work: 'circuits', place: 'resistances in series and in parallel' },
    proof: {
      examples: [
        {
          takes: { modules: 6, module: 0.012, others: 3, other: 0.008, strings: 2 },
          gives: 0.048,
          within: 1e-12,
          source: { work: 'circuits', place: '96 groups of 1 mΩ in each of two strings, worked by hand' },
        },
      ],
    },
  },
  ({ modules, module, others, other, strings }) => (modules * module + others * other) / strings,
)

/** Mass of all modules of both forms. */
export const massOfTwoForms = formula(
  {
    id: 'mass-of-two-forms',
    label: 'Mass of all modules, two forms',
    gives: kilograms('m_mods', 'all modules'),
    takes: {
      ...IN_STRING,
      each: kilograms('m_mod', 'mass of one module'),
      otherEach: kilograms('m_o', 'mass of one of the other form'),
      strings: count('n_str', 'strings in parallel'),
    },
    text: 'm_mods = n_str · (n_mod · m_mod + n_o · m_o)',
    source: PACK,
    proof: { none: 'definition' },
  },
  ({ modules, others, each, otherEach, strings }) => strings * (modules * each + others * otherEach),
)

const IN_BOXES = {
  counts: many(count('n_k', 'modules in each box')),
  each: kilograms('m_mod', 'mass of one module'),
  others: many(count('o_k', 'modules of the other form in each box')),
  otherEach: kilograms('m_o', 'mass of one of the other form'),
} as const
const bare = (x: {
  readonly counts: readonly number[]
  readonly each: number
  readonly others: readonly number[]
  readonly otherEach: number
}): number => {
  let m = 0
  for (const n of x.counts) m += n * x.each
  for (const n of x.others) m += n * x.otherEach
  return m
}

/** Modules of both forms in all boxes, bare. */
export const boxedMassOfTwoForms = formula(
  {
    id: 'boxed-mass-of-two-forms',
    label: 'Mass of the boxed modules, two forms',
    gives: kilograms('m_mods', 'modules in boxes'),
    takes: IN_BOXES,
    text: 'm_mods = Σ (n_k · m_mod) + Σ (o_k · m_o)',
    source: PACK,
    proof: { none: 'definition' },
  },
  bare,
)
/** All boxes with the modules of both forms in them. */
export const boxesMassOfTwoForms = formula(
  {
    id: 'boxes-mass-of-two-forms',
    label: 'Mass of the pack with boxes, two forms of module',
    gives: kilograms('m_pack', 'pack with boxes'),
    takes: { ...IN_BOXES, overheads: many(kilograms('m_k', 'box, lid, plates, links')) },
    text: 'm_pack = Σ (n_k · m_mod) + Σ (o_k · m_o) + Σ m_k',
    source: PACK,
    proof: {
      examples: [
        {
          takes: { counts: [4, 2], each: 18, others: [0, 3], otherEach: 12, overheads: [10, 9] },
          gives: 163,
          within: 1e-9,
          source: { work: 'statics', place: 'two boxes, worked by hand' },
        },
      ],
    },
  },
  x => x.overheads.reduce((m, o) => m + o, bare(x)),
)

const side = (symbol: string, label: string) => metres(symbol, label)
/** Energy by the outer size of modules of two forms. */
export const densityOfTwoForms = formula(
  {
    id: 'density-of-two-forms',
    label: 'Energy per volume, two forms of module',
    gives: { symbol: 'w_V', unit: 'J/m³', label: 'energy per volume', shows: 'energy density' },
    takes: {
      energy: joules('E', 'energy of all modules'),
      modules: count('n', 'modules'),
      length: side('ℓ', 'length'),
      width: side('b', 'width'),
      height: side('h', 'height'),
      others: count('n_o', 'modules of the other form'),
      otherLength: side('ℓ_o', 'length, other form'),
      otherWidth: side('b_o', 'width, other form'),
      otherHeight: side('h_o', 'height, other form'),
    },
    text: 'w_V = E / (n · ℓ · b · h + n_o · ℓ_o · b_o · h_o)',
    source: PACK,
    proof: { none: 'definition' },
  },
  x => x.energy / (x.modules * x.length * x.width * x.height + x.others * x.otherLength * x.otherWidth * x.otherHeight),
)
