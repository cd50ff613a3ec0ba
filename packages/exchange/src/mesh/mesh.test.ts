import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { addedUp, boxSolid, cornerSolid, ringSolid, type Solid } from '../../../../tests/solids.ts'
import { glb, gltfText, objText, plyBytes, plyText, stlText } from '../../../../tests/mesh-files.ts'
import type { MeshFile } from './mesh-file.ts'
import { writePly } from './ply-write.ts'
import { readMesh } from './read-mesh.ts'
import { writeStl } from './stl-write.ts'

const read = (bytes: Uint8Array): MeshFile => {
  const answer = readMesh(bytes)
  if ('issue' in answer) throw new Error(JSON.stringify(answer.issue))
  return answer
}

/** A known solid in each format, and how near the coordinates come back. */
const WRITTEN: readonly (readonly [string, string, (s: Solid) => Uint8Array, number])[] = [
  ['STL text', 'STL', s => stlText(s.mesh), 1e-12],
  ['STL binary', 'STL', s => writeStl(s.mesh), 1e-6],
  ['OBJ', 'OBJ', s => objText(s.mesh), 1e-12],
  ['PLY text', 'PLY', s => plyText(s.mesh), 1e-12],
  ['PLY lowest byte first', 'PLY', s => writePly(s.mesh), 1e-12],
  ['PLY highest byte first', 'PLY', s => plyBytes(s.mesh, false), 1e-6],
  ['GLB', 'glTF', s => glb(s.mesh), 1e-6],
  ['glTF with its buffer inside', 'glTF', s => gltfText(s.mesh), 1e-6],
]

describe.each(WRITTEN)('a mesh as %s', (_, format, write, near) => {
  const solids = { box: boxSolid([1.5, 0.4, 0.25], [-3, 2, 0.125]), corner: cornerSolid(0.3, 0.5, 0.7), ring: ringSolid(1, 0.25, 24, 12) }

  test.each(Object.entries(solids))('comes back with volume and area of the %s', (name, solid) => {
    const { mesh, format: told } = read(write(solid)),
      { volume, area } = addedUp(mesh)
    expect(told).toBe(format)
    expect(mesh.triangles.length).toBe(solid.mesh.triangles.length)
    // A ring of patches is smaller than the smooth one: it is held against the mesh that was written.
    const wanted = name === 'ring' ? addedUp(solid.mesh) : solid
    expect(Math.abs(volume - wanted.volume)).toBeLessThan(20 * near)
    expect(Math.abs(area - wanted.area)).toBeLessThan(20 * near)
  })

  test('comes back triangle by triangle', () => {
    const { mesh } = read(write(solids.ring))
    for (let i = 0; i < mesh.triangles.length; i++)
      for (let axis = 0; axis < 3; axis++) {
        const [was, is] = [solids.ring.mesh, mesh].map(m => m.positions[3 * (m.triangles[i] as number) + axis] as number) as [
          number,
          number,
        ]
        expect(Math.abs(was - is)).toBeLessThanOrEqual(near)
      }
  })

  test('that is cut off anywhere is refused in words or is a smaller mesh, and nothing is thrown', () => {
    const bytes = write(solids.corner)
    fc.assert(
      fc.property(fc.integer({ min: 0, max: bytes.length - 1 }), length => {
        const answer = readMesh(bytes.subarray(0, length))
        if ('issue' in answer) expect(answer.issue.what).not.toBe('')
        else expect(answer.mesh.triangles.length).toBeLessThanOrEqual(solids.corner.mesh.triangles.length)
      }),
      { numRuns: runs(4000) },
    )
  })

  test('with bytes changed at random is refused in words or gives sound lists', () => {
    const bytes = write(solids.corner)
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.nat(bytes.length - 1), fc.nat(255)), { minLength: 1, maxLength: 6 }), changes => {
        const spoilt = Uint8Array.from(bytes)
        for (const [at, value] of changes) spoilt[at] = value
        const answer = readMesh(spoilt)
        if ('issue' in answer) {
          const { where, what, found, accepted } = answer.issue
          for (const words of [where, what, found, accepted]) expect(words).toMatch(/^[^\p{Cc}]{1,400}$/u)
          return
        }
        const { positions, triangles } = answer.mesh
        expect(triangles.length).toBeGreaterThan(0)
        expect([...positions].every(Number.isFinite)).toBe(true)
        expect([...triangles].every(t => 3 * t + 2 < positions.length)).toBe(true)
      }),
      { numRuns: runs(10_000) },
    )
  })
})

test('any bytes at all are refused in words or read', () => {
  const heads = ['', 'ply\n', 'solid x\n', 'glTF', '{"asset":{"version":"2.0"},', 'v 1 2 3\n']
  fc.assert(
    fc.property(fc.constantFrom(...heads), fc.uint8Array({ maxLength: 300 }), (head, tail) => {
      const answer = readMesh(Uint8Array.from([...new TextEncoder().encode(head), ...tail]))
      expect('issue' in answer ? answer.issue.accepted : answer.format).not.toBe('')
    }),
    { numRuns: runs(20_000) },
  )
})

test('written meshes are meshes: what is none is a programmer’s fault', () => {
  const { mesh } = cornerSolid(1, 1, 1)
  for (const write of [writeStl, writePly]) {
    expect(() => write({ ...mesh, triangles: Uint32Array.of(0, 1, 4) })).toThrow('triangle 0 must name one of 4 corners, found 4')
    expect(() => write({ ...mesh, triangles: Uint32Array.of(0, 1) })).toThrow('found 2')
    expect(() => write({ ...mesh, positions: mesh.positions.map((x, i) => (i === 4 ? Number.NaN : x)) })).toThrow(
      'corner 1 must have numbers',
    )
  }
})
