import { describe, expect, test } from 'vitest'
import { glb, gltfText } from '../../../../tests/mesh-files.ts'
import { cornerSolid } from '../../../../tests/solids.ts'
import type { TriangleMesh } from '@ampwright/engine'
import { readMesh } from './read-mesh.ts'
import { writeStl } from './stl-write.ts'

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text)
const mesh = (file: Uint8Array | string): TriangleMesh => {
  const answer = readMesh(typeof file === 'string' ? bytes(file) : file)
  if ('issue' in answer) throw new Error(JSON.stringify(answer.issue))
  return answer.mesh
}
const issue = (file: Uint8Array | string): string => {
  const answer = readMesh(typeof file === 'string' ? bytes(file) : file)
  if (!('issue' in answer)) throw new Error('no issue')
  const { where, what, found, accepted } = answer.issue
  return `${where}: ${what}; found ${found}; accepted ${accepted}`
}
const { mesh: corner } = cornerSolid(1, 2, 3)

describe('an STL file', () => {
  const facet = 'facet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nvertex 0 1 0\nendloop\nendfacet\n'
  test('by hand, in capitals, of two solids and with any name', () => {
    const found = mesh(`  SOLID facet\n${facet.toUpperCase()}ENDSOLID\nsolid\n${facet}endsolid the end\n`)
    expect([...found.triangles]).toEqual([0, 1, 2, 3, 4, 5])
    expect([...found.positions.subarray(9)]).toEqual([0, 0, 0, 1, 0, 0, 0, 1, 0])
  })
  test('whose binary header begins with solid is binary all the same', () => {
    const file = writeStl(corner)
    file.set(bytes('solid by name '), 0)
    expect(mesh(file).triangles).toHaveLength(12)
    // Padded behind the last triangle as well.
    expect(mesh(Uint8Array.from([...file, 0, 0, 0])).triangles).toHaveLength(12)
  })
  test('is refused with place, found and accepted', () => {
    expect(issue(`solid x\n${facet.replace('1 0 0', '1 nan 0')}endsolid`)).toBe(
      'line 5, column 10: a coordinate is not accepted; found "nan"; accepted a number of at most 1000000000',
    )
    expect(issue(`solid x\n${facet.replace('endloop', 'endlop')}`)).toBe(
      'line 7, column 1: this is no STL text: endloop does not stand where it must; found "endlop"; accepted endloop',
    )
    expect(issue(`solid x\n${facet}`)).toMatch(/: the file is cut off; found the end of the file; accepted endsolid$/)
    expect(issue('solid x\nendsolid x')).toBe(
      'the file: the file holds no triangles; found a solid without facets; accepted a scan exported as a mesh, not as points or lines',
    )
    const file = writeStl(corner)
    expect(issue(file.subarray(0, 200))).toBe(
      'byte 200: the file is cut off; found 200 bytes; accepted 284 bytes for the 4 triangles it announces',
    )
    expect(issue(Uint8Array.from([...file, ...new Uint8Array(60)]))).toBe(
      'byte 284: the file is longer than it announces; found 344 bytes; accepted 284 bytes for the 4 triangles it announces',
    )
    const spoilt = writeStl(corner)
    new DataView(spoilt.buffer).setFloat32(84 + 50 + 12 + 4 * 7, Number.NaN, true)
    expect(issue(spoilt)).toBe('triangle 2, corner 3: a coordinate is not accepted; found NaN; accepted a number of at most 1000000000')
    expect(issue(new Uint8Array(84))).toMatch(/no triangles; found a header that announces none/)
    const many = new Uint8Array(84 + 50 * 2_000_001)
    new DataView(many.buffer).setUint32(80, 2_000_001, true)
    expect(issue(many)).toBe(
      'byte 80: the mesh has too many triangles; found 2000001; accepted at most 2000000: make the mesh coarser where it was scanned',
    )
  })
})

describe('an OBJ file', () => {
  test('by hand: a square counted back, colours, textures, a line that goes on', () => {
    const found = mesh(
      'mtllib a.mtl\nv 0 0 0 1 0 0\nv 1 0 0 1 0 0\nv 1 1 0\nv 0 1e0 0\nvt 0 0\nl 1 2\nf -4/1/1 -3/1 \\\n -2 -1 # the square\n',
    )
    expect([...found.triangles]).toEqual([0, 1, 2, 0, 2, 3])
    expect([...found.positions]).toEqual([0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 1, 0])
  })
  test('is refused with place, found and accepted', () => {
    const three = 'v 0 0 0\nv 1 0 0\nv 0 1 0\n'
    expect(issue(`${three}f 1 2 4\n`)).toBe(
      'line 4, column 7: a face names a corner that is not there; found "4"; accepted 1 to 3, or -1 to -3: the corners above this line',
    )
    expect(issue(`${three}f 0 2 3\n`)).toMatch(/^line 4, column 3: a face names a corner that is not there; found "0"/)
    expect(issue(`${three}f 1 2 x/1\n`)).toMatch(/^line 4, column 7: a face names no corner; found "x\/1"/)
    expect(issue(`${three}f 1 2\n`)).toMatch(/a face has too few corners; found 2; accepted three or more$/)
    expect(issue('v 0 0\n')).toBe(
      'line 1, column 6: a coordinate is missing; found the end of the line; accepted a number of at most 1000000000',
    )
    expect(issue('v 0 0 1e999\n')).toMatch(/^line 1, column 7: a coordinate is not accepted; found "1e999"/)
    expect(issue(`# points\n${three}`)).toMatch(/the file holds no triangles; found 3 corners \(v\) and no faces \(f\)/)
  })
})

