import { formula } from '../working/formula.ts'
import { energy, HANDBOOK, mass, rise, share, specificHeat, speed, workedBy } from './symbols.ts'

const hand = workedBy('heat')
const HEAT = { work: 'heat', place: 'all of the work goes into the rotors' } as const
const car = {
  mass: mass('m', 'mass of the car'),
  from: speed('v_1', 'speed before'),
  to: speed('v_2', 'speed after'),
  part: share('β', 'share of the brake force on this axle'),
  heat: specificHeat('c', 'specific heat of the rotors, cast iron 460 to 540'),
} as const
const LEFT_OUT = `Cooling, braking by motors, heat into pads and hubs. At most 230 K in one stop from top speed (common practice).`
const stop = (mass: number) => ({ mass, from: 100 / 3.6, to: 0, part: 0.72, heat: 500, rotor: 5 })

/** How much one stop warms the rotors of an axle. A battery that is full or cold takes nothing: count no braking by motors. */
export const rotorHeating = formula(
  {
    id: 'rotor-heating',
    label: 'Rotors warm in one stop',
    gives: { energy: energy('E', 'taken up by all brakes'), rise: rise('ΔT', 'rotors of the axle warm by') },
    takes: { ...car, rotor: mass('m_r', 'one rotor') },
    text: 'E = ½ · m · (v_1² − v_2²)\nΔT = β · E / (2 · m_r · c)',
    source: HEAT,
    leavesOut: LEFT_OUT,
    proof: {
      examples: [
        { takes: stop(1400), gives: { energy: 540.1e3 }, within: 50, source: hand('1400 kg, 100 km/h to rest') },
        { takes: stop(1400), gives: { rise: 77.8 }, within: 0.05, source: hand('1400 kg, front rotors of 5.0 kg') },
        { takes: stop(1600), gives: { rise: 88.9 }, within: 0.05, source: hand('the car 200 kg heavier') },
        {
          takes: { ...stop(1500), from: 120 / 3.6, to: 60 / 3.6, rotor: 6.5 },
          gives: { rise: 69.2 },
          within: 0.05,
          source: hand('1500 kg, 120 to 60 km/h, front rotors of 6.5 kg'),
        },
      ],
    },
  },
  ({ mass, from, to, part, heat, rotor }) => {
    const energy = 0.5 * mass * (from ** 2 - to ** 2)
    return { energy, rise: (part * energy) / (2 * rotor * heat) }
  },
)

/** Least mass of one rotor that keeps a stop to a rise. */
export const rotorMass = formula(
  {
    id: 'rotor-mass',
    label: 'Least mass of a brake rotor',
    gives: mass('m_r', 'one rotor at least'),
    takes: { ...car, rise: rise('ΔT', 'rise accepted') },
    text: 'm_r = β · ½ · m · (v_1² − v_2²) / (2 · c · ΔT)',
    source: HEAT,
    leavesOut: `${LEFT_OUT} ${HANDBOOK}`,
    proof: {
      examples: [
        {
          takes: { mass: 1400, from: 100 / 3.6, to: 0, part: 0.72, heat: 500, rise: 77.8 },
          gives: 5,
          within: 0.005,
          source: hand('1400 kg from 100 km/h, 77.8 K'),
        },
      ],
    },
  },
  ({ mass, from, to, part, heat, rise }) => (part * 0.5 * mass * (from ** 2 - to ** 2)) / (2 * heat * rise),
)
