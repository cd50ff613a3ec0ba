import type { Vector } from '@ampwright/engine'

type Square = number[][]
const SWEEPS = 50

/**
 * The turn that brings one set of directions as near as can be to another, in the sum of squares; rows are the axes of the second in those of the first.
 *
 * Source: B. K. P. Horn, Closed-form solution of absolute orientation using unit quaternions, J. Opt. Soc. Am. A 4 (1987) 629–642 (from memory): the
 * eigenvector of the largest eigenvalue of a symmetric 4 × 4 matrix is the quaternion. It never mirrors.
 */
export function bestTurn(from: readonly Vector[], to: readonly Vector[]): readonly [Vector, Vector, Vector] {
  const s = [0, 1, 2].map(i =>
    [0, 1, 2].map(j => from.reduce((sum, a, k) => sum + (a[i] as number) * ((to[k] as Vector)[j] as number), 0)),
  ) as Square
  const [[xx, xy, xz], [yx, yy, yz], [zx, zy, zz]] = s as [[number, number, number], [number, number, number], [number, number, number]]
  const [w, x, y, z] = mainAxis([
    [xx + yy + zz, yz - zy, zx - xz, xy - yx],
    [yz - zy, xx - yy - zz, xy + yx, zx + xz],
    [zx - xz, xy + yx, yy - xx - zz, yz + zy],
    [xy - yx, zx + xz, yz + zy, zz - xx - yy],
  ]) as [number, number, number, number]
  return [
    [w * w + x * x - y * y - z * z, 2 * (x * y - w * z), 2 * (x * z + w * y)],
    [2 * (x * y + w * z), w * w - x * x + y * y - z * z, 2 * (y * z - w * x)],
    [2 * (x * z - w * y), 2 * (y * z + w * x), w * w - x * x - y * y + z * z],
  ]
}

/** Eigenvector, length one, of the largest eigenvalue of a symmetric matrix, by turning pairs of axes until nothing is left off the diagonal (Jacobi). */
function mainAxis(given: Square): number[] {
  const n = given.length,
    a = given.map(row => [...row]),
    v: Square = a.map((_, i) => a.map((__, j) => (i === j ? 1 : 0)))
  const at = (m: Square, i: number, j: number): number => (m[i] as number[])[j] as number
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    let off = 0
    for (let p = 0; p < n; p++)
      for (let q = p + 1; q < n; q++) {
        const apq = at(a, p, q)
        off += apq * apq
        if (apq === 0) continue
        const theta = (at(a, q, q) - at(a, p, p)) / (2 * apq),
          t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(theta, 1)),
          c = 1 / Math.hypot(t, 1),
          s = t * c
        for (let k = 0; k < n; k++) turnPair(a[k] as number[], p, q, c, s)
        const [rowP, rowQ] = [a[p] as number[], a[q] as number[]]
        for (let k = 0; k < n; k++) {
          const [x, y] = [rowP[k] as number, rowQ[k] as number]
          rowP[k] = c * x - s * y
          rowQ[k] = s * x + c * y
        }
        for (let k = 0; k < n; k++) turnPair(v[k] as number[], p, q, c, s)
      }
    if (off === 0) break
  }
  const largest = a.reduce((best, _, i) => (at(a, i, i) > at(a, best, best) ? i : best), 0),
    axis = v.map(row => row[largest] as number),
    size = Math.hypot(...axis)
  return axis.map(x => x / size)
}

function turnPair(row: number[], p: number, q: number, c: number, s: number): void {
  const [x, y] = [row[p] as number, row[q] as number]
  row[p] = c * x - s * y
  row[q] = s * x + c * y
}
