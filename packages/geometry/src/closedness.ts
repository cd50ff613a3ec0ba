import type { TriangleMesh } from '@ampwright/engine'
import { joined } from './joined.ts'

export type Closedness = {
  /** Every edge is passed as often one way as the other: there is an inside, and triangles agree which side of them it is. */
  readonly closed: boolean
  /** Edges that only one triangle has: the rims of holes. */
  readonly openEdges: number
  /** Edges where triangles do not agree which side is out, or more than two meet unevenly. */
  readonly oddEdges: number
}

/**
 * Whether a mesh is closed. Corners at the same place count as one; triangles without area, two of whose corners are one, do not count.
 *
 * Edges are numbered by their two corners and sorted: one list of numbers, no object for each. Two corners of at most 6 million give numbers below 2⁵³.
 */
export function closedness(mesh: TriangleMesh): Closedness {
  const { positions, triangles } = joined(mesh),
    corners = positions.length / 3,
    keys = new Float64Array(triangles.length)
  let count = 0
  for (let k = 0; k < triangles.length; k += 3) {
    const [a, b, c] = [triangles[k], triangles[k + 1], triangles[k + 2]] as [number, number, number]
    if (a === b || b === c || c === a) continue
    keys[count++] = edge(a, b, corners)
    keys[count++] = edge(b, c, corners)
    keys[count++] = edge(c, a, corners)
  }
  const sorted = keys.subarray(0, count).sort()
  let openEdges = 0,
    oddEdges = 0
  for (let i = 0; i < count; ) {
    const name = Math.floor((sorted[i] as number) / 2)
    let [there, back] = [0, 0]
    for (; i < count && Math.floor((sorted[i] as number) / 2) === name; i++) {
      if ((sorted[i] as number) % 2 === 0) there++
      else back++
    }
    if (there + back === 1) openEdges++
    else if (there !== back) oddEdges++
  }
  return { closed: count > 0 && openEdges === 0 && oddEdges === 0, openEdges, oddEdges }
}

/** One number for an edge, even one way, odd the other. */
const edge = (from: number, to: number, corners: number): number => (from < to ? 2 * (from * corners + to) : 2 * (to * corners + from) + 1)
