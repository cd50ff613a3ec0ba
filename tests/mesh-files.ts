import type { TriangleMesh } from '@ampwright/engine'

/** Writers for tests alone, each as another program might write: nothing of them is shared with the readers. */
const encode = (text: string): Uint8Array => new TextEncoder().encode(text)
const corners = ({ positions }: TriangleMesh): number[][] =>
  Array.from({ length: positions.length / 3 }, (_, i) => [...positions.subarray(3 * i, 3 * i + 3)])
const faces = ({ triangles }: TriangleMesh): number[][] =>
  Array.from({ length: triangles.length / 3 }, (_, i) => [...triangles.subarray(3 * i, 3 * i + 3)])

export function stlText(mesh: TriangleMesh): Uint8Array {
  const places = corners(mesh)
  const facet = (face: number[]): string =>
    `facet normal 0 0 0\n outer loop\n${face.map(c => `  vertex ${(places[c] as number[]).join(' ')}`).join('\n')}\n endloop\nendfacet`
  return encode(`solid made for a test\n${faces(mesh).map(facet).join('\n')}\nendsolid made for a test\n`)
}

export const objText = (mesh: TriangleMesh): Uint8Array =>
  encode(
    [
      '# made for a test',
      ...corners(mesh).map(c => `v ${c.join(' ')}`),
      'vn 0 0 1',
      'g part',
      ...faces(mesh).map((f, i) => `f ${f.map(c => (i % 2 ? `${c + 1}//1` : `${c - corners(mesh).length}`)).join(' ')}`),
      '',
    ].join('\r\n'),
  )

const header = (format: string, mesh: TriangleMesh, real: string, colour: string): string =>
  `ply\nformat ${format} 1.0\ncomment made for a test\nelement vertex ${mesh.positions.length / 3}\nproperty ${real} x\nproperty ${real} y\nproperty ${real} z\n${colour}element face ${mesh.triangles.length / 3}\nproperty list uchar int vertex_index\nend_header\n`

export const plyText = (mesh: TriangleMesh): Uint8Array =>
  encode(
    `${header('ascii', mesh, 'double', 'property uchar red\n')}${corners(mesh)
      .map(c => `${c.join(' ')} 200\n`)
      .join('')}${faces(mesh)
      .map(f => `3 ${f.join(' ')}\n`)
      .join('')}`,
  )

export function plyBytes(mesh: TriangleMesh, little: boolean): Uint8Array {
  const head = encode(header(little ? 'binary_little_endian' : 'binary_big_endian', mesh, 'float', 'property uchar red\n')),
    places = corners(mesh),
    list = faces(mesh),
    body = new DataView(new ArrayBuffer(13 * places.length + 13 * list.length))
  for (const [i, place] of places.entries()) for (const [axis, value] of place.entries()) body.setFloat32(13 * i + 4 * axis, value, little)
  for (const [k, face] of list.entries()) {
    const at = 13 * places.length + 13 * k
    body.setUint8(at, 3)
    for (const [i, corner] of face.entries()) body.setInt32(at + 1 + 4 * i, corner, little)
  }
  return Uint8Array.from([...head, ...new Uint8Array(body.buffer)])
}

/** Corners as float32, then three bytes' worth of index as uint32. */
function buffer({ positions, triangles }: TriangleMesh): Uint8Array {
  const view = new DataView(new ArrayBuffer(4 * (positions.length + triangles.length)))
  for (const [i, x] of positions.entries()) view.setFloat32(4 * i, x, true)
  for (const [i, t] of triangles.entries()) view.setUint32(4 * (positions.length + i), t, true)
  return new Uint8Array(view.buffer)
}

/** A document with one node that shows the mesh where it is; `more` replaces parts of it. */
export const gltfDocument = (mesh: TriangleMesh, more: Readonly<Record<string, unknown>> = {}, uri?: string): Record<string, unknown> => ({
  asset: { version: '2.0' },
  scenes: [{ nodes: [0] }],
  nodes: [{ mesh: 0 }],
  meshes: [{ primitives: [{ attributes: { POSITION: 0 }, indices: 1 }] }],
  accessors: [
    { bufferView: 0, componentType: 5126, count: mesh.positions.length / 3, type: 'VEC3' },
    { bufferView: 1, componentType: 5125, count: mesh.triangles.length, type: 'SCALAR' },
  ],
  bufferViews: [
    { buffer: 0, byteLength: 4 * mesh.positions.length },
    { buffer: 0, byteOffset: 4 * mesh.positions.length, byteLength: 4 * mesh.triangles.length },
  ],
  buffers: [{ byteLength: 4 * (mesh.positions.length + mesh.triangles.length), ...(uri === undefined ? {} : { uri }) }],
  ...more,
})

export const gltfText = (mesh: TriangleMesh, more: Readonly<Record<string, unknown>> = {}): Uint8Array =>
  encode(JSON.stringify(gltfDocument(mesh, more, `data:application/octet-stream;base64,${Buffer.from(buffer(mesh)).toString('base64')}`)))

export function glb(mesh: TriangleMesh, more: Readonly<Record<string, unknown>> = {}): Uint8Array {
  const text = JSON.stringify(gltfDocument(mesh, more)),
    json = encode(text.padEnd(Math.ceil(text.length / 4) * 4)),
    binary = buffer(mesh),
    out = new Uint8Array(28 + json.length + binary.length),
    view = new DataView(out.buffer)
  for (const [i, word] of [0x46546c67, 2, out.length, json.length, 0x4e4f534a].entries()) view.setUint32(4 * i, word, true)
  out.set(json, 20)
  view.setUint32(20 + json.length, binary.length, true)
  view.setUint32(24 + json.length, 0x004e4942, true)
  out.set(binary, 28 + json.length)
  return out
}
