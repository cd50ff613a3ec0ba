import type { Curve, Grid } from '../numerics/index.ts'

/** One drive unit as the trip uses it: plain numbers, curves and maps. Nodes are places in the list of thermal nodes. */
export type TripUnit = {
  readonly axle: 'front' | 'rear' | 'both'
  /** Motor speed over wheel speed. */
  readonly ratio: number
  /** What teeth under load let through: of the power between motor and wheels, without the drag. */
  readonly efficiency: number
  /** Drag of gears and bearings at the motor shaft, whatever the load: turned slowly [N·m], and its rise with motor speed [N·m·s]. */
  readonly gearDrag: number
  readonly gearDragRise: number
  readonly peakTorque: number
  readonly peakPower: number
  readonly continuousTorque: number
  readonly continuousPower: number
  readonly baseSpeed: number
  readonly statedVoltage: number
  readonly topSpeed: number
  /** Loss of motor and inverter together [W] over motor speed [rad/s] and torque without sign [N·m]. */
  readonly losses: Grid
  /** Times the losses of the map. */
  readonly lossFactor: number
  /** Share of the loss that warms the inverter. The winding takes what torque adds to the loss. */
  readonly inverterShare: number
  /** Drag torque of the motor [N·m] over its speed [rad/s]; counts while the unit has no part in the pull. */
  readonly drag: Curve
  readonly windingLimit: number
  readonly windingNode: number
  readonly inverterNode: number
}

/** A lump of matter of one temperature. A capacity of Infinity holds the temperature: air, or coolant as it comes. */
export type ThermalNode = { readonly capacity: number; readonly start: number }
export type ThermalLink = { readonly from: number; readonly to: number; readonly conductance: number }

export type TripRoad = {
  /** What moves, and what it weighs against being sped up: rotating parts included. */
  readonly mass: number
  readonly effectiveMass: number
  readonly f0: number
  readonly f1: number
  readonly f2: number
  readonly headWind: number
  readonly gravity: number
  readonly radius: number
}
export type TripGrip = {
  readonly grip: number
  readonly frontMass: number
  readonly rearMass: number
  readonly height: number
  readonly wheelbase: number
}

export type TripPack = {
  readonly openCircuit: Curve
  readonly resistance: Curve
  /** Times the curve. */
  readonly resistanceFactor: number
  readonly branchResistance: number
  readonly branchTime: number
  readonly coldFactor: Curve
  readonly capacity: number
  readonly lowestVoltage: number
  readonly highestVoltage: number
  readonly peakCurrent: number
  readonly chargeCurrent: number
  readonly chargeShare: Curve
  readonly node: number
}

/** Everything a trip needs, SI, in one plain value: what a simulation of speed, charge and temperatures is given. */
export type TripPlan = {
  /** Speed wanted over time, from 0. */
  readonly trace: Curve
  /** Slope (rise over run) over distance. */
  readonly slope: Curve
  readonly step: number
  readonly road: TripRoad
  readonly grip: TripGrip
  /** One unit, or two: then `frontShare` of the pull is asked of the first. */
  readonly units: readonly TripUnit[]
  readonly frontShare: number
  readonly regeneration: { readonly torqueShare: number; readonly power: number; readonly cutOffSpeed: number }
  readonly pack: TripPack
  readonly cabinPower: number
  readonly otherPower: number
  readonly nodes: readonly ThermalNode[]
  readonly links: readonly ThermalLink[]
  readonly startCharge: number
}

/** Energy of one stretch [J], each part counted by itself; `fromCharge` is what they add up to. */
export type TripEnergy = {
  readonly fromCharge: number
  readonly battery: number
  readonly cabin: number
  readonly other: number
  readonly motors: number
  readonly driveline: number
  readonly idle: number
  readonly rolling: number
  readonly air: number
  readonly slope: number
  readonly brakes: number
  readonly motion: number
}

/** What a run of the trip leaves behind, besides its traces. */
export type TripTotals = {
  readonly time: number
  readonly distance: number
  readonly asked: number
  readonly slowTime: number
  readonly energy: TripEnergy
  /** At the battery's terminals: net, drawn, put back. */
  readonly net: number
  readonly drawn: number
  readonly putBack: number
  readonly wheelDrive: number
  readonly wheelBrake: number
  readonly regeneration: {
    readonly recovered: number
    readonly cutOff: number
    readonly torque: number
    readonly grip: number
    readonly power: number
    readonly battery: number
  }
  readonly peakCurrent: number
  readonly peakChargeCurrent: number
  readonly lowestVoltage: number
  readonly aboveContinuous: number
  readonly hottest: Float64Array
  readonly endCharge: number
}

/** Series over the steps; `temperatures` holds one list for each node. Powers and currents hold from their time to the next. */
export type TripTraces = {
  readonly times: Float64Array
  readonly speeds: Float64Array
  readonly distances: Float64Array
  readonly powers: Float64Array
  readonly currents: Float64Array
  readonly voltages: Float64Array
  readonly charges: Float64Array
  readonly forces: Float64Array
  readonly temperatures: readonly Float64Array[]
}
