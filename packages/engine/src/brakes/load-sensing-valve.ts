import { formula } from '../working/formula.ts'
import { HANDBOOK, hand, length, mass, pressure } from './symbols.ts'

const BAR = 1e5

/** Knee of a valve that follows the rear suspension. A conversion moves the suspension at kerb; new springs change the rise as well. */
export const loadSensingKnee = formula(
  {
    id: 'load-sensing-knee',
    label: 'Knee of a load-sensing valve',
    gives: pressure('p_k', 'pressure at the knee'),
    takes: {
      base: pressure('p_k0', 'knee with the suspension at its datum'),
      rise: { symbol: 'c', unit: 'Pa/m', label: 'knee more for each metre of travel' },
      travel: length('u', 'travel of the rear suspension, compressed positive'),
    },
    text: 'p_k = p_k0 + c · u',
    source: { work: 'statics', place: 'valve on a spring' },
    leavesOut: `Stops of the linkage. ${HANDBOOK}`,
    proof: {
      examples: [
        {
          takes: { base: 20 * BAR, rise: 500 * BAR, travel: 0.03 },
          gives: 35 * BAR,
          within: 1,
          source: hand('20 bar and 0.5 bar for each mm, 30 mm down'),
        },
      ],
    },
  },
  ({ base, rise, travel }) => base + rise * travel,
)

/** Knee that keeps its measure to the load on the rear axle. Left as it was under a heavier rear, a valve wastes rear grip. */
export const kneeForLoad = formula(
  {
    id: 'knee-for-load',
    label: 'Knee of the valve for another rear axle load',
    gives: pressure('p_2', 'knee now'),
    takes: {
      before: pressure('p_1', 'knee before'),
      loadBefore: mass('m_1', 'mass on the rear axle before'),
      load: mass('m_2', 'mass on the rear axle now'),
    },
    text: 'p_2 = p_1 · m_2 / m_1',
    source: { work: 'statics', place: 'knee in proportion to the rear axle load' },
    leavesOut: `Order of locking and least braking, to be looked at afterwards. ${HANDBOOK}`,
    proof: {
      examples: [
        {
          takes: { before: 30 * BAR, loadBefore: 563.3, load: 752.6 },
          gives: 40.1 * BAR,
          within: 0.05 * BAR,
          source: hand('30 bar, 1200 kg and 46.94 % become 1420 kg and 53 %'),
        },
      ],
    },
  },
  ({ before, loadBefore, load }) => (before * load) / loadBefore,
)
