import type { Vector } from '@ampwright/engine'
import type { PreparedMesh } from './prepare.ts'

/** A plane by the direction square to it and how far along that it stands from the origin. */
export type Plane = { readonly normal: Vector; readonly at: number }

/**
 * Where a plane cuts a mesh: straight pieces, six numbers each (x, y, z of both ends), in no order. A triangle that lies in the plane gives none; its neighbours do.
 */
export function section(mesh: PreparedMesh, { normal, at }: Plane): Float64Array {
  const [nx, ny, nz] = normal,
    triangle = new Float64Array(9),
    heights = new Float64Array(3),
    pieces: number[] = []
  mesh.tree.shapecast({
    intersectsBounds: ({ min, max }) => {
      const middle = (nx * (min.x + max.x) + ny * (min.y + max.y) + nz * (min.z + max.z)) / 2 - at,
        reach = (Math.abs(nx) * (max.x - min.x) + Math.abs(ny) * (max.y - min.y) + Math.abs(nz) * (max.z - min.z)) / 2
      return Math.abs(middle) <= reach
    },
    intersectsRange: (offset, count) => {
      for (let k = offset; k < offset + count; k++) {
        mesh.triangle(k, triangle)
        for (let i = 0; i < 3; i++)
          heights[i] = nx * (triangle[3 * i] as number) + ny * (triangle[3 * i + 1] as number) + nz * (triangle[3 * i + 2] as number) - at
        cut(triangle, heights, pieces)
      }
      return false
    },
  })
  return Float64Array.from(pieces)
}

/** Adds the piece in which a triangle is cut, if it is. A corner in the plane counts as above, so that neighbours agree. */
function cut(triangle: Float64Array, heights: Float64Array, pieces: number[]): void {
  const above = [0, 1, 2].map(i => (heights[i] as number) >= 0)
  if (above[0] === above[1] && above[1] === above[2]) return
  for (let i = 0; i < 3; i++) {
    const j = (i + 1) % 3
    if (above[i] === above[j]) continue
    // From below upwards, whichever way the edge runs: the triangle on its other side finds the same place to the last bit.
    const [low, high] = above[i] ? [j, i] : [i, j],
      share = (heights[low] as number) / ((heights[low] as number) - (heights[high] as number))
    for (let axis = 0; axis < 3; axis++) {
      const p = triangle[3 * low + axis] as number
      pieces.push(p + share * ((triangle[3 * high + axis] as number) - p))
    }
  }
}
