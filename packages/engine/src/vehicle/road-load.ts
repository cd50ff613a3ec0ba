import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { GRAVITY } from './gravity.ts'
import { PER_KELVIN, TWENTY } from './road-load-reference.ts'

const GILLESPIE = { work: 'gillespie', place: 'ch. 4, road loads', mark: 'from memory' } as const
const GTR = { work: 'un-gtr-15', place: 'Annex 4, 4.5: correction to reference conditions', mark: 'from memory' } as const
const RESISTANCE = (symbol: string, label: string) => ({ symbol, unit: '1', label, shows: 'ratio' }) as const
const MASS = (symbol: string, label: string) => ({ symbol, unit: 'kg', label }) as const
const TEMPERATURE = { symbol: 'T', unit: 'K', label: 'air temperature', shows: 'temperature', holds: [253.15, 313.15] } as const
const SURFACE = { symbol: 'k', unit: '1', label: 'surface, against dry asphalt', shows: 'ratio' } as const

/** Rolling resistance on the road and at the temperature of the day, from its value on dry asphalt at 20 °C. Cold tyres roll harder. */
export const rollingOnTheDay = formula(
  {
    id: 'rolling-on-the-day',
    label: 'Rolling resistance on the day',
    gives: RESISTANCE('c_r', 'rolling resistance'),
    takes: { rolling: RESISTANCE('c_20', 'on dry asphalt at 20 °C'), surface: SURFACE, temperature: TEMPERATURE },
    uses: [PER_KELVIN, TWENTY],
    text: 'c_r = c_20 · k / (1 + K_0 · (T − T_20))',
    source: GTR,
    leavesOut: 'Warming of the tyres on the way; speed.',
    proof: { none: 'the correction to 20 °C of the regulation, turned round; see the round trip in the tests' },
  },
  ({ rolling, surface, temperature }) => (rolling * surface) / (1 + PER_KELVIN.value * (temperature - TWENTY.value)),
)

/** What moves when a trailer is on: its mass less the part of it the car already carries at the coupling. */
export const trainMass = formula(
  {
    id: 'train-mass',
    label: 'Mass of car and trailer',
    gives: MASS('m', 'train'),
    takes: {
      car: MASS('m_car', 'car with load and nose load'),
      trailer: MASS('m_t', 'trailer, all of it'),
      nose: MASS('m_S', 'nose load'),
    },
    text: 'm = m_car + m_t − m_S',
    source: { work: 'statics', place: 'the nose load counts once' },
    proof: { none: 'definition' },
  },
  ({ car, trailer, nose }) => car + trailer - nose,
)

/** Constant part of the road load of the car alone. */
export const rollingForce = formula(
  {
    id: 'rolling-force',
    label: 'Rolling resistance force',
    gives: { symbol: 'f_0', unit: 'N' },
    takes: { rolling: RESISTANCE('c_r', 'rolling resistance'), mass: MASS('m', 'mass') },
    uses: [GRAVITY],
    text: 'f_0 = c_r · m · g',
    source: GILLESPIE,
    proof: {
      examples: [
        {
          takes: { rolling: 0.017, mass: 2000 * 0.45359237 },
          gives: 34 * 4.448222,
          within: 0.05,
          source: { work: 'mannering-washburn', place: 'example 2.2: 2000 lb rolling at 34 lb', mark: 'from memory' },
          because: 'pound-force defined by standard gravity',
        },
      ],
    },
  },
  ({ rolling, mass }) => rolling * mass * GRAVITY.value,
)
/** The same with a trailer: its wheels carry its mass less the nose load. */
export const rollingForceWithTrailer = formula(
  {
    id: 'rolling-force-with-trailer',
    label: 'Rolling resistance force, with trailer',
    gives: { symbol: 'f_0', unit: 'N' },
    takes: {
      alone: { symbol: 'f_car', unit: 'N', label: 'car alone' },
      rolling: RESISTANCE('c_t', 'rolling resistance of the trailer'),
      trailer: MASS('m_t', 'trailer'),
      nose: MASS('m_S', 'nose load'),
    },
    uses: [GRAVITY],
    text: 'f_0 = f_car + c_t · (m_t − m_S) · g',
    source: { work: 'statics', place: 'sum of forces' },
    proof: { none: 'sum of two rolling resistances' },
  },
  ({ alone, rolling, trailer, nose }) => alone + rolling * (trailer - nose) * GRAVITY.value,
)

