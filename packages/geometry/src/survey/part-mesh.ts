import { isAsLarge, type MeshTask, type SurveyedMesh, type TriangleMesh, type Vector } from '@ampwright/engine'
import { byAxes, type FileAxes } from '../align/axes.ts'
import { placed } from '../align/placement.ts'
import { FILE_UNITS, type FileUnit, fileUnits } from '../align/unit.ts'
import { closedness } from '../closedness.ts'
import { boundsOf } from '../measures.ts'
import { type PreparedMesh, prepare } from '../prepare.ts'

/** A mesh as its file holds it; only some formats fix unit and upward axis. */
export type PartFile = { readonly mesh: TriangleMesh; readonly unit?: FileUnit | undefined; readonly up?: 'y' | undefined }
/** A mesh of a part laid into its own axes, its middle at the origin; `ready` where it is as large as its sides say, so that it may stand for the part. */
export type PartMesh = { readonly found: SurveyedMesh; readonly mesh: TriangleMesh; readonly ready?: PreparedMesh }

/** The format that fixes an upward axis looks ahead along its third. */
const AXES = { plain: { up: 'z', rear: 'x' }, upright: { up: 'y', rear: '-z' } } as const satisfies Readonly<
  Record<string, Pick<FileAxes, 'up' | 'rear'>>
>

/** Lays a mesh into the sides of its part: in the unit said, else in that of its format, else in the one that fits the sides best. */
export function partMesh({ mesh, unit: fixed, up }: PartFile, { pose, unit: said, sides, within }: MeshTask): PartMesh {
  const axes = up === 'y' ? AXES.upright : AXES.plain,
    raw = extentOf(turned(mesh, 1, axes)),
    unit = said ?? fixed ?? unitBySides(raw, sides),
    laid = turned(mesh, FILE_UNITS[unit], axes),
    { low, high } = boundsOf(laid)
  const middle = low.map((l, i) => (l + (high[i] as number)) / 2),
    centred: TriangleMesh = { positions: laid.positions.map((x, i) => x - (middle[i % 3] as number)), triangles: laid.triangles },
    { closed } = closedness(centred),
    found = { pose, sides: extentOf(centred), closed, triangles: mesh.triangles.length / 3 }
  return { found, mesh: centred, ...(isAsLarge(found.sides, sides, within) ? { ready: prepare(centred, { solid: closed }) } : {}) }
}

/** A mesh that cannot be read, and why. */
export const unreadable = ({ pose }: MeshTask, fault: string): SurveyedMesh => ({
  pose,
  fault,
  sides: [0, 0, 0],
  closed: false,
  triangles: 0,
})

const turned = (mesh: TriangleMesh, scale: number, axes: Pick<FileAxes, 'up' | 'rear'>): TriangleMesh =>
  placed(mesh, byAxes({ scale, ...axes }) as NonNullable<ReturnType<typeof byAxes>>)

function extentOf(mesh: TriangleMesh): Vector {
  const { low, high } = boundsOf(mesh)
  return [high[0] - low[0], high[1] - low[1], high[2] - low[2]]
}

/** The unit in which the largest share a side is off is least. */
function unitBySides(extent: Vector, sides: Vector): FileUnit {
  const off = (unit: FileUnit): number =>
    extent.reduce((most, e, i) => Math.max(most, Math.abs(Math.log((e * FILE_UNITS[unit]) / (sides[i] as number)))), 0)
  return fileUnits.reduce((best, unit) => (off(unit) < off(best) ? unit : best))
}
