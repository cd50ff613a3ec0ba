import { curve } from '../numerics/curve.ts'
import { grid, gridAt } from '../numerics/grid.ts'
import { minimum } from '../numerics/minimum.ts'
import { formula } from '../working/formula.ts'
import type { Curve, Grid } from '../working/value.ts'
import type { ClassOfMotor } from './class-values.ts'

const one = (symbol: string, label: string) => ({ symbol, unit: '1', label, shows: 'number' }) as const
const torque = (symbol: string, label: string) => ({ symbol, unit: 'N·m', label }) as const
const speed = (symbol: string, label: string) => ({ symbol, unit: 'rad/s', label, shows: 'rotational speed' }) as const
const lossMap = { symbol: 'V', unit: ['rad/s', 'N·m', 'W'], label: 'losses over speed and torque', grid: true } as const
const LARMINIE = {
  work: 'larminie-lowry',
  place: 'eq. 7.23, motor efficiency: 100 kW high-speed induction motor, k_c 0.3, k_i 0.01, k_w 5e-6, C 600',
  mark: 'from memory',
} as const
const BRUSHED = {
  work: 'larminie-lowry',
  place: 'eq. 7.23, motor efficiency: brushed permanent-magnet motor, k_c 1.5, k_i 0.1, k_w 1e-5, C 20',
  mark: 'from memory',
} as const

const coefficients = {
  scale: { symbol: 'P_L', unit: 'W', label: 'copper loss at peak torque and base speed' },
  weakened: one('e', 'growth of copper loss above base speed'),
  constant: one('a_0', 'constant part over copper loss'),
  linear: one('a_1', 'part rising with speed'),
  square: one('a_2', 'part rising with speed squared'),
  cube: one('a_3', 'part rising with speed cubed'),
  field: one('a_f', 'part of field weakening'),
} as const
const larminie = {
  peakTorque: 140,
  baseSpeed: 733,
  scale: 0.3 * 140 ** 2,
  weakened: 0,
  constant: 600 / 5880,
  linear: (0.01 * 733) / 5880,
  square: 0,
  cube: (5e-6 * 733 ** 3) / 5880,
  field: 0,
}
const brushed = {
  peakTorque: 15,
  baseSpeed: 300,
  scale: 1.5 * 15 ** 2,
  weakened: 0,
  constant: 20 / 337.5,
  linear: (0.1 * 300) / 337.5,
  square: 0,
  cube: (1e-5 * 300 ** 3) / 337.5,
  field: 0,
}

/** What motor and inverter turn into heat at a torque and a speed: copper, iron, windage, a constant part, and what weakening the field costs. */
export const motorLoss = formula(
  {
    id: 'motor-loss',
    label: 'Loss of motor and inverter',
    gives: { symbol: 'P_V', unit: 'W', label: 'loss' },
    takes: {
      torque: torque('M', 'torque'),
      speed: speed('ω', 'motor speed'),
      peakTorque: torque('M_max', 'peak torque of the motor'),
      baseSpeed: speed('ω_b', 'base speed'),
      ...coefficients,
    },
    text: 'τ = M / M_max\nν = ω / ω_b\nν_1 = max(1, ν)\nP_V = P_L · (τ² · (1 + e · (ν_1 − 1)) + a_0 + a_1 · ν + a_2 · ν² + a_3 · ν³ + a_f · (1 − 1 / ν_1)²)',
    source: {
      work: 'larminie-lowry',
      place: 'motor efficiency: copper, iron, windage and constant losses; written over peak torque and base speed',
      mark: 'from memory',
    },
    leavesOut: 'Temperature of the winding, battery voltage, switching frequency. Recovering, the loss is taken as the same.',
    proof: {
      examples: [
        { takes: { torque: 60, speed: 400, ...larminie }, gives: 2004, within: 0.5, source: LARMINIE },
        { takes: { torque: 100, speed: 300, ...larminie }, gives: 3738, within: 0.5, source: LARMINIE },
        { takes: { torque: 150, speed: 500, ...larminie }, gives: 7980, within: 0.5, source: LARMINIE },
        { takes: { torque: 40, speed: 1000, ...larminie }, gives: 6090, within: 0.5, source: LARMINIE },
        { takes: { torque: 10, speed: 300, ...brushed }, gives: 470, within: 0.05, source: BRUSHED },
        { takes: { torque: 15, speed: 250, ...brushed }, gives: 538.75, within: 0.05, source: BRUSHED },
      ],
    },
  },
  x => x.scale * shapeAt(x, x.torque / x.peakTorque, x.speed / x.baseSpeed),
)

