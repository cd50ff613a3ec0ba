import { at, type Curve } from '../numerics/index.ts'

/** What a charge is given: the pack, what comes in, and when it ends. Currents and powers positive into the battery. */
export type ChargePlan = {
  readonly openCircuit: Curve
  readonly resistance: Curve
  readonly resistanceFactor: number
  readonly branchResistance: number
  readonly branchTime: number
  readonly coldFactor: Curve
  readonly capacity: number
  /** Charging current the cells allow warm, its share over temperature and over charge, and the temperature below which nothing is charged. */
  readonly cellCurrent: number
  readonly temperatureShare: Curve
  readonly chargeTaper: Curve
  readonly lowestTemperature: number
  /** What comes in: most power to the pack, most current, the voltage it is set to. */
  readonly power: number
  readonly current: number
  readonly voltage: number
  /** Heater in the pack: power, and the temperature up to which it runs while the cells hold the charge back. */
  readonly heaterPower: number
  readonly heaterTo: number
  readonly heatCapacity: number
  readonly conductance: number
  readonly outside: number
  readonly startTemperature: number
  readonly from: number
  readonly to: number
  /** Ends a full charge: current as a share of the capacity per hour. */
  readonly fullCurrent: number
  /** Ends it in any case. */
  readonly most: number
}
export type ChargeTotals = {
  /** The longest time followed, where the charge wanted is not reached in it; without end where it never will be. */
  readonly time: number
  readonly charge: number
  /** At the terminals; into the charge (loss in the battery taken off); by the heater. */
  readonly taken: number
  readonly stored: number
  readonly heater: number
  /** Time with no current because the cells were too cold. */
  readonly warming: number
  readonly highestCurrent: number
  readonly endTemperature: number
  /** Time during which the cells, not the outlet, held the charge back. */
  readonly heldBack: number
}
/** What keeps a charge from ever coming to its end: cells too cold, the voltage it is set to, no power left for the pack. */
export type Stopped = 'cold' | 'voltage' | 'power'
export type ChargeTraces = {
  readonly times: Float64Array
  readonly charges: Float64Array
  readonly powers: Float64Array
  readonly currents: Float64Array
  readonly voltages: Float64Array
  readonly temperatures: Float64Array
}

/** Step of a charge [s]. */
export const CHARGE_STEP = 10
/** Below this share of the capacity per hour nothing flows to speak of. */
const HARDLY = 1e-4

/**
 * Charges a pack from one charge to another, in steps of 10 s.
 *
 * Current: the least of what outlet and charger give (power and current), what the cells take at this temperature and charge, and what keeps the voltage
 * to its setting: I = (U_set − U_oc − u)/R. Power gives I = (−E + √(E² + 4·R·P))/(2·R), E = U_oc + u. While the cells hold the charge back and are below the
 * heater's target, the heater runs, its power taken from what comes in. The pack warms by R·I² + u²/R_1, by the heater, and by the air around it. A charge
 * to full ends when the current has fallen to its end; within the last step it ends by share, so that it is smooth. Leaves out: diffusion, which makes
 * the tail 10 to 20 % longer down to C/10; reversible heat.
 */
