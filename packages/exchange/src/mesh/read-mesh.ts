import { quoted } from '../issue.ts'
import { readGltf } from './gltf.ts'
import { isGlb } from './gltf-buffers.ts'
import { type MeshAnswer, MeshRefusal } from './mesh-file.ts'
import { readObj } from './obj.ts'
import { readPly } from './ply.ts'
import { isBinaryStl, readStl } from './stl.ts'
import { Words } from './words.ts'

const OBJ_WORDS = ['v', 'vn', 'vt', 'f', 'o', 'g', 's', 'mtllib', 'usemtl', '#']

/** A mesh from a file of any of the known formats, told apart by what is in it, not by its name; or one issue. */
export function readMesh(file: Uint8Array): MeshAnswer {
  const bytes = startsWithMark(file) ? file.subarray(3) : file
  if (isGlb(bytes)) return readGltf(bytes)
  const words = new Words(bytes)
  if (!words.next()) return { issue: unknown(bytes.length === 0 ? 'an empty file' : `${bytes.length} bytes without a word`) }
  if (words.is('ply') && words.line === 1) return readPly(bytes)
  if (words.is('solid') || isBinaryStl(bytes)) return readStl(bytes)
  if (bytes[words.from] === 123 /* { */) return readGltf(bytes)
  const word = words.text()
  if (OBJ_WORDS.includes(word) || word.startsWith('#')) return readObj(bytes)
  // A binary STL begins with eighty bytes of anything; one that was cut off has no fitting length.
  if (bytes.subarray(0, 84).includes(0)) return readStl(bytes)
  return { issue: unknown(quoted(word)) }
}

const startsWithMark = (bytes: Uint8Array): boolean => bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf
const unknown = (found: string) =>
  new MeshRefusal({ where: 'the file', what: 'this is no mesh that is known', found, accepted: 'STL, OBJ, PLY, glTF or GLB' }).issue
