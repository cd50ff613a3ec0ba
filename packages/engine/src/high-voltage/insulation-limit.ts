import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { amps, byCircuit, ohms, ohmsPerVolt, practice, volts } from './symbols.ts'

const R100 = (place: string) => ({ work: 'un-r100', place }) as const
const perVolt = (name: string, label: string, value: number, place: string) =>
  standard(`insulation.${name}`, label, 'r_min', value, 'Ω/V', R100(place))

/** Least insulation resistance for each volt of working voltage, by how the DC and the AC circuit stand to each other. */
export const INSULATION_PER_VOLT = {
  'DC apart': perVolt('dc-apart', 'DC circuit, no conductor joins it to an AC circuit', 100, '5.1.3.1'),
  'AC apart': perVolt('ac-apart', 'AC circuit, no conductor joins it to a DC circuit', 500, '5.1.3.1'),
  joined: perVolt('joined', 'DC and AC joined, as in a drive with its inverter', 500, '5.1.3.2'),
  'joined, AC protected': perVolt('joined-protected', 'joined, AC behind two layers or in sturdy housings', 100, '5.1.3.2'),
} as const

const INLET = standard('insulation.inlet', 'charging inlet, coupler disconnected', 'R_in', 1e6, 'Ω', R100('5.1.3.4, 02 series'))
const DESIGN = standard('insulation.design', 'a new build, dry', 'R_new', 1e6, 'Ω', practice('insulation of a new build, dry'))
const TIMES = standard(
  'insulation.design-times',
  'a new build, times the limit',
  'k_new',
  5,
  '1',
  practice('insulation of a new build, dry'),
)
const WORKING = volts('U_w', 'highest working voltage')
const LIMIT = ohms('R_min', 'least insulation resistance')

/** Least insulation resistance of a circuit. The working voltage is that of a full pack, not of the day of the test. */
export const leastInsulationResistance = formula(
  {
    id: 'least-insulation-resistance',
    label: 'Least insulation resistance',
    gives: LIMIT,
    takes: { perVolt: ohmsPerVolt('r_min', 'least resistance per volt'), voltage: WORKING },
    text: 'R_min = r_min · U_w',
    source: R100('5.1.3.1, 5.1.3.2'),
    leavesOut: 'After a crash other figures hold, and in the United States others again.',
    proof: {
      examples: [
        { takes: { perVolt: 100, voltage: 400 }, gives: 40e3, within: 1e-9, source: R100('5.1.3.1: 400 V, DC apart; recomputed') },
        { takes: { perVolt: 500, voltage: 400 }, gives: 200e3, within: 1e-9, source: R100('5.1.3.2: 400 V, joined; recomputed') },
        {
          takes: { perVolt: 500, voltage: 96 * 4.2 },
          gives: 201.6e3,
          within: 1e-6,
          source: R100('5.1.3.2: 96 cells of 4.20 V; recomputed'),
        },
      ],
    },
  },
  ({ perVolt, voltage }) => perVolt * voltage,
)

/** A reading in ohms for each volt. Divided by the working voltage: the voltage of the day is lower and would flatter. */
export const insulationPerVolt = formula(
  {
    id: 'insulation-per-volt',
    label: 'Insulation resistance for each volt',
    gives: ohmsPerVolt('r_i', 'insulation resistance per volt'),
    takes: { resistance: ohms('R_i', 'insulation resistance'), voltage: WORKING },
    text: 'r_i = R_i / U_w',
    source: R100('5.1.3.1, 5.1.3.2: per volt of working voltage'),
    proof: {
      examples: [
        {
          takes: { resistance: 500e3, voltage: 403.2 },
          gives: 1240.1,
          within: 0.05,
          source: R100('5.1.3.1: 500 kΩ, 360 V at the test, 403.2 V when full; recomputed'),
          because: 'the 360 V of the test would say 1388.9',
        },
        { takes: { resistance: 60e3, voltage: 144 }, gives: 416.7, within: 0.05, source: R100('5.1.3.1: 60 kΩ at 144 V; recomputed') },
      ],
    },
  },
  ({ resistance, voltage }) => resistance / voltage,
)

/** Current through a second, bolted contact between the body and the other pole: what the insulation limits are made to hold down. */
export const singleFaultCurrent = formula(
  {
    id: 'single-fault-current',
    label: 'Current through one bolted fault',
    gives: amps('I_f', 'current'),
    takes: { resistance: ohms('R_i', 'insulation resistance of the opposite pole'), voltage: volts('U_w', 'highest working voltage') },
    text: 'I_f = U_w / R_i',
    source: { work: 'circuits', place: 'Ohm’s law' },
    leavesOut: 'The charge of Y capacitors, which comes first.',
    proof: {
      examples: [
        { takes: { resistance: 40e3, voltage: 400 }, gives: 0.01, within: 1e-12, source: byCircuit('100 Ω for each volt: 10 mA') },
        { takes: { resistance: 200e3, voltage: 400 }, gives: 0.002, within: 1e-12, source: byCircuit('500 Ω for each volt: 2 mA') },
      ],
    },
  },
  ({ resistance, voltage }) => voltage / resistance,
)

/** Least insulation resistance of the circuit of a charging inlet, disconnected: the text of two series differs, so both are met. */
export const leastInletInsulation = formula(
  {
    id: 'least-inlet-insulation',
    label: 'Least insulation resistance of a charging inlet',
    gives: ohms('R_pe', 'least insulation resistance of the inlet'),
    takes: { limit: LIMIT },
    uses: [INLET],
    text: 'R_pe = max(R_in, R_min)',
    source: R100('5.1.3.4; a later series is said to point to 5.1.3.1 and 5.1.3.2'),
    leavesOut: 'The battery may be disconnected for this measurement.',
    proof: {
      examples: [
        { takes: { limit: 201.6e3 }, gives: 1e6, within: 0, source: R100('5.1.3.4: 403.2 V, joined; recomputed') },
        { takes: { limit: 1.2e6 }, gives: 1.2e6, within: 0, source: R100('5.1.3.4: a limit above 1 MΩ; recomputed') },
      ],
    },
  },
  ({ limit }) => Math.max(INLET.value, limit),
)

/** What a new build should read when dry: age, dirt and water take their share later. */
export const insulationTarget = formula(
  {
    id: 'insulation-target',
    label: 'Insulation resistance to build for',
    gives: ohms('R_aim', 'insulation resistance to build for'),
    takes: { limit: LIMIT },
    uses: [DESIGN, TIMES],
    text: 'R_aim = max(R_new, k_new · R_min)',
    source: practice('insulation of a new build, dry: 1 MΩ and five times the limit'),
    proof: {
      examples: [
        { takes: { limit: 40e3 }, gives: 1e6, within: 0, source: practice('400 V, 100 Ω for each volt; recomputed') },
        { takes: { limit: 201.6e3 }, gives: 1.008e6, within: 1e-6, source: practice('403.2 V, 500 Ω for each volt; recomputed') },
      ],
    },
  },
  ({ limit }) => Math.max(DESIGN.value, TIMES.value * limit),
)
