import { GRAVITY } from '../physics/gravity.ts'
import { formula } from '../working/formula.ts'
import { braking, caseCar, force, HANDBOOK, hand, mass, stance } from './symbols.ts'

const MOMENTS = { work: 'statics', place: 'moments on a braking car' } as const
const LEFT_OUT = `Lift, slope, and springs that let the nose dive. ${HANDBOOK}`
const car = hand('1200 kg, L 2.45 m, h 0.54 m, centre of mass 1.15 m behind the front axle')

/** Loads under the axles while braking: load moves to the front. */
export const axleLoadsBraking = formula(
  {
    id: 'axle-loads-braking',
    label: 'Axle loads while braking',
    gives: { front: force('N_F', 'load on the front axle'), rear: force('N_R', 'load on the rear axle') },
    takes: { mass: mass('m', 'mass'), braking: braking(), ...stance },
    uses: [GRAVITY],
    text: 'χ = h / L\nN_F = m · g · (1 − ψ + z · χ)\nN_R = m · g · (ψ − z · χ)',
    source: MOMENTS,
    leavesOut: LEFT_OUT,
    proof: {
      examples: [
        {
          takes: { mass: 1400, braking: 5 / 9.80665, rearShare: 0.5, height: 0.54, wheelbase: 2.45 },
          gives: { rear: 5322 },
          within: 0.5,
          source: hand('1400 kg, half of it on the rear axle, 5 m/s²'),
        },
      ],
    },
  },
  ({ mass, braking, rearShare, height, wheelbase }) => {
    const moved = (braking * height) / wheelbase,
      weight = mass * GRAVITY.value
    return { front: weight * (1 - rearShare + moved), rear: weight * (rearShare - moved) }
  },
)

/** Brake forces that use the grip of both axles alike: the ideal parabola. */
export const idealBrakeForces = formula(
  {
    id: 'ideal-brake-forces',
    label: 'Ideal brake forces',
    gives: { front: force('F_F', 'front axle'), rear: force('F_R', 'rear axle') },
    takes: { mass: mass('m', 'mass'), braking: braking(), ...stance },
    uses: [GRAVITY],
    text: 'χ = h / L\nF_F = m · g · z · (1 − ψ + z · χ)\nF_R = m · g · z · (ψ − z · χ)',
    source: MOMENTS,
    leavesOut: LEFT_OUT,
    proof: {
      examples: (
        [
          [0.2, 1352.6, 1001.0],
          [0.4, 2912.7, 1794.5],
          [0.6, 4680.3, 2380.5],
          [0.8, 6655.4, 2759.0],
        ] as const
      ).map(([z, front, rear]) => ({
        takes: { mass: 1200, braking: z, ...caseCar },
        gives: { front, rear },
        within: 0.05,
        source: car,
      })),
    },
  },
  ({ mass, braking, rearShare, height, wheelbase }) => {
    const moved = (braking * height) / wheelbase,
      total = mass * GRAVITY.value * braking
    return { front: total * (1 - rearShare + moved), rear: total * (rearShare - moved) }
  },
)

/** Where the ideal rear force is greatest: past it harder braking wants less at the rear. */
export const idealRearPeak = formula(
  {
    id: 'ideal-rear-peak',
    label: 'Greatest ideal rear brake force',
    gives: { braking: braking('z_m', 'braking over weight there'), rear: force('F_R', 'rear axle') },
    takes: { mass: mass('m', 'mass'), ...stance },
    uses: [GRAVITY],
    text: 'χ = h / L\nz_m = ψ / (2 · χ)\nF_R = m · g · ψ² / (4 · χ)',
    source: MOMENTS,
    leavesOut: `A peak above the grip there is, is never reached. ${HANDBOOK}`,
    proof: {
      examples: [
        { takes: { mass: 1200, ...caseCar }, gives: { braking: 1.0648 }, within: 0.00005, source: car },
        { takes: { mass: 1200, ...caseCar }, gives: { rear: 2941 }, within: 0.5, source: car },
      ],
    },
  },
  ({ mass, rearShare, height, wheelbase }) => {
    const chi = height / wheelbase
    return { braking: rearShare / (2 * chi), rear: (mass * GRAVITY.value * rearShare ** 2) / (4 * chi) }
  },
)
