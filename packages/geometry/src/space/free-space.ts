import { type AlignedBox, freeVolume, type TriangleMesh, type Vector, type VoxelField } from '@ampwright/engine'
import { type Cubes, cubeAt, cubesIn, middleOf, MOST_CUBES } from './cubes.ts'
import { flood, type Reached, SIDES, sidesReached } from './flood.ts'
import { touchedCubes } from './touched.ts'

/** Which free space is wanted: reached from a place, in cubes of an edge, inside limits; all in metres and the axes of the car. */
export type FreeSpaceAsked = {
  readonly from: Vector
  readonly edge: number
  readonly within: AlignedBox
  /** Cubes that come nearer to a triangle than this count as touched. */
  readonly keep?: number
}
export type FreeSpace = { readonly field: VoxelField; readonly volume: number; readonly reached: Reached }
export type SpaceProblem = { readonly what: string; readonly found: string; readonly accepted: string }

/** A flood that reaches more than this share of every side of the limits is outside of what was scanned. (common practice) */
const LEAKS = 0.5
/** How far round a blocked place, in cubes, a free one is looked for. */
const LOOK = 12

/**
 * The free space a scan leaves round a place: a flood through cubes that no triangle touches, over shared faces, not beyond the limits.
 *
 * A scan is a surface with holes, so there is no inside to ask for. Holes narrower than a cube are shut, wider ones let the flood out; limits shut the open
 * top and bottom of a bay, and how much of each side of them was reached is told. A cube that a triangle touches is not free, so that the volume is below the
 * true one, and nears it as cubes get smaller.
 */
export function freeSpace(
  mesh: TriangleMesh,
  { from, edge, within, keep = 0 }: FreeSpaceAsked,
): FreeSpace | { readonly problem: SpaceProblem } {
  const cubes = cubesIn(within, edge),
    wrong = unusable(cubes, within)
  if (wrong) return { problem: wrong }
  const start = cubeAt(cubes, from)
  if (!start)
    return {
      problem: { what: 'the place the flood starts from lies outside the limits', found: placeText(from), accepted: limitsText(within) },
    }
  const touched = touchedCubes(mesh, cubes, keep)
  if (touched[start[0] + cubes.counts[0] * (start[1] + cubes.counts[1] * start[2])]) return { problem: inWall(cubes, touched, start, from) }
  const free = flood(cubes, touched, start),
    reached = sidesReached(cubes, free)
  if (SIDES.every(side => reached[side] > LEAKS))
    return {
      problem: {
        what: 'the flood reaches the limits on every side: the place is outside, or the scan is open all round',
        found: SIDES.map(side => `${side} ${Math.round(100 * reached[side])} %`).join(', '),
        accepted: 'a place inside, larger cubes to shut its holes, or limits that shut its open sides',
      },
    }
  const field: VoxelField = { low: cubes.low, edge, counts: cubes.counts, free }
  return { field, volume: freeVolume(field), reached }
}

function unusable({ edge, counts: [nx, ny, nz] }: Cubes, within: AlignedBox): SpaceProblem | undefined {
  if (!(edge > 0)) return { what: 'the cubes must have a size', found: `${1000 * edge} mm`, accepted: 'more than 0' }
  if (!(nx * ny * nz > 0))
    return {
      what: 'no cube fits into the limits',
      found: `cubes of ${length(edge)} in ${limitsText(within)}`,
      accepted: 'smaller cubes or wider limits',
    }
  if (nx * ny * nz > MOST_CUBES)
    return {
      what: 'there are too many cubes',
      found: `${nx} × ${ny} × ${nz}`,
      accepted: `at most ${MOST_CUBES}: larger cubes or narrower limits`,
    }
  return undefined
}

/** Says that the start is blocked, and names the nearest place that is not. */
function inWall(cubes: Cubes, touched: Uint8Array, [x, y, z]: readonly [number, number, number], from: Vector): SpaceProblem {
  const [nx, ny, nz] = cubes.counts
  let nearest: readonly [number, number, number] | undefined,
    best = Infinity
  for (let k = Math.max(0, z - LOOK); k <= Math.min(nz - 1, z + LOOK); k++)
    for (let j = Math.max(0, y - LOOK); j <= Math.min(ny - 1, y + LOOK); j++)
      for (let i = Math.max(0, x - LOOK); i <= Math.min(nx - 1, x + LOOK); i++) {
        const away = (i - x) ** 2 + (j - y) ** 2 + (k - z) ** 2
        if (away < best && !touched[i + nx * (j + ny * k)]) {
          best = away
          nearest = [i, j, k]
        }
      }
  const accepted = nearest
    ? `a place in the open; the nearest free cube is at ${placeText(middleOf(cubes, ...nearest))}`
    : 'a place in the open, or smaller cubes'
  return { what: 'the place the flood starts from is in a wall: its cube is touched', found: placeText(from), accepted }
}

const length = (metres: number): string => `${Math.round(metres * 1e4) / 10} mm`
const placeText = (place: Vector): string => `${place.map(x => Math.round(x * 1000)).join(', ')} mm`
const limitsText = ({ low, high }: AlignedBox): string => `${low.map(x => Math.round(x * 1000)).join(', ')} to ${placeText(high)}`
