import type { Figure, Value } from '../../working/value.ts'

/** The car on the road under given load, trailer and weather: what every sum about motion starts from. */
export type Situation = {
  /** Car with its load, without trailer. */
  readonly carMass: Figure
  /** What moves: car, load and trailer. */
  readonly mass: Figure
  readonly front: Figure
  readonly rear: Figure
  /** Road load on the level in still air of this density: F = f0 + f1·v + f2·v², trailer included. f2 already holds the air density. */
  readonly f0: Value
  readonly f1: Value
  readonly f2: Value
  /** Rolling resistance of the whole train over its weight. */
  readonly rolling: Value
  readonly headWind: Value
  readonly density: Figure
  readonly temperature: Value
  readonly grip: Value
  readonly height: Value
  readonly wheelbase: Value
  readonly radius: Figure
  /** Inertia of all wheels that turn, trailer left out. */
  readonly wheelsInertia: Figure
}
