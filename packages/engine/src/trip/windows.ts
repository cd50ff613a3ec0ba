/** Stretches over which currents are averaged [s]: what fuses, cables, contactors and cells are rated by. */
export const WINDOWS = [1, 10, 30, 60, 180, 600, 1800] as const

/**
 * Highest root mean square of a series over each stretch; values hold for one step each. A stretch longer than the series counts the whole of it.
 *
 * Why apart from `highestRms`: at equal steps one sum of squares serves all stretches. Stretches are taken to whole steps.
 */
export function highestByWindow(values: Float64Array, steps: number, step: number, windows: readonly number[] = WINDOWS): Float64Array {
  const sums = new Float64Array(steps + 1)
  for (let k = 0, sum = 0; k < steps; k++) sums[k + 1] = sum += values[k]! * values[k]!
  return Float64Array.from(windows, window => {
    const n = Math.min(steps, Math.max(1, Math.round(window / step)))
    let most = 0
    for (let k = n; k <= steps; k++) {
      const inside = sums[k]! - sums[k - n]!
      if (inside > most) most = inside
    }
    return Math.sqrt(most / n)
  })
}
