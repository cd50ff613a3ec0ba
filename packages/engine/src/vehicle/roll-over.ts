import { formula } from '../working/formula.ts'
import { type Fact, standard } from '../working/value.ts'

const NHTSA = { work: 'nhtsa-rollover', place: 'ch. V: half track over height of the centre of mass' } as const
const CURVE = { work: 'nhtsa-rollover-2003', place: 'risk of roll-over in a single-car crash', mark: 'from memory' } as const
const NO_TIP = standard('rollover-no-tip', 'Roll-over curve, no tip-up in the test', 'a_0', 2.8891, '1', CURVE)
const TIP = standard('rollover-tip', 'Roll-over curve, tip-up in the test', 'a_1', 2.6968, '1', CURVE)
const SLOPE = standard('rollover-slope', 'Roll-over curve, slope', 'b', 1.1686, '1', CURVE)
const AT = standard('rollover-pole', 'Roll-over curve, pole', 'c', 0.9, '1', CURVE)
const factor = { symbol: 'SSF', unit: '1', label: 'static stability factor', shows: 'ratio', holds: [0.95, 2] } as const

/** Half track over height of the centre of mass: sideways acceleration over g at which a rigid car tips. */
export const staticStabilityFactor = formula(
  {
    id: 'static-stability-factor',
    label: 'Static stability factor',
    gives: { symbol: 'SSF', unit: '1', shows: 'ratio' },
    takes: {
      front: { symbol: 'T_F', unit: 'm', label: 'front track', shows: 'length' },
      rear: { symbol: 'T_R', unit: 'm', label: 'rear track', shows: 'length' },
      height: { symbol: 'h', unit: 'm', label: 'height of the centre of mass', shows: 'length' },
    },
    text: 'T = (T_F + T_R) / 2\nSSF = T / (2 · h)',
    source: NHTSA,
    leavesOut: 'Tyres and springs that give: a real car tips some 10 to 20 % earlier.',
    proof: {
      examples: [
        {
          takes: { front: 1.44, rear: 1.44, height: 0.555 },
          gives: 1.297,
          within: 0.0005,
          source: NHTSA,
          because: 'track 1.44 m, height 0.555 m, worked by hand',
        },
        {
          takes: { front: 1.4, rear: 1.4, height: 0.52 },
          gives: 1.346,
          within: 0.0005,
          source: NHTSA,
          because: 'track 1.40 m, height 0.52 m, worked by hand',
        },
        {
          takes: { front: 1.44, rear: 1.44, height: 0.598 },
          gives: 1.204,
          within: 0.0005,
          source: NHTSA,
          because: 'the same car with 75 kg on its roof at 1.55 m, worked by hand',
        },
      ],
    },
  },
  ({ front, rear, height }) => (front + rear) / 2 / (2 * height),
)

/** Side slope on which a rigid car tips. */
export const tiltAngle = formula(
  {
    id: 'tilt-angle',
    label: 'Tilt-table angle',
    gives: { symbol: 'φ', unit: 'rad', shows: 'angle' },
    takes: { factor },
    text: 'φ = atan(SSF)',
    source: NHTSA,
    proof: {
      examples: [
        {
          takes: { factor: 1.44 / (2 * 0.555) },
          gives: (52.4 * Math.PI) / 180,
          within: (0.05 * Math.PI) / 180,
          source: NHTSA,
          because: 'worked by hand',
        },
      ],
    },
  },
  ({ factor }) => Math.atan(factor),
)

/** Share of single-car crashes in which a car of this factor rolls over, by the later consumer rating, without and with tip-up in its driving test. */
export const rollOverRisk = formula(
  {
    id: 'roll-over-risk',
    label: 'Risk of roll-over in a single-car crash',
    gives: {
      without: { symbol: 'q_0', unit: '1', label: 'no tip-up in the test', shows: 'share' },
      with: { symbol: 'q_1', unit: '1', label: 'tip-up in the test', shows: 'share' },
    },
    takes: { factor },
    uses: [NO_TIP, TIP, SLOPE, AT],
    text: 'e = b · ln(SSF − c)\nq_0 = 1 / (1 + exp(a_0 + e))\nq_1 = 1 / (1 + exp(a_1 + e))',
    source: CURVE,
    proof: {
      examples: [
        {
          takes: { factor: 1.44 / (2 * 0.555) },
          gives: { without: 0.141, with: 0.165 },
          within: 0.0005,
          source: CURVE,
          because: 'track 1.44 m, height 0.555 m',
        },
      ],
    },
  },
  ({ factor }) => {
    const e = SLOPE.value * Math.log(factor - AT.value)
    return { without: 1 / (1 + Math.exp(NO_TIP.value + e)), with: 1 / (1 + Math.exp(TIP.value + e)) }
  },
)

/** Lower edges of the five bands cars were rated by. */
const BANDS = [1.45, 1.25, 1.13, 1.04].map((edge, i) =>
  standard(`rollover-band-${5 - i}`, `Static stability factor from which a car had ${5 - i} of 5`, 'SSF_min', edge, '1', {
    work: 'nhtsa-rollover',
    place: 'rating of 2001 by the factor alone',
    mark: 'from memory',
  }),
)
/** Lower edge of the band a factor lies in; none below the lowest edge. */
export const starBelow = (factor: number): Fact | undefined => BANDS.find(b => factor >= b.value)
