import { grid, gridAt } from '../numerics/grid.ts'
import { formula } from '../working/formula.ts'
import type { Grid } from '../working/value.ts'
import { type EfficiencyPoints, type LossLaw, lawOfPoints } from './loss-fit.ts'
import { stepped } from './motor-loss.ts'

const one = (symbol: string, label: string) => ({ symbol, unit: '1', label, shows: 'number' }) as const
const share = (symbol: string, label: string) => ({ symbol, unit: '1', label, shows: 'share' }) as const
const torque = (symbol: string, label: string) => ({ symbol, unit: 'N·m', label }) as const
const speed = (symbol: string, label: string) => ({ symbol, unit: 'rad/s', label, shows: 'rotational speed' }) as const
const EQUATION = { work: 'larminie-lowry', place: 'eq. 7.23, motor efficiency', mark: 'from memory' } as const
const INDUCTION = {
  ...EQUATION,
  place: `${EQUATION.place}: 100 kW high-speed induction motor, k_c 0.3, k_i 0.01, k_w 5e-6, C 600`,
} as const
const BRUSHED = { ...EQUATION, place: `${EQUATION.place}: brushed permanent-magnet motor, k_c 1.5, k_i 0.1, k_w 1e-5, C 20` } as const

const law = {
  copper: { symbol: 'k_c', unit: 'W/(N²·m²)', label: 'copper loss over torque squared' },
  iron: { symbol: 'k_i', unit: 'W·s', label: 'iron loss over speed' },
  windage: { symbol: 'k_w', unit: 'W·s³', label: 'windage over speed cubed' },
  constant: { symbol: 'C', unit: 'W', label: 'constant loss' },
} as const
const points = {
  torque: { ...torque('M_j', 'torque of a point'), many: true },
  speed: { ...speed('ω_j', 'motor speed of a point'), many: true },
  efficiency: { ...share('η_j', 'efficiency of motor with inverter at a point'), many: true, holds: [0.3, 0.995] },
} as const
const induction = { copper: 0.3, iron: 0.01, windage: 5e-6, constant: 600 }
const brushed = { copper: 1.5, iron: 0.1, windage: 1e-5, constant: 20 }

/** The textbook’s law: copper with torque squared, iron with speed, windage with its cube, and what is always lost. */
export const lossByLaw = formula(
  {
    id: 'loss-by-law',
    label: 'Loss of motor and inverter by a law of losses',
    gives: { symbol: 'P_V', unit: 'W', label: 'loss' },
    takes: { torque: torque('M', 'torque'), speed: speed('ω', 'motor speed'), ...law },
    text: 'P_V = k_c · M² + k_i · ω + k_w · ω^3 + C',
    source: EQUATION,
    leavesOut:
      'Weakening of the field above base speed, temperature of the winding, battery voltage. Recovering, the loss is taken as the same.',
    proof: {
      examples: [
        { takes: { torque: 60, speed: 400, ...induction }, gives: 2004, within: 0.5, source: INDUCTION },
        { takes: { torque: 100, speed: 300, ...induction }, gives: 3738, within: 0.5, source: INDUCTION },
        { takes: { torque: 150, speed: 500, ...induction }, gives: 7980, within: 0.5, source: INDUCTION },
        { takes: { torque: 40, speed: 1000, ...induction }, gives: 6090, within: 0.5, source: INDUCTION },
        { takes: { torque: 10, speed: 300, ...brushed }, gives: 470, within: 0.05, source: BRUSHED },
        { takes: { torque: 15, speed: 250, ...brushed }, gives: 538.75, within: 0.05, source: BRUSHED },
      ],
    },
  },
  ({ torque, speed, copper, iron, windage, constant }) => copper * torque ** 2 + iron * speed + windage * speed ** 3 + constant,
)

