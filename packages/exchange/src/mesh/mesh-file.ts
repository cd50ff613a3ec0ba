import type { TriangleMesh } from '@ampwright/engine'
import { issueOf } from '../issue.ts'

export type MeshFormat = 'STL' | 'OBJ' | 'PLY' | 'glTF'

/** A mesh as its file holds it: corners in the unit and the axes of the file, which only glTF fixes. */
export type MeshFile = {
  readonly format: MeshFormat
  readonly mesh: TriangleMesh
  /** What the format itself says of unit and upward axis. */
  readonly unit?: 'm'
  readonly up?: 'y'
}

/** One thing wrong in a mesh file. Mesh files are mostly binary, so the place is told in words: a line, a byte, a triangle. All words are safe to print. */
export type MeshIssue = { readonly where: string; readonly what: string; readonly found: string; readonly accepted: string }
export type MeshAnswer = MeshFile | { readonly issue: MeshIssue }

export const MOST_MESH_BYTES = 1_000_000_000
export const MOST_TRIANGLES = 2_000_000
/** Three for each triangle: no mesh needs more. */
export const MOST_CORNERS = 3 * MOST_TRIANGLES
/** Coordinates beyond this, in whatever unit, are a fault of the file and would spoil sums of squares. */
export const FURTHEST = 1e9

/** Carries an issue out of the depth of a mesh reader. Readers catch it at their door. */
export class MeshRefusal extends Error {
  readonly issue: MeshIssue
  constructor({ where, what, found, accepted }: MeshIssue) {
    super(what)
    const safe = issueOf({ line: 1, column: 1, path: where, what, found, accepted })
    this.issue = { where: safe.path, what: safe.what, found: safe.found, accepted: safe.accepted }
  }
}

/** Ends a reader with one issue. Throws MeshRefusal. */
export function refuse(where: string, what: string, found: string, accepted: string): never {
  throw new MeshRefusal({ where, what, found, accepted })
}

/** Runs a reader and makes an answer of its refusal. */
export function answered(bytes: Uint8Array, read: () => MeshFile): MeshAnswer {
  try {
    if (bytes.length > MOST_MESH_BYTES)
      refuse('the file', 'the file is too large', `${bytes.length} bytes`, `at most ${MOST_MESH_BYTES} bytes`)
    return read()
  } catch (refusal) {
    if (refusal instanceof MeshRefusal) return { issue: refusal.issue }
    throw refusal
  }
}

/** Refuses too many triangles before room is made for them. */
export function checkCount(triangles: number, where = 'the file'): void {
  if (triangles > MOST_TRIANGLES)
    refuse(
      where,
      'the mesh has too many triangles',
      `${triangles}`,
      `at most ${MOST_TRIANGLES}: make the mesh coarser where it was scanned`,
    )
}

/** Refuses a file without any triangle; `holds` says what it has instead. */
export function checkAny(triangles: number, holds: string): void {
  if (triangles === 0) refuse('the file', 'the file holds no triangles', holds, 'a scan exported as a mesh, not as points or lines')
}

/** Whether a coordinate can stand in a mesh: a number, and not absurdly far out. */
export const isPlace = (value: number): boolean => Math.abs(value) <= FURTHEST
export const PLACE_WANTED = `a number of at most ${FURTHEST}`
