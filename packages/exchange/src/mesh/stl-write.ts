import { type TriangleMesh, triangleCount } from '@ampwright/engine'
import { checkWritable } from './writable.ts'

const HEADER = 84
const RECORD = 50

/**
 * A mesh as a binary STL file. Coordinates are kept to 24 bits, normals worked out from the corners; a triangle without area gets none.
 *
 * Throws RangeError on a mesh that is none: corners that are not there, or coordinates that are no numbers.
 */
export function writeStl(mesh: TriangleMesh): Uint8Array {
  checkWritable(mesh)
  const n = triangleCount(mesh),
    { positions, triangles } = mesh,
    bytes = new Uint8Array(HEADER + RECORD * n),
    view = new DataView(bytes.buffer)
  for (const [i, letter] of [...'Ampwright'].entries()) bytes[i] = letter.charCodeAt(0)
  view.setUint32(80, n, true)
  const corner = (k: number, axis: number): number => positions[3 * (triangles[k] as number) + axis] as number
  for (let k = 0, at = HEADER; k < n; k++, at += RECORD) {
    const side = (to: number, axis: number): number => corner(3 * k + to, axis) - corner(3 * k, axis)
    const [ux, uy, uz, vx, vy, vz] = [side(1, 0), side(1, 1), side(1, 2), side(2, 0), side(2, 1), side(2, 2)]
    const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx],
      size = Math.hypot(nx, ny, nz) || 1
    view.setFloat32(at, nx / size, true)
    view.setFloat32(at + 4, ny / size, true)
    view.setFloat32(at + 8, nz / size, true)
    for (let i = 0; i < 9; i++) view.setFloat32(at + 12 + 4 * i, corner(3 * k + Math.floor(i / 3), i % 3), true)
  }
  return bytes
}
