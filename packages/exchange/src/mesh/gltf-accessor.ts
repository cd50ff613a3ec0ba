import type { GltfParts } from './gltf-buffers.ts'
import type { JsonPart } from './json-parts.ts'
import { MOST_CORNERS, refuse } from './mesh-file.ts'

type Stored = { readonly bytes: number; readonly most: number; readonly read: (view: DataView, at: number) => number }

/** Component types of glTF by their number; `most` is what stands for 1 where values are normalised. */
const STORED: Readonly<Record<number, Stored>> = {
  5120: { bytes: 1, most: 127, read: (v, at) => v.getInt8(at) },
  5121: { bytes: 1, most: 255, read: (v, at) => v.getUint8(at) },
  5122: { bytes: 2, most: 32767, read: (v, at) => v.getInt16(at, true) },
  5123: { bytes: 2, most: 65535, read: (v, at) => v.getUint16(at, true) },
  5125: { bytes: 4, most: 0xffffffff, read: (v, at) => v.getUint32(at, true) },
  5126: { bytes: 4, most: 1, read: (v, at) => v.getFloat32(at, true) },
}
const WIDTHS: Readonly<Record<string, number>> = { SCALAR: 1, VEC2: 2, VEC3: 3 }

/** The numbers of an accessor, one row of `type` after the other. Throws MeshRefusal. */
export function accessorValues(parts: GltfParts, accessor: JsonPart, type: 'SCALAR' | 'VEC3'): Float64Array {
  const width = WIDTHS[type] as number,
    count = accessor.at('count').whole()
  if (accessor.at('type').text() !== type) refuse(accessor.where, 'an accessor is of the wrong type', `${accessor.at('type').text()}`, type)
  if (count > (type === 'VEC3' ? MOST_CORNERS : 3 * MOST_CORNERS))
    refuse(accessor.where, 'the mesh has too many corners', `${count}`, `at most ${MOST_CORNERS}`)
  const values = new Float64Array(width * count)
  if (accessor.has('bufferView')) {
    const stored = storedAs(accessor),
      source = viewed(parts, accessor, stored.bytes * width, count)
    copy(source, stored, width, count, values, scaleOf(accessor, stored))
  }
  if (accessor.has('sparse')) replace(parts, accessor, values, width, count)
  return values
}

const scaleOf = (accessor: JsonPart, stored: Stored): number =>
  accessor.at('normalized').value === true && stored.most > 1 ? 1 / stored.most : 1

function storedAs(part: JsonPart): Stored {
  const code = part.at('componentType').whole()
  return (
    STORED[code] ??
    refuse(`${part.where}.componentType`, 'numbers are stored in a way that is not known', `${code}`, Object.keys(STORED).join(', '))
  )
}

type Source = { readonly view: DataView; readonly stride: number }

/** Where the rows of an accessor lie, once it is sure that all of them are there. */
function viewed(parts: GltfParts, accessor: JsonPart, row: number, count: number): Source {
  const view = accessor.at('bufferView').of(parts.views, 'buffer view')
  if (view.has('extensions') && view.at('extensions').has('EXT_meshopt_compression'))
    refuse(view.where, 'the mesh is compressed in a way that is not read', 'EXT_meshopt_compression', 'a file saved without compression')
  const buffer = view.at('buffer')
  buffer.of(parts.buffers, 'buffer')
  const bytes = (parts.bytesOf[buffer.whole()] as () => Uint8Array)(),
    start = view.at('byteOffset').whole(0),
    room = view.at('byteLength').whole(),
    offset = accessor.at('byteOffset').whole(0),
    stride = view.at('byteStride').whole(row)
  if (start + room > bytes.length)
    refuse(view.where, 'a buffer view reaches beyond its buffer', `${start + room} bytes`, `at most ${bytes.length} bytes`)
  const needed = count === 0 ? 0 : offset + stride * (count - 1) + row
  if (stride < row || needed > room)
    refuse(accessor.where, 'an accessor reaches beyond its buffer view', `${needed} bytes`, `at most ${room} bytes`)
  return { view: new DataView(bytes.buffer, bytes.byteOffset + start + offset, needed - (count === 0 ? 0 : offset)), stride }
}

function copy({ view, stride }: Source, { bytes, read }: Stored, width: number, count: number, into: Float64Array, scale: number): void {
  for (let k = 0; k < count; k++)
    for (let i = 0; i < width; i++) into[width * k + i] = Math.max(scale === 1 ? -Infinity : -1, read(view, stride * k + bytes * i) * scale)
}

/** Rows that a sparse accessor puts in the place of others. */
function replace(parts: GltfParts, accessor: JsonPart, values: Float64Array, width: number, count: number): void {
  const sparse = accessor.at('sparse'),
    n = sparse.at('count').whole()
  if (n > count) refuse(`${sparse.where}.count`, 'more is replaced than there is', `${n}`, `at most ${count}`)
  const indices = sparse.at('indices'),
    replaced = sparse.at('values'),
    whole = storedAs(indices),
    stored = storedAs(accessor)
  const at = new Float64Array(n),
    rows = new Float64Array(width * n)
  copy(viewed(parts, indices, whole.bytes, n), whole, 1, n, at, 1)
  copy(viewed(parts, replaced, stored.bytes * width, n), stored, width, n, rows, scaleOf(accessor, stored))
  for (let k = 0; k < n; k++) {
    const to = at[k] as number
    if (to >= count) refuse(indices.where, 'a row is replaced that is not there', `${to}`, `below ${count}`)
    values.set(rows.subarray(width * k, width * (k + 1)), width * to)
  }
}
