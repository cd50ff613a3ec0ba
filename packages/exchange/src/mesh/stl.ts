import { quoted } from '../issue.ts'
import { answered, checkAny, checkCount, isPlace, type MeshAnswer, type MeshFile, PLACE_WANTED, refuse } from './mesh-file.ts'
import { stlText } from './stl-text.ts'
import { Words } from './words.ts'

const HEADER = 84
const RECORD = 50
/** Header and the first triangles. */
const NEAR = 1000

/**
 * A mesh from an STL file, text or binary; or one issue. Normals and colours are passed over: they follow from the corners, or do not matter here.
 *
 * Text begins with `solid`; but so do the headers of some binary files. These hold zero bytes near their start, which no text does.
 * Source: the format as 3D Systems published it in 1989 (from memory).
 */
export const readStl = (bytes: Uint8Array): MeshAnswer =>
  answered(bytes, () => (isText(bytes) ? { format: 'STL', mesh: stlText(bytes) } : stlBinary(bytes)))

function isText(bytes: Uint8Array): boolean {
  const words = new Words(bytes)
  return words.next() && words.is('solid') && !bytes.subarray(0, NEAR).includes(0)
}

const viewOf = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
const countOf = (bytes: Uint8Array): number => viewOf(bytes).getUint32(80, true)

/** Whether a file is as long as the number of triangles in a binary STL says. */
export const isBinaryStl = (bytes: Uint8Array): boolean => bytes.length > HEADER && bytes.length === HEADER + RECORD * countOf(bytes)

function stlBinary(bytes: Uint8Array): MeshFile {
  if (bytes.length < HEADER)
    refuse(
      'byte 0',
      'this is no STL file',
      bytes.length === 0 ? 'an empty file' : `${bytes.length} bytes, ${quoted(String.fromCharCode(...bytes.subarray(0, 20)))}`,
      `text that begins with solid, or at least ${HEADER} bytes`,
    )
  const n = countOf(bytes),
    room = HEADER + RECORD * n
  if (bytes.length < room)
    refuse(`byte ${bytes.length}`, 'the file is cut off', `${bytes.length} bytes`, `${room} bytes for the ${n} triangles it announces`)
  // Fewer bytes than a triangle behind the last one are padding of some exporters.
  if (bytes.length >= room + RECORD)
    refuse(
      `byte ${room}`,
      'the file is longer than it announces',
      `${bytes.length} bytes`,
      `${room} bytes for the ${n} triangles it announces`,
    )
  checkCount(n, 'byte 80')
  checkAny(n, 'a header that announces none')
  const view = viewOf(bytes),
    positions = new Float32Array(9 * n)
  for (let k = 0, at = HEADER + 12; k < n; k++, at += RECORD)
    for (let i = 0; i < 9; i++) {
      const value = view.getFloat32(at + 4 * i, true)
      if (!isPlace(value))
        refuse(`triangle ${k + 1}, corner ${Math.floor(i / 3) + 1}`, 'a coordinate is not accepted', `${value}`, PLACE_WANTED)
      positions[9 * k + i] = value
    }
  return { format: 'STL', mesh: { positions, triangles: Uint32Array.from({ length: 3 * n }, (_, i) => i) } }
}
