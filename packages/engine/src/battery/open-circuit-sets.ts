import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'

const charge = { symbol: 'z', unit: '1', label: 'state of charge', shows: 'share', holds: [0, 1] } as const
const gives = { symbol: 'U_oc', unit: 'V', label: 'open-circuit voltage' } as const
/** Carries the unit: the published coefficients are plain numbers for volts. */
export const ONE_VOLT = standard('one-volt', 'one volt', 'U_1', 1, 'V', { work: 'definition', place: 'coherent unit' })

/**
 * Open-circuit voltage of an NMC111/graphite pouch cell over its charge, by the stoichiometry of both electrodes.
 *
 * Charge counts between the published limits (13.19 Ah for the 12.5 Ah cell). The graphite term subtracts large numbers: double precision needed.
 */
export const openCircuitNmc = formula(
  {
    id: 'open-circuit-nmc',
    label: 'Open-circuit voltage, NMC111',
    gives,
    takes: { charge },
    uses: [ONE_VOLT],
    text: `x = 0.005504 + z · (0.75668 − 0.005504)
y = 0.96210 − z · (0.96210 − 0.42424)
U_p = −3.04420906 · y + 10.04892207 − 0.65637536 · tanh(−4.02134095 · (y − 0.80063948)) + 4.24678547 · tanh(12.17805062 · (y − 7.57659337)) − 0.3757068 · tanh(59.33067782 · (y − 0.99784492))
U_n = 0.947057878 · exp(−159.418743 · x) − 35092.8033 + 0.164230269 · tanh(−45.5509094 · (x − 0.0324116012)) + 0.0369968491 · tanh(−19.6718868 · (x − 0.168334476)) + 19151.7003 · tanh(3.19648312 · (x − 1.85139824)) + 54244.8511 · tanh(−3.19009848 · (x − 2.01660395))
U_oc = U_1 · (U_p − U_n)`,
    source: { work: 'bpx-nmc-2022', place: 'open-circuit potentials and stoichiometry limits' },
    leavesOut: 'Temperature and the direction of the last current.',
    proof: {
      examples: [
        { takes: { charge: 0.1 }, gives: 3.4629, within: 5e-4, source: { work: 'bpx-nmc-2022', place: 'published functions, recomputed' } },
        { takes: { charge: 0.5 }, gives: 3.6729, within: 5e-4, source: { work: 'bpx-nmc-2022', place: 'published functions, recomputed' } },
        { takes: { charge: 1 }, gives: 4.2018, within: 5e-4, source: { work: 'bpx-nmc-2022', place: 'published functions, recomputed' } },
      ],
    },
  },
  ({ charge: z }) => {
    const y = 0.9621 - z * (0.9621 - 0.42424)
    return positiveNmc(y) - graphiteNmc(0.005504 + z * (0.75668 - 0.005504))
  },
)

const positiveNmc = (y: number): number =>
  -3.04420906 * y +
  10.04892207 -
  0.65637536 * Math.tanh(-4.02134095 * (y - 0.80063948)) +
  4.24678547 * Math.tanh(12.17805062 * (y - 7.57659337)) -
  0.3757068 * Math.tanh(59.33067782 * (y - 0.99784492))

const graphiteNmc = (x: number): number =>
  0.947057878 * Math.exp(-159.418743 * x) -
  35092.8033 +
  0.164230269 * Math.tanh(-45.5509094 * (x - 0.0324116012)) +
  0.0369968491 * Math.tanh(-19.6718868 * (x - 0.168334476)) +
  19151.7003 * Math.tanh(3.19648312 * (x - 1.85139824)) +
  54244.8511 * Math.tanh(-3.19009848 * (x - 2.01660395))

/** Open-circuit voltage of an LFP/graphite cell. A real cell shows two branches 5 to 25 mV apart on the plateau, by the direction of the last current. */
export const openCircuitLfp = formula(
  {
    id: 'open-circuit-lfp',
    label: 'Open-circuit voltage, LFP',
    gives,
    takes: { charge },
    uses: [ONE_VOLT],
    text: `x = 0.0016261 + z · (0.82258 − 0.0016261)
y = 0.95038 − z · (0.95038 − 0.0875)
U_p = 3.41285712 − 0.0149721852 · y + 3.54866018e14 · exp(−395.729493 · y) − 1.45998465 · exp(−110.108622 · (1 − y))
U_n = 52.9210878 · exp(−172.699386 · x) − 1179.63399 + 1209.56356 · tanh(67.2033948 · (x + 0.0244746396)) + 0.0452430314 · tanh(−14.7542326 · (x − 0.162746053)) + 20.18558 · tanh(−24.6666302 · (x − 1.12986136)) + 0.0201708039 · tanh(−11.9900231 · (x − 0.54977344)) + 49.9616805 · tanh(−61.1370883 · (x + 0.00469382558))
U_oc = U_1 · (U_p − U_n)`,
    source: { work: 'bpx-lfp-2022', place: 'open-circuit potentials and stoichiometry limits' },
    leavesOut: 'Hysteresis of 5 to 25 mV between charging and discharging.',
    proof: {
      examples: [
        { takes: { charge: 0.1 }, gives: 3.1882, within: 5e-4, source: { work: 'bpx-lfp-2022', place: 'published functions, recomputed' } },
        { takes: { charge: 0.5 }, gives: 3.2781, within: 5e-4, source: { work: 'bpx-lfp-2022', place: 'published functions, recomputed' } },
        { takes: { charge: 1 }, gives: 3.6486, within: 5e-4, source: { work: 'bpx-lfp-2022', place: 'published functions, recomputed' } },
      ],
    },
  },
  ({ charge: z }) => {
    const x = 0.0016261 + z * (0.82258 - 0.0016261)
    const y = 0.95038 - z * (0.95038 - 0.0875)
    const positive =
      3.41285712 - 0.0149721852 * y + 3.54866018e14 * Math.exp(-395.729493 * y) - 1.45998465 * Math.exp(-110.108622 * (1 - y))
    const negative =
      52.9210878 * Math.exp(-172.699386 * x) -
      1179.63399 +
      1209.56356 * Math.tanh(67.2033948 * (x + 0.0244746396)) +
      0.0452430314 * Math.tanh(-14.7542326 * (x - 0.162746053)) +
      20.18558 * Math.tanh(-24.6666302 * (x - 1.12986136)) +
      0.0201708039 * Math.tanh(-11.9900231 * (x - 0.54977344)) +
      49.9616805 * Math.tanh(-61.1370883 * (x + 0.00469382558))
    return positive - negative
  },
)

