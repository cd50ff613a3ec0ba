import { type Curve, curve, grid } from '../packages/engine/src/numerics/index.ts'
import type { TripPlan } from '../packages/engine/src/trip/plan.ts'
import { roadster } from './trip-plans.ts'

/** A car reduced to its road load: no loss, no limit, no slip, nothing else drawn. What is left is force at the wheels along the trace. */
export function roadOnly(trace: Curve, car: { mass: number; f0: number; f1?: number; f2: number }, step = 0.1): TripPlan {
  const base = roadster(trace, step),
    unit = base.units[0]!
  return {
    ...base,
    road: { ...base.road, mass: car.mass, effectiveMass: car.mass, f0: car.f0, f1: car.f1 ?? 0, f2: car.f2, gravity: 9.81 },
    grip: { ...base.grip, grip: 100 },
    units: [
      {
        ...unit,
        axle: 'both',
        efficiency: 1,
        gearDrag: 0,
        gearDragRise: 0,
        peakTorque: 1e5,
        peakPower: 1e8,
        continuousTorque: 1e5,
        continuousPower: 1e8,
        topSpeed: 1e5,
        baseSpeed: 1e4,
        losses: grid([0, 1], [0, 1], [0, 0, 0, 0]),
        windingLimit: 1e6,
      },
    ],
    regeneration: { torqueShare: 1, power: 1e8, cutOffSpeed: 0 },
    pack: {
      ...base.pack,
      resistanceFactor: 1,
      resistance: curve([0, 1], [1e-9, 1e-9]),
      branchResistance: 1e-12,
      peakCurrent: 1e9,
      chargeCurrent: 1e9,
      highestVoltage: 1e4,
      capacity: 1e9,
      chargeShare: curve([200, 400], [1, 1]),
    },
    cabinPower: 0,
    otherPower: 0,
  }
}