type Shape = {
  readonly weakened: number
  readonly constant: number
  readonly linear: number
  readonly square: number
  readonly cube: number
  readonly field: number
  readonly spinning: readonly [number, number, number]
}
/**
 * Shapes of loss by kind of motor (common practice): how the parts compare with the copper loss at peak torque and base speed; `spinning` is what of the
 * parts rising with speed, its square and its cube stays when the motor is towed round without current.
 */
export const SHAPES: Readonly<Record<ClassOfMotor, Shape>> = {
  'permanent-magnet': { weakened: 0, constant: 0.004, linear: 0.012, square: 0.018, cube: 0.004, field: 0.04, spinning: [1, 1, 1] },
  induction: { weakened: 0.5, constant: 0.02, linear: 0.01, square: 0.02, cube: 0.006, field: 0, spinning: [0.5, 0, 1] },
  'series-dc': { weakened: 0.3, constant: 0.03, linear: 0.04, square: 0.02, cube: 0.02, field: 0, spinning: [0.5, 0, 1] },
}
const FASTEST = 3

/** Loss over the copper loss at peak torque and base speed, at a share of that torque and of that speed. A map asks for thousands: no object for each. */
function shapeAt({ weakened, constant, linear, square, cube, field }: Omit<Shape, 'spinning'>, t: number, n: number): number {
  const above = Math.max(1, n)
  return t * t * (1 + weakened * (above - 1)) + constant + linear * n + square * n * n + cube * n * n * n + field * (1 - 1 / above) ** 2
}

/** Least loss over power of a shape within its envelope, for a motor of one watt of copper loss, one newton metre and one radian per second. */
function leastShare(shape: Shape): number {
  const share = (n: number, t: number): number => shapeAt(shape, t, n) / (t * n)
  const along = (n: number): number => minimum(t => share(n, t), 0.01, Math.min(1, 1 / n), 1e-6).value
  let best = Number.POSITIVE_INFINITY
  for (let n = 0.2; n < FASTEST; n += 0.1) best = Math.min(best, minimum(along, n, n + 0.1, 1e-6).value)
  return best
}
export const LEAST: Readonly<Record<ClassOfMotor, number>> = {
  'permanent-magnet': leastShare(SHAPES['permanent-magnet']),
  induction: leastShare(SHAPES.induction),
  'series-dc': leastShare(SHAPES['series-dc']),
}

/** Copper loss at peak torque and base speed that gives a class its best efficiency. */
const scaleOf = (kind: ClassOfMotor, efficiency: number, peakTorque: number, baseSpeed: number): number =>
  (peakTorque * baseSpeed * (1 / efficiency - 1)) / LEAST[kind]

export const stepped = (most: number, n: number): Float64Array => Float64Array.from({ length: n }, (_, i) => (most * i) / (n - 1))

/** The loss of a class of motors as a map over speed and torque, from standstill to its top speed and peak torque. */
export function classLosses(kind: ClassOfMotor, efficiency: number, peakTorque: number, baseSpeed: number, topSpeed: number): Grid {
  const x = stepped(topSpeed, 41),
    y = stepped(peakTorque, 51),
    z = new Float64Array(x.length * y.length)
  const shape = SHAPES[kind],
    scale = scaleOf(kind, efficiency, peakTorque, baseSpeed)
  for (let i = 0; i < x.length; i++)
    for (let j = 0; j < y.length; j++)
      z[i * y.length + j] = scale * shapeAt(shape, (y[j] as number) / peakTorque, (x[i] as number) / baseSpeed)
  return grid(x, y, z)
}
/** Torque it takes to turn the motor without current, over its speed. */
export function classDrag(kind: ClassOfMotor, efficiency: number, peakTorque: number, baseSpeed: number, topSpeed: number): Curve {
  const scale = scaleOf(kind, efficiency, peakTorque, baseSpeed),
    {
      linear,
      square,
      cube,
      spinning: [s1, s2, s3],
    } = SHAPES[kind]
  const x = stepped(topSpeed, 21)
  return curve(
    x,
    x.map(w => {
      const n = w / baseSpeed
      return (scale / baseSpeed) * (s1 * linear + s2 * square * n + s3 * cube * n * n)
    }),
  )
}

