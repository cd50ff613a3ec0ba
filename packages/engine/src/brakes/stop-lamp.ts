import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { hand, length, mass, ratio, share, torque } from './symbols.ts'

const LAMP = { work: 'un-r13-h', place: '5.2.22.4, stop lamps and braking by motors, in words a text of 2018 quotes' } as const
export const MAY = standard('stop-lamp-may', 'Deceleration by motors above which stop lamps may light', 'a_1', 0.7, 'm/s²', LAMP)
export const MUST = standard('stop-lamp-must', 'Deceleration by motors above which stop lamps must light', 'a_2', 1.3, 'm/s²', LAMP)

/** Torque of the motor, accelerator released, above which the stop lamps may and must light. They go out at the latest below the lower one. */
export const stopLampTorque = formula(
  {
    id: 'stop-lamp-torque',
    label: 'Stop lamp, torque of the motor',
    gives: { may: torque('T_1', 'lamps may light above'), must: torque('T_2', 'lamps must light above') },
    takes: {
      mass: mass('m', 'mass'),
      radius: length('r', 'rolling radius'),
      efficiency: share('η', 'efficiency of the gears'),
      ratio: ratio('i', 'ratio from motor to wheel'),
    },
    uses: [MAY, MUST],
    text: 'T_1 = a_1 · m · r · η / i\nT_2 = a_2 · m · r · η / i',
    source: LAMP,
    leavesOut:
      'Drag: the rule speaks of the deceleration of the car, so drag counts in a road test and the lamps must light at less torque.',
    proof: {
      examples: [
        {
          takes: { mass: 1252, radius: 0.303, efficiency: 0.95, ratio: 9 },
          gives: { may: 28, must: 52.1 },
          within: 0.05,
          source: hand('1252 kg, 9 to 1'),
        },
      ],
    },
  },
  ({ mass, radius, efficiency, ratio }) => {
    const perAcceleration = (mass * radius * efficiency) / ratio
    return { may: MAY.value * perAcceleration, must: MUST.value * perAcceleration }
  },
)
