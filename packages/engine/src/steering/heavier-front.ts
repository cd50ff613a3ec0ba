import { formula } from '../working/formula.ts'
import { force, hand, pressure, ratio } from './symbols.ts'

/** Parking effort after a change of front load or tyre pressure, over that before. */
export const parkingEffortChange = formula(
  {
    id: 'parking-effort-change',
    label: 'Parking effort after a change',
    gives: ratio('q', 'effort now over effort before'),
    takes: {
      loadBefore: force('W_1', 'load on the front axle before'),
      load: force('W_2', 'load on the front axle now'),
      pressureBefore: pressure('p_1', 'tyre pressure before'),
      pressure: pressure('p_2', 'tyre pressure now'),
    },
    text: 'q = (W_2 / W_1)^1.5 · √(p_1 / p_2)',
    source: { work: 'statics', place: 'parking moment in proportion' },
    leavesOut: 'Other tyres.',
    proof: {
      examples: [
        {
          takes: { loadBefore: 6000, load: 6600, pressureBefore: 220e3, pressure: 220e3 },
          gives: 1.154,
          within: 0.0005,
          source: hand('10 % more load'),
        },
        {
          takes: { loadBefore: 6000, load: 6000, pressureBefore: 220e3, pressure: 242e3 },
          gives: 0.953,
          within: 0.0005,
          source: hand('10 % more pressure'),
        },
      ],
    },
  },
  ({ loadBefore, load, pressureBefore, pressure }) => (load / loadBefore) ** 1.5 * Math.sqrt(pressureBefore / pressure),
)
