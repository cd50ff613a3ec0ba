import { formula } from '../working/formula.ts'
import { force, GRIP, HANDBOOK, length, moment, STEEP } from './symbols.ts'

/** Moment with the kingpin beside the patch: the tyre partly rolls and partly twists. */
export const parkingMomentWithScrub = formula(
  {
    id: 'parking-moment-with-scrub',
    label: 'Parking moment with scrub offset',
    gives: { arm: length('r', 'arm of the friction'), moment: moment('M', 'moment of one wheel') },
    takes: {
      grip: { ...GRIP, symbol: 'μ_e', label: 'grip, as the example calls it effective' },
      load: force('W', 'load on the tyre'),
      offset: length('d', 'offset of the kingpin on the ground'),
      patch: length('b', 'diameter of the contact patch'),
    },
    text: 'r = √(d² + (b / 3)²)\nM = μ_e · W · r',
    source: { work: 'barton-fieldhouse', place: 'Example E2.1' },
    leavesOut: `${STEEP} ${HANDBOOK}`,
    proof: {
      examples: [
        {
          takes: { grip: 0.58, load: 1200 * 9.81, offset: 0.025, patch: 0.25 },
          gives: { arm: 0.087 },
          within: 0.00005,
          source: { work: 'barton-fieldhouse', place: 'Example E2.1: 1200 kg on the wheel, offset 25 mm, patch 250 mm, g 9.81' },
        },
        {
          takes: { grip: 0.58, load: 1200 * 9.81, offset: 0.025, patch: 0.25 },
          gives: { moment: 594 },
          within: 0.5,
          source: { work: 'barton-fieldhouse', place: 'Example E2.1: 1200 kg on the wheel, offset 25 mm, patch 250 mm, g 9.81' },
        },
      ],
    },
  },
  ({ grip, load, offset, patch }) => {
    const arm = Math.sqrt(offset ** 2 + (patch / 3) ** 2)
    return { arm, moment: grip * load * arm }
  },
)

/** The older form of the same, by the width of the tyre, the wheel free to roll. */
export const parkingMomentByWidth = formula(
  {
    id: 'parking-moment-by-width',
    label: 'Parking moment with scrub offset, by tyre width',
    gives: moment('M', 'moment of one wheel'),
    takes: {
      grip: GRIP,
      load: force('W', 'load on the tyre'),
      width: length('b', 'width of the tyre'),
      offset: length('e', 'offset of the kingpin on the ground'),
    },
    text: 'M = μ · W · √(b² / 8 + e²)',
    source: { work: 'taborek', place: 'steering moment at a stand' },
    leavesOut: `${STEEP} ${HANDBOOK}`,
    proof: { none: 'the older form of a relation checked by its newer one' },
  },
  ({ grip, load, width, offset }) => grip * load * Math.sqrt(width ** 2 / 8 + offset ** 2),
)
