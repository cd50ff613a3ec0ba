import { gripped, type PullPlan, roadLoad } from './pull-plan.ts'

/**
 * What a run at full pull needs beside the car: where it starts and stops, and how the windings heat. The lists about heat may be empty: then the peak is taken to last.
 */
export type RunPlan = PullPlan & {
  readonly from: number
  /** Ends at this speed or this distance, whichever the run is about; the other is infinite. */
  readonly to: number
  readonly distance: number
  /** Time without pull in one gear change; empty where nothing shifts. */
  readonly shiftTime: readonly number[]
  readonly ratedTorque: readonly number[]
  readonly ratedPower: readonly number[]
  readonly windingTime: readonly number[]
  /** Start of the windings: 0 at the temperature of the coolant, 1 at their limit. */
  readonly start: number
}
export type Run = {
  /** Infinite where the car never gets there. */
  readonly time: number
  readonly distance: number
  readonly speed: number
  /** Warmest winding met, 0 at the temperature of the coolant, 1 at its limit. */
  readonly warmest: number
  /** Time in which grip held the pull back. */
  readonly slipping: number
  /** Time of the first foot of travel, which the clock of a drag strip leaves out; infinite where there is none. */
  readonly rollout: number
}
/** What a trace of the run keeps. */
export type Moment = (time: number, speed: number, distance: number, warmest: number) => void

export const STEP = 0.1
/** Feet of travel before the clock of a drag strip starts. */
export const ROLLOUT = 0.3048
const LONGEST = 600
/** Slower than this the car is no longer gathering speed [m/s²]. */
const STALLED = 1e-3
const SHARPNESS = 1e-8

/** The quickest run of all gears it may start in; one that lasts longer than `longest` is given up. */
export function run(plan: RunPlan, step = STEP, moment?: Moment, longest = LONGEST): Run {
  const most = Math.max(...plan.gears)
  let best = runFrom(plan, 0, step, longest),
    gear = 0
  for (let g = 1; g < most; g++) {
    const other = runFrom(plan, g, step, longest)
    if (other.time < best.time) {
      best = other
      gear = g
    }
  }
  return moment ? runFrom(plan, gear, step, longest, moment) : best
}

/**
 * Follows the run with the classical fourth-order method of Runge and Kutta at a fixed step; where the car's behaviour changes (power limit, grip, gear, a winding at its
 * limit, the goal) the step is cut to end just there, so that the order holds.
 */
