import type { OrientedBox } from '../../fitting/box.ts'
import type { Vector } from '../../fitting/vector.ts'
import type { Model } from '../../model/model.ts'
import { type Ask, type Gaps, isGaps } from '../study.ts'
import { closePairs, pairName, pairPose } from './pairs.ts'
import { type PlacedShape, places, shapesOf } from './places.ts'
import { MESH_OFF, meshPose, sidesOf } from './stands-as.ts'

/** A mesh that is to be laid into the sides of its shape: plain numbers, so that it can go to another thread. */
export type MeshTask = {
  readonly shape: string
  /** Name of the file beside the conversion, and its fingerprint. */
  readonly file: string
  readonly mark: string
  readonly pose: string
  readonly unit?: 'mm' | 'cm' | 'm' | 'in' | 'ft'
  /** Length, width and height as stated, and how far the mesh may be off them [m]. */
  readonly sides: Vector
  readonly within: number
}
/** Two shapes whose boxes come close, one of them or both with a mesh. */
export type PairTask = {
  readonly name: string
  readonly pose: string
  readonly one: { readonly name: string; readonly box: OrientedBox }
  readonly other: { readonly name: string; readonly box: OrientedBox }
}
export type MeshesTask = { readonly meshes: readonly MeshTask[]; readonly pairs: readonly PairTask[] }

/** All shapes that have their place, what stays in the car among them. */
export function placedShapes(m: Model, ask: Ask): readonly PlacedShape[] {
  const answer = ask(places)
  if (isGaps(answer)) return []
  return shapesOf(m).flatMap(([name]) => {
    const s = answer.shapes[name] as PlacedShape | Gaps
    return isGaps(s) ? [] : [s]
  })
}

/** What is to be measured of the meshes of parts; nothing where no shape has one. */
export function meshesTask(m: Model, ask: Ask): MeshesTask {
  const all = placedShapes(m, ask)
  return {
    meshes: all.flatMap((shape): readonly MeshTask[] => {
      const { name, mesh, sides } = shape
      if (!mesh) return []
      return [{ ...mesh, shape: name, pose: meshPose(shape), sides: sidesOf(sides), within: MESH_OFF.value }]
    }),
    pairs: closePairs(all)
      .filter(({ one, other }) => one.mesh ?? other.mesh)
      .map(({ one, other }) => ({
        name: pairName(one, other),
        pose: pairPose(one, other),
        one: { name: one.name, box: one.box },
        other: { name: other.name, box: other.box },
      })),
  }
}
