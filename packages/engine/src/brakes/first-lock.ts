import { formula } from '../working/formula.ts'
import { braking, caseCar, frontPart, hand, ratio, share, stance } from './symbols.ts'

const car = hand('L 2.45 m, h 0.54 m, centre of mass 1.15 m behind the front axle, 72 % of the brake force at the front')
const at = (grip: number) => ({ grip, front: 0.72, ...caseCar })

/**
 * Braking over weight at which an axle starts to lock. The front axle of a car with too little brake force at the front never does: then its
 * braking is without limit, and the rear axle sets it.
 */
export const firstLock = formula(
  {
    id: 'first-lock',
    label: 'Braking at first lock',
    gives: {
      front: braking('z_F', 'front axle locks at'),
      rear: braking('z_R', 'rear axle locks at'),
      first: braking('z', 'first lock at'),
      efficiency: share('e', 'part of the grip used'),
    },
    takes: { grip: { ...ratio('μ', 'grip'), holds: [0.05, 1.3] }, front: frontPart, ...stance },
    text: [
      'χ = h / L',
      'z_F = { μ · (1 − ψ) / (β − μ · χ) if β > μ · χ; ∞ otherwise }',
      'z_R = μ · ψ / (1 − β + μ · χ)',
      'z = min(z_F, z_R)',
      'e = z / μ',
    ].join('\n'),
    source: { work: 'gillespie', place: 'ch. 3, braking efficiency', mark: 'from memory' },
    leavesOut: 'Braking of motors and a valve before the rear axle; both wheels of an axle are taken to have one grip.',
    proof: {
      examples: [
        ...(
          [
            [0.2, 0.157, 0.2897],
            [0.3, 0.2434, 0.4068],
            [0.5, 0.4351, 0.6015],
            [0.8, 0.7808, 0.8229],
          ] as const
        ).map(([grip, front, rear]) => ({
          takes: at(grip),
          gives: { front, rear, first: front },
          within: 0.00005,
          source: car,
        })),
        { takes: at(0.2), gives: { efficiency: 0.785 }, within: 0.0005, source: car },
        { takes: at(0.8), gives: { efficiency: 0.976 }, within: 0.0005, source: car },
      ],
    },
  },
  ({ grip, front, rearShare, height, wheelbase }) => {
    const moved = (grip * height) / wheelbase
    const atFront = front > moved ? (grip * (1 - rearShare)) / (front - moved) : Number.POSITIVE_INFINITY
    const atRear = (grip * rearShare) / (1 - front + moved),
      first = Math.min(atFront, atRear)
    return { front: atFront, rear: atRear, first, efficiency: first / grip }
  },
)
