import { GRAVITY } from '../physics/gravity.ts'
import { formula } from '../working/formula.ts'
import { braking, distance, hand, speed, time } from './symbols.ts'

/** Distance of a stop at one braking, from the moment the pedal moves. */
export const stopByBraking = formula(
  {
    id: 'stop-by-braking',
    label: 'Stopping distance',
    gives: distance('s', 'stopping distance'),
    takes: {
      speed: speed('v', 'speed as the brakes are applied'),
      braking: braking(),
      lag: time('t_0', 'time lost before the brakes hold'),
    },
    uses: [GRAVITY],
    text: 's = t_0 · v + v² / (2 · g · z)',
    source: { work: 'statics', place: 'steady deceleration' },
    leavesOut: 'Drag, which shortens it, and the driver, who takes about a second before the pedal moves.',
    proof: {
      examples: [
        {
          takes: { speed: 100 / 3.6, braking: 6.43 / 9.80665, lag: 0.36 },
          gives: 70,
          within: 0.05,
          source: hand('6.43 m/s² from 100 km/h, 0.36 s lost: the 70.0 m the approval of a car accepts'),
        },
      ],
    },
  },
  ({ speed, braking, lag }) => lag * speed + speed ** 2 / (2 * GRAVITY.value * braking),
)
