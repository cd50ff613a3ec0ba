import { formula } from '../working/formula.ts'
import { area, deceleration, force, HANDBOOK, hand, length, mass, pressure, ratio, share } from './symbols.ts'

const BAR = 1e5
/** 5312 and 2201 N at 41.34 bar. */
const unassisted = {
  pedal: 500,
  ratio: 4,
  efficiency: 0.8,
  master: 0.0222,
  front: 5312 / (41.336 * BAR),
  rear: 2201 / (41.336 * BAR),
  mass: 1400,
  wanted: 2.44,
}

/** Pressure the foot alone makes in the brake lines. */
export const linePressure = formula(
  {
    id: 'line-pressure',
    label: 'Line pressure without assist',
    gives: pressure('p', 'line pressure'),
    takes: {
      pedal: force('F', 'pedal force'),
      ratio: ratio('i', 'pedal ratio'),
      efficiency: share('η', 'efficiency of pedal and cylinder'),
      master: length('d', 'diameter of the master cylinder'),
    },
    text: 'A = π / 4 · d²\np = F · i · η / A',
    source: { work: 'statics', place: 'lever and piston' },
    leavesOut: HANDBOOK,
    proof: {
      examples: [
        {
          takes: { pedal: 500, ratio: 4, efficiency: 0.8, master: 0.0222 },
          gives: 41.3 * BAR,
          within: 0.05 * BAR,
          source: hand('500 N, 4 to 1, master cylinder 22.2 mm'),
        },
        ...(
          [
            [100, 8.8],
            [200, 17.7],
            [300, 26.5],
            [500, 44.2],
          ] as const
        ).map(([pedal, bar]) => ({
          takes: { pedal, ratio: 3.8, efficiency: 0.9, master: 0.0222 },
          gives: bar * BAR,
          within: 0.05 * BAR,
          source: hand(`${pedal} N, 3.8 to 1, the booster without vacuum`),
        })),
      ],
    },
  },
  ({ pedal, ratio, efficiency, master }) => (pedal * ratio * efficiency) / ((Math.PI / 4) * master ** 2),
)

/** The deceleration the foot alone gives, and the pedal force a deceleration needs. */
export const unassistedBraking = formula(
  {
    id: 'unassisted-braking',
    label: 'Braking without assist',
    gives: { deceleration: deceleration('a', 'deceleration'), pedal: force('F_2', 'pedal force for the deceleration wanted') },
    takes: {
      pedal: force('F', 'pedal force'),
      ratio: ratio('i', 'pedal ratio'),
      efficiency: share('η', 'efficiency of pedal and cylinder'),
      master: length('d', 'diameter of the master cylinder'),
      front: area('k_F', 'brake force over line pressure, front axle (1 N/bar is 0.1 cm²)'),
      rear: area('k_R', 'brake force over line pressure, rear axle'),
      mass: mass('m', 'mass'),
      wanted: deceleration('a_2', 'deceleration wanted'),
    },
    text: 'A = π / 4 · d²\np = F · i · η / A\na = p · (k_F + k_R) / m\nF_2 = F · a_2 / a',
    source: { work: 'statics', place: 'lever, piston, force over pressure' },
    leavesOut: 'Knock-out pressure and a valve before the rear axle.',
    proof: {
      examples: [
        {
          takes: unassisted,
          gives: { deceleration: 5.37 },
          within: 0.005,
          source: hand('500 N on the pedal of a 1400 kg car, brakes of 54 and 34 mm: above the 2.44 asked for'),
        },
        {
          takes: unassisted,
          gives: { pedal: 227 },
          within: 0.5,
          source: hand('the same car: 2.44 m/s² needs 227 N'),
        },
      ],
    },
  },
  ({ pedal, ratio, efficiency, master, front, rear, mass, wanted }) => {
    const pressure = (pedal * ratio * efficiency) / ((Math.PI / 4) * master ** 2),
      deceleration = (pressure * (front + rear)) / mass
    return { deceleration, pedal: (pedal * wanted) / deceleration }
  },
)
