import type { Vector } from '@ampwright/engine'
import { DoubleSide, Ray, Vector3 } from 'three'
import type { PreparedMesh } from './prepare.ts'

export type Hit = {
  readonly place: Vector
  readonly distance: number
  /** Square to the triangle that was hit, length one, towards where the look came from. */
  readonly facing: Vector
}

/** What a look from a place along a direction meets first, so that a point of a scan can be picked; both sides of a triangle stop it. */
export function firstHit({ tree }: PreparedMesh, from: Vector, along: Vector): Hit | undefined {
  const size = Math.hypot(...along)
  if (!(size > 0)) throw new RangeError('firstHit: the look must have a direction, found none')
  const ray = new Ray(new Vector3(...from), new Vector3(...along).divideScalar(size)),
    hit = tree.raycastFirst(ray, DoubleSide)
  if (!hit?.face) return undefined
  const { x, y, z } = hit.face.normal,
    towards = x * ray.direction.x + y * ray.direction.y + z * ray.direction.z > 0 ? -1 : 1
  return { place: [hit.point.x, hit.point.y, hit.point.z], distance: hit.distance, facing: [towards * x, towards * y, towards * z] }
}
