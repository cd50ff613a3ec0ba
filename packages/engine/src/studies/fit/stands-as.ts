import type { Vector } from '../../fitting/vector.ts'
import type { SurveyedMesh, SurveyedMeshes } from '../../model/survey.ts'
import { type Fact, standard } from '../../working/value.ts'
import type { PlacedShape } from './places.ts'

/** Further off than this a mesh is not that of a part with these sides. */
export const MESH_OFF: Fact = standard('mesh-off', 'how far a mesh may be off the sides of its part', 'Δ_m', 0.002, 'm', {
  work: 'practice',
  place: 'drawings of parts against parts',
  mark: 'common practice',
})

/** Length, width and height of a shape [m]. */
export const sidesOf = ([a, b, c]: PlacedShape['sides']): Vector => [a.value, b.value, c.value]
/** Mesh and sides of a shape in one text: what a mesh measures holds for them alone. */
export const meshPose = ({ mesh, sides }: PlacedShape): string => JSON.stringify([mesh?.mark, mesh?.unit ?? '', sidesOf(sides)])

/** Whether a mesh is as large as the sides of its shape, so that it may stand for it. */
export const isAsLarge = (found: readonly number[], sides: readonly number[], within: number): boolean =>
  found.every((f, i) => Math.abs(f - (sides[i] as number)) <= within)

/** What stands for a shape: its box, its mesh, or nothing yet while the mesh is being measured. */
export function standsAs(shape: PlacedShape, meshes: SurveyedMeshes['shapes'] | undefined): 'box' | 'mesh' | 'being measured' {
  if (!shape.mesh) return 'box'
  const found = meshNow(shape, meshes)
  if (!found) return 'being measured'
  return found.fault === undefined && isAsLarge(found.sides, sidesOf(shape.sides), MESH_OFF.value) ? 'mesh' : 'box'
}
export function meshNow(shape: PlacedShape, meshes: SurveyedMeshes['shapes'] | undefined): SurveyedMesh | undefined {
  const found = meshes?.[shape.name]
  return found?.pose === meshPose(shape) ? found : undefined
}
