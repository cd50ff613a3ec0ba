import type { Vector } from '@ampwright/engine'
import { DoubleSide, Ray, Vector3 } from 'three'
import type { PreparedMesh } from './prepare.ts'

/** The first place where a line of sight meets a mesh, or undefined where it meets none. Both sides of a triangle are seen. */
export function seenAt({ tree }: PreparedMesh, from: Vector, towards: Vector): Vector | undefined {
  const hit = tree.raycastFirst(new Ray(new Vector3(...from), new Vector3(...towards).normalize()), DoubleSide)
  return hit ? [hit.point.x, hit.point.y, hit.point.z] : undefined
}
