import { formula } from '../working/formula.ts'
import { braking, caseCar, frontPart, HANDBOOK, hand, ratio, share, stance } from './symbols.ts'

const MOMENTS = { work: 'statics', place: 'moments on a braking car' } as const

/** Greatest braking by motors on one axle alone before its wheels lock. */
export const regenerationByGrip = formula(
  {
    id: 'regeneration-by-grip',
    label: 'Braking by motors alone, limit of grip',
    gives: { front: braking('z_F', 'motors on the front axle'), rear: braking('z_R', 'motors on the rear axle') },
    takes: { grip: { ...ratio('μ', 'grip'), holds: [0.05, 1.3] }, ...stance },
    text: 'χ = h / L\nz_F = μ · (1 − ψ) / (1 − μ · χ)\nz_R = μ · ψ / (1 + μ · χ)',
    source: MOMENTS,
    leavesOut: `Friction brakes, slope, an open differential on a split surface. ${HANDBOOK}`,
    proof: {
      examples: (
        [
          [0.1, 0.0543, 0.0459],
          [0.2, 0.111, 0.0899],
          [0.3, 0.1705, 0.1321],
          [0.8, 0.5154, 0.3192],
        ] as const
      ).map(([grip, front, rear]) => ({
        takes: { grip, ...caseCar },
        gives: { front, rear },
        within: 0.00005,
        source: hand('L 2.45 m, h 0.54 m, centre of mass 1.15 m behind the front axle'),
      })),
    },
  },
  ({ grip, rearShare, height, wheelbase }) => {
    const moved = (grip * height) / wheelbase
    return { front: (grip * (1 - rearShare)) / (1 - moved), rear: (grip * rearShare) / (1 + moved) }
  },
)

const blend = (motors: number, friction: number, motorsFront: number) => ({ motors, friction, motorsFront, front: 0.72, ...caseCar })
/** Grip each axle uses while motors brake on top of friction brakes. */
export const blendedUtilisation = formula(
  {
    id: 'blended-utilisation',
    label: 'Grip used with motors braking too',
    gives: {
      braking: braking('z', 'braking over weight, all of it'),
      front: ratio('f_F', 'grip used, front axle'),
      rear: ratio('f_R', 'grip used, rear axle'),
    },
    takes: {
      friction: braking('z_b', 'braking by friction brakes, over weight'),
      motors: braking('z_m', 'braking by motors, over weight'),
      motorsFront: { ...share('s', 'share of the motors’ braking at the front: 1 front drive, 0 rear drive'), holds: [0, 1] },
      front: frontPart,
      ...stance,
    },
    text: [
      'χ = h / L',
      'z = z_b + z_m',
      'f_F = (β · z_b + s · z_m) / (1 − ψ + z · χ)',
      'f_R = ((1 − β) · z_b + (1 − s) · z_m) / (ψ − z · χ)',
    ].join('\n'),
    source: MOMENTS,
    leavesOut: `Look at it from no braking by motors to all they can: a full battery gives none. ${HANDBOOK}`,
    proof: {
      examples: [
        {
          takes: blend(0.05, 0.1, 0),
          gives: { front: 0.1277, rear: 0.1788 },
          within: 0.00005,
          source: hand('rear drive, 0.05 by motors on top of 0.10: the rear axle leads'),
        },
        {
          takes: blend(0.05, 0.5, 0),
          gives: { front: 0.5523, rear: 0.5457 },
          within: 0.00005,
          source: hand('rear drive, 0.05 by motors on top of 0.50: the front axle leads'),
        },
        {
          takes: blend(0.2, 0.05, 1),
          gives: { braking: 0.25, front: 0.4029 },
          within: 0.00005,
          source: hand('front drive, 0.20 by motors on top of 0.05'),
        },
        {
          takes: blend(0.2, 0.2, 1),
          gives: { braking: 0.4, front: 0.5559 },
          within: 0.00005,
          source: hand('front drive, 0.20 by motors on top of 0.20'),
        },
      ],
    },
  },
  ({ friction, motors, motorsFront, front, rearShare, height, wheelbase }) => {
    const braking = friction + motors,
      moved = (braking * height) / wheelbase
    return {
      braking,
      front: (front * friction + motorsFront * motors) / (1 - rearShare + moved),
      rear: ((1 - front) * friction + (1 - motorsFront) * motors) / (rearShare - moved),
    }
  },
)
