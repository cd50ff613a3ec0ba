import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { ONE_VOLT } from './open-circuit-sets.ts'
import { ohms, stateOfCharge, volts } from './symbols.ts'

const ONE_OHM = standard('one-ohm', 'one ohm', 'R_1', 1, 'Ω', { work: 'definition', place: 'coherent unit' })
const ONE_FARAD = standard('one-farad', 'one farad', 'C_1', 1, 'F', { work: 'definition', place: 'coherent unit' })
const SOURCE = { work: 'chen-rincon-mora-2006', place: 'fitted elements; recomputed twice' } as const
const farads = (symbol: string, label: string) => ({ symbol, unit: 'F', label }) as const

/** A small polymer cell of 850 mAh as one resistor and two RC branches: the classic published circuit. Copies with +0.1178·z² are wrong. */
export const chenRinconMora = formula(
  {
    id: 'chen-rincon-mora',
    label: 'Elements of the 850 mAh cell by Chen and Rincón-Mora',
    gives: {
      openCircuit: volts('U_oc', 'open-circuit voltage'),
      series: ohms('R_s', 'series resistance'),
      short: ohms('R_short', 'resistance of the quick branch'),
      shortCapacitance: farads('C_short', 'capacitance of the quick branch'),
      long: ohms('R_long', 'resistance of the slow branch'),
      longCapacitance: farads('C_long', 'capacitance of the slow branch'),
    },
    takes: { charge: stateOfCharge },
    uses: [ONE_VOLT, ONE_OHM, ONE_FARAD],
    text: `U_oc = U_1 · (−1.031 · exp(−35 · z) + 3.685 + 0.2156 · z − 0.1178 · z² + 0.3201 · z³)
R_s = R_1 · (0.1562 · exp(−24.37 · z) + 0.07446)
R_short = R_1 · (0.3208 · exp(−29.14 · z) + 0.04669)
C_short = C_1 · (−752.9 · exp(−13.51 · z) + 703.6)
R_long = R_1 · (6.603 · exp(−155.2 · z) + 0.04984)
C_long = C_1 · (−6056 · exp(−27.12 · z) + 4475)`,
    source: { work: 'chen-rincon-mora-2006', place: 'fitted elements' },
    leavesOut: 'Temperature, current and age. Both capacitances turn negative near empty.',
    proof: {
      examples: [
        {
          takes: { charge: 1 },
          gives: { openCircuit: 4.1029, series: 0.07446, short: 0.04669, long: 0.04984 },
          within: 1e-6,
          source: SOURCE,
        },
        { takes: { charge: 1 }, gives: { shortCapacitance: 703.599, longCapacitance: 4475 }, within: 1e-3, source: SOURCE },
        {
          takes: { charge: 0.5 },
          gives: { openCircuit: 3.803363, series: 0.0744608, short: 0.04669015, long: 0.04984 },
          within: 1e-6,
          source: SOURCE,
        },
        { takes: { charge: 0.5 }, gives: { shortCapacitance: 702.7228, longCapacitance: 4474.992 }, within: 5e-4, source: SOURCE },
        {
          takes: { charge: 0.1 },
          gives: { openCircuit: 3.674569, series: 0.08811543, short: 0.06409605, long: 0.0498412 },
          within: 1e-6,
          source: SOURCE,
        },
        { takes: { charge: 0.1 }, gives: { shortCapacitance: 508.6131, longCapacitance: 4072.858 }, within: 5e-4, source: SOURCE },
      ],
    },
  },
  ({ charge: z }) => ({
    openCircuit: -1.031 * Math.exp(-35 * z) + 3.685 + 0.2156 * z - 0.1178 * z * z + 0.3201 * z ** 3,
    series: 0.1562 * Math.exp(-24.37 * z) + 0.07446,
    short: 0.3208 * Math.exp(-29.14 * z) + 0.04669,
    shortCapacitance: -752.9 * Math.exp(-13.51 * z) + 703.6,
    long: 6.603 * Math.exp(-155.2 * z) + 0.04984,
    longCapacitance: -6056 * Math.exp(-27.12 * z) + 4475,
  }),
)
