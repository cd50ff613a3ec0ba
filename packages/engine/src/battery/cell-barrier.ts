import { formula } from '../working/formula.ts'
import { conductance, kelvins, metres, perKelvin, seconds, squareMetres } from './symbols.ts'

const HEAT = { work: 'heat', place: 'two equal masses with a path between them, each cooled' } as const
const CASE = { work: 'heat', place: '2 kg cells, faces of 173 × 125 mm, 600 and 25 °C, 0.5 W/K each; recomputed' } as const

/** Heat path through a sheet between two cells. */
export const barrierConductance = formula(
  {
    id: 'barrier-conductance',
    label: 'Heat path through a barrier',
    gives: conductance('G', 'through the barrier'),
    takes: {
      conductivity: { symbol: 'k', unit: 'W/(m·K)', label: 'conductivity' },
      area: squareMetres('A', 'face'),
      thickness: metres('δ', 'thickness'),
    },
    text: 'G = k · A / δ',
    source: HEAT,
    proof: { none: 'conduction through a sheet' },
  },
  ({ conductivity, area, thickness }) => (conductivity * area) / thickness,
)

/**
 * Hottest the neighbour of a cell in runaway becomes, and when.
 *
 * A barrier only delays: without cooling both end at the mean. Hot gas, sparks and busbars are left out, so this bounds from below what is needed and proves nothing.
 */
export const neighbourPeak = formula(
  {
    id: 'neighbour-peak',
    label: 'Hottest the neighbour cell becomes',
    gives: { peak: kelvins('T_max', 'neighbour at its hottest'), time: seconds('t', 'after') },
    takes: {
      hot: kelvins('T_1', 'cell after runaway'),
      cold: kelvins('T_2', 'neighbour'),
      around: kelvins('T_a', 'surroundings'),
      capacity: perKelvin('C', 'heat capacity of one cell'),
      barrier: conductance('G', 'through the barrier'),
      cooling: conductance('hA', 'from each cell to the surroundings'),
    },
    text: `S = T_1 + T_2 − 2 · T_a
D = T_1 − T_2
a = hA / C
b = (hA + 2 · G) / C
t = ln(b · D / (a · S)) / (b − a)
T_max = T_a + (S · exp(−a · t) − D · exp(−b · t)) / 2`,
    source: HEAT,
    leavesOut: 'Hot gas, sparks, busbars, reaction heat. Only a test proves a barrier.',
    proof: {
      examples: [
        {
          takes: { hot: 873.15, cold: 298.15, around: 298.15, capacity: 2000, barrier: (0.03 * 0.173 * 0.125) / 1e-3, cooling: 0.5 },
          gives: { peak: 424.85 },
          within: 0.06,
          source: CASE,
        },
        {
          takes: { hot: 873.15, cold: 298.15, around: 298.15, capacity: 2000, barrier: (0.03 * 0.173 * 0.125) / 1e-3, cooling: 0.5 },
          gives: { time: 1972 },
          within: 0.6,
          source: CASE,
        },
        {
          takes: { hot: 873.15, cold: 298.15, around: 298.15, capacity: 2000, barrier: (0.03 * 0.173 * 0.125) / 3e-3, cooling: 0.5 },
          gives: { peak: 363.05 },
          within: 0.06,
          source: CASE,
        },
      ],
    },
  },
  ({ hot, cold, around, capacity, barrier, cooling }) => {
    const s = hot + cold - 2 * around,
      d = hot - cold,
      a = cooling / capacity,
      b = (cooling + 2 * barrier) / capacity
    const time = Math.log((b * d) / (a * s)) / (b - a)
    return { time, peak: around + (s * Math.exp(-a * time) - d * Math.exp(-b * time)) / 2 }
  },
)
