import { leastSquares } from '../numerics/least-squares.ts'
import { nonNegativeLeastSquares } from '../numerics/non-negative-least-squares.ts'

/** Points of a datasheet: torque [N·m], motor speed [rad/s] and efficiency of motor with inverter at them. */
export type EfficiencyPoints = {
  readonly torque: readonly number[]
  readonly speed: readonly number[]
  readonly efficiency: readonly number[]
}
/** Coefficients of P = k_c·M² + k_i·ω + k_w·ω³ + C, and how many of them the points leave above zero. */
export type LossLaw = {
  readonly copper: number
  readonly iron: number
  readonly windage: number
  readonly constant: number
  readonly free: number
}

/** Torques and speeds closer than this count as one: a sheet’s rounding must not decide which parts are fitted. */
const APART = 1.05
const different = (values: readonly number[]): number => {
  let count = 0,
    last = 0
  for (const v of [...values].sort((a, b) => a - b)) if (v > last * APART) [count, last] = [count + 1, v]
  return count
}
/** Columns that are a mix of the others up to this share of their square cannot be told apart. */
const MIXED = 1e-6

/** The parts as columns, over shaft power: an error of efficiency then weighs alike at every point, as sheets round alike. */
const columns = ({ torque, speed }: EfficiencyPoints, constant: boolean): Float64Array =>
  Float64Array.from(
    torque.flatMap((m, i) => {
      const w = speed[i] as number
      return [m ** 2, w, w ** 3, ...(constant ? [1] : [])].map(v => v / (m * w))
    }),
  )
const lossShares = ({ efficiency }: EfficiencyPoints): readonly number[] => efficiency.map(e => 1 / e - 1)

function toldApart(points: EfficiencyPoints, constant: boolean): boolean {
  const a = columns(points, constant),
    n = constant ? 4 : 3
  const fit = leastSquares(a, lossShares(points))
  if (!fit) return false
  for (let j = 0; j < n; j++) {
    let squares = 0
    for (let i = j; i < a.length; i += n) squares += a[i]! ** 2
    if (fit.inverse[j * n + j]! * squares * MIXED > 1) return false
  }
  return true
}
/** Whether the points tell a constant part from those that rise with speed: four points at three speeds can. */
export const constantShows = (points: EfficiencyPoints): boolean =>
  points.torque.length >= 4 && different(points.speed) >= 3 && toldApart(points, true)

/** What is wrong with points of efficiency, in words; undefined when a law of losses can be fitted to them. */
export function pointsProblem(points: EfficiencyPoints): { readonly found: string; readonly accepted: string } | undefined {
  const { torque, speed, efficiency } = points
  const accepted =
    'at least three points at two speeds and two torques or more, torque and speed above zero, efficiency of motor with inverter above 0 and below 1'
  const wrong = (found: string) => ({ found, accepted })
  const bad = efficiency.find(e => !(e > 0 && e < 1))
  if (bad !== undefined) return wrong(`an efficiency of ${bad}`)
  if (torque.some(m => !(m > 0))) return wrong('a torque that is not above zero')
  if (speed.some(w => !(w > 0))) return wrong('a motor speed that is not above zero')
  if (torque.length < 3) return wrong(torque.length === 1 ? 'one point' : `${torque.length === 2 ? 'two' : 'no'} points`)
  if (different(speed) < 2) return wrong('points at one speed only')
  if (different(torque) < 2) return wrong('points at one torque only')
  return toldApart(points, false) ? undefined : wrong('points that do not tell the parts of the loss from each other')
}

const NONE: LossLaw = { copper: Number.NaN, iron: Number.NaN, windage: Number.NaN, constant: Number.NaN, free: Number.NaN }
/** The law of losses, none of them below zero, that comes nearest to the efficiencies; no numbers where `pointsProblem` finds too little. */
export function lawOfPoints(points: EfficiencyPoints): LossLaw {
  const constant = constantShows(points)
  if (!constant && !toldApart(points, false)) return NONE
  const fit = nonNegativeLeastSquares(columns(points, constant), lossShares(points))
  if (!fit) return NONE
  const [copper, iron, windage, rest = 0] = fit.coefficients as unknown as [number, number, number, number?]
  return { copper, iron, windage, constant: rest, free: fit.free.length }
}
