import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { byCircuit, count, farads, ohms, ohmsPerVolt, practice, seconds, volts, watts } from './symbols.ts'

const ANNEX = { work: 'un-r100', place: 'Annex 4B, steps 1.2.3.1 to 1.2.3.5' } as const
const TAU = standard(
  'settle-constants',
  'time constants until a reading stands',
  'k_τ',
  5,
  '1',
  practice('settling of Y capacitors: five time constants'),
)
const FLOOR = standard(
  'reading-floor',
  'least reading, over the bus voltage',
  'k_f',
  0.01,
  '1',
  practice('readings under 1 % of the bus voltage'),
)
const SPREAD = standard('guide-spread', 'spread of the guide value', 'k_R', 0.2, '1', ANNEX)

const BUS = volts('U_b', 'bus voltage')
const GREATER = volts('U_1', 'greater of the two readings, pole to body')
const LESSER = volts('U_2', 'reading at the other pole')
const WITH = volts('U_1′', 'greater reading again, with the resistor')
const RESISTOR = ohms('R_0', 'known resistor, from the pole that reads more to the body')
const METER = { ...ohms('R_m', 'resistance of the voltmeter'), holds: [1e5, 1e12] } as const
const A = { bus: 360, greater: 240, with: 84.1558, resistor: 180e3 } as const
const B = { bus: 360, greater: 232.258, with: 83.1836, resistor: 180e3 } as const
const C = { bus: 144, greater: 137.143, with: 76.4602, resistor: 72e3 } as const
const AT_360 = byCircuit('360 V, 1 MΩ and 500 kΩ')
const AT_360_METER = byCircuit('360 V, 1 MΩ and 500 kΩ, meter of 10 MΩ')
const AT_144 = byCircuit('144 V, 1.2 MΩ and 60 kΩ')

/**
 * Insulation resistance from three voltages: that of the pole which reads less, the weaker of the two. An insulation monitor shows both side by side, which
 * is less. The meter’s own resistance cancels. What may be reported of a small reading says `insulationStated`.
 *
 * Live work: a resistor for the full voltage, fused leads, the on-board monitor switched off and back on. A zero reading gives no number.
 */
export const insulationFromVoltages = formula(
  {
    id: 'insulation-from-voltages',
    label: 'Insulation resistance from three voltages',
    gives: ohms('R_i', 'insulation resistance'),
    takes: { bus: BUS, greater: GREATER, with: WITH, resistor: RESISTOR },
    text: 'R_i = R_0 · U_b · (1 / U_1′ − 1 / U_1)',
    source: ANNEX,
    leavesOut: 'A bus that changes between the readings; capacitors that have not settled; a reading under 1 % of the bus.',
    proof: {
      examples: [
        { takes: A, gives: 500e3, within: 5, source: AT_360 },
        { takes: B, gives: 500e3, within: 10, source: AT_360_METER },
        { takes: C, gives: 60e3, within: 0.5, source: AT_144 },
      ],
    },
  },
  ({ bus, greater, with: u, resistor }) => resistor * bus * (1 / u - 1 / greater),
)

/** The same without the bus voltage. It reads low with a real meter, which pulls both readings below the bus. */
export const insulationFromPoles = formula(
  {
    id: 'insulation-from-poles',
    label: 'Insulation resistance from pole voltages alone',
    gives: ohms('R_i', 'insulation resistance'),
    takes: { greater: GREATER, lesser: LESSER, with: WITH, resistor: RESISTOR },
    text: 'R_i = R_0 · (1 + U_2 / U_1) · (U_1 − U_1′) / U_1′',
    source: { work: 'cfr-571-305', place: 'S7.6' },
    leavesOut: 'The meter’s resistance.',
    proof: {
      examples: [
        { takes: { greater: 240, lesser: 120, with: 84.1558, resistor: 180e3 }, gives: 500e3, within: 5, source: AT_360 },
        { takes: { greater: 232.258, lesser: 116.129, with: 83.1836, resistor: 180e3 }, gives: 483871, within: 10, source: AT_360_METER },
        { takes: { greater: 137.143, lesser: 6.8571, with: 76.4602, resistor: 72e3 }, gives: 60e3, within: 0.5, source: AT_144 },
      ],
    },
  },
  ({ greater, lesser, with: u, resistor }) => (resistor * (1 + lesser / greater) * (greater - u)) / u,
)

/** What may be said of a reading: a number, or only «more than» where the voltage sinks into the meter’s resolution. Then raise the resistor. */
export const insulationStated = formula(
  {
    id: 'insulation-stated',
    label: 'Insulation resistance that may be stated',
    gives: { resistance: ohms('R_s', 'insulation resistance, at least'), only: count('b', '1: only «more than» this, 0: this') },
    takes: { bus: BUS, greater: GREATER, with: WITH, resistor: RESISTOR },
    uses: [FLOOR],
    text: `f = k_f · U_b
R_s = R_0 · U_b · (1 / max(U_1′, f) − 1 / max(U_1, f))
b = { 1 if U_1′ < f; 0 otherwise }`,
    source: practice('a reading under 1 % of the bus voltage is only «more than»'),
    proof: {
      examples: [
        { takes: A, gives: { resistance: 500e3 }, within: 5, source: AT_360 },
        { takes: A, gives: { only: 0 }, within: 0, source: AT_360 },
        {
          takes: { bus: 400, greater: 100, with: 2, resistor: 200e3 },
          gives: { resistance: 19.2e6, only: 1 },
          within: 1e-3,
          source: byCircuit('400 V: 2 V lies under the floor of 4 V'),
        },
        {
          takes: { bus: 400, greater: 3, with: 2, resistor: 200e3 },
          gives: { resistance: 0, only: 1 },
          within: 1e-9,
          source: byCircuit('400 V: both readings under the floor say nothing'),
        },
      ],
    },
  },
  ({ bus, greater, with: u, resistor }) => {
    const f = FLOOR.value * bus
    return { resistance: resistor * bus * (1 / Math.max(u, f) - 1 / Math.max(greater, f)), only: u < f ? 1 : 0 }
  },
)

