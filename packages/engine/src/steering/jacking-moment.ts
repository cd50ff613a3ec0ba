import { formula } from '../working/formula.ts'
import { angle, force, HANDBOOK, hand, length, moment } from './symbols.ts'

const DEGREE = Math.PI / 180
const E2_1 = { work: 'barton-fieldhouse', place: 'Example E2.1: 1200 kg on the wheel, offset 25 mm, kingpin leaning 12°, g 9.81' } as const

/** Moment that lifts the car as a wheel turns about a leaning kingpin. It also brings the wheel back. */
export const jackingMoment = formula(
  {
    id: 'jacking-moment',
    label: 'Jacking moment of a wheel',
    gives: moment('M_J', 'moment of one wheel'),
    takes: {
      load: force('W', 'load on the tyre'),
      offset: length('d', 'offset of the kingpin on the ground'),
      lean: angle('λ', 'lean of the kingpin'),
      lock: angle('δ', 'steer angle of the wheel'),
    },
    text: 'M_J = W · d · sin(λ) · cos(λ) · sin(δ)',
    source: { work: 'barton-fieldhouse', place: 'Example E2.1' },
    leavesOut: `Caster. ${HANDBOOK}`,
    proof: {
      examples: [
        ...(
          [
            [28, 28.1],
            [45, 42.3],
          ] as const
        ).map(([lock, gives]) => ({
          takes: { load: 1200 * 9.81, offset: 0.025, lean: 12 * DEGREE, lock: lock * DEGREE },
          gives,
          within: 0.05,
          source: E2_1,
        })),
        {
          takes: { load: 345 * 9.80665, offset: 0.02, lean: 12 * DEGREE, lock: 35 * DEGREE },
          gives: 15.8 / 2,
          within: 0.05,
          source: hand('front axle of 690 kg, offset 20 mm, 12°, at 35°: 15.8 N·m both'),
        },
      ],
    },
  },
  ({ load, offset, lean, lock }) => load * offset * Math.sin(lean) * Math.cos(lean) * Math.sin(lock),
)
