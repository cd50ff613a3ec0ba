import type { TriangleMesh } from '@ampwright/engine'

/** Holds a mesh to what every format can say. Throws RangeError naming the corner or triangle. */
export function checkWritable({ positions, triangles }: TriangleMesh): void {
  if (positions.length % 3 !== 0) throw new RangeError(`positions must hold three numbers for each corner, found ${positions.length}`)
  if (triangles.length % 3 !== 0) throw new RangeError(`triangles must hold three corners for each, found ${triangles.length}`)
  for (let i = 0; i < positions.length; i++)
    if (!Number.isFinite(positions[i]))
      throw new RangeError(`corner ${Math.floor(i / 3)} must have numbers as coordinates, found ${positions[i]}`)
  const corners = positions.length / 3
  for (let i = 0; i < triangles.length; i++)
    if ((triangles[i] as number) >= corners)
      throw new RangeError(`triangle ${Math.floor(i / 3)} must name one of ${corners} corners, found ${triangles[i]}`)
}
