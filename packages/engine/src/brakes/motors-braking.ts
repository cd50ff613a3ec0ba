import { GRAVITY } from '../physics/gravity.ts'
import { formula } from '../working/formula.ts'
import { braking, deceleration, energy, force, hand, mass, power, share, slope, speed, time } from './symbols.ts'

const eachForce = { ...force('F_i', 'braking force of each motor at the wheels'), many: true } as const

/** What all motors brake with at their strongest, over weight and as deceleration on the level. */
export const motorsBraking = formula(
  {
    id: 'motors-braking',
    label: 'Braking by the motors',
    gives: {
      braking: braking('z_m', 'braking by motors, over weight'),
      deceleration: deceleration('a', 'deceleration by motors on the level'),
    },
    takes: { each: eachForce, mass: mass('m', 'mass') },
    uses: [GRAVITY],
    text: 'a = Σ F_i / m\nz_m = a / g',
    source: { work: 'statics', place: 'force over mass' },
    leavesOut: 'Drag, slope, what turns, and speeds at which power limits the torque.',
    proof: {
      examples: [
        {
          takes: { each: [3752], mass: 1252 },
          gives: { deceleration: 3 },
          within: 0.005,
          source: hand('120 N·m at 9 to 1 under 1252 kg'),
        },
      ],
    },
  },
  ({ each, mass }) => {
    let sum = 0
    for (const f of each) sum += f
    return { braking: sum / mass / GRAVITY.value, deceleration: sum / mass }
  },
)
/** Share of it at the front wheels. Motors that brake with nothing have none. */
export const motorsFrontShare = formula(
  {
    id: 'motors-front-share',
    label: 'Share of the motors’ braking at the front',
    gives: share('s', 'share at the front'),
    takes: {
      front: { ...force('F_F', 'each motor on the front axle'), many: true },
      rear: { ...force('F_R', 'each motor on the rear axle'), many: true },
    },
    text: 'a = Σ F_F\nb = Σ F_R\ns = { 0 if a + b ≤ 0; a / (a + b) otherwise }',
    source: { work: 'definition', place: 'share' },
    leavesOut: 'A motor that drives both axles counts at the rear, where it does more harm.',
    proof: { none: 'definition' },
  },
  ({ front, rear }) => {
    const a = front.reduce((x, y) => x + y, 0),
      b = rear.reduce((x, y) => x + y, 0)
    return a + b <= 0 ? 0 : a / (a + b)
  },
)

/** Power a car must brake with to hold its speed down a hill, by its own road load. */
export const descentByRoadLoad = formula(
  {
    id: 'descent-by-road-load',
    label: 'Braking power down the hill',
    gives: { power: power('P', 'braking power'), energy: energy('E', 'over the whole hill'), time: time('t', 'time down the hill') },
    takes: {
      mass: mass('m', 'mass'),
      speed: speed('v', 'speed held'),
      slope: slope('p', 'slope'),
      length: { symbol: 'ℓ', unit: 'm', label: 'length of the hill', shows: 'distance' },
      f0: force('f_0', 'constant part of road load'),
      f1: { symbol: 'f_1', unit: 'N·s/m', label: 'part of road load rising with speed' },
      f2: { symbol: 'f_2', unit: 'N·s²/m²', label: 'part of road load rising with its square' },
    },
    uses: [GRAVITY],
    text: 'P = max(0, v · (m · g · sin(atan(p)) − f_0 − f_1 · v − f_2 · v²))\nt = ℓ / v\nE = P · t',
    source: { work: 'statics', place: 'weight down a slope less the road load' },
    leavesOut: 'Wind, bends; the road load is that of the level.',
    proof: {
      examples: [
        {
          takes: { mass: 1500, speed: 50 / 3.6, slope: 0.1, length: 6000, f0: 0.011 * 1500 * 9.80665, f1: 0, f2: 0.5 * 1.2 * 0.62 },
          gives: { power: 17.1e3 },
          within: 20,
          source: hand('1500 kg down 10 % for 6 km at 50 km/h'),
          because: 'the case counts rolling resistance on the slope, half a per cent less',
        },
      ],
    },
  },
  ({ mass, speed, slope, length, f0, f1, f2 }) => {
    const power = Math.max(0, speed * (mass * GRAVITY.value * Math.sin(Math.atan(slope)) - f0 - f1 * speed - f2 * speed ** 2))
    return { power, time: length / speed, energy: (power * length) / speed }
  },
)
/** What of it the motors take: no more than is asked for, than their force gives at that speed, than the battery may take. */
export const motorsOnDescent = formula(
  {
    id: 'motors-on-descent',
    label: 'Taken by the motors down the hill',
    gives: power('P_m', 'taken by the motors'),
    takes: {
      asked: power('P', 'braking power'),
      each: eachForce,
      speed: speed('v', 'speed held'),
      battery: power('P_B', 'recovery at the battery at most'),
    },
    text: 'P_m = max(0, min(P, min(v · Σ F_i, P_B)))',
    source: { work: 'definition', place: 'the least of three, and never less than nothing' },
    leavesOut:
      'Losses on the way to the battery, which brake as well; a battery that fills up, or is full or cold at the top: then nothing.',
    proof: { none: 'definition' },
  },
  ({ asked, each, speed, battery }) => Math.max(0, Math.min(asked, speed * each.reduce((a, b) => a + b, 0), battery)),
)
/** Greatest rotor temperature: the air and what it rises by. */
export const warmed = formula(
  {
    id: 'warmed-rotor',
    label: 'Rotors at the foot of the hill',
    gives: { symbol: 'θ', unit: 'K', label: 'rotors', shows: 'temperature' },
    takes: {
      around: { symbol: 'θ_0', unit: 'K', label: 'air around', shows: 'temperature' },
      rise: { symbol: 'ΔT', unit: 'K', label: 'rise', shows: 'temperature difference' },
    },
    text: 'θ = θ_0 + ΔT',
    source: { work: 'definition', place: 'sum' },
    proof: { none: 'definition' },
  },
  ({ around, rise }) => around + rise,
)
