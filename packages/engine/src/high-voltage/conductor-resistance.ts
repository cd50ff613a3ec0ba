import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { TWENTY } from './conductor-metals.ts'
import { amps, celsius, length, ohms, ohmsPerMetre, perKelvin, section, share, temperature, volts, watts } from './conductor-symbols.ts'

const recomputed = (place: string) => ({ work: 'circuits', place: `${place}; recomputed` }) as const

/** Resistance of a length of conductor, warm. The length is that of the whole loop where a loop is meant. */
export const warmResistance = formula(
  {
    id: 'warm-conductor-resistance',
    label: 'Resistance of a warm conductor',
    gives: ohms('R', 'conductor'),
    takes: {
      perMetre: ohmsPerMetre('R′_20', 'resistance at 20 °C'),
      length: length('ℓ', 'length, there and back'),
      coefficient: perKelvin('α_20', 'rise with temperature'),
      temperature: temperature('T', 'conductor'),
    },
    uses: [TWENTY],
    text: 'R = R′_20 · ℓ · (1 + α_20 · (T − T_20))',
    source: { work: 'iec-60287-1-1', place: 'resistance at working temperature', mark: 'from memory' },
    leavesOut: 'Lugs and joints, often as much as a metre of cable.',
    proof: {
      examples: [
        {
          takes: { perMetre: 0.554e-3, length: 1, coefficient: 0.00393, temperature: celsius(90) },
          gives: 0.70641e-3,
          within: 6e-9,
          source: recomputed('35 mm² class 5, 90 °C'),
        },
        {
          takes: { perMetre: 0.386e-3, length: 9, coefficient: 0.00393, temperature: celsius(80) },
          gives: 4.2932e-3,
          within: 6e-8,
          source: recomputed('50 mm² class 5, loop of 9 m, 80 °C'),
        },
      ],
    },
  },
  ({ perMetre, length, coefficient, temperature }) => perMetre * length * (1 + coefficient * (temperature - TWENTY.value)),
)

/** Voltage lost along a conductor, also as a share of the supply, and the power it turns to heat. */
export const conductorDrop = formula(
  {
    id: 'conductor-drop',
    label: 'Voltage and power lost along a conductor',
    gives: { drop: volts('ΔU', 'voltage lost'), loss: watts('P_v', 'turned to heat'), part: share('δ_U', 'part of the supply') },
    takes: { current: amps('I', 'current'), resistance: ohms('R', 'conductor, there and back'), supply: volts('U', 'supply') },
    text: 'ΔU = I · R\nP_v = I² · R\nδ_U = ΔU / U',
    source: { work: 'circuits', place: 'Ohm’s law' },
    proof: {
      examples: (
        [
          [{ drop: 0.8586 }, 5e-5],
          [{ loss: 171.7 }, 0.05],
          [{ part: 0.002385 }, 5e-7],
        ] as const
      ).map(([gives, within]) => ({
        takes: { current: 200, resistance: 4.2932e-3, supply: 360 },
        gives,
        within,
        source: recomputed('50 mm², loop of 9 m, 80 °C, 200 A of 360 V'),
      })),
    },
  },
  ({ current, resistance, supply }) => {
    const drop = current * resistance
    return { drop, loss: current ** 2 * resistance, part: drop / supply }
  },
)

/** What wiring may lose of its supply: vital circuits, others, and the traction loop at its continuous current. */
export const DROP_GOALS = {
  vital: standard('drop.vital', 'voltage lost in vital circuits, at most', 'δ_U', 0.03, '1', { work: 'iso-10133', place: '4.8' }),
  other: standard('drop.other', 'voltage lost in other circuits, at most', 'δ_U', 0.1, '1', {
    work: 'small-craft-wiring',
    place: 'charts for 3 and 10 %',
  }),
  traction: standard('drop.traction', 'voltage lost in traction cables, at most', 'δ_U', 0.01, '1', {
    work: 'practice',
    place: 'traction cables at continuous current',
    mark: 'common practice',
  }),
} as const

/** One circular mil, the area of a wire a thousandth of an inch thick [m²]; and one foot [m]. Exact. */
export const CIRCULAR_MIL = (Math.PI / 4) * 0.0000254 ** 2
export const FOOT = 0.3048
/** Warm stranded copper as the charts for small craft reckon it: 10.75 Ω for a foot of one circular mil. */
const CHART_COPPER = standard('chart-copper', 'warm stranded copper of the charts', 'ρ_w', (10.75 * CIRCULAR_MIL) / FOOT, 'Ω·m', {
  work: 'small-craft-wiring',
  place: 'constant of 10.75 Ω by foot and circular mil',
  mark: 'from memory',
})

/** Section that keeps the voltage lost to a goal. */
export const sectionForDrop = formula(
  {
    id: 'section-for-drop',
    label: 'Section for a voltage drop',
    gives: section('S', 'section'),
    takes: { current: amps('I', 'current'), length: length('ℓ', 'length, there and back'), drop: volts('ΔU', 'voltage that may be lost') },
    uses: [CHART_COPPER],
    text: 'S = ρ_w · I · ℓ / ΔU',
    source: { work: 'small-craft-wiring', place: 'section by voltage drop' },
    leavesOut: 'Heating: a short wire that meets the drop may still run too hot.',
    proof: {
      examples: [
        {
          takes: { current: 10, length: 25 * FOOT, drop: 0.36 },
          gives: 7465 * CIRCULAR_MIL,
          within: 0.6 * CIRCULAR_MIL,
          source: { work: 'small-craft-wiring', place: '10 A, 25 ft there and back, 3 % of 12 V: 7465 circular mils, gauge 10' },
        },
        {
          takes: { current: 10, length: 25 * FOOT, drop: 1.2 },
          gives: 2240 * CIRCULAR_MIL,
          within: 0.6 * CIRCULAR_MIL,
          source: { work: 'small-craft-wiring', place: '10 A, 25 ft there and back, 10 % of 12 V: 2240 circular mils, gauge 16' },
        },
      ],
    },
  },
  ({ current, length, drop }) => (CHART_COPPER.value * current * length) / drop,
)
