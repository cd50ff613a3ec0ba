import { at, type Curve, integral } from '../numerics/index.ts'
import { follow } from './follow.ts'
import type { TripPlan } from './plan.ts'
import { EXTREME, STATE, SUM, started, type TripState, tables } from './tables.ts'

/** Longest pieces of a lap after which the energy left is looked at [s]: of a lap that changes, and of one that is the same all along. */
const PIECE = 3600
const STEADY_PIECE = 300
/** A car that has not run down after so many pieces never will. */
const MOST_PIECES = 2000

export type RangeRun = {
  /** Infinity where a lap takes nothing out of the battery. */
  readonly range: number
  readonly time: number
  /** At the battery's terminals, over the range. */
  readonly energy: number
  /** Energy out of the charge, losses in the battery included: what has to be put back. */
  readonly fromCharge: number
  readonly consumption: number
  readonly laps: number
  readonly lowestVoltage: number
  /** Distance of the trace lost because the car could not follow; the last piece, part of which lies behind the reserve, left out where there are others. */
  readonly missed: number
}

/** What a trip leaves above the level where cells of their present temperature are empty, plus the reserve [J]. */
function energyLeft({ pack }: TripPlan, { values, temperatures }: TripState, reserve: number, coldEnergy: Curve): number {
  const { openCircuit, capacity } = pack,
    whole = integral(openCircuit, 0, 1),
    kept = at(coldEnergy, temperatures[pack.node]!)
  return capacity * (integral(openCircuit, 0, values[STATE.charge]!) - whole * (1 - kept * (1 - reserve)))
}
const same = (c: Curve): boolean => c.y.every(y => y === c.y[0])
/** Whether a lap is the same all along: one speed, one slope. */
export const isSteady = (trace: Curve, slope: Curve): boolean => same(trace) && same(slope)
const NOWHERE = { range: 0, time: 0, energy: 0, fromCharge: 0, consumption: Number.POSITIVE_INFINITY, laps: 0, missed: 0 } as const

/**
 * Repeats a trip until only the reserve is left, and says how far that is.
 *
 * Energy left is what stands between the present charge and the level where a battery of this temperature is empty (`coldEnergy`: share of the
 * energy at 25 °C that cells of this kind give) plus the reserve. The range ends within the last piece by share of that energy, not at a time step,
 * so that it is smooth in everything it rests on. Leaves out: that charge asked for fast is not all to be had; a few per cent of the cold counted
 * twice, in the share and in the resistance.
 */
export function rangeToEmpty(plan: TripPlan, reserve: number, coldEnergy: Curve): RangeRun {
  const ready = tables(plan),
    state = started(ready),
    steps = ready.wanted.length - 1
  const pieces = Math.max(1, Math.ceil((steps * plan.step) / (isSteady(plan.trace, plan.slope) ? STEADY_PIECE : PIECE) - 1e-9))
  const left = (): number => energyLeft(plan, state, reserve, coldEnergy)
  const sum = (place: number): number => state.sums[place]!
  const net = (): number => sum(SUM.drawn) - sum(SUM.putBack)
  let before = left(),
    lapBegan = state.values[STATE.charge]!
  if (before <= 0) return { ...NOWHERE, lowestVoltage: state.extremes[EXTREME.voltage]! }
  for (let piece = 0; piece < MOST_PIECES; piece++) {
    const part = piece % pieces,
      s = sum(SUM.distance),
      t = sum(SUM.time),
      e = net(),
      asked = sum(SUM.asked),
      fromCharge = sum(SUM.charge),
      lowest = state.extremes[EXTREME.voltage]!
    if (part === 0) {
      // By charge: warming cells give more of theirs, so that the energy left may rise although the lap took some.
      const charge = state.values[STATE.charge]!
      if (piece > 0 && charge >= lapBegan) break
      lapBegan = charge
      state.values[STATE.distance] = 0
    }
    follow(ready, state, Math.round((steps * part) / pieces), Math.round((steps * (part + 1)) / pieces), undefined)
    const after = left()
    if (after <= 0) {
      const share = before / (before - after),
        ended = (place: number, was: number): number => was + share * (sum(place) - was)
      const range = ended(SUM.distance, s),
        energy = e + share * (net() - e)
      return {
        range,
        energy,
        fromCharge: ended(SUM.charge, fromCharge),
        time: ended(SUM.time, t),
        consumption: range > 0 ? energy / range : Number.POSITIVE_INFINITY,
        laps: (piece + share) / pieces,
        lowestVoltage: piece > 0 ? lowest : state.extremes[EXTREME.voltage]!,
        missed: piece > 0 ? asked - s : share * (sum(SUM.asked) - range / share),
      }
    }
    before = after
  }
  const distance = sum(SUM.distance)
  return {
    range: Number.POSITIVE_INFINITY,
    time: Number.POSITIVE_INFINITY,
    energy: Number.POSITIVE_INFINITY,
    fromCharge: Number.POSITIVE_INFINITY,
    laps: Number.POSITIVE_INFINITY,
    consumption: distance > 0 ? net() / distance : Number.POSITIVE_INFINITY,
    lowestVoltage: state.extremes[EXTREME.voltage]!,
    missed: Math.max(0, sum(SUM.asked) - distance),
  }
}
