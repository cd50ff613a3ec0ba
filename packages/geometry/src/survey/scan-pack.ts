import {
  type BayAnswer,
  type BayModule,
  bayWithin,
  type OrientedBox,
  packBay,
  SQUARE,
  type TriangleMesh,
  type Vector,
  type VoxelField,
} from '@ampwright/engine'
import { type Gap, gapToBox } from '../gap.ts'
import { type PreparedMesh, prepare } from '../prepare.ts'

/** Modules of one kind, and how long is searched: the same seed and steps give the same answer. */
export type ScanPackAsked = { readonly module: BayModule; readonly seed: number; readonly steps: number }
export type ScanPack = {
  readonly answer: BayAnswer
  /** Gap of each module to the scan, over all its triangles, in the order they are placed. */
  readonly gaps: readonly Gap[]
}

/**
 * Modules in the free space of a scan, square to the car, and each of them held against the scan itself once more: the cubes are only a net, the triangles decide.
 *
 * `mesh` as it lies in the car. Throws RangeError where field or module cannot be packed, saying why.
 */
export function scanPack(mesh: TriangleMesh, field: VoxelField, { module, seed, steps }: ScanPackAsked): ScanPack {
  const answer = bayWithin(packBay(field, module, { seed }), steps)
  return answer.placed.length === 0 ? { answer, gaps: [] } : heldAgainst(prepare(mesh), answer)
}

/** An answer of a search held against the scan, over all its triangles. */
export const heldAgainst = (tree: PreparedMesh, answer: BayAnswer): ScanPack => ({
  answer,
  gaps: answer.placed.map(({ box }) => gapToBox(tree, asOriented(box)) as Gap),
})

/** The module that comes nearest to the scan; undefined where none is placed. */
export const nearestOf = ({ gaps }: ScanPack): { readonly at: number; readonly gap: Gap } | undefined =>
  gaps.reduce<{ at: number; gap: Gap } | undefined>(
    (best, gap, at) => (best === undefined || gap.gap < best.gap.gap ? { at, gap } : best),
    undefined,
  )

const asOriented = ({ low, high }: { readonly low: Vector; readonly high: Vector }): OrientedBox => ({
  centre: [(low[0] + high[0]) / 2, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2],
  half: [(high[0] - low[0]) / 2, (high[1] - low[1]) / 2, (high[2] - low[2]) / 2],
  axes: SQUARE,
})
