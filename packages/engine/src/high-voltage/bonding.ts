import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { byCircuit, ohms, volts, amps } from './symbols.ts'
import { LOW_DC } from './voltage-class.ts'

const R100 = { work: 'un-r100', place: '5.1.2.2' } as const
/** Resistance between a housing and the body must stay below this, read with at least the current beside it. */
export const BOND_LIMIT = standard('bond-resistance', 'housing to body, to stay below', 'R_bl', 0.1, 'Ω', R100)
export const BOND_TEST_CURRENT = standard('bond-test-current', 'least current of the reading', 'I_bt', 0.2, 'A', R100)
const FAULT = amps('I_f', 'current of the double fault')

/** Resistance of a bond from a reading with four wires. An ordinary ohmmeter drives too little current to find a bad joint. */
export const bondResistance = formula(
  {
    id: 'bond-resistance',
    label: 'Resistance of a bond',
    gives: ohms('R_b', 'housing to body'),
    takes: {
      drop: volts('ΔU', 'voltage across the bond'),
      current: { ...amps('I', 'current of the reading'), holds: [BOND_TEST_CURRENT.value, 100] },
    },
    text: 'R_b = ΔU / I',
    source: R100,
    leavesOut: 'A part that is welded to the body counts as bonded.',
    proof: { examples: [{ takes: { drop: 0.02, current: 0.2 }, gives: 0.1, within: 1e-12, source: byCircuit('20 mV at 0.2 A') }] },
  },
  ({ drop, current }) => drop / current,
)

/**
 * Voltage between two housings when one pole has failed into each: until a fuse clears, it stands between two hands. Two bonds that each just meet their limit
 * are not enough by themselves.
 */
export const doubleFaultVoltage = formula(
  {
    id: 'double-fault-voltage',
    label: 'Voltage between two housings at a double fault',
    gives: volts('U_t', 'housing to housing'),
    takes: { current: FAULT, first: ohms('R_b1', 'first bond'), second: ohms('R_b2', 'second bond') },
    text: 'U_t = I_f · (R_b1 + R_b2)',
    source: { work: 'circuits', place: 'Ohm’s law' },
    leavesOut: 'The body between the bonds; how long the fuse takes.',
    proof: {
      examples: [
        {
          takes: { current: 1500, first: 0.1, second: 0.1 },
          gives: 300,
          within: 1e-9,
          source: byCircuit('1500 A through two bonds of 0.1 Ω'),
        },
      ],
    },
  },
  ({ current, first, second }) => current * (first + second),
)

/** Resistance of both bonds together that keeps a double fault at class A. */
export const largestBondPair = formula(
  {
    id: 'largest-bond-pair',
    label: 'Most resistance of two bonds together',
    gives: ohms('R_2b', 'both bonds together at most'),
    takes: { current: FAULT },
    uses: [LOW_DC],
    text: 'R_2b = U_60 / I_f',
    source: { work: 'circuits', place: 'Ohm’s law' },
    proof: { examples: [{ takes: { current: 1500 }, gives: 0.04, within: 1e-12, source: byCircuit('1500 A, 60 V') }] },
  },
  ({ current }) => LOW_DC.value / current,
)
