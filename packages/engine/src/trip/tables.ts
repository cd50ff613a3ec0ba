import { along, type Curve, type Grid, type UniformCurve, type UniformGrid, segmentFrom, uniform, uniformGrid } from '../numerics/index.ts'
import type { TripPlan } from './plan.ts'

/** Steps a curve, and each side of a map, is taken again at where its own points do not stand at equal steps. */
export const CURVE_POINTS = 1025
export const GRID_POINTS = 129

const equalSteps = (x: Float64Array): boolean => {
  const last = x.length - 1,
    step = (x[last]! - x[0]!) / last
  for (let i = 1; i < last; i++) if (!(Math.abs(x[i]! - x[0]! - i * step) <= 1e-9 * step)) return false
  return true
}

/** A curve that can be looked up without a search: its own points where they stand at equal steps, else taken again at 1025. */
export const even = (curve: Curve): UniformCurve => uniform(curve, equalSteps(curve.x) ? curve.x.length : CURVE_POINTS)
const scaled = (curve: UniformCurve, factor: number): UniformCurve => ({ ...curve, y: curve.y.map(y => y * factor) })
/** A map that can be looked up without a search: axis by axis its own points where they stand at equal steps, else 129. */
export const evenGrid = (grid: Grid): UniformGrid =>
  uniformGrid(grid, equalSteps(grid.x) ? grid.x.length : GRID_POINTS, equalSteps(grid.y) ? grid.y.length : GRID_POINTS)

/** Speeds wanted at every step, from the start to the end of the trace; behind the end the last speed holds. */
export function sampled(trace: Curve, step: number): Float64Array {
  const duration = trace.x[trace.x.length - 1]! - trace.x[0]!
  const n = Math.max(1, Math.ceil(duration / step - 1e-9))
  const speeds = new Float64Array(n + 1)
  for (let k = 0, i = 0; k <= n; k++) {
    const t = trace.x[0]! + k * step
    i = segmentFrom(trace.x, t, i)
    speeds[k] = along(trace, i, t)
  }
  return speeds
}

/** Places of the running sums of a trip. */
export const SUM = {
  time: 0,
  distance: 1,
  asked: 2,
  slowTime: 3,
  charge: 4,
  battery: 5,
  cabin: 6,
  other: 7,
  motors: 8,
  driveline: 9,
  idle: 10,
  rolling: 11,
  air: 12,
  slope: 13,
  brakes: 14,
  motion: 15,
  drawn: 16,
  putBack: 17,
  wheelDrive: 18,
  wheelBrake: 19,
  recovered: 20,
  cutOff: 21,
  torque: 22,
  grip: 23,
  power: 24,
  full: 25,
  aboveContinuous: 26,
} as const
export const SUMS = 27
/** Places of the extremes of a trip. */
export const EXTREME = { current: 0, chargeCurrent: 1, voltage: 2 } as const

/** What changes in time: speed, distance, charge, voltage over the RC branch, terminal voltage of the step before, temperatures of the nodes. */
export type TripState = {
  speed: number
  distance: number
  charge: number
  branch: number
  terminal: number
  readonly temperatures: Float64Array
  readonly hottest: Float64Array
  readonly sums: Float64Array
  readonly extremes: Float64Array
}

/** A plan made ready for the loop: tables without a search, constants worked out once. */
export type TripTables = ReturnType<typeof tables>

