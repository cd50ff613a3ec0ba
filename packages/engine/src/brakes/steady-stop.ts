import { formula } from '../working/formula.ts'
import { deceleration, distance, energy, force, HANDBOOK, mass, power, speed, time } from './symbols.ts'

const LB = 0.45359237,
  LBF = LB * 9.80665,
  FOOT = 0.3048,
  FT_LBF = FOOT * LBF,
  HP = 550 * FT_LBF
/** The book counts with 32.2 ft/s²; mass here is what gives its figures. */
const truck = { mass: (3635 / 32.2) * (LBF / FOOT), force: 2000 * LBF, speed: 88 * FOOT }
const GILLESPIE = {
  work: 'gillespie',
  place: 'ch. 3, example: 3635 lb, 60 mph, steady brake force of 2000 lb',
  mark: 'from memory',
} as const
const is = <G extends object>(gives: G, within: number) => ({ takes: truck, gives, within, source: GILLESPIE })

/** A stop under one steady brake force: distance, time, and what the brakes take up. */
export const steadyStop = formula(
  {
    id: 'steady-stop',
    label: 'Stop under a steady brake force',
    gives: {
      deceleration: deceleration('a', 'deceleration'),
      distance: distance('s', 'distance'),
      time: time('t', 'time'),
      energy: energy('E', 'taken up by the brakes'),
      peak: power('P', 'power as braking begins'),
      mean: power('P_m', 'mean power'),
    },
    takes: { mass: mass('m', 'mass'), force: force('F', 'brake force'), speed: speed('v', 'speed as the brakes are applied') },
    text: 'a = F / m\ns = v² / (2 · a)\nt = v / a\nE = F · s\nP = F · v\nP_m = E / t',
    source: { work: 'gillespie', place: 'ch. 3, constant deceleration', mark: 'from memory' },
    leavesOut: `Reaction, rise of pressure, drag, what turns. ${HANDBOOK}`,
    proof: {
      examples: [
        is({ deceleration: 17.72 * FOOT }, 0.005 * FOOT),
        is({ distance: 218.6 * FOOT }, 0.1 * FOOT),
        is({ time: 4.97 }, 0.005),
        is({ energy: 437100 * FT_LBF }, 100 * FT_LBF),
        is({ peak: 320 * HP }, 0.5 * HP),
        is({ mean: 160 * HP }, 0.5 * HP),
      ],
    },
  },
  ({ mass, force, speed }) => {
    const deceleration = force / mass,
      distance = speed ** 2 / (2 * deceleration),
      time = speed / deceleration
    return { deceleration, distance, time, energy: force * distance, peak: force * speed, mean: (force * distance) / time }
  },
)
