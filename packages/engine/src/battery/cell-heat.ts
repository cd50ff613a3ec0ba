import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { ONE_VOLT } from './open-circuit-sets.ts'
import { amps, conductance, kelvins, kelvinsApart, ohms, perKelvin, seconds, share, watts } from './symbols.ts'

const ONE_KELVIN = standard('one-kelvin', 'one kelvin', 'K_1', 1, 'K', { work: 'definition', place: 'coherent unit' })
const BERNARDI = { work: 'bernardi-1985', place: 'energy balance of a cell' } as const
const HEAT = { work: 'heat', place: 'one mass, one path' } as const
const CHECK = { work: 'heat', place: 'laminate cell, recomputed' } as const

/** Heat made in a resistance. */
export const resistanceHeat = formula(
  {
    id: 'resistance-heat',
    label: 'Heat of a resistance',
    gives: watts('q', 'heat'),
    takes: { current: amps('I', 'current'), resistance: ohms('R', 'resistance') },
    text: 'q = I² · R',
    source: BERNARDI,
    proof: {
      examples: [
        { takes: { current: 50, resistance: 2.533e-3 }, gives: 6.3325, within: 1e-9, source: CHECK },
        {
          takes: { current: 200, resistance: 100e-6 },
          gives: 4,
          within: 1e-12,
          source: { work: 'circuits', place: 'joint of 100 µΩ at 200 A' },
        },
      ],
    },
  },
  ({ current, resistance }) => current * current * resistance,
)

/** Heat of the cell reaction: warms on discharge where the voltage falls with temperature, cools on charge. */
export const reversibleHeat = formula(
  {
    id: 'reversible-heat',
    label: 'Reversible heat',
    gives: watts('q_rev', 'reversible heat'),
    takes: {
      current: amps('I', 'current, discharging positive'),
      temperature: kelvins('T', 'cell temperature'),
      slope: { symbol: 'U_T', unit: 'V/K', label: 'open-circuit voltage over temperature' },
    },
    text: 'q_rev = −I · T · U_T',
    source: BERNARDI,
    proof: {
      examples: [
        { takes: { current: 50, temperature: 298.15, slope: -0.0868e-3 }, gives: 1.294, within: 5e-4, source: CHECK },
        { takes: { current: -50, temperature: 298.15, slope: -0.0868e-3 }, gives: -1.294, within: 5e-4, source: CHECK },
      ],
    },
  },
  ({ current, temperature, slope }) => -current * temperature * slope,
)

/** How the voltage of graphite moves with temperature; x is how full the graphite is, not the charge of the cell. */
export const graphiteSlope = formula(
  {
    id: 'graphite-slope',
    label: 'Graphite voltage over temperature',
    gives: { symbol: 'U_T', unit: 'V/K', label: 'open-circuit voltage over temperature' },
    takes: { filling: share('x', 'filling of the graphite') },
    uses: [ONE_VOLT, ONE_KELVIN],
    text: 'U_T = U_1 / K_1 · (−0.1112 · x + 0.02914 + 0.3561 · exp(−(x − 0.08309)² / 0.004616)) / 1000',
    source: { work: 'bpx-nmc-2022', place: 'entropy of graphite' },
    proof: {
      examples: [
        {
          takes: { filling: 0.005504 + 0.5 * (0.75668 - 0.005504) },
          gives: -0.1e-3 + 0.0868e-3,
          within: 5e-8,
          source: { work: 'bpx-nmc-2022', place: 'full cell −0.0868 mV/K at half charge, the positive electrode −0.1' },
        },
        {
          takes: { filling: 0.005504 + 0.1 * (0.75668 - 0.005504) },
          gives: -0.1e-3 + 0.476e-3,
          within: 5e-7,
          source: { work: 'bpx-nmc-2022', place: 'full cell −0.476 mV/K at a tenth' },
        },
      ],
    },
  },
  ({ filling: x }) => (-0.1112 * x + 0.02914 + 0.3561 * Math.exp(-((x - 0.08309) ** 2) / 0.004616)) / 1000,
)

