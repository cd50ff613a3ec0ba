import { GRAVITY } from '../physics/gravity.ts'
import { formula } from '../working/formula.ts'
import { braking, force, hand, mass, share } from './symbols.ts'

const TEST = { work: 'uk-mot', place: '1.2.1 and 1.2.2, roller brake tester' } as const
const wheels = {
  frontLeft: force('F_1', 'front left'),
  frontRight: force('F_2', 'front right'),
  rearLeft: force('F_3', 'rear left'),
  rearRight: force('F_4', 'rear right'),
} as const
const print = { frontLeft: 2350, frontRight: 2200, rearLeft: 1100, rearRight: 980, mass: 1180 }
const place = '2.35, 2.20, 1.10 and 0.98 kN, 1180 kg'

/** What a print of a roller tester says: braking over weight, unevenness of each axle, share at the front. */
export const rollerPrint = formula(
  {
    id: 'roller-print',
    label: 'Roller brake tester',
    gives: {
      efficiency: braking('z', 'brake efficiency'),
      front: share('u_F', 'unevenness of the front axle'),
      rear: share('u_R', 'unevenness of the rear axle'),
      split: share('β', 'share of the brake force at the front'),
    },
    takes: { ...wheels, mass: mass('m', 'mass tested with') },
    uses: [GRAVITY],
    text: [
      'z = (F_1 + F_2 + F_3 + F_4) / (m · g)',
      'u_F = |F_1 − F_2| / max(F_1, F_2)',
      'u_R = |F_3 − F_4| / max(F_3, F_4)',
      'β = (F_1 + F_2) / (F_1 + F_2 + F_3 + F_4)',
    ].join('\n'),
    source: TEST,
    leavesOut:
      'Wheels that locked: they show the grip of the rollers, 0.7 to 0.8 of an unladen axle (common practice). The UK test asks for 0.58 (0.50 before September 2010), parking 0.16, and fails an axle with more than 30 % unevenness; it does not judge one whose greater force is 40 kgf or less.',
    proof: {
      examples: [
        { takes: print, gives: { efficiency: 0.573 }, within: 0.0005, source: hand(`${place}: passes 50 %, fails 58 %`) },
        { takes: print, gives: { front: 0.064, rear: 0.109, split: 0.686 }, within: 0.0005, source: hand(place) },
        { takes: { ...print, mass: 1385 }, gives: { efficiency: 0.488 }, within: 0.0005, source: hand('the same forces at 1385 kg') },
      ],
    },
  },
  ({ frontLeft, frontRight, rearLeft, rearRight, mass }) => {
    const sum = frontLeft + frontRight + rearLeft + rearRight
    return {
      efficiency: sum / (mass * GRAVITY.value),
      front: Math.abs(frontLeft - frontRight) / Math.max(frontLeft, frontRight),
      rear: Math.abs(rearLeft - rearRight) / Math.max(rearLeft, rearRight),
      split: (frontLeft + frontRight) / sum,
    }
  },
)

/** Brake efficiency of the same brakes, at the same pedal force, under another mass; and the force an efficiency takes. */
export const efficiencyAtMass = formula(
  {
    id: 'brake-efficiency-at-mass',
    label: 'Brake efficiency at another mass',
    gives: { efficiency: braking('z_2', 'brake efficiency now'), force: force('F', 'sum of brake forces for the efficiency asked for') },
    takes: {
      before: braking('z_1', 'brake efficiency before'),
      massBefore: mass('m_1', 'mass tested with'),
      mass: mass('m_2', 'mass now'),
      asked: braking('z_a', 'brake efficiency asked for'),
    },
    uses: [GRAVITY],
    text: 'z_2 = z_1 · m_1 / m_2\nF = z_a · m_2 · g',
    source: { work: 'statics', place: 'one brake force, two masses' },
    leavesOut: 'Holds below the knee of the booster.',
    proof: {
      examples: [
        {
          takes: { before: 0.573, massBefore: 1180, mass: 1385, asked: 0.58 },
          gives: { efficiency: 0.488 },
          within: 0.0005,
          source: hand('57.3 % at 1180 kg, then 1385 kg'),
        },
        {
          takes: { before: 0.573, massBefore: 1180, mass: 1385, asked: 0.58 },
          gives: { force: 7878 },
          within: 0.5,
          source: hand('58 % of 1385 kg'),
        },
      ],
    },
  },
  ({ before, massBefore, mass, asked }) => ({ efficiency: (before * massBefore) / mass, force: asked * mass * GRAVITY.value }),
)
