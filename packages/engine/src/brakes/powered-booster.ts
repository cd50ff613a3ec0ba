import { formula } from '../working/formula.ts'
import { force, HANDBOOK, hand, length, power, pressure, ratio, share, speed, torque, volume } from './symbols.ts'

const volts = { symbol: 'U', unit: 'V', label: 'supply voltage' } as const
const amps = { symbol: 'I', unit: 'A', label: 'supply current' } as const

/** Assist of a booster whose motor turns a screw. */
export const electricBoosterForce = formula(
  {
    id: 'electric-booster-force',
    label: 'Assist of an electric booster',
    gives: force('F_a', 'assist at most'),
    takes: {
      torque: torque('T', 'torque of the motor'),
      ratio: ratio('i', 'ratio from motor to screw'),
      efficiency: share('η', 'efficiency of gear and screw'),
      lead: length('l', 'lead of the screw: travel in one turn'),
    },
    text: 'F_a = 2 · π · η · T · i / l',
    source: { work: 'statics', place: 'work in one turn of a screw' },
    leavesOut: HANDBOOK,
    proof: {
      examples: [
        {
          takes: { torque: 2, ratio: 4, efficiency: 0.6, lead: 0.0075 },
          gives: 4021,
          within: 0.5,
          source: hand('2 N·m, 4 to 1, lead 7.5 mm'),
        },
      ],
    },
  },
  ({ torque, ratio, efficiency, lead }) => (2 * Math.PI * efficiency * torque * ratio) / lead,
)

/** What an electric booster takes from the 12 V supply as the pedal goes down. */
export const electricBoosterPower = formula(
  {
    id: 'electric-booster-power',
    label: 'Power of an electric booster',
    gives: { power: power('P', 'power'), current: amps },
    takes: {
      assist: force('F_a', 'assist'),
      speed: speed('v', 'speed of the rod'),
      efficiency: share('η', 'efficiency of motor, gear and screw'),
      voltage: volts,
    },
    text: 'P = F_a · v / η\nI = P / U',
    source: { work: 'statics', place: 'force and speed' },
    leavesOut: 'Holding the pedal down, which takes current at no speed.',
    proof: {
      examples: [
        {
          takes: { assist: 4000, speed: 0.1, efficiency: 0.6, voltage: 12.5 },
          gives: { power: 667, current: 53 },
          within: 0.5,
          source: hand('4 kN at 0.1 m/s, 12.5 V'),
        },
      ],
    },
  },
  ({ assist, speed, efficiency, voltage }) => {
    const power = (assist * speed) / efficiency
    return { power, current: power / voltage }
  },
)

/** Fluid an accumulator gives between two pressures. A booster fed by the steering pump is dead with the engine out; this is what is left in store. */
export const accumulatorFluid = formula(
  {
    id: 'accumulator-fluid',
    label: 'Fluid an accumulator gives',
    gives: volume('V', 'fluid given'),
    takes: {
      gas: volume('V_0', 'volume of gas, no fluid in it'),
      charge: pressure('p_0', 'gas pressure then, absolute'),
      low: pressure('p_1', 'lowest pressure that still works, absolute'),
      high: pressure('p_2', 'highest pressure, absolute'),
    },
    text: 'V = V_0 · p_0 · (1 / p_1 − 1 / p_2)',
    source: { work: 'gas', place: 'gas at one temperature' },
    leavesOut: `Gas that cools as it works quickly gives less. ${HANDBOOK}`,
    proof: {
      examples: [
        {
          takes: { gas: 0.25e-3, charge: 81e5, low: 121e5, high: 181e5 },
          gives: 5.55e-5,
          within: 0.005e-5,
          source: hand('0.25 L at 81 bar, used from 181 to 121 bar'),
        },
      ],
    },
  },
  ({ gas, charge, low, high }) => gas * charge * (1 / low - 1 / high),
)
