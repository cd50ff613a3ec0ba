import type { Through } from '../../model/drive.ts'
import type { Curve, Figure, Grid, Value } from '../../working/value.ts'

/** One drive unit as every sum about motion uses it. */
export type UnitFigures = {
  readonly name: string
  readonly axle: 'front' | 'rear' | 'both'
  readonly through: Through
  readonly ratio: Figure
  /** Motor shaft to wheels, pulling at full load. */
  readonly efficiency: Value
  /** What teeth under load let through, and the drag beside it that does not ask for load: turned slowly, and rising with speed. */
  readonly teeth: Value
  readonly gearDrag: Value
  readonly gearDragRise: Value
  /** Torque and power allowed for a short time: datasheet or the limit set in software, whichever is less. */
  readonly peakTorque: Value
  readonly peakPower: Value
  readonly peakTime: Value
  readonly continuousTorque: Value
  readonly continuousPower: Value
  /** Base speed scales with battery voltage over the stated voltage. */
  readonly baseSpeed: Value
  readonly statedVoltage: Value
  readonly topSpeed: Value
  /** Rotor and what turns with it, at the motor shaft. */
  readonly inertia: Value
  /** Loss of motor and inverter together [W] over motor speed [rad/s] and absolute torque [N·m]. */
  readonly losses: Value<Grid>
  /** Times the losses of the map: spread of efficiency flows through this number. */
  readonly lossFactor: Value
  /** Drag torque [N·m] over motor speed when unpowered. */
  readonly drag: Value<Curve>
  /**
   * Lumped winding: heat capacity, conductance to coolant, limit, coolant temperature of the rating. It is heated by what torque adds to the losses (times the
   * factor): where that is worst along the continuous rating, it settles at the limit.
   */
  readonly heatCapacity: Figure
  readonly conductance: Figure
  readonly windingTime: Value
  /** Loss of motor and inverter together at the continuous rating. */
  readonly ratedLoss: Figure
  readonly windingLimit: Value
  readonly coolant: Value
}