/** Coefficients of the law by non-negative least squares: solved exactly, few points easily give a part of the loss that is below nothing. */
export const lossLawFit = formula(
  {
    id: 'loss-law-fit',
    label: 'Law of losses fitted to points of efficiency',
    gives: { ...law, free: one('n_f', 'parts above zero') },
    takes: points,
    text: [
      'k_c, k_i, k_w, C ≥ 0, such that Σ ((k_c·M_j² + k_i·ω_j + k_w·ω_j³ + C) / (M_j·ω_j) − (1/η_j − 1))² is least',
      'n_f = how many of them are above zero',
    ].join('\n'),
    words: 'the law that comes nearest to all the points in efficiency, no part of it below zero: there is no closed form',
    source: { ...EQUATION, place: `${EQUATION.place}; the fit: each point weighs alike in its efficiency` },
    leavesOut: 'Fewer than four points, or points at fewer than three speeds, do not show the constant part: it is left out then.',
    proof: {
      examples: [
        {
          takes: { torque: [100, 200, 60], speed: [200, 200, 900], efficiency: [0.9, 0.87, 0.93] },
          gives: { copper: 0.13094907, iron: 4.11573894, windage: 0, constant: 0, free: 2 },
          within: 1e-8,
          source: {
            work: 'definition',
            place: 'three points whose exact solution is k_c 0.12516, k_i 4.897, k_w −1.088e-6; non-negative, by an independent routine',
          },
        },
        {
          takes: {
            torque: [60, 100, 150, 40, 20],
            speed: [400, 300, 500, 1000, 200],
            efficiency: [24000 / 26004, 30000 / 33738, 75000 / 82980, 40000 / 46090, 4000 / 4762],
          },
          gives: { copper: 0.3, iron: 0.01, windage: 5e-6, constant: 600, free: 4 },
          within: 1e-6,
          source: { ...INDUCTION, place: `${INDUCTION.place}: its own losses at five points give the coefficients back` },
        },
      ],
    },
  },
  (x): LossLaw => lawOfPoints(x),
)

/** Efficiency of motor with inverter by the law. */
export const efficiencyByLaw = formula(
  {
    id: 'efficiency-by-law',
    label: 'Efficiency by a law of losses',
    gives: share('η_L', 'efficiency by the law'),
    takes: { torque: torque('M', 'torque'), speed: speed('ω', 'motor speed'), ...law },
    text: 'P_V = k_c · M² + k_i · ω + k_w · ω^3 + C\nη_L = M · ω / (M · ω + P_V)',
    source: EQUATION,
    proof: {
      examples: [
        { takes: { torque: 60, speed: 400, ...induction }, gives: 0.92293, within: 1e-5, source: INDUCTION },
        { takes: { torque: 100, speed: 300, ...induction }, gives: 0.88921, within: 1e-5, source: INDUCTION },
        { takes: { torque: 150, speed: 500, ...induction }, gives: 0.90383, within: 1e-5, source: INDUCTION },
        { takes: { torque: 40, speed: 1000, ...induction }, gives: 0.86787, within: 1e-5, source: INDUCTION },
        { takes: { torque: 10, speed: 300, ...brushed }, gives: 0.86455, within: 1e-5, source: BRUSHED },
        { takes: { torque: 15, speed: 250, ...brushed }, gives: 0.87438, within: 1e-5, source: BRUSHED },
      ],
    },
  },
  x => (x.torque * x.speed) / (x.torque * x.speed + lossByLaw(x)),
)

/** How far a point lies off the law. */
export const efficiencyStray = formula(
  {
    id: 'efficiency-stray',
    label: 'Efficiency of a point off the law',
    gives: share('ε', 'off the law'),
    takes: { stated: share('η', 'efficiency stated'), law: share('η_L', 'efficiency by the law') },
    text: 'ε = abs(η − η_L)',
    source: { work: 'definition', place: 'difference' },
    proof: { none: 'definition' },
  },
  ({ stated, law }) => Math.abs(stated - law),
)
/** The point that lies farthest off. */
export const greatestStray = formula(
  {
    id: 'greatest-efficiency-stray',
    label: 'Greatest efficiency off the law',
    gives: share('ε_max', 'greatest off the law'),
    takes: { each: { ...share('ε_j', 'off the law'), many: true } },
    text: 'ε_max = max(ε_j)',
    source: { work: 'definition', place: 'greatest of several' },
    proof: { none: 'definition' },
  },
  ({ each }) => Math.max(...each),
)

