/** A log of speed, and a run in neutral cut out of one: the same length, times rising. SI. */
export type SpeedLog = { readonly times: Float64Array; readonly speeds: Float64Array }

/** Half the window of the running mean [s]: evens out a logger's noise, bends a coast-down by less than a thousandth. Common practice. */
const HALF_WINDOW = 1
/** A rise by this much [m/s] is no noise: the car is being driven again. */
const RISE = 0.4
/** A car in neutral loses less than this [m/s²], even up a slope; more is braking. Common practice. */
const BRAKING = 1.5
/** A pause in the log that ends a run [s]. */
const PAUSE = 3
/** What falls by less than this [m/s], 30 km/h, is no coast-down. */
const LEAST_FALL = 30 / 3.6

/**
 * Running mean of a log over a second to either side, times and speeds alike, so that uneven samples do not shift it; near the ends the window shrinks
 * on both sides.
 */
export function smoothed({ times, speeds }: SpeedLog): SpeedLog {
  const n = times.length,
    first = times[0] ?? 0,
    last = times[n - 1] ?? 0
  const t = new Float64Array(n),
    v = new Float64Array(n)
  for (let i = 0, low = 0; i < n; i++) {
    const now = times[i]!,
      half = Math.min(HALF_WINDOW, now - first, last - now) + 1e-9
    while (times[low]! < now - HALF_WINDOW - 1e-9) low++
    let count = 0
    for (let k = low; k < n && times[k]! <= now + half; k++) {
      if (times[k]! < now - half) continue
      t[i]! += times[k]!
      v[i]! += speeds[k]!
      count++
    }
    t[i]! /= count
    v[i]! /= count
  }
  return { times: t, speeds: v }
}

/** The runs in neutral of a log, smoothed: stretches along which the speed falls by itself, neither driven nor braked nor interrupted. */
export function coastingRuns(log: SpeedLog): readonly SpeedLog[] {
  const { times: t, speeds: v } = smoothed(log),
    runs: SpeedLog[] = []
  let start = 0,
    low = 0
  const close = (end: number): void => {
    let top = start
    for (let k = start; k <= end; k++) if (v[k]! > v[top]!) top = k
    if (end > top && v[top]! - v[end]! >= LEAST_FALL) runs.push({ times: t.slice(top, end + 1), speeds: v.slice(top, end + 1) })
  }
  for (let i = 1, back = 0; i < t.length; i++) {
    while (t[back]! < t[i]! - 1) back++
    const from = Math.max(start, back - 1),
      braked = t[i]! - t[from]! > 0.5 && (v[from]! - v[i]!) / (t[i]! - t[from]!) > BRAKING
    const paused = t[i]! - t[i - 1]! > PAUSE
    if (paused || braked || v[i]! > v[low]! + RISE) {
      close(paused ? i - 1 : braked ? from : low)
      start = low = i
    } else if (v[i]! < v[low]!) low = i
  }
  close(low)
  return runs
}

/**
 * When a smoothed run passes a speed, by a straight line between samples; where noise makes it pass more than once, the middle between first and last.
 * NaN where it does not pass it.
 */
export function passing({ times, speeds }: SpeedLog, speed: number): number {
  let first = Number.NaN,
    last = Number.NaN
  for (let i = 1; i < times.length; i++) {
    const a = speeds[i - 1]!,
      b = speeds[i]!
    if (!(a >= speed && b < speed) && !(a < speed && b >= speed)) continue
    const at = times[i - 1]! + ((a - speed) / (a - b)) * (times[i]! - times[i - 1]!)
    if (Number.isNaN(first)) first = at
    last = at
  }
  return (first + last) / 2
}

/** Time a run takes from one speed down to another; NaN where it does not pass both. */
export const stepTime = (run: SpeedLog, from: number, to: number): number => passing(run, to) - passing(run, from)
