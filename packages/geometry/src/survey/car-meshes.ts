import type { MeshesTask, MeshTask, SurveyedMesh, SurveyedMeshes } from '@ampwright/engine'
import { type PartFile, type PartMesh, partMesh, unreadable } from './part-mesh.ts'
import { type PartMeshes, pairsOf } from './part-pairs.ts'
import type { PreparedMesh } from '../prepare.ts'

/** The meshes of a car's parts surveyed: what the engine takes, and those that stand for their parts. */
export type CarMeshes = { readonly survey: SurveyedMeshes; readonly laid: ReadonlyMap<string, PartMesh>; readonly parts: PartMeshes }

/** Lays the meshes of parts and measures how near these come to each other. `read` gives what a file holds, or why it cannot be read; what was laid and measured `before` is kept where it holds. */
export function carMeshes(task: MeshesTask, read: (mesh: MeshTask) => PartFile | string, before?: CarMeshes): CarMeshes {
  const shapes: Record<string, SurveyedMesh> = {},
    laid = new Map<string, PartMesh>(),
    parts = new Map<string, PreparedMesh>()
  for (const mesh of task.meshes) {
    const known = before?.laid.get(mesh.shape),
      file = known?.found.pose === mesh.pose ? undefined : read(mesh),
      now = known?.found.pose === mesh.pose ? known : typeof file === 'object' ? partMesh(file, mesh) : undefined
    shapes[mesh.shape] = now ? now.found : unreadable(mesh, file as string)
    if (now) laid.set(mesh.shape, now)
    if (now?.ready) parts.set(mesh.shape, now.ready)
  }
  return { survey: { shapes, pairs: pairsOf(task.pairs, parts, before?.survey.pairs) }, laid, parts }
}
