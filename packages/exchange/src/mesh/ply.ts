import { MeshBuilder } from './mesh-builder.ts'
import { answered, isPlace, type MeshAnswer, type MeshFile, MOST_CORNERS, PLACE_WANTED, refuse } from './mesh-file.ts'
import { type PlyElement, type PlyProperty, plyHeader } from './ply-header.ts'
import { byteValues, type PlyValues, wordValues } from './ply-values.ts'
import { Words } from './words.ts'

const AXES = ['x', 'y', 'z']
const LISTS = ['vertex_indices', 'vertex_index']

/**
 * A mesh from a PLY file, as text or as bytes of either order; or one issue. Of vertices x, y and z are read, of faces the list of their corners; colours,
 * normals and other elements are passed over. A face with more than three corners is cut into a fan from its first.
 *
 * Source: G. Turk, The PLY polygon file format, 1994 (from memory).
 */
export const readPly = (bytes: Uint8Array): MeshAnswer => answered(bytes, () => plyMesh(bytes))

function plyMesh(bytes: Uint8Array): MeshFile {
  const words = new Words(bytes),
    { format, elements } = plyHeader(words),
    values = format === 'ascii' ? wordValues(words) : byteValues(bytes, words.from, format === 'binary_little_endian'),
    mesh = new MeshBuilder(values.where)
  for (const element of elements) {
    if (element.name === 'vertex') vertices(element, values, mesh)
    else if (element.name === 'face') faces(element, values, mesh)
    else passOver(element, values)
  }
  return { format: 'PLY', mesh: mesh.mesh(`${elements.map(e => `${e.count} of ${e.name}`).join(', ') || 'no elements'}`) }
}

function vertices({ count, properties }: PlyElement, values: PlyValues, mesh: MeshBuilder): void {
  const axes = properties.map(p => (p.counted ? -1 : AXES.indexOf(p.name))),
    missing = AXES.filter((_, i) => !axes.includes(i))
  if (count === 0) return
  if (missing.length > 0) refuse('the header', 'the vertices have no place', `no property ${missing.join(', ')}`, 'properties x, y and z')
  const place = [0, 0, 0]
  for (let n = 0; n < count; n++) {
    for (let i = 0; i < properties.length; i++) {
      const axis = axes[i] as number,
        value = axis < 0 ? skip(properties[i] as PlyProperty, values) : values.next((properties[i] as PlyProperty).type)
      if (axis < 0) continue
      if (!isPlace(value)) refuse(`vertex ${n + 1}, ${values.where()}`, 'a coordinate is not accepted', `${value}`, PLACE_WANTED)
      place[axis] = value
    }
    mesh.corner(place[0] as number, place[1] as number, place[2] as number)
  }
}

function faces({ count, properties }: PlyElement, values: PlyValues, mesh: MeshBuilder): void {
  const list = properties.findIndex(p => p.counted && LISTS.includes(p.name))
  if (count === 0) return
  if (list < 0)
    refuse('the header', 'the faces name no corners', properties.map(p => p.name).join(', ') || 'no properties', 'a list vertex_indices')
  for (let n = 0; n < count; n++)
    for (let i = 0; i < properties.length; i++) {
      if (i === list) face(n, properties[i] as PlyProperty, values, mesh)
      else skip(properties[i] as PlyProperty, values)
    }
}

function face(n: number, property: PlyProperty, values: PlyValues, mesh: MeshBuilder): void {
  const corners = length(property, values)
  if (corners < 3) refuse(`face ${n + 1}, ${values.where()}`, 'a face has too few corners', `${corners}`, 'three or more')
  const next = (): number => {
    const at = values.next(property.type)
    if (!Number.isInteger(at) || at < 0 || at >= MOST_CORNERS)
      refuse(`face ${n + 1}, ${values.where()}`, 'a face names no corner', `${at}`, 'a corner, counted from 0')
    return at
  }
  const first = next()
  let last = next()
  for (let k = 2; k < corners; k++) {
    const at = next()
    mesh.triangle(first, last, at)
    last = at
  }
}

function length(property: PlyProperty, values: PlyValues): number {
  const n = values.next(property.counted ?? 'uint8')
  if (!Number.isInteger(n) || n < 0) refuse(values.where(), 'a list has no length', `${n}`, 'a whole number')
  return n
}

/** Passes over one property. Gives NaN. */
function skip(property: PlyProperty, values: PlyValues): number {
  const n = property.counted ? length(property, values) : 1
  for (let i = 0; i < n; i++) values.next(property.type)
  return Number.NaN
}

function passOver({ count, properties }: PlyElement, values: PlyValues): void {
  if (properties.length === 0) return
  for (let n = 0; n < count; n++) for (const property of properties) skip(property, values)
}
