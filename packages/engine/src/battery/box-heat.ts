import { formula } from '../working/formula.ts'
import { conductance, kelvins, metres, perKelvin, ratio, seconds, squareMetres, watts } from './symbols.ts'

const HEAT = { work: 'heat', place: 'one mass, one path' } as const
const film = (symbol: string, label: string) => ({ symbol, unit: 'W/(m²·K)', label }) as const

/** Heat through a flat wall of two layers, films on both sides. */
export const wallConductance = formula(
  {
    id: 'wall-conductance',
    label: 'Heat through a box wall',
    gives: film('U', 'heat through the wall per area'),
    takes: {
      inside: film('h_i', 'film inside'),
      outside: film('h_o', 'film outside'),
      foam: metres('δ', 'foam'),
      foamConductivity: { symbol: 'k', unit: 'W/(m·K)', label: 'conductivity of the foam' },
      steel: metres('δ_s', 'steel'),
      steelConductivity: { symbol: 'k_s', unit: 'W/(m·K)', label: 'conductivity of the steel' },
    },
    text: 'U = 1 / (1 / h_i + δ / k + δ_s / k_s + 1 / h_o)',
    source: { work: 'heat', place: 'layers in a row; films of 5 inside, 8 parked and 25 driving outside', mark: 'common practice' },
    proof: {
      examples: [
        {
          takes: { inside: 5, outside: 8, foam: 0, foamConductivity: 0.035, steel: 0.0015, steelConductivity: 50 },
          gives: 3.077,
          within: 5e-4,
          source: { work: 'heat', place: 'bare steel, parked; recomputed' },
        },
        {
          takes: { inside: 5, outside: 8, foam: 0.02, foamConductivity: 0.035, steel: 0.0015, steelConductivity: 50 },
          gives: 1.116,
          within: 5e-4,
          source: { work: 'heat', place: '20 mm of foam, parked; recomputed' },
        },
        {
          takes: { inside: 5, outside: 25, foam: 0.03, foamConductivity: 0.035, steel: 0.0015, steelConductivity: 50 },
          gives: 0.911,
          within: 5e-4,
          source: { work: 'heat', place: '30 mm of foam, driving; recomputed' },
        },
      ],
    },
  },
  ({ inside, outside, foam, foamConductivity, steel, steelConductivity }) =>
    1 / (1 / inside + foam / foamConductivity + steel / steelConductivity + 1 / outside),
)

/** The whole box, brackets, cables and hoses included. */
export const boxConductance = formula(
  {
    id: 'box-conductance',
    label: 'Heat through a whole box',
    gives: conductance('UA', 'heat path to the outside'),
    takes: {
      wall: film('U', 'heat through the wall per area'),
      area: squareMetres('A', 'outer area'),
      bridges: ratio('b', 'brackets, cables and hoses on top'),
    },
    text: 'UA = U · A · (1 + b)',
    source: HEAT,
    proof: {
      examples: [
        {
          takes: { wall: 3.077, area: 1.98, bridges: 0.2 },
          gives: 7.31,
          within: 5e-3,
          source: { work: 'heat', place: 'box of 0.9 × 0.6 × 0.3 m, bare; recomputed' },
        },
        {
          takes: { wall: 1.116, area: 1.98, bridges: 0.2 },
          gives: 2.65,
          within: 5e-3,
          source: { work: 'heat', place: 'the same with 20 mm of foam; recomputed' },
        },
      ],
    },
  },
  ({ wall, area, bridges }) => wall * area * (1 + bridges),
)