/** Air drag per speed squared. */
export const airDrag = formula(
  {
    id: 'air-drag',
    label: 'Air drag per speed squared',
    gives: { symbol: 'f_2', unit: 'N·s²/m²' },
    takes: {
      density: { symbol: 'ρ', unit: 'kg/m³', label: 'air density' },
      areas: { symbol: 'A_d', unit: 'm²', label: 'drag areas (coefficient times frontal area)', many: true },
    },
    text: 'f_2 = ½ · ρ · Σ A_d',
    source: GILLESPIE,
    proof: {
      examples: [
        {
          takes: { density: 0.002045 * 515.3788, areas: [0.4 * 20 * 0.09290304] },
          gives: (86.22 * 4.448222) / (70 * 0.44704) ** 2,
          within: 0.0001,
          source: { work: 'mannering-washburn', place: 'example 2.2: 70 mph, air drag about 86 lb', mark: 'from memory' },
          because: 'recomputed: 86.22 lb',
        },
      ],
    },
  },
  ({ density, areas }) => 0.5 * density * areas.reduce((sum, a) => sum + a, 0),
)

/** Constant part of the road load of the laden car on the day, from the coefficient of a coast-down. */
export const constantPartOnTheDay = formula(
  {
    id: 'constant-part-on-the-day',
    label: 'Constant part of road load, from coast-down',
    gives: { symbol: 'f_0', unit: 'N' },
    takes: {
      f0: { symbol: 'f_0c', unit: 'N', label: 'coefficient of the coast-down' },
      mass: MASS('m', 'mass now'),
      tested: MASS('m_c', 'mass of the coast-down'),
      surface: SURFACE,
      temperature: TEMPERATURE,
      stated: { symbol: 'T_c', unit: 'K', label: 'temperature the coefficient holds at', shows: 'temperature', holds: [253.15, 313.15] },
    },
    uses: [PER_KELVIN, TWENTY],
    text: 'f_0 = f_0c · m / m_c · k · (1 + K_0 · (T_c − T_20)) / (1 + K_0 · (T − T_20))',
    source: GTR,
    proof: { none: 'the correction to reference conditions of the regulation, turned round; see the round trip in the tests' },
  },
  ({ f0, mass, tested, surface, temperature, stated }) =>
    (((f0 * mass) / tested) * surface * (1 + PER_KELVIN.value * (stated - TWENTY.value))) /
    (1 + PER_KELVIN.value * (temperature - TWENTY.value)),
)
/** Part rising with speed, on the day. */
export const linearPartOnTheDay = formula(
  {
    id: 'linear-part-on-the-day',
    label: 'Part of road load rising with speed, from coast-down',
    gives: { symbol: 'f_1', unit: 'N·s/m' },
    takes: {
      f1: { symbol: 'f_1c', unit: 'N·s/m', label: 'coefficient of the coast-down' },
      temperature: TEMPERATURE,
      stated: { symbol: 'T_c', unit: 'K', label: 'temperature the coefficient holds at', shows: 'temperature', holds: [253.15, 313.15] },
    },
    uses: [PER_KELVIN, TWENTY],
    text: 'f_1 = f_1c · (1 + K_0 · (T_c − T_20)) / (1 + K_0 · (T − T_20))',
    source: GTR,
    proof: { none: 'as the constant part' },
  },
  ({ f1, temperature, stated }) =>
    (f1 * (1 + PER_KELVIN.value * (stated - TWENTY.value))) / (1 + PER_KELVIN.value * (temperature - TWENTY.value)),
)
/** Part rising with speed squared, in today's air. */
export const squaredPartOnTheDay = formula(
  {
    id: 'squared-part-on-the-day',
    label: 'Part of road load rising with speed squared, from coast-down',
    gives: { symbol: 'f_2', unit: 'N·s²/m²' },
    takes: {
      f2: { symbol: 'f_2c', unit: 'N·s²/m²', label: 'coefficient of the coast-down' },
      density: { symbol: 'ρ', unit: 'kg/m³', label: 'air density now' },
      stated: { symbol: 'ρ_c', unit: 'kg/m³', label: 'air density the coefficient holds at' },
      extra: { symbol: 'A_t', unit: 'm²', label: 'drag area added (trailer)', many: true },
    },
    text: 'f_2 = f_2c · ρ / ρ_c + ½ · ρ · Σ A_t',
    source: GTR,
    proof: { none: 'drag goes with density: see air drag' },
  },
  ({ f2, density, stated, extra }) => (f2 * density) / stated + 0.5 * density * extra.reduce((sum, a) => sum + a, 0),
)

