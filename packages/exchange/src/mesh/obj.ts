import { whole } from './decimal.ts'
import { MeshBuilder } from './mesh-builder.ts'
import { answered, type MeshAnswer, type MeshFile, refuse } from './mesh-file.ts'
import { Words } from './words.ts'

const SLASH = 47
const HASH = 35

/**
 * A mesh from an OBJ file; or one issue. Corners (`v`) and faces (`f`) are read; everything else, as normals, textures, groups, lines and curves, is passed
 * over. A face with more than three corners is cut into a fan from its first.
 *
 * Source: the object file format as Wavefront documented it (from memory).
 */
export const readObj = (bytes: Uint8Array): MeshAnswer => answered(bytes, () => objMesh(bytes))

function objMesh(bytes: Uint8Array): MeshFile {
  const words = new Words(bytes),
    mesh = new MeshBuilder(() => words.where())
  do {
    if (!words.inLine() || bytes[words.from] === HASH) continue
    if (words.is('v')) corner(words, mesh)
    else if (words.is('f') || words.is('fo')) face(words, mesh)
  } while (words.nextLine())
  return {
    format: 'OBJ',
    mesh: mesh.mesh(mesh.corners > 0 ? `${mesh.corners} corners (v) and no faces (f)` : 'neither corners (v) nor faces (f)'),
  }
}

/** Three coordinates; a weight or a colour behind them is passed over. */
function corner(words: Words, mesh: MeshBuilder): void {
  const x = words.coordinate(words.inLine()),
    y = words.coordinate(words.inLine())
  mesh.corner(x, y, words.coordinate(words.inLine()))
}

function face(words: Words, mesh: MeshBuilder): void {
  let corners = 0,
    first = 0,
    last = 0
  while (words.inLine() && words.bytes[words.from] !== HASH) {
    const at = named(words, mesh.corners)
    if (corners === 0) first = at
    else if (corners >= 2) mesh.triangle(first, last, at)
    last = at
    corners++
  }
  if (corners < 3) refuse(words.where(), 'a face has too few corners', `${corners}`, 'three or more')
}

/** The corner a face names, counted from 0: from 1 on in the file, or back from the latest when below zero; what follows a slash is passed over. */
function named(words: Words, corners: number): number {
  let end = words.from
  while (end < words.to && words.bytes[end] !== SLASH) end++
  const n = whole(words.bytes, words.from, end),
    at = n < 0 ? corners + n : n - 1
  if (at >= 0 && at < corners) return at
  const accepted = corners > 0 ? `1 to ${corners}, or -1 to -${corners}: the corners above this line` : 'corners (v) above the faces'
  return refuse(
    words.where(),
    Number.isNaN(n) ? 'a face names no corner' : 'a face names a corner that is not there',
    words.found(),
    accepted,
  )
}
