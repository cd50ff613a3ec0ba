import { follow, type Recorder } from './follow.ts'
import type { TripPlan, TripTotals, TripTraces } from './plan.ts'
import { EXTREME, STATE, SUM, started, type TripState, tables } from './tables.ts'

/** What the sums of a state say, by name. */
export function totals({ sums, extremes, hottest, values }: TripState): TripTotals {
  const of = (name: keyof typeof SUM): number => sums[SUM[name]]!
  return {
    time: of('time'),
    distance: of('distance'),
    asked: of('asked'),
    slowTime: of('slowTime'),
    energy: {
      fromCharge: of('charge'),
      battery: of('battery'),
      cabin: of('cabin'),
      other: of('other'),
      motors: of('motors'),
      driveline: of('driveline'),
      idle: of('idle'),
      rolling: of('rolling'),
      air: of('air'),
      slope: of('slope'),
      brakes: of('brakes'),
      motion: of('motion'),
    },
    net: of('drawn') - of('putBack'),
    drawn: of('drawn'),
    putBack: of('putBack'),
    wheelDrive: of('wheelDrive'),
    wheelBrake: of('wheelBrake'),
    regeneration: {
      recovered: of('recovered'),
      cutOff: of('cutOff'),
      torque: of('torque'),
      grip: of('grip'),
      power: of('power'),
      battery: of('full'),
    },
    peakCurrent: extremes[EXTREME.current]!,
    peakChargeCurrent: extremes[EXTREME.chargeCurrent]!,
    lowestVoltage: extremes[EXTREME.voltage]!,
    aboveContinuous: of('aboveContinuous'),
    hottest: hottest.slice(),
    endCharge: values[STATE.charge]!,
  }
}

/** Series of speed, distance, power, current, voltage, charge and force, beside those of the temperatures. */
const PLAIN = 7

/** Series for `steps` steps and the end of the last, in one piece of memory: a dozen pieces cost a tenth of the trip to get and give back. */
function recorder(steps: number, nodes: number): Recorder {
  const all = new Float64Array((PLAIN + nodes) * (steps + 1))
  let used = 0
  const series = (): Float64Array => all.subarray(used, (used += steps + 1))
  return {
    at: 0,
    speeds: series(),
    distances: series(),
    powers: series(),
    currents: series(),
    voltages: series(),
    charges: series(),
    forces: series(),
    temperatures: Array.from({ length: nodes }, series),
  }
}

/**
 * Drives a plan once from start to end of its trace and keeps the series.
 *
 * Follows the trace as far as motors, grip and battery allow; what the car cannot do is in `asked − distance` and `slowTime`. The equations are
 * in the README of this folder. First order in the step; energy adds up to rounding at any step.
 */
export function simulate(plan: TripPlan): { readonly totals: TripTotals; readonly traces: TripTraces } {
  const ready = tables(plan),
    state = started(ready),
    steps = ready.wanted.length - 1
  const r = recorder(steps, plan.nodes.length)
  follow(ready, state, 0, steps, r)
  // The end of the last step: powers and currents hold from their time on, so the last repeat.
  r.speeds[steps] = state.values[STATE.speed]!
  r.distances[steps] = state.values[STATE.distance]!
  r.charges[steps] = state.values[STATE.charge]!
  for (const series of [r.powers, r.currents, r.voltages, r.forces]) series[steps] = series[steps - 1]!
  for (const [i, series] of r.temperatures.entries()) {
    if (plan.nodes[i]!.capacity < Infinity) series[steps] = state.temperatures[i]!
    else series.fill(state.temperatures[i]!)
  }
  const { at: _, ...series } = r,
    times = new Float64Array(steps + 1)
  for (let k = 1; k <= steps; k++) times[k] = k * plan.step
  return { totals: totals(state), traces: { times, ...series } }
}

/** As `simulate`, without the series: for spread and searches. */
export function simulateTotals(plan: TripPlan): TripTotals {
  const ready = tables(plan),
    state = started(ready)
  follow(ready, state, 0, ready.wanted.length - 1, undefined)
  return totals(state)
}