/** How far losses scatter about the law: ± of what the law says of this motor, two deviations. */
export const lawScatter = formula(
  {
    id: 'loss-law-scatter',
    label: 'Scatter of the losses about their law',
    gives: share('h', '± of the law'),
    takes: { ...points, ...law, free: one('n_f', 'parts above zero') },
    text: [
      'n = Σ (M_j / M_j)',
      's_2 = Σ ((k_c · M_j² + k_i · ω_j + k_w · ω_j^3 + C) / (M_j · ω_j · (1 / η_j − 1)) − 1)²',
      'h = 2 · √(s_2 / max(1, n − n_f))',
    ].join('\n'),
    source: { work: 'gum', place: '4.2: deviation from the scatter, over points less parts' },
    leavesOut: 'As many points as parts leave no scatter: the ± of the points themselves and the loss factor’s remain.',
    proof: {
      examples: [
        {
          takes: {
            torque: [10, 10],
            speed: [100, 100],
            efficiency: [1000 / 1090, 1000 / 1110],
            copper: 0,
            iron: 0,
            windage: 0,
            constant: 100,
            free: 1,
          },
          gives: 2 * Math.sqrt((10 / 90) ** 2 + (10 / 110) ** 2),
          within: 1e-9,
          source: { work: 'statics', place: 'worked by hand: 90 W and 110 W about a constant loss of 100 W' },
        },
      ],
    },
  },
  ({ torque, speed, efficiency, free, ...k }) => {
    let squares = 0
    for (let j = 0; j < torque.length; j++) {
      const at = { torque: torque[j] as number, speed: speed[j] as number }
      squares += (lossByLaw({ ...at, ...k }) / (at.torque * at.speed * (1 / (efficiency[j] as number) - 1)) - 1) ** 2
    }
    return 2 * Math.sqrt(squares / Math.max(1, torque.length - free))
  },
)

/**
 * The factor on losses fitted to points: by the fit it is the motor’s own factor but for the grid’s rounding. A map carries no ±; through this factor that of
 * the points, and their scatter about the law, reach everything that is lost.
 */
export const lossFactorByPoints = formula(
  {
    id: 'loss-factor-by-points',
    label: 'Loss factor of a motor with points of efficiency',
    gives: one('f_V', 'loss factor'),
    takes: {
      own: one('f_L', 'factor on the losses'),
      scatter: { ...share('ε', 'scatter about the law'), holds: [-0.9, 0.9] },
      losses: { symbol: 'V', unit: ['rad/s', 'N·m', 'W'], label: 'losses over speed and torque', grid: true },
      ...points,
    },
    text: 'f_V = f_L · (1 + ε) · Σ (V(ω_j, M_j) / (M_j · ω_j) · (1 / η_j − 1)) / Σ (V(ω_j, M_j) / (M_j · ω_j))²',
    source: { work: 'definition', place: 'least squares with one unknown: the factor that brings the losses nearest to the points' },
    proof: { none: 'look-ups; the fit makes it the factor of the motor itself' },
  },
  ({ own, scatter, losses, torque, speed, efficiency }) => {
    let product = 0,
      squares = 0
    for (let j = 0; j < torque.length; j++) {
      const m = torque[j] as number,
        w = speed[j] as number,
        lost = gridAt(losses, w, m) / (m * w)
      product += lost * (1 / (efficiency[j] as number) - 1)
      squares += lost ** 2
    }
    return (own * (1 + scatter) * product) / squares
  },
)

/** The losses of a law as a map, from standstill to top speed and peak torque, or to the farthest point where that lies beyond. */
export function lawLosses(law: Omit<LossLaw, 'free'>, peakTorque: number, topSpeed: number, { torque, speed }: EfficiencyPoints): Grid {
  const x = stepped(Math.max(topSpeed, ...speed), 41),
    y = stepped(Math.max(peakTorque, ...torque), 51),
    z = new Float64Array(x.length * y.length)
  for (let i = 0; i < x.length; i++)
    for (let j = 0; j < y.length; j++) z[i * y.length + j] = lossByLaw({ ...law, torque: y[j] as number, speed: x[i] as number })
  return grid(x, y, z)
}
