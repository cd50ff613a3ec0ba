import { type Columns, column } from './cell-data.ts'

export type PulseData = {
  readonly removed: number
  readonly times: Float64Array
  readonly currents: Float64Array
  readonly voltages: Float64Array
}

/** Pulses of a given current in a file, each from the last sample at rest to the end of the rest after it. */
export function pulsesOf(data: Columns, current: number, tolerance = 0.03): readonly PulseData[] {
  const t = column(data, 'time_s'),
    i = column(data, 'current_A'),
    v = column(data, 'voltage_V'),
    q = column(data, 'removed_Ah'),
    out: PulseData[] = []
  const resting = (k: number): boolean => Math.abs(i[k]!) < 0.02 * current
  for (let k = 1; k < data.rows; k++) {
    if (!resting(k - 1) || resting(k)) continue
    let end = k,
      most = 0
    while (end < data.rows && !resting(end)) most = Math.max(most, i[end++]!)
    let stop = end
    while (stop < data.rows && resting(stop) && t[stop]! - t[end - 1]! < 1300) stop++
    if (Math.abs(most - current) < tolerance * current && t[end - 1]! - t[k]! < 12 && t[stop - 1]! - t[end - 1]! > 900)
      out.push({ removed: q[k - 1]!, times: t.slice(k - 1, stop), currents: i.slice(k - 1, stop), voltages: v.slice(k - 1, stop) })
    k = end
  }
  return out
}
