import { accessorValues } from './gltf-accessor.ts'
import { type GltfParts, gltfParts } from './gltf-buffers.ts'
import { placedMeshes, type Transform, turningSense } from './gltf-nodes.ts'
import type { JsonPart } from './json-parts.ts'
import { MeshBuilder } from './mesh-builder.ts'
import { answered, checkCount, isPlace, type MeshAnswer, type MeshFile, PLACE_WANTED, refuse } from './mesh-file.ts'

const [TRIANGLES, STRIP, FAN] = [4, 5, 6]
/** Extensions that a file may need though nothing here looks at them: they colour, or are understood. */
const HARMLESS = /^(KHR_mesh_quantization|KHR_(materials|texture|lights|xmp)_.*|EXT_texture_.*)$/
const COMPRESSED = ['KHR_draco_mesh_compression', 'EXT_meshopt_compression', 'KHR_meshopt_compression']

/**
 * The meshes of a glTF 2.0 scene as one, each where its node puts it; or one issue. Read are GLB files, and documents that carry their buffers as base64. Lines,
 * points, skins, morphs and everything of colour are passed over. A compressed mesh is refused by name.
 *
 * glTF fixes metres and y up. Source: glTF 2.0 specification, The Khronos Group (from memory).
 */
export const readGltf = (bytes: Uint8Array): MeshAnswer => answered(bytes, () => gltfMesh(bytes))

function gltfMesh(bytes: Uint8Array): MeshFile {
  const parts = gltfParts(bytes)
  checkDocument(parts.document)
  let at = 'the file',
    passed = 0
  const mesh = new MeshBuilder(() => at)
  for (const { mesh: part, transform } of placedMeshes(parts.document))
    for (const primitive of part.at('primitives').list()) {
      at = primitive.where
      if (!add(parts, primitive, transform, mesh)) passed++
    }
  const holds = passed > 0 ? `${passed} sets of points or lines` : 'a scene without meshes'
  return { format: 'glTF', unit: 'm', up: 'y', mesh: mesh.mesh(holds) }
}

function checkDocument(document: JsonPart): void {
  const version = document.at('asset').at('version').text() ?? 'none'
  if (!version.startsWith('2.')) refuse('asset.version', 'the version is not accepted', version, '2.0')
  for (const needed of document.at('extensionsRequired').list()) {
    const name = needed.text() ?? ''
    if (COMPRESSED.includes(name))
      refuse(needed.where, 'the mesh is compressed in a way that is not read', name, 'a file saved without compression')
    if (!HARMLESS.test(name)) refuse(needed.where, 'the file needs an extension that is not known', name, 'a file saved without it')
  }
}

/** Adds the triangles of one primitive; false where it has none. */
function add(parts: GltfParts, primitive: JsonPart, transform: Transform, mesh: MeshBuilder): boolean {
  const mode = primitive.at('mode').whole(TRIANGLES)
  if (mode !== TRIANGLES && mode !== STRIP && mode !== FAN) return false
  const places = primitive.at('attributes').at('POSITION').of(parts.accessors, 'accessor')
  if (primitive.has('extensions') && primitive.at('extensions').has('KHR_draco_mesh_compression') && !places.has('bufferView'))
    refuse(
      primitive.where,
      'the mesh is compressed in a way that is not read',
      'KHR_draco_mesh_compression',
      'a file saved without compression',
    )
  const indices = primitive.has('indices') ? primitive.at('indices').of(parts.accessors, 'accessor') : undefined,
    named = (indices ?? places).at('count').whole(),
    count = mode === TRIANGLES ? Math.floor(named / 3) : Math.max(0, named - 2)
  checkCount(mesh.count + count, primitive.where)
  const from = mesh.corners,
    corners = addCorners(accessorValues(parts, places, 'VEC3'), transform, places.where, mesh)
  const list = indices && accessorValues(parts, indices, 'SCALAR')
  const corner = (i: number): number => {
    const n = list ? (list[i] as number) : i
    if (!(n < corners))
      refuse(indices?.where ?? primitive.where, 'a triangle names a corner that is not there', `corner ${n}`, `below ${corners}`)
    return from + n
  }
  const mirrored = turningSense(transform) < 0
  for (let k = 0; k < count; k++) {
    const [a, b, c] =
      mode === TRIANGLES ? [3 * k, 3 * k + 1, 3 * k + 2] : mode === FAN ? [0, k + 1, k + 2] : k % 2 ? [k + 1, k, k + 2] : [k, k + 1, k + 2]
    mesh.triangle(corner(a as number), corner((mirrored ? c : b) as number), corner((mirrored ? b : c) as number))
  }
  return count > 0
}

/** Adds corners where the node puts them, and says how many. */
function addCorners(values: Float64Array, t: Transform, where: string, mesh: MeshBuilder): number {
  for (let i = 0; i < values.length; i += 3) {
    const [x, y, z] = [values[i], values[i + 1], values[i + 2]] as [number, number, number]
    const along = (row: number): number =>
      (t[row] as number) * x + (t[row + 1] as number) * y + (t[row + 2] as number) * z + (t[row + 3] as number)
    const [px, py, pz] = [along(0), along(4), along(8)]
    if (!isPlace(px) || !isPlace(py) || !isPlace(pz))
      refuse(`${where}, corner ${i / 3 + 1}`, 'a coordinate is not accepted', `${px}, ${py}, ${pz}`, PLACE_WANTED)
    mesh.corner(px, py, pz)
  }
  return values.length / 3
}
