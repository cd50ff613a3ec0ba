import type { Curve, Figure, Value } from '../../working/value.ts'

/** The pack as every sum about energy and power uses it; all at pack terminals, charge z from 0 to 1. */
export type PackFigures = {
  readonly cellsInSeries: Figure
  readonly cellsInParallel: Figure
  /** Open-circuit voltage [V] over charge. */
  readonly openCircuit: Figure<Curve>
  /** Ohmic resistance [Ω] over charge at 25 °C, cells and wiring. */
  readonly resistance: Figure<Curve>
  /** One RC branch at 25 °C: resistance [Ω], time constant [s]. */
  readonly branchResistance: Figure
  readonly branchTime: Figure
  /** Factor on both resistances over temperature [K]; 1 at 298.15 K. */
  readonly coldFactor: Figure<Curve>
  /** Usable charge at 25 °C [C]. */
  readonly capacity: Figure
  readonly lowestVoltage: Figure
  readonly highestVoltage: Figure
  readonly peakCurrent: Figure
  readonly continuousCurrent: Figure
  readonly chargeCurrent: Figure
  /** Share of the charging current the cells take, over temperature [K]. */
  readonly chargeShare: Figure<Curve>
  readonly heatCapacity: Figure
  readonly conductance: Figure
  readonly mass: Value
}
