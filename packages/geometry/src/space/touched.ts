import type { TriangleMesh } from '@ampwright/engine'
import { type Cubes, middleOf } from './cubes.ts'
import { touchesCube } from './touching.ts'

/** Triangles whose box holds more cubes than this are cut into four first, so that one long slanted wall does not ask of every cube of the space. */
const MOST_ASKED = 64
/** Walls on the very side of a cube touch it, whatever rounding says. In parts of the edge. */
const TOUCH = 1e-6

/**
 * Which cubes any triangle touches, or comes nearer to than `keep` along each axis: 1 for each of them.
 *
 * Every triangle asks only the cubes of its own box.
 */
export function touchedCubes({ positions, triangles }: TriangleMesh, cubes: Cubes, keep: number): Uint8Array {
  const [nx, ny, nz] = cubes.counts,
    touched = new Uint8Array(nx * ny * nz),
    mark = marker(cubes, touched, keep),
    triangle = new Float64Array(9)
  for (let k = 0; k < triangles.length; k += 3) {
    for (let i = 0; i < 9; i++) triangle[i] = positions[3 * (triangles[k + Math.floor(i / 3)] as number) + (i % 3)] as number
    mark(triangle)
  }
  return touched
}

function marker(cubes: Cubes, touched: Uint8Array, keep: number): (triangle: Float64Array) => void {
  const { edge, low, counts } = cubes,
    [nx, ny] = counts,
    margin = keep + TOUCH * edge,
    half = edge / 2 + margin,
    from = new Int32Array(3),
    to = new Int32Array(3)
  /** The cubes the triangle's box reaches, within the limits; false where there are none. */
  const reach = (t: Float64Array): boolean => {
    for (let axis = 0; axis < 3; axis++) {
      const [p, q, r] = [t[axis], t[axis + 3], t[axis + 6]] as [number, number, number],
        start = low[axis as 0 | 1 | 2],
        last = counts[axis as 0 | 1 | 2] - 1
      from[axis] = Math.max(0, Math.min(last + 1, Math.floor((Math.min(p, q, r) - margin - start) / edge)))
      to[axis] = Math.min(last, Math.max(-1, Math.floor((Math.max(p, q, r) + margin - start) / edge)))
      if ((from[axis] as number) > (to[axis] as number)) return false
    }
    return true
  }
  const mark = (t: Float64Array): void => {
    if (!reach(t)) return
    const [x0, y0, z0] = from as unknown as [number, number, number],
      [x1, y1, z1] = to as unknown as [number, number, number],
      asked = (x1 - x0 + 1) * (y1 - y0 + 1) * (z1 - z0 + 1)
    if (asked > MOST_ASKED && longestSide(t) > 2 * half) return quarters(t).forEach(mark)
    for (let z = z0; z <= z1; z++)
      for (let y = y0; y <= y1; y++)
        for (let x = x0; x <= x1; x++) {
          const at = x + nx * (y + ny * z)
          if (touched[at]) continue
          const [cx, cy, cz] = middleOf(cubes, x, y, z)
          if (touchesCube(t, cx, cy, cz, half)) touched[at] = 1
        }
  }
  return mark
}

function longestSide(t: Float64Array): number {
  const side = (i: number, j: number): number =>
    Math.hypot(
      (t[i] as number) - (t[j] as number),
      (t[i + 1] as number) - (t[j + 1] as number),
      (t[i + 2] as number) - (t[j + 2] as number),
    )
  return Math.max(side(0, 3), side(3, 6), side(6, 0))
}

/** A triangle cut at the middles of its edges. */
function quarters(t: Float64Array): readonly Float64Array[] {
  const corner = (i: number): readonly number[] => [t[i] as number, t[i + 1] as number, t[i + 2] as number]
  const [a, b, c] = [corner(0), corner(3), corner(6)] as const
  const middle = (p: readonly number[], q: readonly number[]): readonly number[] => p.map((x, i) => (x + (q[i] as number)) / 2)
  const [ab, bc, ca] = [middle(a, b), middle(b, c), middle(c, a)]
  return [
    [a, ab, ca],
    [ab, b, bc],
    [ca, bc, c],
    [ab, bc, ca],
  ].map(corners => Float64Array.from(corners.flat()))
}
