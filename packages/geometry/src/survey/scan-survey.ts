import type { OrientedBox, TriangleMesh } from '@ampwright/engine'
import { byAxes, FILE_AXES, type FileAxis } from '../align/axes.ts'
import { type Alignment, byPicks, type Pick } from '../align/by-picks.ts'
import { type Placement, placed } from '../align/placement.ts'
import { FILE_UNITS, type FileUnit, unitsBySize } from '../align/unit.ts'
import { type Gap, gapToBox } from '../gap.ts'
import { boundsOf, type MeshMeasures, measures } from '../measures.ts'
import { prepare } from '../prepare.ts'
import { type FreeSpace, type FreeSpaceAsked, freeSpace } from '../space/free-space.ts'

/** What a person says and asks of a scan. Lengths in metres and the axes of the car; only picks on the scan are as in its file. */
export type ScanAsked = {
  readonly unit?: FileUnit
  readonly up?: FileAxis
  readonly rear?: FileAxis
  readonly mirrored?: boolean
  readonly picks?: readonly Pick[]
  readonly free?: FreeSpaceAsked
  readonly boxes?: readonly OrientedBox[]
}
export type ScanSurvey = {
  /** In the unit of the file. */
  readonly file: MeshMeasures
  /** Units that would give the scan a likely size, the likeliest first. */
  readonly likelyUnits: readonly FileUnit[]
  readonly lies?: {
    readonly placement: Placement
    readonly mesh: TriangleMesh
    readonly inCar: MeshMeasures
    /** Only where it was laid by picks. */
    readonly alignment?: Alignment
  }
  readonly free?: FreeSpace
  readonly gaps: readonly Gap[]
}
/** What stands in the way, and which of the things said or asked it is about. */
export type ScanProblem = {
  readonly about: 'unit' | 'axes' | 'picks' | 'place' | 'free'
  readonly what: string
  readonly found: string
  readonly accepted: string
}

/** Cosine of the widest angle between upwards as the picks put it and as it was said: 30°. A scan knows gravity better than that. (common practice) */
const UPRIGHT = Math.cos(Math.PI / 6)

/** What points leave over that is more than reading them explains, m. (common practice) */
const MISFIT = 0.01
const millimetres = (metres: number): string => `${Number((1000 * metres).toPrecision(2))} mm`

/** Everything a scan says once: what it is, where it lies, and where that is known, the free space and the gaps asked for. */
export function scanSurvey(mesh: TriangleMesh, asked: ScanAsked): ScanSurvey | { readonly problem: ScanProblem } {
  const file = measures(mesh),
    base = { file, likelyUnits: unitsBySize(file.bounds), gaps: [] },
    laid = placementOf(asked)
  if (laid && 'problem' in laid) return laid
  const { free: wanted, boxes = [] } = asked
  if (!laid) {
    if (!wanted && boxes.length === 0) return base
    const accepted = 'three points picked, or unit, up and rear'
    return {
      problem: { about: 'place', what: 'where the scan lies in the car is not known', found: 'no points picked, no axes', accepted },
    }
  }
  const inPlace = placed(mesh, laid.placement),
    free = wanted && freeSpace(inPlace, wanted)
  if (free && 'problem' in free) return { problem: { about: 'free', ...free.problem } }
  const tree = boxes.length > 0 ? prepare(inPlace) : undefined,
    gaps = tree ? boxes.map(box => gapToBox(tree, box) as Gap) : []
  const lies = { ...laid, mesh: inPlace, inCar: moved(file, inPlace, laid.placement.scale) }
  return { ...base, lies, gaps, ...(free ? { free } : {}) }
}

/** The measures in the car: whether it is closed does not change with its place. */
function moved(file: MeshMeasures, mesh: TriangleMesh, scale: number): MeshMeasures {
  const { closed, openEdges, oddEdges, triangles, volume } = file
  return {
    closed,
    openEdges,
    oddEdges,
    triangles,
    bounds: boundsOf(mesh),
    area: file.area * scale ** 2,
    ...(volume === undefined ? {} : { volume: volume * scale ** 3 }),
  }
}

type Laid = { readonly placement: Placement; readonly alignment?: Alignment }

function placementOf({ unit, up, rear, mirrored = false, picks = [] }: ScanAsked): Laid | { readonly problem: ScanProblem } | undefined {
  if (picks.length > 0) return byPoints(picks, unit, up, mirrored)
  if (up === undefined && rear === undefined) return undefined
  if (up === undefined || rear === undefined)
    return problem('axes', 'one axis does not say how the scan lies', up === undefined ? `rear ${rear}` : `up ${up}`, 'up and rear')
  if (unit === undefined) return problem('unit', 'the unit of the scan is not known', 'none', Object.keys(FILE_UNITS).join(', '))
  const placement = byAxes({ scale: FILE_UNITS[unit], up, rear, mirrored })
  return placement ? { placement } : problem('axes', 'up and rear are the same axis', `up ${up}, rear ${rear}`, 'two different axes')
}

function byPoints(
  picks: readonly Pick[],
  unit: FileUnit | undefined,
  up: FileAxis | undefined,
  mirrored: boolean,
): Laid | { readonly problem: ScanProblem } {
  const alignment = byPicks(picks, { mirrored, ...(unit === undefined ? {} : { unit }) })
  if ('problem' in alignment) return { problem: { about: 'picks', ...alignment.problem } }
  const { placement } = alignment,
    other = byPicks(picks, { mirrored: !mirrored, ...(unit === undefined ? {} : { unit }) })
  // Three points fit the mirror image as well; four that do not lie in one plane tell it.
  if (!('problem' in other) && alignment.residual > MISFIT && other.residual < alignment.residual / 3)
    return problem(
      'picks',
      mirrored ? 'the points fit the scan as it is, not its mirror image' : 'the points fit the mirror image of the scan, not the scan',
      `${millimetres(alignment.residual)} left over, ${millimetres(other.residual)} the other way about`,
      'mirrored said where it is, or points in the right order',
    )
  if (up !== undefined) {
    const [x, y, z] = FILE_AXES[up],
      [a, b, c] = placement.turn[2],
      upright = x * a + y * b + z * c
    if (upright < UPRIGHT)
      return problem(
        'picks',
        'the points put the scan on its side or its head',
        `${Math.round((180 / Math.PI) * Math.acos(Math.max(-1, upright)))}° between ${up} of the file and upwards`,
        'points in the right order, and whether the scan is mirrored',
      )
  }
  return { placement, alignment }
}

const problem = (about: ScanProblem['about'], what: string, found: string, accepted: string): { readonly problem: ScanProblem } => ({
  problem: { about, what, found, accepted },
})
