import { formula } from '../working/formula.ts'
import { byCircuit, number, ohms, share, volts } from './symbols.ts'

const THEVENIN = { work: 'circuits', place: 'the string seen from the body: one source behind one resistance' } as const
const FORWARD = byCircuit('400 V, 96 cells, 50 kΩ to the body above cell 24, meter of 10 MΩ, 200 kΩ')
const LOW = volts('U_1', 'negative pole to body')
const HIGH = volts('U_2', 'positive pole to body')

/**
 * Where along a string one fault to the body sits, counted from the negative pole: the two readings stand as the two parts of the string.
 *
 * Several faults give their mean place, each counting by its conductance; so do two sound poles, which read as «middle». Ask `faultResistance` first.
 */
export const faultPlace = formula(
  {
    id: 'insulation-fault-place',
    label: 'Place of an insulation fault in a string',
    gives: { share: share('x', 'share of the string below the fault'), cells: number('n_x', 'cells below the fault') },
    takes: { low: LOW, high: HIGH, cells: number('n', 'cells in series') },
    text: `x = U_1 / (U_1 + U_2)
n_x = n · x`,
    source: THEVENIN,
    leavesOut: 'Cells of unlike voltage; faults outside the string, which show at its ends; a fault that comes and goes.',
    proof: {
      examples: [
        { takes: { low: 99.50249, high: 298.50746, cells: 96 }, gives: { share: 0.25, cells: 24 }, within: 1e-5, source: FORWARD },
        {
          takes: { low: 0, high: 398.01, cells: 96 },
          gives: { share: 0, cells: 0 },
          within: 0,
          source: byCircuit('a fault at the negative pole itself'),
        },
      ],
    },
  },
  ({ low, high, cells }) => {
    const x = low / (low + high)
    return { share: x, cells: cells * x }
  },
)

/**
 * Resistance of that fault, from a third reading with a known resistor. The meter cancels. With several faults it is all of them side by side: what an
 * insulation monitor shows. Put the resistor at the pole that reads more.
 */
export const faultResistance = formula(
  {
    id: 'insulation-fault-resistance',
    label: 'Resistance of an insulation fault',
    gives: ohms('R_f', 'resistance to the body, all faults side by side'),
    takes: {
      bus: volts('U_b', 'voltage of the string'),
      read: volts('U_1', 'pole to body, at the pole with the resistor'),
      other: volts('U_2', 'other pole to body'),
      with: volts('U_1′', 'first reading again, with the resistor'),
      resistor: ohms('R_0', 'known resistor, pole to body'),
    },
    text: 'R_f = R_0 · U_b · U_1 / (U_1 + U_2) · (1 / U_1′ − 1 / U_1)',
    source: THEVENIN,
    leavesOut: 'A string whose voltage changes between the readings; capacitors that have not settled.',
    proof: {
      examples: [
        {
          takes: { bus: 400, read: 298.50746, other: 99.50249, with: 239.04382, resistor: 200e3 },
          gives: 50e3,
          within: 0.5,
          source: FORWARD,
        },
        {
          takes: { bus: 360, read: 240, other: 120, with: 84.1558, resistor: 180e3 },
          gives: 333333,
          within: 5,
          source: byCircuit('360 V, 1 MΩ and 500 kΩ'),
          because: 'side by side, where the method of three voltages gives the weaker alone, 500 kΩ',
        },
      ],
    },
  },
  ({ bus, read, other, with: u, resistor }) => ((resistor * bus * read) / (read + other)) * (1 / u - 1 / read),
)

/** The same without a third reading, where the meter's own resistance is known; poor when the fault is far below it. */
export const faultResistanceByMeter = formula(
  {
    id: 'insulation-fault-by-meter',
    label: 'Resistance of an insulation fault, by the meter',
    gives: ohms('R_f', 'resistance to the body, all faults side by side'),
    takes: { bus: volts('U_b', 'voltage of the string'), low: LOW, high: HIGH, meter: ohms('R_m', 'resistance of the voltmeter') },
    text: 'R_f = R_m · (U_b / (U_1 + U_2) − 1)',
    source: THEVENIN,
    leavesOut: 'Errors of the readings count by the meter’s resistance over the fault’s.',
    proof: { examples: [{ takes: { bus: 400, low: 99.50249, high: 298.50746, meter: 10e6 }, gives: 50e3, within: 5, source: FORWARD }] },
  },
  ({ bus, low, high, meter }) => meter * (bus / (low + high) - 1),
)
