import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { braking, HANDBOOK, hand, ratio, share } from './symbols.ts'

const ANNEX_5 = {
  work: 'un-r13-h',
  place: 'Annex 5, distribution of braking among the axles, no anti-lock brakes',
  mark: 'from memory',
} as const
const FOOT = standard('brake-line-foot', 'Line of least braking, at its foot', 'z_0', 0.1, '1', ANNEX_5)
const STEEP = standard('brake-line-slope', 'Line of least braking, slope', 'b', 0.7, '1', ANNEX_5)
const FROM = standard('brake-line-from', 'Line of least braking, grip at its foot', 'k_0', 0.2, '1', ANNEX_5)
const WHEEL = standard(
  'brake-order-torque-wheel',
  'Braking over grip used by the rear axle, torque-wheel test, least',
  'c',
  0.9,
  '1',
  ANNEX_5,
)

/** Least braking a car must reach before an axle locks, by grip: laden and unladen, with and without braking of its motors. */
export const leastBraking = formula(
  {
    id: 'least-braking',
    label: 'Least braking before an axle locks',
    gives: braking('z_min', 'least braking over weight'),
    takes: { grip: { ...ratio('k', 'grip, or the greater grip used by an axle'), holds: [0.2, 0.8] } },
    uses: [FOOT, STEEP, FROM],
    text: 'z_min = z_0 + b · (k − k_0)',
    source: ANNEX_5,
    leavesOut: 'The order of locking, which must hold as well.',
    proof: {
      examples: [
        ...(
          [
            [0.2, 0.1],
            [0.3, 0.17],
            [0.5, 0.31],
            [0.8, 0.52],
          ] as const
        ).map(([grip, least]) => ({
          takes: { grip },
          gives: least,
          within: 1e-9,
          source: hand(`the line at grip ${grip}`),
        })),
        {
          takes: { grip: 0.4029 },
          gives: 0.242,
          within: 0.0005,
          source: hand('motors braking the front wheels with 0.20: just passed by 0.25'),
        },
        { takes: { grip: 0.5559 }, gives: 0.349, within: 0.0005, source: hand('the same, harder: passed by 0.40') },
      ],
    },
  },
  ({ grip }) => FOOT.value + STEEP.value * (grip - FROM.value),
)

/** By how much the rear axle stays behind the front one in grip used. Both by curves and by the torque-wheel test; below zero: the order is broken. */
export const lockOrder = formula(
  {
    id: 'lock-order',
    label: 'Rear axle behind the front axle',
    gives: {
      curves: share('d', 'rear axle behind the front axle in grip used'),
      wheels: share('d_w', 'rear axle below what the torque-wheel test accepts'),
    },
    takes: {
      braking: { ...braking(), holds: [0.15, 0.8] },
      front: ratio('f_F', 'grip used, front axle'),
      rear: ratio('f_R', 'grip used, rear axle'),
    },
    uses: [WHEEL],
    text: 'd = f_F − f_R\nd_w = z / c − f_R',
    source: ANNEX_5,
    leavesOut: `Asked for at every braking from 0.15 to 0.8 and in every state of load; one point is not enough. ${HANDBOOK}`,
    proof: {
      examples: [
        {
          takes: { braking: 0.15, front: 0.1277, rear: 0.1788 },
          gives: { curves: -0.0511, wheels: -0.0121 },
          within: 0.00005,
          source: hand('motors braking the rear wheels with 0.05 on top of 0.10: broken by curves and by torque wheels'),
        },
        {
          takes: { braking: 0.55, front: 0.5523, rear: 0.5457 },
          gives: { curves: 0.0066 },
          within: 0.00005,
          source: hand('the same motors on top of 0.50: kept'),
        },
      ],
    },
  },
  ({ braking, front, rear }) => ({ curves: front - rear, wheels: braking / WHEEL.value - rear }),
)
