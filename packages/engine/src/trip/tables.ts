import { along, type Curve, segmentFrom } from '../numerics/index.ts'
import { line, lineAt, surface } from './lines.ts'
import type { TripPlan } from './plan.ts'

/** Width of the fall from peak to continuous torque below the winding's limit [K] (common practice). */
export const DERATE_BAND = 15

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
// biome-ignore format: in order
export const SUM = {
  time: 0, distance: 1, motion: 2, asked: 3, slowTime: 4, charge: 5, battery: 6, cabin: 7, other: 8, motors: 9, driveline: 10, idle: 11, rolling: 12, air: 13,
  slope: 14, brakes: 15, drawn: 16, putBack: 17, wheelDrive: 18, wheelBrake: 19, recovered: 20, cutOff: 21, torque: 22, grip: 23, power: 24, full: 25, aboveContinuous: 26,
} as const
export const SUMS = 27
/** Places of the extremes of a trip. */
export const EXTREME = { current: 0, chargeCurrent: 1, voltage: 2 } as const

/** Places of what changes in time: speed, distance, charge, voltage over the RC branch, terminal voltage of the step before. */
export const STATE = { speed: 0, distance: 1, charge: 2, branch: 3, terminal: 4 } as const

/** State of a trip between steps, its sums and its extremes. */
export type TripState = {
  readonly values: Float64Array
  readonly temperatures: Float64Array
  readonly hottest: Float64Array
  readonly sums: Float64Array
  readonly extremes: Float64Array
}

/** So many numbers: what a list of doubles of known length holds. */
export type Numbers<N extends number, T extends number[] = []> = T['length'] extends N ? T : Numbers<N, [...T, number]>
export const SCALARS = 28

/** The single numbers of a plan, in the order the loop takes them. */
function scalars({ step, road, grip, regeneration, pack, cabinPower, otherPower, slope, units, frontShare }: TripPlan): Float64Array {
  const topSpeed = Math.min(...units.map(u => (u.topSpeed * road.radius) / u.ratio)),
    level = slope.y.every(p => p === 0)
  // biome-ignore format: in the order of the loop
  return Float64Array.of(
    step, road.mass, road.effectiveMass, road.f0, road.f1, road.f2, road.headWind, road.gravity, level ? 1 : 0, topSpeed,
    grip.grip, grip.frontMass, grip.rearMass, grip.height / grip.wheelbase, units.length === 1 ? 1 : frontShare,
    regeneration.torqueShare, regeneration.power, regeneration.cutOffSpeed,
    pack.branchResistance, Math.exp(-step / pack.branchTime), pack.capacity, pack.lowestVoltage, pack.highestVoltage, pack.peakCurrent, pack.chargeCurrent,
    pack.node, cabinPower, otherPower,
  )
}

/** A plan made ready for the loop: tables without a search, constants worked out once. */
export type TripTables = ReturnType<typeof tables>

export function tables(plan: TripPlan) {
  const { units, pack, nodes, links, step } = plan
  if (units.length < 1 || units.length > 2) throw new RangeError(`a trip has one or two drive units, found ${units.length}`)
  if (!(step > 0)) throw new RangeError(`step must be above zero, found ${step}`)
  const numbers = (pick: (u: (typeof units)[number]) => number): Float64Array => Float64Array.from(units, pick)
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
    scalars: scalars(plan),
    slope: line(plan.slope),
    // Speed of a motor over that of the car, force at the wheels over torque at the motor.
    turn: numbers(u => u.ratio / plan.road.radius),
    pulling: numbers(u => (u.ratio * u.efficiency) / plan.road.radius),
    braking: numbers(u => u.ratio / (u.efficiency * plan.road.radius)),
    perPulling: numbers(u => plan.road.radius / (u.ratio * u.efficiency)),
    perBraking: numbers(u => (u.efficiency * plan.road.radius) / u.ratio),
    axle: Uint8Array.from(units, u => (u.axle === 'front' ? 0 : u.axle === 'rear' ? 1 : 2)),
    /** Units that take part; one that does not is dragged along. */
    part: Uint8Array.from(units, (_, i) => ((i === 0 ? share : 1 - share) > 0 ? 1 : 0)),
    gearDrag: numbers(u => u.gearDrag),
    gearDragRise: numbers(u => u.gearDragRise),
    peakTorque: numbers(u => u.peakTorque),
    peakPower: numbers(u => u.peakPower),
    continuousTorque: numbers(u => u.continuousTorque),
    continuousPower: numbers(u => u.continuousPower),
    /** Power at the corner of the envelope per volt. */
    cornerPerVolt: numbers(u => (u.peakTorque * u.baseSpeed) / u.statedVoltage),
    inverterShare: numbers(u => u.inverterShare),
    throttledFrom: numbers(u => u.windingLimit - DERATE_BAND),
    windingNode: Uint8Array.from(units, u => u.windingNode),
    inverterNode: Uint8Array.from(units, u => u.inverterNode),
    loss: units.map(u => surface(u.losses, u.lossFactor)),
    drag: units.map(u => line(u.drag)),
    openCircuit: line(pack.openCircuit),
    resistance: line(pack.resistance, pack.resistanceFactor),
    cold: line(pack.coldFactor),
    chargeShare: line(pack.chargeShare),
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
  const voltage = lineAt(openCircuit, plan.startCharge),
    temperatures = Float64Array.from(plan.nodes, n => n.start)
  return {
    values: Float64Array.of(wanted[0]!, 0, plan.startCharge, 0, voltage),
    temperatures,
    hottest: temperatures.slice(),
    sums: new Float64Array(SUMS),
    extremes: Float64Array.of(0, 0, voltage),
  }
}
