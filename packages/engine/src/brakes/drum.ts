import { formula } from '../working/formula.ts'
import { area, HANDBOOK, hand, length, pressure, ratio, share, torque } from './symbols.ts'

const BAR = 1e5

/** Torque of one drum brake. */
export const drumTorque = formula(
  {
    id: 'drum-torque',
    label: 'Torque of a drum brake',
    gives: torque('T', 'torque of one wheel'),
    takes: {
      factor: ratio('C', 'brake factor: force at the rim over force of one piston'),
      pressure: pressure('p', 'line pressure'),
      knockOut: pressure('p_0', 'pressure at which the shoes begin to press'),
      piston: area('A', 'one piston of the wheel cylinder'),
      efficiency: share('η', 'efficiency of the wheel cylinder'),
      radius: length('r', 'radius of the drum'),
    },
    text: 'T = C · max(0, p − p_0) · A · η · r',
    source: { work: 'statics', place: 'brake factor, force at the rim' },
    leavesOut: `Drums that grow as they warm. The springs hold the shoes back up to 3 to 8 bar (common practice). ${HANDBOOK}`,
    proof: {
      examples: [
        {
          takes: {
            factor: 1.963,
            pressure: 40 * BAR,
            knockOut: 5 * BAR,
            piston: (Math.PI / 4) * 0.01905 ** 2,
            efficiency: 1,
            radius: 0.1,
          },
          gives: 195.8,
          within: 0.05,
          source: hand('piston 19.05 mm, brake factor 1.963, 40 bar behind the valve'),
        },
      ],
    },
  },
  ({ factor, pressure, knockOut, piston, efficiency, radius }) => factor * Math.max(0, pressure - knockOut) * piston * efficiency * radius,
)

const block = {
  friction: { ...ratio('μ', 'friction of the linings'), holds: [0.1, 0.5] },
  arm: ratio('q', 'drum radius over distance of cylinder and abutment from its centre'),
} as const
const at = (friction: number) => ({ friction, arm: 1 / 0.8 })
const byBlock = hand('cylinder and abutment at 0.8 of the drum radius')

/** Brake factor by shoes taken as blocks: a first estimate. Past the friction at which the shoes wedge it means nothing. */
export const drumFactors = formula(
  {
    id: 'drum-factors',
    label: 'Brake factor of a drum, shoes as blocks',
    gives: {
      simplex: ratio('C_1', 'one leading, one trailing shoe'),
      duplex: ratio('C_2', 'two leading shoes'),
      rollingBack: ratio('C_3', 'two leading shoes, rolling back'),
      duoServo: ratio('C_4', 'shoes that push each other'),
    },
    takes: block,
    text: 'κ = μ · q\nC_1 = 4 · μ / (1 − κ²)\nC_2 = 4 · μ / (1 − κ)\nC_3 = 4 · μ / (1 + κ)\nC_4 = 4 · μ / (1 − κ)²',
    source: { work: 'statics', place: 'shoes as blocks' },
    leavesOut: `Linings that wrap round the drum. Usual: about 2, about 3, 5 to 6 at a friction of 0.35 to 0.40 (from memory); a disc has 2·μ. ${HANDBOOK}`,
    proof: {
      examples: (
        [
          [0.35, 1.731, 2.489, 4.425],
          [0.38, 1.963, 2.895, 5.515],
          [0.4, 2.133, 3.2, 6.4],
        ] as const
      ).map(([friction, simplex, duplex, duoServo]) => ({
        takes: at(friction),
        gives: { simplex, duplex, duoServo },
        within: 0.0005,
        source: byBlock,
      })),
    },
  },
  ({ friction, arm }) => {
    const wedge = friction * arm
    return {
      simplex: (4 * friction) / (1 - wedge ** 2),
      duplex: (4 * friction) / (1 - wedge),
      rollingBack: (4 * friction) / (1 + wedge),
      duoServo: (4 * friction) / (1 - wedge) ** 2,
    }
  },
)

/** How much the brake factor changes for a change of friction, both in parts of themselves: the same number scales fade, wet grab and pull to one side. A disc has 1. */
export const drumSensitivity = formula(
  {
    id: 'drum-sensitivity',
    label: 'Sensitivity of a drum to friction',
    gives: {
      simplex: ratio('S_1', 'one leading, one trailing shoe'),
      duplex: ratio('S_2', 'two leading shoes'),
      duoServo: ratio('S_4', 'shoes that push each other'),
    },
    takes: block,
    text: 'κ = μ · q\nS_1 = (1 + κ²) / (1 − κ²)\nS_2 = 1 / (1 − κ)\nS_4 = (1 + κ) / (1 − κ)',
    source: { work: 'statics', place: 'shoes as blocks' },
    leavesOut: HANDBOOK,
    proof: { examples: [{ takes: at(0.38), gives: { simplex: 1.58, duplex: 1.9, duoServo: 2.81 }, within: 0.005, source: byBlock }] },
  },
  ({ friction, arm }) => {
    const wedge = friction * arm
    return { simplex: (1 + wedge ** 2) / (1 - wedge ** 2), duplex: 1 / (1 - wedge), duoServo: (1 + wedge) / (1 - wedge) }
  },
)
