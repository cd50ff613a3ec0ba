import { formula } from '../working/formula.ts'
import { GRAVITY } from './gravity.ts'

const STATICS = { work: 'statics', place: 'moments' } as const
const HANDBOOK = 'In the handbook only: no study knows the lift yet.'
const mass = (symbol: string, label: string) => ({ symbol, unit: 'kg', label }) as const
const length = (symbol: string, label: string) => ({ symbol, unit: 'm', label, shows: 'length' }) as const
const hand = (place: string) => ({ work: 'statics', place: `worked by hand: ${place}` }) as const
const pads = { front: 0.45, rear: 1.75 } as const
const DEGREE = Math.PI / 180

/**
 * What the pads of a two-post lift carry. Keep the centre of mass in the middle half, each pair at least 25 %, and inside the window the maker of the lift
 * states; set the arms again when a step of the work moves it by more than 5 % of the distance of the pads (common practice).
 */
export const padsOfLift = formula(
  {
    id: 'pads-of-lift',
    label: 'What the pads of a lift carry',
    gives: {
      share: { symbol: 's_F', unit: '1', label: 'share of the front pads', shows: 'share' },
      frontArm: mass('m_F', 'on each front arm'),
      rearArm: mass('m_R', 'on each rear arm'),
    },
    takes: {
      mass: mass('m', 'car as it hangs'),
      centre: length('x_g', 'its centre of mass, behind the front axle'),
      front: length('x_f', 'front pads, behind the front axle'),
      rear: length('x_r', 'rear pads, behind the front axle'),
    },
    text: 's_F = (x_r − x_g) / (x_r − x_f)\nm_F = s_F · m / 2\nm_R = (1 − s_F) · m / 2',
    source: STATICS,
    leavesOut:
      'A car heavier on one side: the same sum across the car tells left and right. Reckon the mass and its centre again before every lift.',
    proof: {
      examples: [
        { takes: { mass: 1100, centre: 1.0691, ...pads }, gives: { share: 0.524 }, within: 0.0005, source: hand('as weighed') },
        { takes: { mass: 961, centre: 1.2368, ...pads }, gives: { share: 0.395 }, within: 0.0005, source: hand('engine and radiator out') },
        { takes: { mass: 891, centre: 1.1759, ...pads }, gives: { share: 0.442 }, within: 0.0005, source: hand('exhaust and tank out') },
        {
          takes: { mass: 1075, centre: 1.3722, ...pads },
          gives: { share: 0.291 },
          within: 0.0005,
          source: hand('rear battery and charger in first'),
        },
        { takes: { mass: 1252, centre: 1.1743, ...pads }, gives: { share: 0.443 }, within: 0.0005, source: hand('front units in') },
        {
          takes: { mass: 1075, centre: 1.3722, front: 0.7, rear: 1.95 },
          gives: { share: 0.462 },
          within: 0.0005,
          source: hand('rear battery in first, pads moved to 0.70 and 1.95 m'),
        },
      ],
    },
  },
  ({ mass, centre, front, rear }) => {
    const share = (rear - centre) / (rear - front)
    return { share, frontArm: (share * mass) / 2, rearArm: ((1 - share) * mass) / 2 }
  },
)

/** Pull, at a height over the pads, that starts to lift the car off one pair of them. */
export const pullThatTips = formula(
  {
    id: 'pull-that-tips',
    label: 'Pull that tips the car on the lift',
    gives: {
      pull: { symbol: 'F', unit: 'N', label: 'pull that unloads one pair of pads' },
      moment: { symbol: 'M', unit: 'N·m', label: 'moment to tipping' },
    },
    takes: {
      mass: mass('m', 'car as it hangs'),
      centre: length('x_g', 'its centre of mass, behind the front axle'),
      front: length('x_f', 'front pads, behind the front axle'),
      rear: length('x_r', 'rear pads, behind the front axle'),
      height: length('h', 'pull acts above the pads'),
    },
    uses: [GRAVITY],
    text: 'M = m · g · min(x_g − x_f, x_r − x_g)\nF = M / h',
    source: STATICS,
    leavesOut: `A stuck bolt takes 500 to 1000 N of pull (common practice): several times as much must be left. Arms that slide, pads that slip. ${HANDBOOK}`,
    proof: {
      examples: [
        {
          takes: { mass: 1075, centre: 1.3722, ...pads, height: 1.2 },
          gives: { moment: 3983, pull: 3319 },
          within: 0.7,
          source: hand('rear battery in first, pull at 1.2 m'),
        },
      ],
    },
  },
  ({ mass, centre, front, rear, height }) => {
    const moment = mass * GRAVITY.value * Math.min(centre - front, rear - centre)
    return { pull: moment / height, moment }
  },
)

/** Pull in each leg of a sling. */
export const slingLeg = formula(
  {
    id: 'sling-leg',
    label: 'Pull in each leg of a sling',
    gives: { symbol: 'F', unit: 'N', label: 'pull in each leg' },
    takes: {
      mass: mass('m', 'part that hangs'),
      legs: { symbol: 'n', unit: '1', label: 'legs that carry', shows: 'count' },
      angle: { symbol: 'β', unit: 'rad', label: 'leg to the vertical', shows: 'angle', holds: [0, Math.PI / 4] },
    },
    uses: [GRAVITY],
    text: 'F = m · g / (n · cos(β))',
    source: STATICS,
    leavesOut: `Legs of unlike length: of four, count on two. Beyond 45 degrees a sling is not loaded. ${HANDBOOK}`,
    proof: {
      examples: [
        {
          takes: { mass: 170, legs: 2, angle: 45 * DEGREE },
          gives: 1178.8,
          within: 0.05,
          source: hand('170 kg on two legs at 45 degrees'),
        },
        { takes: { mass: 170, legs: 2, angle: 0 }, gives: 833.6, within: 0.05, source: hand('170 kg on two upright legs') },
      ],
    },
  },
  ({ mass, legs, angle }) => (mass * GRAVITY.value) / (legs * Math.cos(angle)),
)