function runFrom(plan: RunPlan, first: number, step: number, longest: number, moment?: Moment): Run {
  const { torque, power, topSpeed, efficiency, inertia, gears, frontShare, radius } = plan
  const n = torque.length,
    warm = plan.windingTime.length === n,
    offset = gears.map((_, u) => gears.slice(0, u).reduce((a, b) => a + b, 0))
  const gear = gears.map((count, u) => (offset[u] as number) + Math.min(first, count - 1))
  const last = gears.map((count, u) => (offset[u] as number) + count - 1)
  const ratio = (u: number): number => plan.ratios[gear[u] as number] as number
  const governed = Math.min(...torque.map((_, u) => ((topSpeed[u] as number) * radius) / (plan.ratios[last[u] as number] as number)))
  if (plan.to > governed * (1 + 1e-9) && plan.distance === Number.POSITIVE_INFINITY) return never(plan)
  const linked = frontShare.some(s => s > 0 && s < 1)
  const hot = torque.map(() => plan.start >= 1),
    used = new Float64Array(n),
    axles = new Float64Array(2)
  const shifting = new Float64Array(n).fill(-1)
  let effective = 0,
    share = 1,
    slips = false,
    mode = 0
  const weigh = (): void => {
    effective = plan.mass + plan.wheelsInertia / radius ** 2
    for (let u = 0; u < n; u++) effective += ((inertia[u] as number) * ratio(u) ** 2 * (efficiency[u] as number)) / radius ** 2
    share = plan.mass / effective
  }
  weigh()

  const size = 2 + n,
    y = new Float64Array(size),
    z = new Float64Array(size),
    k1 = new Float64Array(size),
    k2 = new Float64Array(size),
    k3 = new Float64Array(size),
    k4 = new Float64Array(size),
    next = new Float64Array(size)
  y[0] = plan.from
  for (let u = 0; u < n; u++) y[2 + u] = plan.start
  let t = 0

  /** Rates of change; leaves in `mode` a number that differs where the car behaves differently. */
  const rates = (s: Float64Array, dy: Float64Array): void => {
    const v = s[0] as number,
      road = roadLoad(plan, v)
    let front = 0,
      rear = 0
    mode = v >= plan.to ? 1 : 0
    if ((s[1] as number) >= plan.distance) mode |= 2
    if ((s[1] as number) >= ROLLOUT) mode |= 4
    if (v >= governed) mode |= 8
    for (let u = 0; u < n; u++) {
      let m = 0
      if ((shifting[u] as number) < 0) {
        const i = ratio(u),
          w = (v * i) / radius,
          most = (hot[u] ? Math.min(torque[u] as number, plan.ratedTorque[u] as number) : torque[u]) as number
        const p = (hot[u] ? Math.min(power[u] as number, plan.ratedPower[u] as number) : power[u]) as number
        m = most
        if (most * w > p) {
          m = p / w
          mode |= 64 << (4 * u)
        }
        if (w >= (topSpeed[u] as number) && (gear[u] as number) < (last[u] as number)) mode |= 128 << (4 * u)
        const f = (m * i * (efficiency[u] as number)) / radius,
          s1 = frontShare[u] as number
        front += f * s1
        rear += f * (1 - s1)
      }
      if (warm && !hot[u] && (s[2 + u] as number) >= 1) mode |= 256 << (4 * u)
      used[u] = m
    }
    gripped(plan, front, rear, linked, road, share, axles)
    const f = (axles[0] as number) + (axles[1] as number),
      offered = front + rear
    if ((axles[0] as number) < front) mode |= 16
    if ((axles[1] as number) < rear) mode |= 32
    slips = f < offered
    dy[0] = v >= governed ? Math.min(0, (f - road) / effective) : (f - road) / effective
    dy[1] = v
    if (warm)
      for (let u = 0; u < n; u++) {
        const s1 = frontShare[u] as number,
          held =
            (s1 > 0 && front > 0 ? (s1 * (axles[0] as number)) / front : 0) +
            (s1 < 1 && rear > 0 ? ((1 - s1) * (axles[1] as number)) / rear : 0)
        const m = (used[u] as number) * held
        dy[2 + u] = ((m / (plan.ratedTorque[u] as number)) ** 2 - (s[2 + u] as number)) / (plan.windingTime[u] as number)
      }
  }
  /** One step of h from y, k1 known; the new state in `next`, its rates in k4's place of a following call. */
  const advance = (h: number): void => {
    for (let j = 0; j < size; j++) z[j] = (y[j] as number) + (h / 2) * (k1[j] as number)
    rates(z, k2)
    for (let j = 0; j < size; j++) z[j] = (y[j] as number) + (h / 2) * (k2[j] as number)
    rates(z, k3)
    for (let j = 0; j < size; j++) z[j] = (y[j] as number) + h * (k3[j] as number)
    rates(z, k4)
    for (let j = 0; j < size; j++)
      next[j] = (y[j] as number) + (h / 6) * ((k1[j] as number) + 2 * (k2[j] as number) + 2 * (k3[j] as number) + (k4[j] as number))
  }

  /** The goal is passed by a hair: the rest goes back along a straight line. */
  const ended = (): Run => {
    const over = mode & 1 ? ((y[0] as number) - plan.to) / (k1[0] as number) : ((y[1] as number) - plan.distance) / (k1[1] as number),
      back = Number.isFinite(over) ? over : 0
    return {
      time: t - back,
      distance: (y[1] as number) - back * (k1[1] as number),
      speed: (y[0] as number) - back * (k1[0] as number),
      warmest,
      slipping,
      rollout,
    }
  }
  let warmest = plan.start,
    slipping = 0,
    rollout = Number.POSITIVE_INFINITY
  moment?.(0, y[0] as number, 0, warmest)
  rates(y, k1)
  while (t < longest) {
    const before = mode,
      slipped = slips
    if (before & 3) return ended()
    const busy = shifting.find(s => s >= 0)
    if (busy === undefined && (k1[0] as number) < STALLED && !(before & 8 && plan.distance < Number.POSITIVE_INFINITY)) break
    let h = busy === undefined ? step : Math.min(step, Math.max(SHARPNESS, busy - t))
    advance(h)
    rates(next, k2)
    if (mode !== before) {
      let low = 0
      while (h - low > SHARPNESS) {
        const middle = (low + h) / 2
        advance(middle)
        rates(next, k2)
        if (mode === before) low = middle
        else h = middle
      }
      advance(h)
      rates(next, k2)
    }
    t += h
    y.set(next)
    if (slipped) slipping += h
    if (mode & 4 && !(before & 4)) rollout = t
    for (let u = 0; u < n; u++) {
      warmest = Math.max(warmest, y[2 + u] as number)
      if (mode & (256 << (4 * u))) hot[u] = true
      if ((shifting[u] as number) >= 0 && t >= (shifting[u] as number) - SHARPNESS) shifting[u] = -1
      else if (mode & (128 << (4 * u)) && (shifting[u] as number) < 0) {
        gear[u] = (gear[u] as number) + 1
        shifting[u] = t + (plan.shiftTime[0] ?? 0)
        weigh()
      }
    }
    moment?.(t, y[0] as number, y[1] as number, warmest)
    rates(y, k1)
  }
  return never(plan)
}
const never = (plan: RunPlan): Run => ({
  time: Number.POSITIVE_INFINITY,
  distance: Number.POSITIVE_INFINITY,
  speed: plan.from,
  warmest: plan.start,
  slipping: 0,
  rollout: Number.POSITIVE_INFINITY,
})