/** Force that holds a car back on the level: F = f0 + f1·v + f2·v·|v| in still air. */
export const roadLoad = formula(
  {
    id: 'road-load',
    label: 'Road load on the level',
    gives: { symbol: 'F', unit: 'N' },
    takes: {
      f0: { symbol: 'f_0', unit: 'N', label: 'constant part' },
      f1: { symbol: 'f_1', unit: 'N·s/m', label: 'part rising with speed' },
      f2: { symbol: 'f_2', unit: 'N·s²/m²', label: 'part rising with speed squared' },
      speed: { symbol: 'v', unit: 'm/s', label: 'speed' },
      headWind: { symbol: 'v_w', unit: 'm/s', label: 'head wind', holds: [-20, 20] },
    },
    text: 'F = f_0 + f_1 · v + f_2 · (v + v_w) · |v + v_w|',
    source: GILLESPIE,
    leavesOut: 'Side wind, slope. A tail wind faster than the car pushes.',
    proof: {
      examples: [
        {
          takes: { f0: 115.16, f1: 3.4319, f2: 0.43293, speed: 50 * 0.44704, headWind: 0 },
          gives: (12.2 * 745.69987) / (50 * 0.44704),
          within: (0.05 * 745.69987) / (50 * 0.44704),
          source: { work: 'epa-2022', place: 'road-load power 12.2 hp at 50 mph, printed to a tenth' },
        },
      ],
    },
  },
  ({ f0, f1, f2, speed, headWind }) => f0 + f1 * speed + f2 * (speed + headWind) * Math.abs(speed + headWind),
)

/** Power at the wheels that a force takes at a speed. */
export const roadPower = formula(
  {
    id: 'road-power',
    label: 'Power at the wheels',
    gives: { symbol: 'P', unit: 'W', shows: 'power' },
    takes: { force: { symbol: 'F', unit: 'N', label: 'force' }, speed: { symbol: 'v', unit: 'm/s', label: 'speed', shows: 'speed' } },
    text: 'P = F · v',
    source: { work: 'statics', place: 'power' },
    proof: { none: 'definition' },
  },
  ({ force, speed }) => force * speed,
)

/** How far one of two accounts of the same lies from the other. */
export const relativeDifference = formula(
  {
    id: 'relative-difference',
    label: 'Difference',
    gives: { symbol: 'ε', unit: '1', shows: 'share' },
    takes: { one: { symbol: 'F_1', unit: 'N', label: 'one' }, other: { symbol: 'F_2', unit: 'N', label: 'the other' } },
    text: 'ε = F_1 / F_2 − 1',
    source: { work: 'definition', place: 'relative difference' },
    proof: { none: 'definition' },
  },
  ({ one, other }) => one / other - 1,
)

/** Rolling resistance of the whole train over its weight: what a slope takes with it. */
export const rollingShare = formula(
  {
    id: 'rolling-share',
    label: 'Rolling resistance over weight',
    gives: RESISTANCE('c_r', 'rolling resistance'),
    takes: { f0: { symbol: 'f_0', unit: 'N', label: 'constant part of road load' }, mass: MASS('m', 'mass') },
    uses: [GRAVITY],
    text: 'c_r = f_0 / (m · g)',
    source: { work: 'definition', place: 'share of weight' },
    proof: { none: 'definition' },
  },
  ({ f0, mass }) => f0 / (mass * GRAVITY.value),
)

/** Inertia of the four wheels of a car. */
export const wheelsInertia = formula(
  {
    id: 'wheels-inertia',
    label: 'Inertia of all wheels',
    gives: { symbol: 'J_W', unit: 'kg·m²' },
    takes: { one: { symbol: 'J_w', unit: 'kg·m²', label: 'one wheel with tyre and disc' } },
    text: 'J_W = 4 · J_w',
    source: { work: 'definition', place: 'four wheels' },
    proof: { none: 'definition' },
  },
  ({ one }) => 4 * one,
)

/** Where a road load has no part of its kind: no linear part in drag and rolling, no factor on dry asphalt. */
export const NO_LINEAR_PART = standard('no-linear-part', 'No part of road load rising with speed', 'f_1', 0, 'N·s/m', {
  work: 'definition',
  place: 'drag area and rolling resistance have none',
})
export const DRY_ASPHALT = standard('dry-asphalt', 'Rolling resistance on dry asphalt against itself', 'k', 1, '1', {
  work: 'definition',
  place: 'reference surface',
})