/** Time in which a difference to the outside falls to 37 %. */
export const soakTime = formula(
  {
    id: 'soak-time',
    label: 'Time constant of a box',
    gives: { ...seconds('τ', 'time constant'), shows: 'duration' },
    takes: { capacity: perKelvin('C', 'heat capacity'), conductance: conductance('UA', 'heat path to the outside') },
    text: 'τ = C / UA',
    source: HEAT,
    proof: {
      examples: [
        {
          takes: { capacity: 242e3, conductance: 7.31 },
          gives: 9.2 * 3600,
          within: 18,
          source: { work: 'heat', place: 'bare box, recomputed' },
        },
        {
          takes: { capacity: 242e3, conductance: 2.651 },
          gives: 25.36 * 3600,
          within: 18,
          source: { work: 'heat', place: 'box with 20 mm of foam, recomputed' },
        },
      ],
    },
  },
  ({ capacity, conductance }) => capacity / conductance,
)

/** Heater that brings the pack to a temperature in a given time, losses included. */
export const heaterPower = formula(
  {
    id: 'heater-power',
    label: 'Heater to warm in a given time',
    gives: watts('P_h', 'heater power'),
    takes: {
      from: kelvins('T_0', 'from'),
      to: kelvins('T_1', 'to'),
      outside: kelvins('T_o', 'outside'),
      capacity: perKelvin('C', 'heat capacity'),
      conductance: conductance('UA', 'heat path to the outside'),
      time: { ...seconds('t', 'within'), shows: 'duration' },
    },
    text: `e = exp(−t · UA / C)
P_h = UA · (T_1 − T_o − (T_0 − T_o) · e) / (1 − e)`,
    source: HEAT,
    proof: {
      examples: [
        {
          takes: { from: 263.15, to: 283.15, outside: 263.15, capacity: 240e3, conductance: 5, time: 3600 },
          gives: 1384,
          within: 0.05,
          source: { work: 'heat', place: '240 kJ/K by 20 K in 1 h; recomputed' },
        },
        {
          takes: { from: 263.15, to: 283.15, outside: 263.15, capacity: 240e3, conductance: 5, time: 10800 },
          gives: 496.3,
          within: 0.05,
          source: { work: 'heat', place: 'the same in 3 h; recomputed' },
        },
      ],
    },
  },
  ({ from, to, outside, capacity, conductance, time }) => {
    const e = Math.exp((-time * conductance) / capacity)
    return (conductance * (to - outside - (from - outside) * e)) / (1 - e)
  },
)

/** Time a given heater needs; Infinity where it never gets there. */
export const warmUpTime = formula(
  {
    id: 'warm-up-time',
    label: 'Time to warm with a heater',
    gives: { ...seconds('t', 'time to warm'), shows: 'duration' },
    takes: {
      power: watts('P_h', 'heater power'),
      from: kelvins('T_0', 'from'),
      to: kelvins('T_1', 'to'),
      outside: kelvins('T_o', 'outside'),
      capacity: perKelvin('C', 'heat capacity'),
      conductance: conductance('UA', 'heat path to the outside'),
    },
    text: `T_e = T_o + P_h / UA
t = { 0 if T_0 ≥ T_1; ∞ if T_e ≤ T_1; C / UA · ln((T_e − T_0) / (T_e − T_1)) otherwise }`,
    source: HEAT,
    leavesOut: 'Charging current while it warms. A heater too weak for the weather never gets there.',
    proof: {
      examples: [
        {
          takes: { power: 1000, from: 268.15, to: 278.15, outside: 268.15, capacity: 240e3, conductance: 5 },
          gives: 2462.1,
          within: 0.05,
          source: { work: 'heat', place: '240 kJ/K from −5 to +5 °C with 1 kW; recomputed' },
        },
        {
          takes: { power: 2000, from: 273.15, to: 288.15, outside: 273.15, capacity: 300e3, conductance: 1e-3 },
          gives: 2250,
          within: 0.1,
          source: { work: 'heat', place: '300 kJ/K by 15 K with 2 kW and hardly a loss: 37.5 min' },
        },
      ],
    },
  },
  ({ power, from, to, outside, capacity, conductance }) => {
    if (from >= to) return 0
    const end = outside + power / conductance
    if (end <= to) return Infinity
    return (capacity / conductance) * Math.log((end - from) / (end - to))
  },
)
