import { type TriangleMesh, triangleCount } from '@ampwright/engine'
import { checkWritable } from './writable.ts'

const LIST = 13

/**
 * A mesh as a binary PLY file, lowest byte first; coordinates as exact as they are given, corners shared as they are.
 *
 * Throws RangeError on a mesh that is none.
 */
export function writePly(mesh: TriangleMesh): Uint8Array {
  checkWritable(mesh)
  const { positions, triangles } = mesh,
    n = triangleCount(mesh),
    wide = positions instanceof Float64Array,
    size = wide ? 8 : 4
  const header = [
    'ply',
    'format binary_little_endian 1.0',
    'comment Ampwright',
    `element vertex ${positions.length / 3}`,
    ...['x', 'y', 'z'].map(axis => `property ${wide ? 'double' : 'float'} ${axis}`),
    `element face ${n}`,
    'property list uchar uint vertex_indices',
    'end_header\n',
  ].join('\n')
  const bytes = new Uint8Array(header.length + size * positions.length + LIST * n),
    view = new DataView(bytes.buffer)
  for (let i = 0; i < header.length; i++) bytes[i] = header.charCodeAt(i)
  let at = header.length
  for (let i = 0; i < positions.length; i++, at += size) {
    if (wide) view.setFloat64(at, positions[i] as number, true)
    else view.setFloat32(at, positions[i] as number, true)
  }
  for (let k = 0; k < n; k++, at += LIST) {
    view.setUint8(at, 3)
    for (let i = 0; i < 3; i++) view.setUint32(at + 1 + 4 * i, triangles[3 * k + i] as number, true)
  }
  return bytes
}
