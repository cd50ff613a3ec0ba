import type { Curve, Figure, Value } from '../../working/value.ts'
import type { Gaps } from '../study.ts'

/** The pack as every sum about energy and power uses it; all at pack terminals, charge z from 0 to 1. */
export type PackFigures = {
  readonly cellsInSeries: Figure
  readonly cellsInParallel: Figure
  /** Groups of parallel cells, string by string: what a BMS has to watch. */
  readonly groups: Figure
  /** Open-circuit voltage [V] over charge. */
  readonly openCircuit: Figure<Curve>
  /** Ohmic resistance [Ω] of all cells at half charge, 25 °C; nothing of the wiring. */
  readonly cells: Figure
  /** Ohmic resistance [Ω] over charge at 25 °C, cells and wiring. */
  readonly resistance: Figure<Curve>
  /** 1, with the spread of the resistance: a run that looks the curve up multiplies by it. */
  readonly resistanceFactor: Figure
  /** One RC branch at 25 °C: resistance [Ω], time constant [s]. */
  readonly branchResistance: Figure
  readonly branchTime: Value
  /** Factor on both resistances over temperature [K]; 1 at 298.15 K. */
  readonly coldFactor: Figure<Curve>
  /** Usable charge at 25 °C [C]. */
  readonly capacity: Figure
  /** Charge of the weakest module, which decides for its string [C]. */
  readonly weakest: Figure
  readonly lowestVoltage: Figure
  readonly highestVoltage: Figure
  /** What the cells allow. */
  readonly peakCurrent: Figure
  readonly continuousCurrent: Figure
  readonly chargeCurrent: Figure
  /** Share of the charging current the cells take, over temperature [K]. */
  readonly chargeShare: Figure<Curve> | Gaps
  /** What cells and BMS let the drive do: its limits act in software, so they hold the car back. Fuse and contactor only protect: rules judge them. */
  readonly held: {
    readonly peak: Figure
    readonly continuous: Figure
    readonly charge: Figure
    readonly chargeShare: Figure<Curve> | Gaps
  }
  /** Share of the 25 °C energy that can be had at C/3, over cell temperature [K]; slow diffusion included, which resistance alone misses. */
  readonly coldEnergy: Value<Curve> | Gaps
  readonly heatCapacity: Figure
  readonly conductance: Value
  readonly mass: Value
}