/** Open-circuit voltage of an NMC811/graphite-silicon 5 Ah cylinder. With the paper's fully charged limit 0.2661 the top end reads up to 12 mV higher. */
export const openCircuitNmc811 = formula(
  {
    id: 'open-circuit-nmc811',
    label: 'Open-circuit voltage, NMC811',
    gives,
    takes: { charge },
    uses: [ONE_VOLT],
    text: `x = 0.0279 + z · (0.9014 − 0.0279)
y = 0.9084 − z · (0.9084 − 0.2700)
U_p = −0.8090 · y + 4.4875 − 0.0428 · tanh(18.5138 · (y − 0.5542)) − 17.7326 · tanh(15.7890 · (y − 0.3117)) + 17.5842 · tanh(15.9308 · (y − 0.3120))
U_n = 1.9793 · exp(−39.3631 · x) + 0.2482 − 0.0909 · tanh(29.8538 · (x − 0.1234)) − 0.04478 · tanh(14.9159 · (x − 0.2769)) − 0.0205 · tanh(30.4444 · (x − 0.6103))
U_oc = U_1 · (U_p − U_n)`,
    source: { work: 'chen-2020', place: 'open-circuit potentials; stoichiometry of the simulations', mark: 'from memory' },
    leavesOut: 'Temperature and the direction of the last current.',
    proof: {
      examples: [
        { takes: { charge: 0 }, gives: 2.4977, within: 5e-4, source: { work: 'chen-2020', place: 'published functions, recomputed' } },
        { takes: { charge: 0.5 }, gives: 3.7051, within: 5e-4, source: { work: 'chen-2020', place: 'published functions, recomputed' } },
        { takes: { charge: 1 }, gives: 4.1809, within: 5e-4, source: { work: 'chen-2020', place: 'published functions, recomputed' } },
      ],
    },
  },
  ({ charge: z }) => {
    const x = 0.0279 + z * (0.9014 - 0.0279)
    const y = 0.9084 - z * (0.9084 - 0.27)
    const positive =
      -0.809 * y +
      4.4875 -
      0.0428 * Math.tanh(18.5138 * (y - 0.5542)) -
      17.7326 * Math.tanh(15.789 * (y - 0.3117)) +
      17.5842 * Math.tanh(15.9308 * (y - 0.312))
    const negative =
      1.9793 * Math.exp(-39.3631 * x) +
      0.2482 -
      0.0909 * Math.tanh(29.8538 * (x - 0.1234)) -
      0.04478 * Math.tanh(14.9159 * (x - 0.2769)) -
      0.0205 * Math.tanh(30.4444 * (x - 0.6103))
    return positive - negative
  },
)

/**
 * Estimate for a titanate cell: the NMC positive electrode against a negative one 1.55 V above lithium.
 *
 * No measured titanate curve was at hand; the result keeps the published window (1.5 to 2.7 V) and nominal 2.3 V. A class curve, nothing more.
 */
export const openCircuitLto = formula(
  {
    id: 'open-circuit-lto',
    label: 'Open-circuit voltage, LTO (estimate)',
    gives,
    takes: { charge },
    uses: [ONE_VOLT],
    text: `y = 0.96210 − z · (0.96210 − 0.42424)
U_p = −3.04420906 · y + 10.04892207 − 0.65637536 · tanh(−4.02134095 · (y − 0.80063948)) + 4.24678547 · tanh(12.17805062 · (y − 7.57659337)) − 0.3757068 · tanh(59.33067782 · (y − 0.99784492))
U_oc = U_1 · (U_p − 1.55)`,
    source: { work: 'bpx-nmc-2022', place: 'positive electrode; titanate about 1.55 V above lithium', mark: 'from memory' },
    leavesOut: 'The rise of the titanate electrode at both ends; measure the real cell.',
    proof: { none: 'no published curve at hand; a test holds it to the published nominal voltage' },
  },
  ({ charge: z }) => positiveNmc(0.9621 - z * (0.9621 - 0.42424)) - 1.55,
)