describe('a PLY file', () => {
  const head = (more = ''): string =>
    `ply\nformat ascii 1.0\nelement vertex 4\nproperty float z\nproperty list uchar int seen\nproperty float y\nproperty float x\n${more}`
  const points = '0 2 7 7 0 0\n0 0 0 1\n0 1 9 1 1\n0 0 1 0\n'
  const faces = 'element edge 1\nproperty int a\nelement face 1\nproperty uchar red\nproperty list uchar uint vertex_indices\nend_header\n'
  test('by hand: properties in any order, lists passed over, a square', () => {
    const found = mesh(`${head(faces)}${points}5\n3 4 0 1 2 3\n`)
    expect([...found.triangles]).toEqual([0, 1, 2, 0, 2, 3])
    expect([...found.positions]).toEqual([0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 1, 0])
  })
  test('is refused with place, found and accepted', () => {
    expect(issue(`${head(faces)}${points}5\n3 4 0 1 2 4\n`)).toBe(
      'triangle 2: a triangle names a corner that is not there; found corner 5; accepted one of the 4 corners of the file',
    )
    expect(issue(`${head(faces)}${points}5\n3 4 0 1 2`)).toMatch(
      /the file is cut off; found the end of the file; accepted the values its header announces$/,
    )
    expect(issue(`${head(faces)}0 0 0 nan`)).toMatch(/^vertex 1, line 14.*: a coordinate is not accepted; found NaN/)
    expect(issue(`${head(faces)}${points}5\n3 2 0 1`)).toMatch(/^face 1, .*: a face has too few corners; found 2/)
    expect(issue(`${head('end_header\n')}${points}`)).toMatch(/no triangles; found 4 of vertex;/)
    expect(issue(head(faces).replace('property float x\n', ''))).toBe(
      'the header: the vertices have no place; found no property x; accepted properties x, y and z',
    )
    expect(issue('ply\nformat ascii 1.0\nelement vertex\n')).toMatch(
      /^line 3, column 15: an element has no number; found the end of the line/,
    )
    expect(issue('ply\nformat text 1.0\n')).toBe(
      'line 2, column 8: the format is not accepted; found "text"; accepted ascii, binary_little_endian, binary_big_endian',
    )
    expect(issue('ply\nformat ascii 1.0\nelement vertex 1\nproperty half x\n')).toMatch(
      /^line 4, column 10: a property has a type that is not known/,
    )
    expect(issue('ply\nformat ascii 1.0\n')).toMatch(/the header never ends/)
  })
  test('that announces more than it holds is refused at its end, whatever the number', () => {
    expect(issue(head(faces).replace('vertex 4', 'vertex 99999999999'))).toMatch(/the file is cut off/)
    expect(issue(head(faces.replace('element edge 1\nproperty int a\n', 'element nothing 99999999999\n')) + points)).toMatch(
      /the file is cut off/,
    )
  })
})