/** Size of the known resistor. Any size is right in principle; this one reads well at the limit. */
export const guideResistor = formula(
  {
    id: 'guide-resistor',
    label: 'Known resistor for the insulation measurement',
    gives: { least: ohms('R_lo', 'from'), middle: ohms('R_0', 'about'), most: ohms('R_hi', 'to') },
    takes: { perVolt: ohmsPerVolt('r_min', 'least resistance per volt'), voltage: volts('U_w', 'highest working voltage') },
    uses: [SPREAD],
    text: `R_0 = r_min · U_w
R_lo = (1 − k_R) · R_0
R_hi = (1 + k_R) · R_0`,
    source: ANNEX,
    proof: {
      examples: [
        { takes: { perVolt: 500, voltage: 360 }, gives: { least: 144e3, middle: 180e3, most: 216e3 }, within: 1e-6, source: AT_360 },
        { takes: { perVolt: 500, voltage: 144 }, gives: { middle: 72e3 }, within: 1e-9, source: AT_144 },
      ],
    },
  },
  ({ perVolt, voltage }) => {
    const middle = perVolt * voltage
    return { least: (1 - SPREAD.value) * middle, middle, most: (1 + SPREAD.value) * middle }
  },
)

/** Power the known resistor must stand: all of the bus lies across it when the other pole has failed. */
export const testResistorPower = formula(
  {
    id: 'test-resistor-power',
    label: 'Power of the known resistor',
    gives: watts('P_0', 'power'),
    takes: { bus: BUS, resistor: ohms('R_0', 'known resistor') },
    text: 'P_0 = U_b² / R_0',
    source: { work: 'circuits', place: 'power in a resistor' },
    proof: { examples: [{ takes: { bus: 360, resistor: 180e3 }, gives: 0.72, within: 1e-9, source: byCircuit('360 V on 180 kΩ') }] },
  },
  ({ bus, resistor }) => bus ** 2 / resistor,
)

/** Time to wait before a reading stands: the Y capacitors of both poles charge through everything that joins poles and body. */
export const readingWait = formula(
  {
    id: 'reading-wait',
    label: 'Wait before an insulation reading',
    gives: seconds('t_w', 'wait'),
    takes: {
      resistance: ohms('R_p', 'both poles, meter and resistor side by side'),
      capacitance: farads('C_y', 'Y capacitance, both poles together'),
    },
    uses: [TAU],
    text: 't_w = k_τ · R_p · C_y',
    source: practice('five time constants'),
    leavesOut: 'Absorption in long cables and windings, which creeps on for a minute.',
    proof: {
      examples: [
        {
          takes: { resistance: 1e6 / 3, capacitance: 0.94e-6 },
          gives: 1.5667,
          within: 5e-5,
          source: byCircuit('1 MΩ and 500 kΩ, 0.47 µF at each pole'),
        },
      ],
    },
  },
  ({ resistance, capacitance }) => TAU.value * resistance * capacitance,
)

/** Readings to expect from two legs and a meter: what a test circuit, or a guess at a fault, should show. */
export const expectedPoleVoltages = formula(
  {
    id: 'expected-pole-voltages',
    label: 'Pole voltages to expect',
    gives: { greater: GREATER, lesser: LESSER, with: WITH },
    takes: {
      bus: BUS,
      leg: ohms('R_1', 'insulation of the pole that reads more'),
      other: ohms('R_2', 'insulation of the other pole'),
      meter: METER,
      resistor: RESISTOR,
    },
    text: `g_1 = 1 / R_1 + 1 / R_m
g_2 = 1 / R_2 + 1 / R_m
U_1 = U_b / (1 + R_2 · g_1)
U_2 = U_b / (1 + R_1 · g_2)
U_1′ = U_b / (1 + R_2 · (g_1 + 1 / R_0))`,
    source: { work: 'circuits', place: 'voltage divider' },
    proof: {
      examples: [
        {
          takes: { bus: 360, leg: 1e6, other: 500e3, meter: 1e12, resistor: 180e3 },
          gives: { greater: 240, lesser: 120, with: 84.1558 },
          within: 5e-4,
          source: AT_360,
        },
        {
          takes: { bus: 360, leg: 1e6, other: 500e3, meter: 10e6, resistor: 180e3 },
          gives: { greater: 232.258, lesser: 116.129, with: 83.1836 },
          within: 5e-4,
          source: AT_360_METER,
        },
        {
          takes: { bus: 144, leg: 1.2e6, other: 60e3, meter: 1e12, resistor: 72e3 },
          gives: { greater: 137.143, lesser: 6.8571, with: 76.4602 },
          within: 5e-4,
          source: AT_144,
        },
      ],
    },
  },
  ({ bus, leg, other, meter, resistor }) => {
    const g1 = 1 / leg + 1 / meter,
      g2 = 1 / other + 1 / meter
    return { greater: bus / (1 + other * g1), lesser: bus / (1 + leg * g2), with: bus / (1 + other * (g1 + 1 / resistor)) }
  },
)
