import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { cubicMetres, joules, kelvins, pascals, ratio, seconds, share, squareMetres } from './symbols.ts'

const GAS_CONSTANT = standard('gas-constant', 'gas constant', 'R_g', 8.314, 'J/K', {
  work: 'definition',
  place: 'molar gas constant, per mole',
})
const NORMAL_VOLUME = standard('normal-volume', 'volume of a mole at 0 °C, 101.325 kPa', 'V_n', 0.022414, 'm³', {
  work: 'definition',
  place: 'molar volume of an ideal gas, per mole',
})
const GAS = { work: 'gas', place: 'ideal gas; flow through a sharp opening, subsonic' } as const
const NMC = { work: 'gas', place: '60 Ah NMC cell, 220 Wh at 0.65 L/Wh; recomputed' } as const
const LFP = { work: 'gas', place: '105 Ah LFP cell, 336 Wh at 0.35 L/Wh; recomputed' } as const
const CAUTION = 'Single small cells in inert gas. A pass proves nothing about safety.'

/** Gas one cell gives off in runaway, as volume at 0 °C and 1 atm. LFP 0.3 to 0.4, nickel cells 0.6 to 0.7 L/Wh. */
export const ventGas = formula(
  {
    id: 'vent-gas',
    label: 'Gas of one cell in runaway',
    gives: cubicMetres('V_g', 'gas at 0 °C, 1 atm'),
    takes: { energy: joules('E', 'energy of the cell'), yield: { symbol: 'y', unit: 'm³/J', label: 'gas per energy' } },
    text: 'V_g = E · y',
    source: { work: 'golubkov-2014', place: 'gas of three 18650 cells', mark: 'from memory' },
    leavesOut: CAUTION,
    proof: {
      examples: [
        { takes: { energy: 220 * 3600, yield: 0.65e-3 / 3600 }, gives: 0.143, within: 1e-9, source: NMC },
        { takes: { energy: 336 * 3600, yield: 0.35e-3 / 3600 }, gives: 0.1176, within: 1e-9, source: LFP },
      ],
    },
  },
  ({ energy, yield: y }) => energy * y,
)
/** Pressure it adds to a closed box: no box holds it, so it must get out. */
export const closedBoxPressure = formula(
  {
    id: 'closed-box-pressure',
    label: 'Pressure added to a closed box',
    gives: pascals('Δp', 'pressure added'),
    takes: {
      gas: cubicMetres('V_g', 'gas at 0 °C, 1 atm'),
      free: cubicMetres('V', 'free volume of the box'),
      temperature: kelvins('T', 'temperature of the gas'),
    },
    uses: [GAS_CONSTANT, NORMAL_VOLUME],
    text: 'Δp = V_g / V_n · R_g · T / V',
    source: GAS,
    leavesOut: CAUTION,
    proof: {
      examples: [
        { takes: { gas: 0.143, free: 0.03, temperature: 293 }, gives: 518e3, within: 500, source: NMC },
        { takes: { gas: 0.143, free: 0.03, temperature: 400 }, gives: 707e3, within: 500, source: NMC },
        { takes: { gas: 0.1176, free: 0.03, temperature: 293 }, gives: 426e3, within: 500, source: LFP },
      ],
    },
  },
  ({ gas, free, temperature }) => ((gas / NORMAL_VOLUME.value) * GAS_CONSTANT.value * temperature) / free,
)
/** Opening that lets the gas of one cell out at a given pressure above outside; size ducts for two cells at once unless a test says one. */
export const ventArea = formula(
  {
    id: 'vent-area',
    label: 'Vent opening',
    gives: squareMetres('A', 'opening'),
    takes: {
      gas: cubicMetres('V_g', 'gas at 0 °C, 1 atm'),
      time: seconds('t', 'released within'),
      temperature: kelvins('T', 'temperature of the gas'),
      pressure: pascals('p', 'pressure in the box'),
      above: pascals('Δp', 'above outside'),
      molar: { symbol: 'M', unit: 'kg', label: 'molar mass, per mole' },
      discharge: ratio('C_d', 'discharge coefficient'),
    },
    uses: [GAS_CONSTANT, NORMAL_VOLUME],
    text: `n = V_g / V_n
F = n / t · R_g · T / p
ρ = p · M / (R_g · T)
A = F / (C_d · √(2 · Δp / ρ))`,
    source: GAS,
    leavesOut: CAUTION,
    proof: {
      examples: [
        {
          takes: { gas: 0.143, time: 10, temperature: 600, pressure: 106.3e3, above: 5e3, molar: 0.03, discharge: 0.6 },
          gives: 399e-6,
          within: 0.6e-6,
          source: NMC,
        },
        {
          takes: { gas: 0.1176, time: 60, temperature: 500, pressure: 106.3e3, above: 5e3, molar: 0.03, discharge: 0.6 },
          gives: 49.9e-6,
          within: 0.1e-6,
          source: LFP,
        },
      ],
    },
  },
  ({ gas, time, temperature, pressure, above, molar, discharge }) => {
    const flow = ((gas / NORMAL_VOLUME.value / time) * GAS_CONSTANT.value * temperature) / pressure
    const density = (pressure * molar) / (GAS_CONSTANT.value * temperature)
    return flow / (discharge * Math.sqrt((2 * above) / density))
  },
)
/** Air that this gas makes explosive: a closed space of this size is filled to the lower limit. */
export const explosiveAir = formula(
  {
    id: 'explosive-air',
    label: 'Air at the lower explosive limit',
    gives: cubicMetres('V_air', 'mixture at the lower limit'),
    takes: { gas: cubicMetres('V_g', 'gas at 0 °C, 1 atm'), limit: share('x', 'lower explosive limit') },
    text: 'V_air = V_g / x',
    source: GAS,
    leavesOut: CAUTION,
    proof: {
      examples: [
        { takes: { gas: 0.1176, limit: 0.0642 }, gives: 1.83, within: 5e-3, source: LFP },
        {
          takes: { gas: 0.3136, limit: 0.0642 },
          gives: 4.88,
          within: 6e-3,
          source: { work: 'gas', place: '280 Ah LFP cell, 313.6 L; recomputed' },
        },
      ],
    },
  },
  ({ gas, limit }) => gas / limit,
)
/** Air that would hold the hydrogen fluoride of a burning pack at a limit: a burning pack indoors is above any limit from the start. */
export const fluorideAir = formula(
  {
    id: 'fluoride-air',
    label: 'Air at a limit of hydrogen fluoride',
    gives: { mass: { symbol: 'm_HF', unit: 'kg', label: 'hydrogen fluoride' }, air: cubicMetres('V_air', 'air to stay at the limit') },
    takes: {
      energy: joules('E', 'energy of the pack'),
      yield: { symbol: 'y', unit: 'kg/J', label: 'hydrogen fluoride per energy' },
      limit: { symbol: 'c', unit: 'kg/m³', label: 'limit in air' },
    },
    text: `m_HF = E · y
V_air = m_HF / c`,
    source: { work: 'larsson-2017', place: '20 to 200 mg/Wh; limit immediately dangerous to life 0.025 g/m³' },
    leavesOut: 'Evenly mixed, all burned, no leakage: arithmetic, not a prediction.',
    proof: {
      examples: [
        {
          takes: { energy: 24 * 3.6e6, yield: 20e-6 / 3600, limit: 0.025e-3 },
          gives: { mass: 0.48, air: 19200 },
          within: 1e-6,
          source: { work: 'larsson-2017', place: 'recomputed' },
        },
        {
          takes: { energy: 24 * 3.6e6, yield: 200e-6 / 3600, limit: 0.025e-3 },
          gives: { mass: 4.8, air: 192000 },
          within: 1e-6,
          source: { work: 'larsson-2017', place: 'recomputed' },
        },
        {
          takes: { energy: 5 * 3.6e6, yield: 20e-6 / 3600, limit: 2e-3 },
          gives: { mass: 0.1, air: 50 },
          within: 1e-6,
          source: { work: 'larsson-2017', place: '5 kWh in a garage of 50 m³: 2 g/m³; recomputed' },
        },
      ],
    },
  },
  ({ energy, yield: y, limit }) => ({ mass: energy * y, air: (energy * y) / limit }),
)
