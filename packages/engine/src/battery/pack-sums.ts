import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { amps, coulombs, count, joules, kilograms, many, metres, share, volts, watts } from './symbols.ts'

const DEFINITION = { work: 'definition', place: 'cells in series and in parallel' } as const
const specific = (symbol: string, label: string) => ({ symbol, unit: 'J/kg', label, shows: 'specific energy' }) as const

/** Current that would empty the pack in so many hours turned round: capacity per hour. */
export const currentAtRate = formula(
  {
    id: 'current-at-rate',
    label: 'Current at a rate',
    gives: amps('I', 'current'),
    takes: {
      capacity: coulombs('Q', 'capacity of the pack'),
      rate: { symbol: 'c', unit: '1/s', label: 'as capacity per hour', shows: 'charge rate' },
    },
    text: 'I = Q · c',
    source: DEFINITION,
    proof: { none: 'definition' },
  },
  ({ capacity, rate }) => capacity * rate,
)
/** Energy per mass. */
export const energyPerMass = formula(
  {
    id: 'energy-per-mass',
    label: 'Energy per mass',
    gives: specific('w', 'energy per mass'),
    takes: { energy: joules('E', 'energy'), mass: kilograms('m', 'mass') },
    text: 'w = E / m',
    source: DEFINITION,
    proof: {
      examples: [
        {
          takes: { energy: 24 * 3.6e6, mass: 293.9 },
          gives: 81.7 * 3600,
          within: 0.05 * 3600,
          source: { work: 'wiggins-2019', place: 'car pack of 24 kWh and 648 lb; mass from a published teardown, recomputed' },
        },
      ],
    },
  },
  ({ energy, mass }) => energy / mass,
)
/** Energy of one module by its outer size. */
export const energyPerVolume = formula(
  {
    id: 'energy-per-volume',
    label: 'Energy per volume',
    gives: { symbol: 'w_V', unit: 'J/m³', label: 'energy per volume', shows: 'energy density' },
    takes: {
      energy: joules('E', 'energy of all modules'),
      modules: count('n', 'modules'),
      length: metres('ℓ', 'length'),
      width: metres('b', 'width'),
      height: metres('h', 'height'),
    },
    text: 'w_V = E / (n · ℓ · b · h)',
    source: DEFINITION,
    proof: {
      examples: [
        {
          takes: { energy: 336 * 3600, modules: 1, length: 0.13, width: 0.036, height: 0.2 },
          gives: 359 * 3.6e6,
          within: 0.5 * 3.6e6,
          source: { work: 'cell-sheets', place: 'LFP cell of 105 Ah, 130 × 36 × 200 mm' },
        },
      ],
    },
  },
  ({ energy, modules, length, width, height }) => energy / (modules * length * width * height),
)
/** All boxes with what is in them. */
export const boxesMass = formula(
  {
    id: 'boxes-mass',
    label: 'Mass of the pack with boxes',
    gives: kilograms('m_pack', 'pack with boxes'),
    takes: {
      counts: many(count('n_k', 'modules in each box')),
      each: kilograms('m_mod', 'mass of one module'),
      overheads: many(kilograms('m_k', 'box, lid, plates, links')),
    },
    text: 'm_pack = Σ (n_k · m_mod) + Σ m_k',
    source: DEFINITION,
    proof: {
      examples: [
        {
          takes: { counts: [6, 6, 4], each: 11.9, overheads: [16, 16, 12] },
          gives: 234.4,
          within: 1e-9,
          source: { work: 'statics', place: 'three boxes, worked by hand' },
        },
      ],
    },
  },
  ({ counts, each, overheads }) => {
    let m = 0
    for (const n of counts) m += n * each
    for (const o of overheads) m += o
    return m
  },
)
/** Modules in all boxes, bare. */
export const boxedMass = formula(
  {
    id: 'boxed-mass',
    label: 'Mass of the boxed modules',
    gives: kilograms('m_mods', 'modules in boxes'),
    takes: { counts: many(count('n_k', 'modules in each box')), each: kilograms('m_mod', 'mass of one module') },
    text: 'm_mods = Σ (n_k · m_mod)',
    source: DEFINITION,
    proof: { none: 'definition' },
  },
  ({ counts, each }) => counts.reduce((m, n) => m + n * each, 0),
)
/** What boxes, plates and wiring add to bare modules; a home-built pack adds 15 to 35 %. */
export const overheadShare = formula(
  {
    id: 'overhead-share',
    label: 'Added to the modules',
    gives: share('a', 'added to the modules'),
    takes: { pack: kilograms('m_pack', 'pack with boxes'), modules: kilograms('m_mods', 'modules in boxes') },
    text: 'a = m_pack / m_mods − 1',
    source: { work: 'practice', place: 'home-built packs add 15 to 35 %', mark: 'common practice' },
    proof: {
      examples: [
        {
          takes: { pack: 293.9, modules: 182.4 },
          gives: 0.611,
          within: 5e-4,
          source: { work: 'wiggins-2019', place: 'car pack of 48 modules of 3.8 kg; masses from a published teardown, recomputed' },
        },
      ],
    },
  },
  ({ pack, modules }) => pack / modules - 1,
)
export const boxedModules = formula(
  {
    id: 'boxed-modules',
    label: 'Modules in the boxes',
    gives: count('n', 'modules in the boxes'),
    takes: { counts: many(count('n_k', 'modules in each box')) },
    text: 'n = Σ n_k',
    source: DEFINITION,
    proof: { none: 'definition' },
  },
  ({ counts }) => counts.reduce((a, b) => a + b, 0),
)
/** What all parts on the battery draw together. */
export const currentsTogether = formula(
  {
    id: 'battery-currents-together',
    label: 'Currents together',
    gives: amps('I', 'together'),
    takes: { each: many(amps('I_k', 'each')) },
    text: 'I = Σ I_k',
    source: { work: 'circuits', place: 'sum at a node' },
    proof: { none: 'definition' },
  },
  ({ each }) => each.reduce((a, b) => a + b, 0),
)
/** Battery current of a power at a voltage, the loss on the way included. */
export const currentOfPower = formula(
  {
    id: 'battery-current-of-power',
    label: 'Battery current of a power',
    gives: amps('I', 'battery current'),
    takes: {
      power: watts('P', 'power at the shaft'),
      loss: watts('P_V', 'loss of motor and inverter'),
      voltage: volts('U', 'battery voltage'),
    },
    text: 'I = (P + P_V) / U',
    source: { work: 'circuits', place: 'power is voltage times current' },
    proof: { none: 'definition' },
  },
  ({ power, loss, voltage }) => (power + loss) / voltage,
)
/** Lower of two, where either one may bind. */
export const lesserCurrent = formula(
  {
    id: 'lesser-current',
    label: 'Lesser of two currents',
    gives: amps('I', 'lesser current'),
    takes: { one: amps('I_1', 'one'), other: amps('I_2', 'other') },
    text: 'I = min(I_1, I_2)',
    source: { work: 'circuits', place: 'the limit that binds' },
    proof: { none: 'definition' },
  },
  ({ one, other }) => Math.min(one, other),
)
/** What a fuse carries for a time, again and again: half of what melts it then. */
export const fuseForTime = formula(
  {
    id: 'fuse-for-time',
    label: 'Current a fuse carries for a time',
    gives: amps('I_t', 'carried for that time'),
    takes: { rating: amps('I_n', 'rating, for ever'), melts: amps('I_melt', 'melts it in that time') },
    text: 'I_t = max(I_n, I_melt / 2)',
    source: { work: 'ev-fuses', place: 'repeated load steps: half of the melting current at their length' },
    leavesOut: 'Heat beside the fuse, thin cables on it, and how often the peak comes back.',
    proof: {
      examples: [
        {
          takes: { rating: 400, melts: 1400 },
          gives: 700,
          within: 1e-9,
          source: { work: 'definition', place: 'a fuse of 400 A that melts at 1400 A in 10 s, worked by hand' },
        },
      ],
    },
  },
  ({ rating, melts }) => Math.max(rating, melts / 2),
)
/** What a contactor carries for a time. */
export const contactorForTime = formula(
  {
    id: 'contactor-for-time',
    label: 'Current a contactor carries for a time',
    gives: amps('I_t', 'carried for that time'),
    takes: { rating: amps('I_k', 'for ever'), peak: amps('I_k,max', 'for that time, as stated') },
    text: 'I_t = max(I_k, I_k,max)',
    source: { work: 'definition', place: 'the greater counts' },
    proof: { none: 'definition' },
  },
  ({ rating, peak }) => Math.max(rating, peak),
)
/** What recovery puts in at most: as much as it is set to, at the lowest voltage, as far as cells and BMS let it. */
export const recoveryCurrent = formula(
  {
    id: 'recovery-current',
    label: 'Highest current of recovery',
    gives: amps('I_rec', 'into the pack'),
    takes: {
      power: watts('P_rec', 'recovery is set to'),
      voltage: volts('U_min', 'lowest voltage of the pack'),
      most: amps('I_ch', 'charging current cells and BMS allow'),
    },
    text: 'I_rec = min(I_ch, P_rec / U_min)',
    source: { work: 'circuits', place: 'power is voltage times current' },
    proof: { none: 'definition' },
  },
  ({ power, voltage, most }) => Math.min(most, power / voltage),
)
/** Share of energy held back as reserve leaves this much to drive on. */
export const energyToReserve = formula(
  {
    id: 'energy-to-reserve',
    label: 'Energy down to the reserve',
    gives: joules('E_u', 'energy down to the reserve'),
    takes: { energy: joules('E', 'usable energy'), reserve: share('s_res', 'kept as reserve') },
    text: 'E_u = E · (1 − s_res)',
    source: DEFINITION,
    proof: {
      examples: [
        {
          takes: { energy: 38.5 * 0.835 * 3.6e6, reserve: 0.1 },
          gives: 28.9 * 3.6e6,
          within: 0.05 * 3.6e6,
          source: { work: 'definition', place: '38.5 kWh, cells at −5 °C, a tenth kept; recomputed' },
        },
      ],
    },
  },
  ({ energy, reserve }) => energy * (1 - reserve),
)
export const RATES = {
  third: { ...standard('rate.third', 'a third of the capacity per hour', 'c', 1 / 3 / 3600, '1/s', DEFINITION), shows: 'charge rate' },
  one: { ...standard('rate.one', 'the capacity in an hour', 'c', 1 / 3600, '1/s', DEFINITION), shows: 'charge rate' },
} as const
export const cellTemperature = (celsius: number) =>
  ({ ...standard(`cells.${celsius}`, `cells at ${celsius} °C`, 'T', celsius + 273.15, 'K', DEFINITION), shows: 'temperature' }) as const
