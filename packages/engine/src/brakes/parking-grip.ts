import { formula } from '../working/formula.ts'
import { HANDBOOK, hand, ratio, slope, stance } from './symbols.ts'

/** Steepest hill on which a braked axle still has the grip to hold, nose down and nose up. */
export const parkingGrip = formula(
  {
    id: 'parking-grip',
    label: 'Steepest hill by grip of the parked axle',
    gives: {
      rearDown: slope('p_1', 'rear axle braked, nose down'),
      rearUp: slope('p_2', 'rear axle braked, nose up'),
      frontDown: slope('p_3', 'front axle braked, nose down'),
      frontUp: slope('p_4', 'front axle braked, nose up'),
    },
    takes: { grip: { ...ratio('μ', 'grip'), holds: [0.05, 1.3] }, ...stance },
    text: [
      'χ = h / L',
      'p_1 = μ · ψ / (1 + μ · χ)',
      'p_2 = μ · ψ / (1 − μ · χ)',
      'p_3 = μ · (1 − ψ) / (1 − μ · χ)',
      'p_4 = μ · (1 − ψ) / (1 + μ · χ)',
    ].join('\n'),
    source: { work: 'statics', place: 'moments on a parked car' },
    leavesOut: 'A trailer, and one wheel on ice.',
    proof: {
      examples: [
        {
          takes: { grip: 0.6, rearShare: 0.5, height: 0.22, wheelbase: 1 },
          gives: { rearDown: 0.265, rearUp: 0.346 },
          within: 0.0005,
          source: hand('half the mass on the rear axle, h/L 0.22, grip 0.6'),
        },
      ],
    },
  },
  ({ grip, rearShare, height, wheelbase }) => {
    const moved = (grip * height) / wheelbase
    return {
      rearDown: (grip * rearShare) / (1 + moved),
      rearUp: (grip * rearShare) / (1 - moved),
      frontDown: (grip * (1 - rearShare)) / (1 - moved),
      frontUp: (grip * (1 - rearShare)) / (1 + moved),
    }
  },
)

/** Trailer over car above which the smaller slope asked of the train takes more than the greater slope asked of the car. */
export const trailerGoverns = formula(
  {
    id: 'trailer-governs',
    label: 'Trailer from which the train governs the parking brake',
    gives: ratio('q', 'trailer over laden car'),
    takes: { car: slope('p_1', 'slope the car must hold on'), train: slope('p_2', 'slope the train must hold on') },
    text: 'q = sin(atan(p_1)) / sin(atan(p_2)) − 1',
    source: { work: 'statics', place: 'weight down a slope' },
    leavesOut: HANDBOOK,
    proof: {
      examples: [{ takes: { car: 0.2, train: 0.12 }, gives: 0.646, within: 0.0005, source: hand('20 % for the car, 12 % for the train') }],
    },
  },
  ({ car, train }) => Math.sin(Math.atan(car)) / Math.sin(Math.atan(train)) - 1,
)
