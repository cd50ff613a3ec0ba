import { formula } from '../working/formula.ts'
import { braking, caseCar, frontPart, HANDBOOK, hand, ratio, stance } from './symbols.ts'

const ANNEX_5 = { work: 'statics', place: 'brake force over load of each axle, as UN R13-H Annex 5 defines it' } as const
const car = hand('L 2.45 m, h 0.54 m, centre of mass 1.15 m behind the front axle, 72 % of the brake force at the front')

/** Grip each axle uses at a braking, by a fixed share of brake force. The axle that uses more locks first. */
export const adhesionUtilisation = formula(
  {
    id: 'adhesion-utilisation',
    label: 'Grip used by each axle',
    gives: { front: ratio('f_F', 'grip used, front axle'), rear: ratio('f_R', 'grip used, rear axle') },
    takes: { braking: braking(), front: frontPart, ...stance },
    text: 'χ = h / L\nf_F = β · z / (1 − ψ + z · χ)\nf_R = (1 − β) · z / (ψ − z · χ)',
    source: ANNEX_5,
    leavesOut: `Braking of motors, a valve before the rear axle, rolling resistance. ${HANDBOOK}`,
    proof: {
      examples: (
        [
          [0.15, 0.1916, 0.0963],
          [0.3, 0.362, 0.2083],
          [0.5, 0.5618, 0.3898],
          [0.8, 0.8148, 0.7643],
        ] as const
      ).map(([z, front, rear]) => ({
        takes: { braking: z, front: 0.72, ...caseCar },
        gives: { front, rear },
        within: 0.00005,
        source: car,
      })),
    },
  },
  ({ braking, front, rearShare, height, wheelbase }) => {
    const moved = (braking * height) / wheelbase
    return { front: (front * braking) / (1 - rearShare + moved), rear: ((1 - front) * braking) / (rearShare - moved) }
  },
)

/** Braking at which both axles lock together: below it the front locks first, above it the rear. */
export const lockCrossing = formula(
  {
    id: 'lock-crossing',
    label: 'Braking at which both axles lock together',
    gives: braking('z_c', 'braking over weight'),
    takes: { front: frontPart, ...stance },
    text: 'z_c = (β − (1 − ψ)) / (h / L)',
    source: ANNEX_5,
    leavesOut: 'Braking of motors and a valve before the rear axle. Below zero: the rear axle locks first at any braking.',
    proof: {
      examples: [
        { takes: { front: 0.72, ...caseCar }, gives: 0.859, within: 0.0005, source: car },
        {
          takes: { front: 92 / 144, ...caseCar },
          gives: 0.491,
          within: 0.0005,
          source: hand('the same car, its rear valve taken out: 92 and 52 N/bar'),
        },
        {
          takes: { front: 92 / 144, rearShare: 0.53, height: 0.545, wheelbase: 2.45 },
          gives: 0.759,
          within: 0.0005,
          source: hand('converted, 53 % on the rear axle, h 0.545 m, its rear valve taken out'),
        },
      ],
    },
  },
  ({ front, rearShare, height, wheelbase }) => (front - (1 - rearShare)) / (height / wheelbase),
)