/** Temperature of one mass after a time of constant heat, exact. */
export const lumpedTemperature = formula(
  {
    id: 'lumped-temperature',
    label: 'Temperature of one mass after a time',
    gives: kelvins('T', 'temperature'),
    takes: {
      before: kelvins('T_0', 'temperature before'),
      around: kelvins('T_c', 'temperature around'),
      heat: watts('q', 'heat'),
      capacity: perKelvin('C', 'heat capacity'),
      conductance: conductance('UA', 'heat path to the outside'),
      time: seconds('t', 'time'),
    },
    text: `T_e = T_c + q / UA
T = T_e + (T_0 − T_e) · exp(−t · UA / C)`,
    source: HEAT,
    leavesOut: 'Differences inside: the core is hotter than the mean.',
    proof: {
      examples: [
        {
          takes: { before: 298.15, around: 298.15, heat: 6.3325, capacity: 844, conductance: 0.84, time: 1200 },
          gives: 303.405,
          within: 1e-3,
          source: CHECK,
        },
        {
          takes: { before: 298.15, around: 298.15, heat: 6.3325, capacity: 844, conductance: 0.84, time: 1e6 },
          gives: 305.689,
          within: 1e-3,
          source: CHECK,
        },
        {
          takes: { before: 293.15, around: 263.15, heat: 0, capacity: 242e3, conductance: 7.3105, time: 36000 },
          gives: 273.26,
          within: 0.006,
          source: { work: 'heat', place: 'cold soak of a bare steel box, 10 h at −10 °C; recomputed' },
        },
        {
          takes: { before: 293.15, around: 263.15, heat: 0, capacity: 242e3, conductance: 2.651, time: 36000 },
          gives: 283.37,
          within: 0.01,
          source: { work: 'heat', place: 'the same with 20 mm of foam; recomputed' },
        },
      ],
    },
  },
  ({ before, around, heat, capacity, conductance, time }) => {
    const end = around + heat / conductance
    return end + (before - end) * Math.exp((-time * conductance) / capacity)
  },
)

/** How fast it would warm if nothing left. */
export const adiabaticRise = formula(
  {
    id: 'adiabatic-rise',
    label: 'Rise without cooling',
    gives: kelvinsApart('ΔT', 'rise'),
    takes: { heat: watts('q', 'heat'), time: seconds('t', 'time'), capacity: perKelvin('C', 'heat capacity') },
    text: 'ΔT = q · t / C',
    source: HEAT,
    proof: { examples: [{ takes: { heat: 6.3325, time: 60, capacity: 799 }, gives: 0.4755, within: 5e-5, source: CHECK }] },
  },
  ({ heat, time, capacity }) => (heat * time) / capacity,
)

/** Core and surface of a cell in steady heat: two resistances in a row. */
export const coreAndSurface = formula(
  {
    id: 'core-and-surface',
    label: 'Core and surface above the surroundings',
    gives: {
      core: kelvinsApart('ΔT_core', 'core above the surroundings'),
      surface: kelvinsApart('ΔT_surf', 'surface above the surroundings'),
    },
    takes: {
      heat: watts('q', 'heat'),
      inside: { symbol: 'R_in', unit: 'K/W', label: 'core to surface' },
      outside: { symbol: 'R_out', unit: 'K/W', label: 'surface to surroundings' },
    },
    text: `ΔT_surf = q · R_out
ΔT_core = ΔT_surf + q · R_in`,
    source: { work: 'forgez-2010', place: 'two-node model' },
    proof: {
      examples: [
        {
          takes: { heat: 2, inside: 3.3, outside: 8.44 },
          gives: { core: 23.48, surface: 16.88 },
          within: 1e-9,
          source: { work: 'forgez-2010', place: 'recomputed' },
        },
      ],
    },
  },
  ({ heat, inside, outside }) => ({ surface: heat * outside, core: heat * (outside + inside) }),
)
