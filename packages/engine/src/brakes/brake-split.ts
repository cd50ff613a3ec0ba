import { formula } from '../working/formula.ts'
import { force, HANDBOOK, hand, length, share, torque } from './symbols.ts'

/** Brake force of each axle from the torque of one of its wheels, and the share at the front. */
export const brakeSplit = formula(
  {
    id: 'brake-split',
    label: 'Share of the brake force at the front',
    gives: {
      front: force('F_F', 'front axle'),
      rear: force('F_R', 'rear axle'),
      share: share('β', 'share of the brake force at the front'),
    },
    takes: {
      frontTorque: torque('T_F', 'brake torque of a front wheel'),
      rearTorque: torque('T_R', 'brake torque of a rear wheel'),
      wheel: length('R', 'rolling radius of the tyres'),
    },
    text: 'F_F = 2 · T_F / R\nF_R = 2 · T_R / R\nβ = T_F / (T_F + T_R)',
    source: { work: 'statics', place: 'torque over radius, equal tyres' },
    leavesOut: `Tyres of two sizes. The share changes with pressure where the axles begin to brake at different pressures. ${HANDBOOK}`,
    proof: {
      examples: [
        {
          takes: { frontTorque: 1139.2, rearTorque: 195.8, wheel: 0.298 },
          gives: { front: 7646, rear: 1314 },
          within: 0.5,
          source: hand('1139.2 and 195.8 N·m, tyre 0.298 m'),
        },
        {
          takes: { frontTorque: 1139.2, rearTorque: 195.8, wheel: 0.298 },
          gives: { share: 0.853 },
          within: 0.0005,
          source: hand('1139.2 and 195.8 N·m, tyre 0.298 m'),
        },
      ],
    },
  },
  ({ frontTorque, rearTorque, wheel }) => ({
    front: (2 * frontTorque) / wheel,
    rear: (2 * rearTorque) / wheel,
    share: frontTorque / (frontTorque + rearTorque),
  }),
)
