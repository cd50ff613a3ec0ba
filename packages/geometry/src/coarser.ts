import type { TriangleMesh } from '@ampwright/engine'
import { boundsOf } from './measures.ts'

/** How much wider the cells get while too many triangles are left. */
const NEXT = 1.15
/** Cells along one side, at most: three such numbers make one that a double holds exactly. */
const MOST_ALONG = 2 ** 17
const UNNAMED = 0xffffffff

/**
 * A mesh of no more triangles than asked, to be looked at while it turns, never to be measured: all corners in one cell of a grid of cubes become one corner in the middle of
 * them, and a triangle that has lost its area that way is left out. A mesh that is small enough comes back as it is, with cells of width zero.
 *
 * No corner leaves its cell, so that nothing moves by more than the diagonal of one. Takes time in proportion to the mesh. Throws RangeError when less than one triangle is asked.
 *
 * Source: J. Rossignac, P. Borrel, «Multi-resolution 3D approximations for rendering complex scenes», in Modeling in Computer Graphics, Springer 1993 (vertex clustering; from memory).
 */
export function coarser(mesh: TriangleMesh, most: number): { readonly mesh: TriangleMesh; readonly cell: number } {
  if (!(most >= 1)) throw new RangeError(`at least one triangle is asked for, not ${most}`)
  if (mesh.triangles.length / 3 <= most) return { mesh, cell: 0 }
  const { low, high } = boundsOf(mesh),
    widest = Math.max(...high.map((h, i) => h - (low[i] as number)))
  // In a skin of squares as wide as a cell each has two triangles.
  let cell = Math.max(Math.sqrt((2 * areaOf(mesh)) / most), widest / (MOST_ALONG - 1), Number.MIN_VALUE)
  for (;;) {
    const found = clustered(mesh, low, cell)
    if (found.triangles.length / 3 <= most) return { mesh: found, cell }
    cell *= NEXT
  }
}

function clustered({ positions, triangles }: TriangleMesh, low: readonly number[], cell: number): TriangleMesh {
  const [x0, y0, z0] = low as [number, number, number],
    names = new Uint32Array(positions.length / 3).fill(UNNAMED),
    cells = new Map<number, number>(),
    sums: number[] = [],
    counts: number[] = [],
    kept: number[] = []
  /** The name of the cell a corner is in; a corner that no triangle uses counts nowhere. */
  const cellOf = (corner: number): number => {
    const before = names[corner] as number
    if (before !== UNNAMED) return before
    const x = positions[3 * corner] as number,
      y = positions[3 * corner + 1] as number,
      z = positions[3 * corner + 2] as number,
      key = (Math.floor((x - x0) / cell) * MOST_ALONG + Math.floor((y - y0) / cell)) * MOST_ALONG + Math.floor((z - z0) / cell)
    let name = cells.get(key)
    if (name === undefined) {
      cells.set(key, (name = counts.length))
      counts.push(0)
      sums.push(0, 0, 0)
    }
    counts[name] = (counts[name] as number) + 1
    sums[3 * name] = (sums[3 * name] as number) + x
    sums[3 * name + 1] = (sums[3 * name + 1] as number) + y
    sums[3 * name + 2] = (sums[3 * name + 2] as number) + z
    names[corner] = name
    return name
  }
  for (let k = 0; k < triangles.length; k += 3) {
    const a = cellOf(triangles[k] as number),
      b = cellOf(triangles[k + 1] as number),
      c = cellOf(triangles[k + 2] as number)
    if (a !== b && b !== c && c !== a) kept.push(a, b, c)
  }
  return { positions: Float64Array.from(sums, (s, i) => s / (counts[Math.floor(i / 3)] as number)), triangles: Uint32Array.from(kept) }
}

/** Area of a mesh, without what `measures` finds besides. */
function areaOf({ positions, triangles }: TriangleMesh): number {
  let sum = 0
  for (let k = 0; k < triangles.length; k += 3) {
    const a = 3 * (triangles[k] as number),
      b = 3 * (triangles[k + 1] as number),
      c = 3 * (triangles[k + 2] as number),
      ux = (positions[b] as number) - (positions[a] as number),
      uy = (positions[b + 1] as number) - (positions[a + 1] as number),
      uz = (positions[b + 2] as number) - (positions[a + 2] as number),
      vx = (positions[c] as number) - (positions[a] as number),
      vy = (positions[c + 1] as number) - (positions[a + 1] as number),
      vz = (positions[c + 2] as number) - (positions[a + 2] as number)
    sum += Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx) / 2
  }
  return sum
}
