import { GRAVITY } from '../physics/gravity.ts'
import { formula } from '../working/formula.ts'
import { force, hand, mass, share, slope } from './symbols.ts'

/** Steepest hill a hold at the wheels keeps a car on. */
export const slopeByHold = formula(
  {
    id: 'slope-by-hold',
    label: 'Steepest hill the parking brake holds on',
    gives: slope('p', 'slope held'),
    takes: { hold: force('F', 'hold of all wheels on it'), mass: mass('m', 'what is held, the trailer with it') },
    uses: [GRAVITY],
    text: 'q = max(0, min(0.999, F / (m · g)))\np = q / √(1 − q²)',
    source: { work: 'statics', place: 'weight down a slope' },
    leavesOut: 'Grip of the braked axle, rolling resistance.',
    proof: {
      examples: [{ takes: { hold: 3270, mass: 1700 }, gives: 0.2, within: 0.0005, source: hand('3270 N hold 1700 kg on 20 %') }],
    },
  },
  ({ hold, mass }) => {
    const q = Math.max(0, Math.min(0.999, hold / (mass * GRAVITY.value)))
    return q / Math.sqrt(1 - q * q)
  },
)
/** Hold of both wheels, and the share of the weight it is: what a roller tester prints of the parking brake. */
export const parkingPrint = formula(
  {
    id: 'parking-print',
    label: 'Parking brake on the rollers',
    gives: { hold: force('F', 'both wheels'), efficiency: share('z_h', 'hold over weight') },
    takes: { left: force('F_1', 'left wheel'), right: force('F_2', 'right wheel'), mass: mass('m', 'mass tested with') },
    uses: [GRAVITY],
    text: 'F = F_1 + F_2\nz_h = F / (m · g)',
    source: { work: 'uk-mot', place: '1.4.2, parking brake on the rollers' },
    leavesOut: 'Wheels that locked: they show the grip of the rollers.',
    proof: { none: 'a sum over a weight' },
  },
  ({ left, right, mass }) => ({ hold: left + right, efficiency: (left + right) / (mass * GRAVITY.value) }),
)
/** Pedal force at which a braking is reached, below the knee of the booster: in proportion to what was printed. */
export const pedalForBraking = formula(
  {
    id: 'pedal-for-braking',
    label: 'Pedal force for a braking',
    gives: force('F_p', 'pedal force'),
    takes: {
      printed: force('F_1', 'pedal force at the print'),
      braking: share('z_1', 'brake efficiency then'),
      asked: share('z_a', 'brake efficiency asked for'),
    },
    text: 'F_p = F_1 · z_a / z_1',
    source: { work: 'statics', place: 'in proportion' },
    leavesOut: 'The knee of the booster, above which the foot alone adds.',
    proof: { none: 'in proportion' },
  },
  ({ printed, braking, asked }) => (printed * asked) / braking,
)
