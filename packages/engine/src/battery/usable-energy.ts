import { at, type Curve, integral } from '../numerics/curve.ts'
import { formula } from '../working/formula.ts'
import { amps, coulombs, joules, kelvins, ohms, ratio, share, volts } from './symbols.ts'

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

const circuit = {
  openCircuit,
  resistance: { symbol: 'R', unit: ['1', 'Ω'], label: 'ohmic resistance over charge, 25 °C', curve: true },
  branch: ohms('R_1', 'branch resistance, 25 °C'),
  factor: ratio('k_R', 'factor on the resistance curve'),
  cold: { symbol: 'f', unit: ['K', '1'], label: 'resistance over temperature', curve: true },
  temperature: kelvins('T', 'cell temperature'),
  current: amps('I', 'steady current'),
  floor: volts('U_min', 'lowest voltage'),
} as const
type Circuit = {
  readonly openCircuit: Curve
  readonly resistance: Curve
  readonly branch: number
  readonly factor: number
  readonly cold: Curve
  readonly temperature: number
  readonly current: number
  readonly floor: number
}
const UNDER = 'U_oc(z) − I · (k_R · R(z) + R_1) · f(T)'
const SOURCE = { work: 'circuits', place: 'cut-off by resistance' } as const
const MISSES = 'Slow diffusion: right for power, too good for energy in the cold. There the table of cold energy decides.'

/** Coming down from full, where the voltage under the current first meets the floor, and the area under it until there. Exact on the points of both curves. */
function downTo({ openCircuit, resistance, branch, factor, cold, temperature, current, floor }: Circuit): { left: number; area: number } {
  const f = at(cold, temperature),
    voltage = (z: number): number => at(openCircuit, z) - current * (factor * at(resistance, z) + branch) * f
  const points = merged(openCircuit, resistance)
  let upper = 1,
    high = voltage(1),
    area = 0
  if (high <= floor) return { left: 1, area: 0 }
  for (let k = points.length - 2; k >= 0; k--) {
    const z = points[k]!,
      low = voltage(z)
    if (low < floor) {
      const left = upper - ((upper - z) * (high - floor)) / (high - low)
      return { left, area: area + ((upper - left) * (high + floor)) / 2 }
    }
    area += ((upper - z) * (high + low)) / 2
    upper = z
    high = low
  }
  return { left: 0, area }
}

/** Charge that cannot be had at a steady current: the voltage under load meets the floor before. */
export const chargeLeft = formula(
  {
    id: 'charge-left',
    label: 'Charge left at the floor',
    gives: share('z_0', 'charge left at the floor'),
    takes: circuit,
    text: `Coming down from full, the charge z at which ${UNDER} first falls to U_min; none where it never does.`,
    words: 'a crossing of curves',
    source: SOURCE,
    leavesOut: MISSES,
    proof: { none: 'the published cases need a measured curve; they are in the tests beside this file' },
  },
  x => downTo(x).left,
)
/** Energy at the terminals at a steady current, from full to the floor. */
export const energyAtCurrent = formula(
  {
    id: 'energy-at-current',
    label: 'Energy at a steady current',
    gives: joules('E', 'energy at the terminals'),
    takes: { ...circuit, capacity: coulombs('Q', 'capacity of the pack') },
    text: `Coming down from full until ${UNDER} first falls to U_min: Q times the area under that voltage over charge.`,
    words: 'an integral of curves',
    source: SOURCE,
    leavesOut: MISSES,
    proof: { none: 'the published cases need a measured curve; they are in the tests beside this file' },
  },
  x => x.capacity * downTo(x).area,
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
      table: { symbol: 's', unit: ['K', '1'], label: 'usable energy over cell temperature', curve: true },
      temperature: kelvins('T', 'cell temperature'),
    },
    text: 'E_T = min(E, E_25 · s(T))',
    source: { work: 'kollmeyer-2018', place: 'energy at 0.3C against temperature', mark: 'common practice' },
    leavesOut: 'Cells that warm themselves under way.',
    proof: {
      examples: [
        {
          takes: {
            byResistance: 60e6,
            warm: 38.5 * 3.6e6,
            table: { x: Float64Array.of(263.15, 273.15), y: Float64Array.of(0.8, 0.87) },
            temperature: 268.15,
          },
          gives: 60e6,
          within: 1,
          source: { work: 'definition', place: 'the lesser of the two, worked by hand' },
        },
        {
          takes: {
            byResistance: 38.2 * 3.6e6,
            warm: 38.5 * 3.6e6,
            table: { x: Float64Array.of(263.15, 273.15), y: Float64Array.of(0.8, 0.87) },
            temperature: 268.15,
          },
          gives: 38.5 * 0.835 * 3.6e6,
          within: 1,
          source: { work: 'definition', place: '38.5 kWh, cells at −5 °C, between two rows; recomputed' },
        },
      ],
    },
  },
  ({ byResistance, warm, table, temperature }) => Math.min(byResistance, warm * at(table, temperature)),
)

/** Mean open-circuit voltage over the whole charge: the nominal voltage. */
export const meanVoltage = formula(
  {
    id: 'mean-voltage',
    label: 'Mean open-circuit voltage',
    gives: volts('U_m', 'nominal voltage'),
    takes: { openCircuit },
    text: 'Area under the open-circuit voltage from empty to full: U_m = ∫ U_oc(z) dz.',
    words: 'an integral over a curve',
    source: { work: 'definition', place: 'mean of a curve' },
    proof: {
      examples: [
        {
          takes: { openCircuit: { x: Float64Array.of(0, 1), y: Float64Array.of(3, 4) } },
          gives: 3.5,
          within: 1e-12,
          source: { work: 'definition', place: 'a straight line, worked by hand' },
        },
      ],
    },
  },
  ({ openCircuit }) => integral(openCircuit, 0, 1),
)
