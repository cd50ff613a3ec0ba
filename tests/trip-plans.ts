import { type CycleId, cycles } from '@ampwright/catalogue'

export type { CycleId }

import { type Curve, curve, type Grid, grid } from '../packages/engine/src/numerics/index.ts'
import { random } from '../packages/engine/src/numerics/random.ts'
import type { TripPlan, TripUnit } from '../packages/engine/src/trip/plan.ts'

const steps = (from: number, to: number, n: number): number[] => Array.from({ length: n }, (_, i) => from + ((to - from) * i) / (n - 1))
export const cycleTrace = (id: CycleId): Curve => curve(cycles[id]().times, cycles[id]().speeds)

/** Loss of a motor by copper, iron, air and a constant, as a map. */
export const lossMap = (
  kc: number,
  ki: number,
  kw: number,
  constant: number,
  topSpeed: number,
  torque: number,
  rows = 21,
  columns = 17,
): Grid => {
  const x = steps(0, topSpeed, rows),
    y = steps(0, torque, columns)
  return grid(
    x,
    y,
    x.flatMap(w => y.map(t => kc * t * t + ki * w + kw * w ** 3 + constant)),
  )
}
const unit = (axle: TripUnit['axle'], node: number): TripUnit => ({
  axle,
  ratio: 5.33,
  efficiency: 0.95,
  gearDrag: 0.3,
  gearDragRise: 8e-4,
  peakTorque: 250,
  peakPower: 100e3,
  continuousTorque: 110,
  continuousPower: 44e3,
  baseSpeed: 400,
  statedVoltage: 350,
  topSpeed: 942,
  losses: lossMap(0.09, 0.6, 2.2e-6, 150, 942, 250),
  lossFactor: 1.1,
  inverterShare: 0.3,
  drag: curve([0, 400, 942], [0.4, 0.9, 1.8]),
  windingLimit: 430,
  windingNode: node,
  inverterNode: node + 1,
})
const OPEN = [2.7, 3.4629, 3.5309, 3.5979, 3.6313, 3.6729, 3.7361, 3.824, 3.9346, 4.0626, 4.2018].map(v => 96 * v)

/** A roadster on the road with a 38 kWh pack, plain numbers: what tests, the bench and the C twin start from. */
export function roadster(trace: Curve, step = 0.1): TripPlan {
  return {
    trace,
    slope: curve([0, 1], [0, 0]),
    step,
    road: { mass: 1200, effectiveMass: 1255, f0: 150, f1: 1.2, f2: 0.38, headWind: 0, gravity: 9.80665, radius: 0.288 },
    grip: { grip: 0.8, frontMass: 590, rearMass: 610, height: 0.47, wheelbase: 2.31 },
    units: [unit('rear', 3)],
    frontShare: 1,
    regeneration: { torqueShare: 0.4, power: 40e3, cutOffSpeed: 8 / 3.6 },
    pack: {
      openCircuit: curve(steps(0, 1, 11), OPEN),
      resistance: curve([0, 0.1, 0.5, 1], [0.12, 0.085, 0.07, 0.075]),
      resistanceFactor: 1.03,
      branchResistance: 0.035,
      branchTime: 30,
      coldFactor: curve([253.15, 263.15, 273.15, 283.15, 298.15, 318.15], [4.7, 3.19, 2.22, 1.587, 1, 0.9]),
      capacity: 393e3,
      lowestVoltage: 288,
      highestVoltage: 403,
      peakCurrent: 380,
      chargeCurrent: 120,
      chargeShare: curve([275, 278, 283, 293, 318, 323], [0, 0.1, 0.2, 0.5, 1, 0]),
      node: 2,
    },
    cabinPower: 1200,
    otherPower: 250,
    nodes: [
      { capacity: Infinity, start: 283.15 },
      { capacity: Infinity, start: 333.15 },
      { capacity: 190e3, start: 283.15 },
      { capacity: 9000, start: 333.15 },
      { capacity: 4000, start: 333.15 },
    ],
    links: [
      { from: 2, to: 0, conductance: 6 },
      { from: 3, to: 1, conductance: 60 },
      { from: 4, to: 1, conductance: 90 },
      { from: 3, to: 4, conductance: 2 },
    ],
    startCharge: 0.95,
  }
}

/** The same with a second unit on the other axle. */
export function twoUnits(plan: TripPlan, frontShare = 0.58): TripPlan {
  const n = plan.nodes.length
  return {
    ...plan,
    frontShare,
    units: [
      { ...plan.units[0]!, axle: 'front' },
      {
        ...unit('rear', n),
        ratio: 9,
        peakTorque: 190,
        peakPower: 80e3,
        topSpeed: 1309,
        losses: lossMap(0.12, 0.5, 1.5e-6, 120, 1309, 190),
        drag: curve([0, 1309], [0.3, 1.6]),
      },
    ],
    nodes: [...plan.nodes, { capacity: 7000, start: 333.15 }, { capacity: 3500, start: 333.15 }],
    links: [...plan.links, { from: n, to: 1, conductance: 50 }, { from: n + 1, to: 1, conductance: 80 }],
  }
}

/** A plan drawn by a seed: one unit or two, hills, wind, cold, heat, weak and strong packs, grip from ice to dry. */
export function drawn(seed: number, trace: Curve): TripPlan {
  const { uniform, below } = random(seed),
    between = (a: number, b: number): number => a + (b - a) * uniform()
  const base = roadster(trace),
    air = between(253, 313),
    axles = ['front', 'rear', 'both'] as const
  const hills = curve(
    steps(0, 30000, 241),
    Array.from({ length: 241 }, () => between(-0.08, 0.08)),
  )
  const one: TripPlan = {
    ...base,
    slope: uniform() < 0.6 ? hills : base.slope,
    road: {
      ...base.road,
      mass: between(900, 2600),
      effectiveMass: between(2650, 2750),
      f0: between(80, 320),
      f1: between(-2, 5),
      f2: between(0.3, 0.8),
      headWind: between(-12, 12),
    },
    grip: { ...base.grip, grip: between(0.12, 0.9), frontMass: between(400, 900), rearMass: between(400, 900) },
    units: [
      {
        ...base.units[0]!,
        axle: axles[below(3)]!,
        ratio: between(3.5, 10),
        peakTorque: between(120, 250),
        windingLimit: between(345, 430),
      },
    ],
    regeneration: { torqueShare: between(0.1, 1), power: between(5e3, 90e3), cutOffSpeed: uniform() < 0.3 ? 0 : between(1, 4) },
    pack: {
      ...base.pack,
      capacity: between(60e3, 400e3),
      peakCurrent: between(90, 400),
      branchResistance: between(0.01, 0.08),
      branchTime: between(5, 90),
    },
    cabinPower: between(0, 4000),
    nodes: base.nodes.map((node, i) => (i === 0 || i === 2 ? { ...node, start: air } : node)),
    startCharge: between(0.3, 1),
  }
  return uniform() < 0.5 ? one : twoUnits(one, [0, 1, between(0.2, 0.8)][below(3)]!)
}
