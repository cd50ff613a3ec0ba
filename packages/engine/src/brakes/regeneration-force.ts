import { formula } from '../working/formula.ts'
import { area, deceleration, force, HANDBOOK, hand, length, mass, pressure, ratio, share, torque } from './symbols.ts'

/** Braking force at the wheels from the torque of a motor: losses of the gears add to it. */
export const regenerationForce = formula(
  {
    id: 'regeneration-force',
    label: 'Braking force of a motor',
    gives: { force: force('F', 'braking force at the wheels'), deceleration: deceleration('a', 'deceleration on the level') },
    takes: {
      torque: torque('T', 'braking torque of the motor'),
      ratio: ratio('i', 'ratio from motor to wheel'),
      efficiency: share('η', 'efficiency of the gears'),
      radius: length('r', 'rolling radius'),
      mass: mass('m', 'mass'),
    },
    text: 'F = T · i / (η · r)\na = F / m',
    source: { work: 'statics', place: 'losses of the gears brake as well' },
    leavesOut: `Drag, slope, what turns. ${HANDBOOK}`,
    proof: {
      examples: [
        {
          takes: { torque: 120, ratio: 9, efficiency: 0.95, radius: 0.303, mass: 1252 },
          gives: { force: 3752 },
          within: 0.5,
          source: hand('120 N·m, 9 to 1, 1252 kg'),
        },
        {
          takes: { torque: 120, ratio: 9, efficiency: 0.95, radius: 0.303, mass: 1252 },
          gives: { deceleration: 3 },
          within: 0.005,
          source: hand('120 N·m, 9 to 1, 1252 kg: the stop lamp is lit'),
        },
      ],
    },
  },
  ({ torque, ratio, efficiency, radius, mass }) => {
    const force = (torque * ratio) / (efficiency * radius)
    return { force, deceleration: force / mass }
  },
)

/** Line pressure that replaces the braking of motors when it falls away. */
export const pressureForRegeneration = formula(
  {
    id: 'pressure-for-regeneration',
    label: 'Line pressure that replaces braking by motors',
    gives: pressure('Δp', 'line pressure more'),
    takes: {
      mass: mass('m', 'mass'),
      lost: deceleration('a', 'deceleration by motors that is lost'),
      front: area('k_F', 'brake force over line pressure, front axle (1 N/bar is 0.1 cm²)'),
      rear: area('k_R', 'brake force over line pressure, rear axle'),
    },
    text: 'Δp = m · a / (k_F + k_R)',
    source: { work: 'statics', place: 'force over pressure' },
    leavesOut: `A valve before the rear axle, and the knock-out pressure of the brakes. ${HANDBOOK}`,
    proof: {
      examples: [
        {
          takes: { mass: 1420, lost: 1, front: 92e-5, rear: 52e-5 },
          gives: 9.9e5,
          within: 0.05e5,
          source: hand('1420 kg, 1.0 m/s² lost, 92 and 52 N/bar'),
        },
      ],
    },
  },
  ({ mass, lost, front, rear }) => (mass * lost) / (front + rear),
)
