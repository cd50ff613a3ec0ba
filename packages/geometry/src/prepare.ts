import { type TriangleMesh, triangleCount } from '@ampwright/engine'
import { BufferAttribute, BufferGeometry } from 'three'
import { MeshBVH } from 'three-mesh-bvh'
import { closedness } from './closedness.ts'
import type { Flat } from './near/pieces.ts'

/** A mesh with the tree of boxes round its triangles that makes questions of distance quick. */
export type PreparedMesh = {
  readonly mesh: TriangleMesh
  readonly tree: MeshBVH
  /** A closed body, so that what lies inside it overlaps it; otherwise a surface, as a scan is. */
  readonly solid: boolean
  /** Puts the triangle at this place of the tree's own order into nine numbers. */
  readonly triangle: (at: number, into: Flat) => void
}

/**
 * Makes a mesh ready for distances. The mesh itself stays as it is: the tree orders a copy of its list of triangles.
 *
 * Throws RangeError when the mesh has no triangles, names corners it does not have, or is to be solid and is not closed.
 */
export function prepare(mesh: TriangleMesh, { solid = false }: { readonly solid?: boolean } = {}): PreparedMesh {
  const { positions } = mesh
  if (triangleCount(mesh) === 0) throw new RangeError('prepare: the mesh must have triangles, found none')
  const corners = positions.length / 3,
    missing = mesh.triangles.findIndex(t => t >= corners)
  if (missing >= 0)
    throw new RangeError(
      `prepare: triangle ${Math.floor(missing / 3)} must name one of ${corners} corners, found ${mesh.triangles[missing]}`,
    )
  if (solid && !closedness(mesh).closed) throw new RangeError('prepare: a solid must be closed, found open edges')
  const order = mesh.triangles.slice(),
    geometry = new BufferGeometry()
  geometry.setAttribute('position', new BufferAttribute(positions, 3))
  geometry.setIndex(new BufferAttribute(order, 1))
  const tree = new MeshBVH(geometry, { verbose: false, setBoundingBox: false })
  const triangle = (at: number, into: Flat): void => {
    for (let i = 0; i < 3; i++) {
      const from = 3 * (order[3 * at + i] as number)
      into[3 * i] = positions[from] as number
      into[3 * i + 1] = positions[from + 1] as number
      into[3 * i + 2] = positions[from + 2] as number
    }
  }
  return { mesh, tree, solid, triangle }
}