export function chargeRun(
  plan: ChargePlan,
  step = CHARGE_STEP,
): { readonly totals: ChargeTotals; readonly traces: ChargeTraces; readonly stopped: Stopped | undefined } {
  const { capacity, cellCurrent, power, voltage, heatCapacity, conductance, outside, to, most } = plan
  const kept = Math.exp(-step / plan.branchTime),
    cooled = Math.exp((-step * conductance) / heatCapacity),
    end = (plan.fullCurrent * capacity) / 3600
  const steps = Math.ceil(most / step),
    series = (): number[] => [],
    t: number[] = [],
    charges = series(),
    powers = series(),
    currents = series(),
    voltages = series(),
    temperatures = series()
  let z = plan.from,
    u = 0,
    warmth = plan.startTemperature,
    taken = 0,
    stored = 0,
    heater = 0,
    warming = 0,
    highest = 0,
    heldBack = 0,
    before = 0
  let time = z >= to ? 0 : Number.POSITIVE_INFINITY
  let stopped: Stopped | undefined
  const hardly = (HARDLY * capacity) / 3600
  for (let k = 0; k < steps && time === Number.POSITIVE_INFINITY && stopped === undefined; k++) {
    const open = at(plan.openCircuit, z),
      cold = at(plan.coldFactor, warmth),
      r0 = plan.resistanceFactor * at(plan.resistance, z) * cold,
      r1 = plan.branchResistance * cold,
      inner = open + u
    const cellsAt = (t: number): number =>
      t < plan.lowestTemperature ? 0 : cellCurrent * at(plan.temperatureShare, t) * at(plan.chargeTaper, z)
    const cells = cellsAt(warmth),
      byPower = (p: number): number => (-inner + Math.sqrt(inner * inner + 4 * r0 * p)) / (2 * r0)
    const byVoltage = (voltage - inner) / r0,
      outlet = Math.min(plan.current, byPower(power))
    const heating = warmth < plan.heaterTo && cells < Math.min(outlet, byVoltage),
      left = heating ? Math.max(0, power - plan.heaterPower) : power
    const current = Math.max(0, Math.min(plan.current, byPower(left), cells, byVoltage))
    const heat = r0 * current * current + (u * u) / r1 + (heating ? Math.min(plan.heaterPower, power) : 0),
      settles = outside + heat / conductance
    // Nothing flows, and waiting changes nothing: what the cells will warm or cool to does not let any in either.
    if (current < hardly) {
      if ((voltage - open) / r0 < hardly && (to < 1 || before === 0)) stopped = 'voltage'
      else if (outlet < hardly) stopped = 'power'
      else if (cells < hardly && cellsAt(heating ? Math.min(settles, plan.heaterTo) : settles) < hardly) stopped = 'cold'
      if (stopped !== undefined) break
    }
    const rise = (current * step) / capacity,
      falling = to >= 1 && byVoltage <= Math.min(cells, outlet) && current <= end
    // Ends within this step: where the charge wanted is passed, or the current passes its end.
    const share =
        z + rise >= to && rise > 0 ? (to - z) / rise : falling && before > end ? (before - end) / (before - current) : falling ? 0 : 1,
      ends = z + rise >= to || falling
    const lasts = Math.min(ends ? share * step : step, most - k * step)
    t.push(k * step)
    charges.push(z)
    powers.push(current * (inner + r0 * current))
    currents.push(current)
    voltages.push(inner + r0 * current)
    temperatures.push(warmth)
    taken += current * (inner + r0 * current) * lasts
    stored += open * current * lasts
    if (heating) heater += Math.min(plan.heaterPower, power) * lasts
    if (current < hardly) warming += lasts
    if (cells < Math.min(outlet, byVoltage)) heldBack += lasts
    highest = Math.max(highest, current)
    z += (current * lasts) / capacity
    if (ends) time = k * step + lasts
    u = kept * u + (1 - kept) * r1 * current
    warmth = settles + (warmth - settles) * cooled
    before = current
  }
  t.push(Math.min(time, most))
  charges.push(z)
  powers.push(powers.at(-1) ?? 0)
  currents.push(currents.at(-1) ?? 0)
  voltages.push(voltages.at(-1) ?? at(plan.openCircuit, z))
  temperatures.push(warmth)
  return {
    totals: {
      time: stopped === undefined ? Math.min(time, most) : Number.POSITIVE_INFINITY,
      charge: z,
      taken,
      stored,
      heater,
      warming,
      highestCurrent: highest,
      endTemperature: warmth,
      heldBack,
    },
    traces: {
      times: Float64Array.from(t),
      charges: Float64Array.from(charges),
      powers: Float64Array.from(powers),
      currents: Float64Array.from(currents),
      voltages: Float64Array.from(voltages),
      temperatures: Float64Array.from(temperatures),
    },
    stopped,
  }
}
