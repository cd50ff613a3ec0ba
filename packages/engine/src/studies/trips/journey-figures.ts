import type { SECOND_UNIT, TRIP_TAKES } from '../../trip/trip-takes.ts'
import type { Curve, Value } from '../../working/value.ts'
import type { Values } from '../../working/work.ts'
import type { Gaps } from '../study.ts'

/** A trip ready to be driven: everything the simulation is given, and what the second unit adds where there is one. */
export type Journey = {
  readonly inputs: Values<typeof TRIP_TAKES>
  readonly second: Values<typeof SECOND_UNIT> | null
  readonly coldEnergy: Value<Curve> | Gaps
  readonly gear: string | undefined
  /** The driven units as the file names them, in the order of the inputs. */
  readonly units: readonly string[]
}