describe('a glTF file', () => {
  const extent = ({ positions }: TriangleMesh): number[] => [0, 1, 2].map(axis => Math.max(...positions.filter((_, i) => i % 3 === axis)))
  test('says metres and y up, and puts each mesh where its node hangs', () => {
    expect(readMesh(glb(corner))).toMatchObject({ unit: 'm', up: 'y' })
    const half = Math.SQRT1_2
    const nodes = [
      { children: [1, 2], translation: [10, 0, 0] },
      { mesh: 0, rotation: [0, 0, half, half] },
      { mesh: 0, matrix: [2, 0, 0, 0, 0, 2, 0, 0, 0, 0, 2, 0, 0, 20, 0, 1] },
      { mesh: 0, translation: [0, 0, 500] },
    ]
    const found = mesh(glb(corner, { nodes }))
    expect(found.triangles).toHaveLength(24)
    // A quarter turn about z takes x to y: the turned corner reaches y 1; the doubled one x 10 + 2, y 20 + 4, z 6. The last node is not in the scene.
    for (const [axis, wanted] of [12, 24, 6].entries()) expect(extent(found)[axis]).toBeCloseTo(wanted, 6)
    const turned = found.positions.filter((_, i) => i % 3 === 1)
    expect([...turned].some(y => Math.abs(y - 1) < 1e-6)).toBe(true)
  })
  test('turns the triangles of a mirrored node over, so that outside stays outside', () => {
    const found = mesh(glb(corner, { nodes: [{ mesh: 0, scale: [-1, 1, 1] }] }))
    expect([...found.triangles.subarray(0, 3)]).toEqual([0, 1, 2])
    expect([...corner.triangles.subarray(0, 3)]).toEqual([0, 2, 1])
  })
  test('may hold strips, fans, whole numbers as shares and rows put in the place of others', () => {
    const primitives = (mode: number) => ({ meshes: [{ primitives: [{ attributes: { POSITION: 0 }, mode }] }] })
    expect([...mesh(glb(corner, primitives(5))).triangles]).toEqual([0, 1, 2, 2, 1, 3])
    expect([...mesh(glb(corner, primitives(6))).triangles]).toEqual([0, 1, 2, 0, 2, 3])
    const shares = [{ bufferView: 0, componentType: 5121, normalized: true, count: 3, type: 'VEC3' }]
    const meshes = [{ primitives: [{ attributes: { POSITION: 0 } }] }]
    const small = mesh(glb(corner, { accessors: shares, meshes }))
    expect([...small.positions].every(x => x >= 0 && x <= 1)).toBe(true)
    const sparse = { count: 1, indices: { bufferView: 1, componentType: 5125 }, values: { bufferView: 0 } }
    const replaced = mesh(
      glb(corner, {
        accessors: [{ componentType: 5126, count: 3, type: 'VEC3', sparse: { ...sparse, values: { bufferView: 0, byteOffset: 12 } } }],
        meshes,
      }),
    )
    expect([...replaced.positions]).toEqual([1, 0, 0, 0, 0, 0, 0, 0, 0])
  })
  test('is refused with place, found and accepted', () => {
    expect(issue(glb(corner, { extensionsRequired: ['KHR_draco_mesh_compression'] }))).toBe(
      'extensionsRequired[0]: the mesh is compressed in a way that is not read; found KHR_draco_mesh_compression; accepted a file saved without compression',
    )
    expect(issue(glb(corner, { extensionsRequired: ['X_y'] }))).toMatch(/needs an extension that is not known; found X_y/)
    expect(mesh(glb(corner, { extensionsRequired: ['KHR_materials_unlit', 'KHR_mesh_quantization'] })).triangles).toHaveLength(12)
    expect(issue(gltfText(corner, { buffers: [{ byteLength: 96, uri: 'scan.bin' }] }))).toBe(
      'buffers[0].uri: a buffer lies in another file; found "scan.bin"; accepted everything in one file: save it as GLB',
    )
    expect(issue(glb(corner).subarray(0, 100))).toMatch(
      /^byte 100: the file is cut off; found 100 bytes; accepted \d+ bytes, as its header says$/,
    )
    expect(issue(glb(corner, { nodes: [{ mesh: 3 }] }))).toBe('nodes[0].mesh: there is no such mesh; found 3; accepted 0 to 0')
    expect(issue(glb(corner, { nodes: [{ children: [0] }] }))).toMatch(/^nodes\[0\]: a node hangs in two places, or in itself/)
    expect(issue(glb(corner, { nodes: [{ mesh: 0, scale: [1e30, 1, 1] }] }))).toMatch(/corner 2: a coordinate is not accepted/)
    expect(
      issue(
        glb(corner, {
          bufferViews: [
            { buffer: 0, byteLength: 12 },
            { buffer: 0, byteLength: 48 },
          ],
        }),
      ),
    ).toMatch(/^accessors\[0\]: an accessor reaches beyond its buffer view; found 48 bytes; accepted at most 12 bytes$/)
    expect(
      issue(
        glb(corner, {
          accessors: [
            { bufferView: 0, componentType: 5126, count: 4, type: 'VEC3' },
            { bufferView: 0, byteOffset: 12, componentType: 5121, count: 12, type: 'SCALAR' },
          ],
        }),
      ),
    ).toMatch(/a triangle names a corner that is not there/)
    expect(issue(glb(corner, { asset: { version: '1.0' } }))).toBe('asset.version: the version is not accepted; found 1.0; accepted 2.0')
    expect(issue(glb(corner, { meshes: [{ primitives: [{ attributes: { POSITION: 0 }, mode: 0 }] }] }))).toMatch(
      /found 1 sets of points or lines/,
    )
    expect(issue('{"asset":')).toMatch(/^the document: the document is no JSON/)
    expect(issue('{"asset":7}')).toBe('asset: the document is not as glTF wants it; found "7"; accepted an object')
  })
  test('that shows one mesh a million times over is refused before it grows', () => {
    const nodes = Array.from({ length: 90_000 }, () => ({ mesh: 0 })),
      accessors = [
        { componentType: 5126, count: 3000, type: 'VEC3' },
        { bufferView: 1, componentType: 5125, count: 12, type: 'SCALAR' },
      ]
    expect(issue(glb(corner, { nodes, scenes: [{ nodes: nodes.map((_, i) => i) }], accessors }))).toMatch(/too many corners/)
  })
})

test('what is no mesh is told by its first word', () => {
  expect(issue('')).toBe('the file: this is no mesh that is known; found an empty file; accepted STL, OBJ, PLY, glTF or GLB')
  expect(issue('hello there')).toMatch(/found "hello"/)
  expect(issue('\n \n')).toMatch(/3 bytes without a word/)
  expect(mesh('\ufeffv 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 3\n').triangles).toHaveLength(3)
})
