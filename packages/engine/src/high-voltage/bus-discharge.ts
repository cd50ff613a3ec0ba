import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { byCircuit, farads, joules, ohms, practice, seconds, volts, watts } from './symbols.ts'
import { LOW_DC } from './voltage-class.ts'

const FIRST_ORDER = { work: 'circuits', place: 'a capacitor emptied through a resistor' } as const
const ALONE =
  'Every source: it holds only with contactors open, charger off and motor standing still. A motor with magnets that turns charges the bus again.'
const START = volts('U_0', 'highest bus voltage, a full pack or regeneration')
const CAPACITANCE = farads('C', 'all capacitors on the bus, upper tolerance')
const RESISTOR = ohms('R', 'discharge resistor')
const TIMES = standard(
  'discharge-wait',
  'wait on the label over computed time',
  'k_w',
  3,
  '1',
  practice('wait on the label: three times computed'),
)

/** How soon the bus must be down to class A. */
export const DISCHARGE_TIME = {
  'after switching off': standard('discharge.off', 'down to 60 V after switching off', 't_60', 5, 's', {
    work: 'iec-60204-1',
    place: '6.2.4, written for machines',
  }),
  'connector parted without a tool': standard('discharge.connector', 'down to 60 V after a connector is parted', 't_60', 1, 's', {
    work: 'un-r100',
    place: '5.1.1.3; or out of reach of a finger, or locked',
    mark: 'from memory',
  }),
} as const

/** Time from switching off until the bus is down to class A. A failed resistor leaves it charged for good: always measure. */
export const timeToClassA = formula(
  {
    id: 'time-to-60-volts',
    label: 'Time until the bus is down to 60 V',
    gives: seconds('t', 'time'),
    takes: { start: START, resistor: RESISTOR, capacitance: CAPACITANCE },
    uses: [LOW_DC],
    text: 't = { R · C · ln(U_0 / U_60) if U_0 > U_60; 0 otherwise }',
    source: FIRST_ORDER,
    leavesOut: ALONE,
    proof: {
      examples: [
        { takes: { start: 400, resistor: 200e3, capacitance: 1e-3 }, gives: 379.4, within: 0.05, source: byCircuit('400 V, 1 mF, 200 kΩ') },
        { takes: { start: 144, resistor: 2596, capacitance: 2.2e-3 }, gives: 5, within: 5e-4, source: byCircuit('144 V, 2.2 mF, 2596 Ω') },
        { takes: { start: 58.4, resistor: 2596, capacitance: 2.2e-3 }, gives: 0, within: 0, source: byCircuit('a bus of class A') },
      ],
    },
  },
  ({ start, resistor, capacitance }) => (start > LOW_DC.value ? resistor * capacitance * Math.log(start / LOW_DC.value) : 0),
)

/** Largest resistor that brings the bus down to class A in time; any does for a bus that never leaves it. */
export const largestDischargeResistor = formula(
  {
    id: 'largest-discharge-resistor',
    label: 'Largest discharge resistor',
    gives: ohms('R', 'discharge resistor at most'),
    takes: { start: START, time: seconds('t', 'time allowed'), capacitance: CAPACITANCE },
    uses: [LOW_DC],
    text: 'R = { t / (C · ln(U_0 / U_60)) if U_0 > U_60; ∞ otherwise }',
    source: FIRST_ORDER,
    leavesOut: ALONE,
    proof: {
      examples: [
        { takes: { start: 400, time: 5, capacitance: 1e-3 }, gives: 2635.6, within: 0.05, source: byCircuit('400 V, 1 mF, 5 s') },
        { takes: { start: 400, time: 60, capacitance: 1e-3 }, gives: 31.63e3, within: 5, source: byCircuit('400 V, 1 mF, 60 s') },
        { takes: { start: 144, time: 5, capacitance: 2.2e-3 }, gives: 2596, within: 0.05, source: byCircuit('144 V, 2.2 mF, 5 s') },
      ],
    },
  },
  ({ start, time, capacitance }) =>
    start > LOW_DC.value ? time / (capacitance * Math.log(start / LOW_DC.value)) : Number.POSITIVE_INFINITY,
)