export function tables(plan: TripPlan) {
  const { units, pack, nodes, links, step } = plan
  if (units.length < 1 || units.length > 2) throw new RangeError(`a trip has one or two drive units, found ${units.length}`)
  if (!(step > 0)) throw new RangeError(`step must be above zero, found ${step}`)
  const numbers = (pick: (u: (typeof units)[number]) => number): Float64Array => Float64Array.from(units, pick)
  const loss = units.map(u => {
      const map = evenGrid(u.losses)
      return { ...map, z: map.z.map(v => v * u.lossFactor) }
    }),
    drag = units.map(u => even(u.drag))
  // Nodes that change their temperature; each needs a neighbour to give its heat to.
  const live = [...nodes.keys()].filter(i => nodes[i]!.capacity < Infinity)
  const around = live.map(i =>
    links.filter(l => l.from === i || l.to === i).map(l => ({ to: l.from === i ? l.to : l.from, by: l.conductance })),
  )
  const total = around.map(list => list.reduce((sum, { by }) => sum + by, 0))
  for (const [l, sum] of total.entries()) if (!(sum > 0)) throw new RangeError(`thermal node ${live[l]} has no conductance to any other`)
  const share = units.length === 1 ? 1 : plan.frontShare
  return {
    plan,
    wanted: sampled(plan.trace, step),
    slope: even(plan.slope),
    flat: plan.slope.y.every(p => p === 0),
    topSpeed: Math.min(...units.map(u => (u.topSpeed * plan.road.radius) / u.ratio)),
    // Speed of a motor over that of the car, force at the wheels over torque at the motor.
    turn: numbers(u => u.ratio / plan.road.radius),
    pulling: numbers(u => (u.ratio * u.efficiency) / plan.road.radius),
    braking: numbers(u => u.ratio / (u.efficiency * plan.road.radius)),
    perPulling: numbers(u => plan.road.radius / (u.ratio * u.efficiency)),
    perBraking: numbers(u => (u.efficiency * plan.road.radius) / u.ratio),
    axle: Uint8Array.from(units, u => (u.axle === 'front' ? 0 : u.axle === 'rear' ? 1 : 2)),
    /** Units that take part; one that does not is dragged along. */
    part: Uint8Array.from(units, (_, i) => ((i === 0 ? share : 1 - share) > 0 ? 1 : 0)),
    share,
    peakTorque: numbers(u => u.peakTorque),
    peakPower: numbers(u => u.peakPower),
    continuousTorque: numbers(u => u.continuousTorque),
    continuousPower: numbers(u => u.continuousPower),
    /** Power at the corner of the envelope per volt. */
    cornerPerVolt: numbers(u => (u.peakTorque * u.baseSpeed) / u.statedVoltage),
    inverterShare: numbers(u => u.inverterShare),
    windingLimit: numbers(u => u.windingLimit),
    windingNode: Uint8Array.from(units, u => u.windingNode),
    inverterNode: Uint8Array.from(units, u => u.inverterNode),
    loss,
    drag,
    openCircuit: even(pack.openCircuit),
    resistance: scaled(even(pack.resistance), pack.resistanceFactor),
    cold: even(pack.coldFactor),
    chargeShare: even(pack.chargeShare),
    branchKept: Math.exp(-step / pack.branchTime),
    // Each node nears what its neighbours and its heat make of it; this much of the way is left after a step.
    live: Uint8Array.from(live),
    perTotal: Float64Array.from(total, g => 1 / g),
    kept: Float64Array.from(live, (i, l) => Math.exp((-step * total[l]!) / nodes[i]!.capacity)),
    near: Uint16Array.from([0, ...around.map((_, l) => around.slice(0, l + 1).flat().length)]),
    nearTo: Uint8Array.from(around.flat(), a => a.to),
    nearBy: Float64Array.from(around.flat(), a => a.by),
  }
}

/** The state a trip begins in. */
export function started({ plan, wanted, openCircuit }: TripTables): TripState {
  const place = (plan.startCharge - openCircuit.first) * openCircuit.perStep,
    last = openCircuit.y.length - 1
  const i = Math.min(last - 1, Math.max(0, Math.floor(place))),
    t = Math.min(1, Math.max(0, place - i))
  const voltage = openCircuit.y[i]! + (openCircuit.y[i + 1]! - openCircuit.y[i]!) * t
  const temperatures = Float64Array.from(plan.nodes, n => n.start)
  return {
    speed: wanted[0]!,
    distance: 0,
    charge: plan.startCharge,
    branch: 0,
    terminal: voltage,
    temperatures,
    hottest: temperatures.slice(),
    sums: new Float64Array(SUMS),
    extremes: Float64Array.of(0, 0, voltage),
  }
}
