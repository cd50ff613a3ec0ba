/**
 * A car pulling as hard as it can, as plain numbers: what the run, the top speed and the climb share. Lists hold one value for each drive unit; `ratios` holds the
 * total ratios of all units one after the other, `gears` how many each has (one for a unit held in its gear).
 */
export type PullPlan = {
  /** What moves: car, load, trailer. */
  readonly mass: number
  /** Axle masses of the car standing. */
  readonly front: number
  readonly rear: number
  readonly height: number
  readonly wheelbase: number
  readonly f0: number
  readonly f1: number
  readonly f2: number
  readonly headWind: number
  readonly grip: number
  readonly radius: number
  readonly wheelsInertia: number
  readonly torque: readonly number[]
  readonly power: readonly number[]
  readonly topSpeed: readonly number[]
  readonly efficiency: readonly number[]
  readonly inertia: readonly number[]
  readonly ratios: readonly number[]
  readonly gears: readonly number[]
  /** Share of each unit's pull at the front axle: 1, 0, or that of a centre differential. */
  readonly frontShare: readonly number[]
  /** Axles locked together: whichever has grip pulls. */
  readonly centre: 'open' | 'locked'
}
export const STANDARD_GRAVITY = 9.80665

/** Road load [N] on the level at a speed; a tail wind stronger than the speed pushes. */
export function roadLoad(p: Pick<PullPlan, 'f0' | 'f1' | 'f2' | 'headWind'>, v: number): number {
  const w = v + p.headWind
  return p.f0 + p.f1 * v + p.f2 * w * Math.abs(w)
}

/**
 * What of the pulls at the two axles reaches the road: each axle carries its grip, and load moves to the rear as the car pulls. Writes front and rear into `out`.
 *
 * `front`, `rear` [N]: what the motors offer; `linked`: the two come from one shaft, so the axle that slips first limits both; `road` [N]: what the car pulls
 * against without gathering speed; `share`: mass over mass with turning parts. Elementary: moments about the contact points, pull limited to grip times load.
 */
export function gripped(p: PullPlan, front: number, rear: number, linked: boolean, road: number, share: number, out: Float64Array): void {
  const moved = ((share * p.height) / p.wheelbase) * (front + rear - road)
  out[0] = front
  out[1] = rear
  if (
    p.centre === 'locked' ||
    !(front <= p.grip * (p.front * STANDARD_GRAVITY - moved) && rear <= p.grip * (p.rear * STANDARD_GRAVITY + moved))
  )
    heldBack(p, linked, road, share, out)
}
/** As `gripped`, where an axle may slip; takes the pulls offered from `out`. Apart, so that the usual case is short enough to be compiled into the loop. */
function heldBack(p: PullPlan, linked: boolean, road: number, share: number, out: Float64Array): void {
  const g = STANDARD_GRAVITY,
    mu = p.grip,
    wf = p.front * g,
    wr = p.rear * g,
    k = (share * p.height) / p.wheelbase,
    front = out[0] as number,
    rear = out[1] as number,
    all = front + rear
  if (p.centre === 'locked') {
    const held = Math.min(1, (mu * (wf + wr)) / all)
    out[0] = all > 0 ? front * held : 0
    out[1] = all > 0 ? rear * held : 0
    return
  }
  if (linked) {
    const sf = front / all,
      sr = rear / all
    const byFront = (mu * (wf + k * road)) / (sf + mu * k),
      byRear = sr > mu * k ? (mu * (wr - k * road)) / (sr - mu * k) : Number.POSITIVE_INFINITY
    const total = Math.max(0, Math.min(all, byFront, byRear))
    out[0] = sf * total
    out[1] = sr * total
    return
  }
  // Front axle at its grip, rear as offered; the other way round; both at their grip.
  const f = Math.max(0, (mu * (wf - k * (rear - road))) / (1 + mu * k))
  if (f <= front && rear <= mu * (wr + k * (f + rear - road))) {
    out[0] = f
    out[1] = rear
    return
  }
  const r = Math.max(0, mu * k < 1 ? (mu * (wr + k * (front - road))) / (1 - mu * k) : Number.POSITIVE_INFINITY)
  if (r <= rear && front <= mu * (wf - k * (front + r - road))) {
    out[0] = front
    out[1] = r
    return
  }
  const shift = k * (mu * (wf + wr) - road)
  out[0] = Math.max(0, Math.min(front, mu * (wf - shift)))
  out[1] = Math.max(0, Math.min(rear, mu * (wr + shift)))
}