/** Power in a discharge resistor while the bus is up: for ever if it is always connected, and if a switched one meets a welded contactor. */
export const dischargePower = formula(
  {
    id: 'discharge-power',
    label: 'Power of a discharge resistor on a live bus',
    gives: watts('P', 'power'),
    takes: { start: START, resistor: RESISTOR },
    text: 'P = U_0² / R',
    source: { work: 'circuits', place: 'power in a resistor' },
    proof: {
      examples: [
        { takes: { start: 400, resistor: 2635.6 }, gives: 60.7, within: 0.05, source: byCircuit('400 V, 1 mF, 5 s') },
        { takes: { start: 400, resistor: 31.63e3 }, gives: 5.06, within: 0.005, source: byCircuit('400 V, 1 mF, 60 s') },
        { takes: { start: 144, resistor: 2596 }, gives: 7.99, within: 0.005, source: byCircuit('144 V, 2.2 mF, 5 s') },
        { takes: { start: 400, resistor: 200e3 }, gives: 0.8, within: 1e-12, source: byCircuit('400 V on 200 kΩ') },
      ],
    },
  },
  ({ start, resistor }) => start ** 2 / resistor,
)

/** Energy in the capacitors of the bus: what the resistor takes in one discharge. */
export const busEnergy = formula(
  {
    id: 'bus-energy',
    label: 'Energy in the capacitors of the bus',
    gives: joules('E', 'energy'),
    takes: { voltage: volts('U', 'bus voltage'), capacitance: CAPACITANCE },
    text: 'E = ½ · C · U²',
    source: { work: 'circuits', place: 'energy in a capacitor' },
    proof: {
      examples: [
        { takes: { voltage: 400, capacitance: 1e-3 }, gives: 80, within: 1e-9, source: byCircuit('400 V, 1 mF') },
        { takes: { voltage: 144, capacitance: 2.2e-3 }, gives: 22.81, within: 0.0005, source: byCircuit('144 V, 2.2 mF') },
        { takes: { voltage: 360, capacitance: 680e-6 }, gives: 44.064, within: 1e-9, source: byCircuit('360 V, 680 µF') },
        { takes: { voltage: 320, capacitance: 470e-6 }, gives: 24.064, within: 1e-9, source: byCircuit('320 V, 470 µF') },
      ],
    },
  },
  ({ voltage, capacitance }) => 0.5 * capacitance * voltage ** 2,
)

/** Voltage left on the bus a time after switching off. */
export const busVoltageAfter = formula(
  {
    id: 'bus-voltage-after',
    label: 'Bus voltage after a time of discharge',
    gives: volts('U_t', 'bus voltage'),
    takes: { start: START, resistor: RESISTOR, capacitance: CAPACITANCE, time: seconds('t', 'time since switching off') },
    text: 'U_t = U_0 · exp(−t / (R · C))',
    source: FIRST_ORDER,
    leavesOut: ALONE,
    proof: {
      examples: [
        {
          takes: { start: 400, resistor: 2635.6, capacitance: 1e-3, time: 5 },
          gives: 60,
          within: 0.005,
          source: byCircuit('400 V, 1 mF, 2635.6 Ω'),
        },
      ],
    },
  },
  ({ start, resistor, capacitance, time }) => start * Math.exp(-time / (resistor * capacitance)),
)

/** Wait to write on a cover. It tells when to measure, not when to touch. */
export const labelledWait = formula(
  {
    id: 'labelled-wait',
    label: 'Wait on the label',
    gives: seconds('t_lab', 'wait on the label'),
    takes: { time: seconds('t', 'time until the bus is down') },
    uses: [TIMES],
    text: 't_lab = k_w · t',
    source: practice('wait on the label: three times computed'),
    proof: { none: 'a habit of the trade' },
  },
  ({ time }) => TIMES.value * time,
)
