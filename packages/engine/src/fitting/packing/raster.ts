/** Places a box can begin or end along one side when all are pushed to its start: sums of whole sides of boxes. */
export type Raster = {
  /** The sums up to the limit, rising from 0. */
  readonly points: readonly number[]
  /** Largest sum not above each whole number up to the limit. */
  readonly below: Int32Array
}

/** Sums of sides up to a limit. What is longer than the largest sum is waste in any packing. */
export function raster(limit: number, sides: readonly number[]): Raster {
  const below = new Int32Array(limit + 1),
    points = [0]
  for (let n = 1; n <= limit; n++) {
    const sum = sides.some(s => n >= s && below[n - s] === n - s)
    if (sum) points.push(n)
    below[n] = sum ? n : (below[n - 1] as number)
  }
  return { points, below }
}

/** The largest sum of sides that fits. */
export const shrunk = (limit: number, sides: readonly number[]): number => raster(limit, sides).points.at(-1) as number

export function commonDivisor(a: number, b: number): number {
  return b === 0 ? a : commonDivisor(b, a % b)
}
