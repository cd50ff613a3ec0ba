import { along, type Curve, segmentFrom } from '../numerics/curve.ts'

/** A cell as measured: everything over the charge taken out since full [C], at one temperature. */
export type CellTable = {
  readonly openCircuit: Curve
  readonly ohmic: Curve
  readonly branches: readonly { readonly resistance: Curve; readonly time: Curve }[]
}
export type CellRun = {
  /** Terminal voltage at the end of each step [V]. */
  readonly voltages: Float64Array
  /** At the terminals, discharging positive [J]; each step counts with the voltage at its end. */
  readonly energy: number
  /** Lost in the ohmic resistance and in the branches [J]. */
  readonly heat: number
}

/**
 * Follows a cell through a series of currents, each held over its step, with the charge taken out as counted by the tester.
 *
 * `steps` in s, one for each current, or one for all; discharge positive; starts at rest. Loops unpack to locals: one run of an hour at 1 Hz costs
 * well under a millisecond. Throws RangeError when the series differ in length.
 * Source: Plett, Battery Management Systems, vol. I (2015), ch. 2 (from memory): exact update of each branch for constant current.
 */
export function cellRun(
  cell: CellTable,
  currents: ArrayLike<number>,
  removed: ArrayLike<number>,
  steps: ArrayLike<number> | number,
): CellRun {
  const n = currents.length
  if (removed.length !== n || (typeof steps !== 'number' && steps.length !== n))
    throw new RangeError(
      `cellRun: ${n} currents need as many charges and steps, found ${removed.length} and ${typeof steps === 'number' ? 1 : steps.length}`,
    )
  const { openCircuit, ohmic, branches } = cell,
    m = branches.length
  const u = new Float64Array(m),
    hintR = new Int32Array(m),
    hintT = new Int32Array(m)
  const voltages = new Float64Array(n)
  let energy = 0,
    heat = 0,
    ho = 0,
    hr = 0
  for (let k = 0; k < n; k++) {
    const i = currents[k]!,
      q = removed[k]!,
      dt = typeof steps === 'number' ? steps : steps[k]!
    hr = segmentFrom(ohmic.x, q, hr)
    ho = segmentFrom(openCircuit.x, q, ho)
    const r = along(ohmic, hr, q)
    let v = along(openCircuit, ho, q) - r * i
    heat += r * i * i * dt
    for (let j = 0; j < m; j++) {
      const { resistance, time } = branches[j]!
      hintR[j] = segmentFrom(resistance.x, q, hintR[j]!)
      hintT[j] = segmentFrom(time.x, q, hintT[j]!)
      const rj = along(resistance, hintR[j]!, q),
        tau = along(time, hintT[j]!, q),
        a = Math.exp(-dt / tau),
        end = rj * i
      const start = u[j]!,
        off = start - end
      u[j] = end + a * off
      v -= u[j]!
      // ∫u²/R dt with u = end + off·e^(−t/τ), exact over the step.
      if (rj > 0) heat += (end * end * dt + 2 * end * off * tau * (1 - a) + (off * off * tau * (1 - a * a)) / 2) / rj
    }
    voltages[k] = v
    energy += v * i * dt
  }
  return { voltages, energy, heat }
}
