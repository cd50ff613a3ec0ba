import type { Vector } from '../vector.ts'
import type { VoxelField } from '../voxel-field.ts'
import { MOST_PLACES } from './bay-lattice.ts'
import type { BoxBuild, PackSpace, BoxSide } from './pack-types.ts'

/** The room for modules inside a battery box: a field, and where it is square its exact corners. */
export type Interior = {
  readonly field: VoxelField
  readonly low?: Vector
  readonly high?: Vector
}

/** What walls, plate, lid and busbars take on each side of the interior [m]. */
export function marginsOf({ wall, plate, lid, busbar }: BoxBuild, busbars: BoxSide): { readonly low: Vector; readonly high: Vector } {
  const strip = (side: BoxSide): number => (side === busbars ? busbar : 0)
  return {
    low: [wall + strip('front'), wall + strip('left'), wall + plate],
    high: [wall + strip('back'), wall + strip('right'), wall + lid],
  }
}

/**
 * The room for modules in a space, with the busbars along one side; undefined where there is none. In a field of cubes margins are rounded up to whole cubes; a square room is cut
 * into no more cubes than can be searched with so many ways round.
 */
export function interiorOf(space: PackSpace, box: BoxBuild, busbars: BoxSide, ways: number): Interior | undefined {
  const { low, high } = marginsOf(box, busbars)
  if (space.kind === 'field') {
    return { field: eroded(space.field, low, high) }
  }
  const from = space.low.map((c, i) => c + (low[i] as number)) as unknown as Vector,
    to = space.high.map((c, i) => c - (high[i] as number)) as unknown as Vector
  if (from.some((c, i) => c >= (to[i] as number))) return undefined
  return { field: fieldOf(from, to, MOST_PLACES / ways), low: from, high: to }
}

/** Edges tried for a square interior [m]: fine enough for modules, coarse enough to search. */
const EDGES = Array.from({ length: 41 }, (_, i) => 0.01 + i * 0.00025)
const HAIR = 1e-9

/** The edge of cubes that leaves least of three sides over, among those that make no more cubes than asked. */
function bestEdge(sides: readonly number[], most: number): number {
  const waste = (edge: number): number => sides.reduce((sum, s) => sum + (s - Math.floor(s / edge + HAIR) * edge) / s, 0),
    cubes = (edge: number): number => countsOf(sides, edge).reduce((product, n) => product * n, 1)
  const few = EDGES.filter(edge => cubes(edge) <= most)
  return few.length > 0
    ? few.reduce((best, edge) => (waste(edge) <= waste(best) ? edge : best))
    : Math.cbrt(sides.reduce((product, s) => product * s, 1) / most)
}
const countsOf = (sides: readonly number[], edge: number): readonly number[] => sides.map(s => Math.floor(s / edge + HAIR))

function fieldOf(from: Vector, to: Vector, most: number): VoxelField {
  const sides = to.map((c, i) => c - (from[i] as number)),
    edge = bestEdge(sides, most),
    counts = countsOf(sides, edge) as unknown as VoxelField['counts']
  return { low: from, edge, counts, free: new Uint8Array(counts[0] * counts[1] * counts[2]).fill(1) }
}

/** The cubes of a field with so much free room before and behind them along every axis. */
export function eroded(field: VoxelField, low: Vector, high: Vector): VoxelField {
  const free = Uint8Array.from(field.free),
    [nx, ny, nz] = field.counts
  const lines: readonly (readonly [n: number, stride: number, m1: number, s1: number, m2: number, s2: number])[] = [
    [nx, 1, ny, nx, nz, nx * ny],
    [ny, nx, nx, 1, nz, nx * ny],
    [nz, nx * ny, nx, 1, ny, nx],
  ]
  lines.forEach(([n, stride, m1, s1, m2, s2], axis) => {
    const before = Math.ceil((low[axis] as number) / field.edge - HAIR),
      behind = Math.ceil((high[axis] as number) / field.edge - HAIR)
    for (let b = 0; b < m2; b++)
      for (let a = 0; a < m1; a++) {
        const start = a * s1 + b * s2
        let from = 0
        for (let k = 0; k <= n; k++) {
          if (k < n && free[start + k * stride]) continue
          // A run of free cubes from `from` to k: what lies too near its ends is taken off.
          for (let i = from; i < k; i++) if (i < from + before || i >= k - behind) free[start + i * stride] = 0
          from = k + 1
        }
      }
  })
  return { ...field, free }
}
