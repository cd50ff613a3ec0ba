import { at, type Curve, integral } from '../numerics/curve.ts'
import { formula } from '../working/formula.ts'
import { amps, coulombs, joules, ohms, ratio, share, volts } from './symbols.ts'

const openCircuit = { symbol: 'U_oc', unit: ['1', 'V'], label: 'open-circuit voltage over charge', curve: true } as const

/** Energy between empty and full at no load. */
export const storedEnergy = formula(
  {
    id: 'stored-energy',
    label: 'Energy at no load',
    gives: joules('E_0', 'energy at no load'),
    takes: { openCircuit, capacity: coulombs('Q', 'capacity of the pack') },
    text: 'Area under the open-circuit voltage from empty to full, times the capacity: E_0 = Q · ∫ U_oc(z) dz.',
    words: 'an integral over a curve',
    source: { work: 'definition', place: 'energy of a charge at a voltage' },
    leavesOut: 'Every loss: a bound from above.',
    proof: {
      examples: [
        {
          takes: { openCircuit: { x: Float64Array.of(0, 1), y: Float64Array.of(3, 4) }, capacity: 3600 },
          gives: 3.5 * 3600,
          within: 1e-9,
          source: { work: 'definition', place: 'a straight line, worked by hand' },
        },
      ],
    },
  },
  ({ openCircuit, capacity }) => capacity * integral(openCircuit, 0, 1),
)

/** Where the voltage under a steady current meets the floor, coming down from full, and the energy that has come out by then. Exact on the points of both curves. */
export const energyAtCurrent = formula(
  {
    id: 'energy-at-current',
    label: 'Energy at a steady current',
    gives: { left: share('z_0', 'charge left at the floor'), energy: joules('E', 'energy at the terminals') },
    takes: {
      openCircuit,
      resistance: { symbol: 'R', unit: ['1', 'Ω'], label: 'ohmic resistance over charge, 25 °C', curve: true },
      branch: ohms('R_1', 'branch resistance, 25 °C'),
      factor: ratio('k_R', 'factor on the resistance curve'),
      cold: ratio('f_T', 'resistance over that at 25 °C'),
      current: amps('I', 'steady current'),
      floor: volts('U_min', 'lowest voltage'),
      capacity: coulombs('Q', 'capacity of the pack'),
    },
    text: 'Coming down from full, the charge z_0 at which U_oc(z) − I · (k_R · R(z) + R_1) · f_T first falls to U_min; then E = Q · ∫ (U_oc(z) − I · (k_R · R(z) + R_1) · f_T) dz from z_0 to full.',
    words: 'a crossing and an integral of curves',
    source: { work: 'circuits', place: 'cut-off by resistance' },
    leavesOut: 'Slow diffusion: right for power, too good for energy in the cold. There the table of cold energy decides.',
    proof: { none: 'the published cases need a measured curve; they are in the tests beside this file' },
  },
  ({ openCircuit, resistance, branch, factor, cold, current, floor, capacity }) => {
    const voltage = (z: number): number => at(openCircuit, z) - current * (factor * at(resistance, z) + branch) * cold
    const points = merged(openCircuit, resistance)
    let upper = 1,
      high = voltage(1),
      area = 0
    if (high <= floor) return { left: 1, energy: 0 }
    for (let k = points.length - 2; k >= 0; k--) {
      const z = points[k]!,
        low = voltage(z)
      if (low < floor) {
        const left = upper - ((upper - z) * (high - floor)) / (high - low)
        return { left, energy: capacity * (area + ((upper - left) * (high + floor)) / 2) }
      }
      area += ((upper - z) * (high + low)) / 2
      upper = z
      high = low
    }
    return { left: 0, energy: capacity * area }
  },
)

/** Points of both curves between 0 and 1, ends included, rising. */
const merged = (a: Curve, b: Curve): Float64Array => Float64Array.from(new Set([0, ...a.x, ...b.x, 1].filter(z => z >= 0 && z <= 1))).sort()

/** Energy in the cold: what resistance leaves, and no more than cells of this kind give when cold. */
export const energyInTheCold = formula(
  {
    id: 'energy-in-the-cold',
    label: 'Usable energy at a cell temperature',
    gives: joules('E_T', 'usable energy'),
    takes: {
      byResistance: joules('E', 'by resistance alone'),
      warm: joules('E_25', 'at 25 °C'),
      kept: share('s_T', 'share cells of this kind keep'),
    },
    text: 'E_T = min(E, E_25 · s_T)',
    source: { work: 'kollmeyer-2018', place: 'energy at 0.3C against temperature', mark: 'common practice' },
    leavesOut: 'Cells that warm themselves under way.',
    proof: {
      examples: [
        {
          takes: { byResistance: 60e6, warm: 36e6, kept: 0.8 },
          gives: 28.8e6,
          within: 1,
          source: { work: 'definition', place: 'the lesser of the two, worked by hand' },
        },
      ],
    },
  },
  ({ byResistance, warm, kept }) => Math.min(byResistance, warm * kept),
)