/** A look-up in the map: the loss at one torque and speed, times the factor of this motor. */
export const lossAt = formula(
  {
    id: 'loss-at',
    label: 'Loss at a torque and a speed',
    gives: { symbol: 'P_V', unit: 'W', label: 'loss' },
    takes: {
      losses: lossMap,
      factor: one('f_V', 'loss factor'),
      speed: speed('ω', 'motor speed'),
      torque: torque('M', 'torque'),
    },
    text: 'P_V = f_V · V(ω, M)',
    source: { work: 'definition', place: 'look-up' },
    proof: { none: 'look-up' },
  },
  ({ losses, factor, speed, torque }) => factor * gridAt(losses, speed, torque),
)
/** How the losses of this motor compare with those of its class. */
export const lossFactor = formula(
  {
    id: 'loss-factor',
    label: 'Loss factor of the motor',
    gives: one('f_V', 'loss factor'),
    takes: {
      own: one('f_L', 'factor on the losses'),
      motor: { symbol: 'η_best', unit: '1', label: 'best efficiency of the motor', shows: 'share' },
      inverter: { symbol: 'η_inv', unit: '1', label: 'efficiency of the inverter', shows: 'share' },
      efficiency: { symbol: 'η_0', unit: '1', label: 'best efficiency of the class', shows: 'share' },
    },
    text: 'f_V = f_L · (1 / (η_best · η_inv) − 1) / (1 / η_0 − 1)',
    source: { work: 'definition', place: 'loss over output is 1/η − 1' },
    proof: { none: 'elementary' },
  },
  ({ own, motor, inverter, efficiency }) => (own * (1 / (motor * inverter) - 1)) / (1 / efficiency - 1),
)
/** What torque adds to the loss at a speed: copper loss, which arises in the winding. */
export const windingHeat = formula(
  {
    id: 'winding-heat',
    label: 'Heat in the winding',
    gives: { symbol: 'Q_w', unit: 'W', label: 'heat in the winding' },
    takes: { losses: lossMap, factor: one('f_V', 'loss factor'), speed: speed('ω', 'motor speed'), torque: torque('M', 'torque') },
    text: 'Q_w = f_V · max(0, V(ω, M) − V(ω, 0 · M))',
    source: {
      work: 'larminie-lowry',
      place: 'copper loss goes with torque squared; iron, windage and constant losses arise without torque',
      mark: 'from memory',
    },
    leavesOut: 'Current that makes or weakens the field without torque; iron that warms the winding beside it.',
    proof: { none: 'look-up' },
  },
  ({ losses, factor, speed, torque }) => heatAt(losses, factor, speed, torque),
)
const heatAt = (losses: Grid, factor: number, speed: number, torque: number): number =>
  factor * Math.max(0, gridAt(losses, speed, torque) - gridAt(losses, speed, 0))
/** Points along the continuous rating at which its heat is looked up, beside those of the map. */
const ALONG = 200
/** What the winding must stand for ever: a rating for ever holds at every speed, so the worst of them sets what the coolant carries off. */
export const ratedHeat = formula(
  {
    id: 'rated-winding-heat',
    label: 'Heat in the winding at the continuous rating',
    gives: { symbol: 'Q_c', unit: 'W', label: 'heat in the winding at the continuous rating' },
    takes: {
      losses: lossMap,
      factor: one('f_V', 'loss factor'),
      torque: torque('M_c', 'continuous torque'),
      power: { symbol: 'P_c', unit: 'W', label: 'continuous power' },
      topSpeed: speed('ω_max', 'top speed of the motor'),
    },
    text: 'Q_c = max of f_V · (V(ω, M) − V(ω, 0)) over ω from 0 to ω_max, with M = min(M_c, P_c / ω)',
    words: 'the greatest of many look-ups',
    source: { work: 'definition', place: 'a continuous rating is stood at every speed it is stated for' },
    proof: { none: 'the greatest of look-ups' },
  },
  ({ losses, factor, torque, power, topSpeed }) => {
    const corner = Math.min(topSpeed, power / torque),
      even = Array.from({ length: ALONG }, (_, i) => (topSpeed * (i + 1)) / ALONG)
    const speeds = [corner, ...losses.x.filter(w => w > 0 && w < topSpeed), ...even]
    return Math.max(...speeds.map(w => heatAt(losses, factor, w, Math.min(torque, power / w))))
  },
)
