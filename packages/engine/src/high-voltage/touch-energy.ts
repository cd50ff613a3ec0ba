import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { byCircuit, farads, joules, volts } from './symbols.ts'
import { LOW_DC } from './voltage-class.ts'

const LIMIT_PLACE = { work: 'iso-6469-4', place: '5.2.3: less than 0.2 J' } as const
const CRASH = { work: 'un-r94', place: 'Annex 11, energy left in X and Y capacitors' } as const
/** Energy that may pass through somebody who touches a pole: it must stay below this. */
const TOUCH_LIMIT = standard('touch-energy', 'energy of a touch, to stay below', 'E_t', 0.2, 'J', LIMIT_PLACE)
const C1 = farads('C_1', 'Y capacitance, negative pole to body')
const C2 = farads('C_2', 'Y capacitance, positive pole to body')
const PACK = volts('U_w', 'highest working voltage')

/**
 * Energy through a body that joins one pole to the vehicle's, from the Y capacitors of both poles: the pack feeds the one while the other empties. Balanced:
 * both poles alike before. Worst: the other pole already lay on the body. Build for the worst.
 */
export const touchEnergy = formula(
  {
    id: 'touch-energy',
    label: 'Energy of a touch at one pole',
    gives: { balanced: joules('E_b', 'poles balanced before'), worst: joules('E_w', 'other pole already on the body') },
    takes: { first: C1, second: C2, voltage: PACK },
    text: `E_b = (C_1 + C_2) · U_w² / 8
E_w = ½ · (C_1 + C_2) · U_w²`,
    source: { work: 'circuits', place: 'charge moved through the body at a falling voltage' },
    leavesOut: 'The steady current through the insulation, which has its own limit.',
    proof: {
      examples: [
        {
          takes: { first: 0.47e-6, second: 0.47e-6, voltage: 400 },
          gives: { balanced: 0.0188, worst: 0.0752 },
          within: 1e-12,
          source: byCircuit('0.47 µF at each pole, 400 V'),
        },
      ],
    },
  },
  ({ first, second, voltage }) => ({ balanced: ((first + second) * voltage ** 2) / 8, worst: 0.5 * (first + second) * voltage ** 2 }),
)

/** Most Y capacitance, of both poles and of everything on the bus, that keeps the worst touch under the limit. */
export const largestYCapacitance = formula(
  {
    id: 'largest-y-capacitance',
    label: 'Most Y capacitance',
    gives: farads('C_y', 'Y capacitance, both poles together, less than'),
    takes: { voltage: PACK },
    uses: [TOUCH_LIMIT],
    text: 'C_y = 2 · E_t / U_w²',
    source: LIMIT_PLACE,
    leavesOut: 'Upper tolerance of the capacitors, and what long shielded cables add.',
    proof: {
      examples: [
        { takes: { voltage: 400 }, gives: 2.5e-6, within: 1e-15, source: { ...LIMIT_PLACE, place: '5.2.3: 400 V; recomputed' } },
        { takes: { voltage: 500 }, gives: 1.6e-6, within: 1e-15, source: { ...LIMIT_PLACE, place: '5.2.3: 500 V; recomputed' } },
      ],
    },
  },
  ({ voltage }) => (2 * TOUCH_LIMIT.value) / voltage ** 2,
)

/** Energy a capacitor can still give before it is down to class A: what is measured after a crash, X and Y alike. */
export const energyAboveClassA = formula(
  {
    id: 'energy-above-class-a',
    label: 'Energy left above 60 V',
    gives: joules('E_x', 'energy above 60 V'),
    takes: { capacitance: farads('C', 'capacitance'), voltage: volts('U_b', 'voltage left') },
    uses: [LOW_DC],
    text: 'E_x = max(0, ½ · C · (U_b² − U_60²))',
    source: CRASH,
    leavesOut: 'When it is read, 5 s after the crash in some editions and 10 s in others.',
    proof: {
      examples: [
        {
          takes: { capacitance: 500e-6, voltage: 100 },
          gives: 1.6,
          within: 1e-9,
          source: { ...CRASH, place: 'Annex 11: 500 µF, 100 V; recomputed' },
        },
        {
          takes: { capacitance: 1e-6, voltage: 400 },
          gives: 0.0782,
          within: 1e-9,
          source: { ...CRASH, place: 'Annex 11: 1 µF, 400 V; recomputed' },
        },
        { takes: { capacitance: 500e-6, voltage: 48 }, gives: 0, within: 0, source: { ...CRASH, place: 'Annex 11: 48 V; recomputed' } },
      ],
    },
  },
  ({ capacitance, voltage }) => Math.max(0, 0.5 * capacitance * (voltage ** 2 - LOW_DC.value ** 2)),
)

/** Voltage down to which a capacitor must have come for that energy to stay at the limit. */
export const lowEnergyVoltage = formula(
  {
    id: 'low-energy-voltage',
    label: 'Voltage at which a capacitor is down to the energy limit',
    gives: volts('U_E', 'voltage, to stay below'),
    takes: { capacitance: farads('C', 'capacitance') },
    uses: [LOW_DC, TOUCH_LIMIT],
    text: 'U_E = √(U_60² + 2 · E_t / C)',
    source: CRASH,
    proof: {
      examples: [
        { takes: { capacitance: 500e-6 }, gives: 66.33, within: 0.005, source: { ...CRASH, place: 'Annex 11: 500 µF; recomputed' } },
      ],
    },
  },
  ({ capacitance }) => Math.sqrt(LOW_DC.value ** 2 + (2 * TOUCH_LIMIT.value) / capacitance),
)
