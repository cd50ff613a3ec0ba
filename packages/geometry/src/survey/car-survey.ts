import {
  lengthOf,
  minus,
  type ScanTask,
  type SurveyedGap,
  type SurveyOfScan,
  times,
  type TriangleMesh,
  type Vector,
  type VoxelField,
} from '@ampwright/engine'
import { byPicks } from '../align/by-picks.ts'
import { type Placement, placed } from '../align/placement.ts'
import { type Gap, gapBetween, gapToBox } from '../gap.ts'
import { boundsOf } from '../measures.ts'
import { prepare, type PreparedMesh } from '../prepare.ts'
import { freeSpace } from '../space/free-space.ts'
import type { PartMeshes } from './part-pairs.ts'
import { wayPast } from './way-in.ts'

/** A scan of the car surveyed: what the engine takes, the mesh as it lies, and its free space where that was asked for. */
export type CarSurvey = { readonly survey: SurveyOfScan; readonly lies?: LiesInCar; readonly field?: VoxelField }
export type LiesInCar = { readonly placement: Placement; readonly mesh: TriangleMesh; readonly tree: PreparedMesh }

/** Measures what the engine asks of a scan: how it lies, its free space, how near each body comes and how it comes in, over all triangles of it and of its `parts`. */
export function carSurvey(mesh: TriangleMesh, task: ScanTask, parts: PartMeshes = new Map()): CarSurvey {
  const alignment = byPicks(task.picks, { mirrored: task.mirrored, ...(task.unit ? { unit: task.unit } : {}) })
  if ('problem' in alignment) return { survey: unmeasured(task, saying(alignment.problem)) }
  const inPlace = placed(mesh, alignment.placement),
    { free } = task,
    space = free && freeSpace(inPlace, { from: free.from, edge: free.edge, within: free.within ?? boundsOf(inPlace) }),
    tree = prepare(inPlace)
  const survey: SurveyOfScan = {
    pose: task.pose,
    residual: tidy(alignment.residual),
    residuals: alignment.residuals.map(tidy),
    ...(space && 'field' in space ? { cubes: Math.round(space.volume / space.field.edge ** 3), reached: space.reached } : {}),
    ...(space && 'problem' in space ? { noSpace: saying(space.problem) } : {}),
    gaps: gapsTo(tree, task.bodies, parts),
    ways: waysPast(tree, task.bodies, parts),
  }
  return {
    survey,
    lies: { placement: alignment.placement, mesh: inPlace, tree },
    ...(space && 'field' in space ? { field: space.field } : {}),
  }
}

/** A scan on which nothing can be measured, and why. */
export const unmeasured = ({ pose }: Pick<ScanTask, 'pose'>, fault: string): SurveyOfScan => ({
  pose,
  fault,
  residual: 0,
  residuals: [],
  gaps: {},
  ways: {},
})

/** How near each body comes to a scan that lies in the car already: what a moved body needs anew. One that stands as before is as `before` says. */
export const gapsTo = (
  tree: PreparedMesh,
  bodies: ScanTask['bodies'],
  parts: PartMeshes = new Map(),
  before: SurveyOfScan['gaps'] = {},
): SurveyOfScan['gaps'] =>
  Object.fromEntries(
    bodies.map(({ name, pose, box }) => {
      const known = before[name],
        part = parts.get(name)
      if (known?.pose === pose) return [name, known]
      return [name, surveyedAt(pose, box.centre, (part ? gapBetween(tree, part, { pose: box }) : gapToBox(tree, box)) as Gap)]
    }),
  )

/** The same of how each body that says its way in comes past the scan. */
export const waysPast = (
  tree: PreparedMesh,
  bodies: ScanTask['bodies'],
  parts: PartMeshes = new Map(),
  before: SurveyOfScan['ways'] = {},
): SurveyOfScan['ways'] =>
  Object.fromEntries(
    bodies.flatMap(({ name, box, way }) => {
      const known = before[name]
      return way ? [[name, known?.pose === way.pose ? known : wayPast(tree, box, way, parts.get(name))]] : []
    }),
  )

function surveyedAt(pose: string, place: Vector, { gap, onFirst, onSecond }: Gap): SurveyedGap {
  const line = minus(onSecond, onFirst),
    far = lengthOf(line)
  return { pose, place, apart: gap, at: onFirst, away: far > 0 ? times(line, 1 / far) : [0, 0, 0] }
}

/** What is left of sums of binary fractions is nothing [m]. */
const tidy = (left: number): number => (left < 1e-9 ? 0 : left)
const saying = ({ what, found, accepted }: { readonly what: string; readonly found: string; readonly accepted: string }): string =>
  `${what}; found ${found}; accepted ${accepted}`
