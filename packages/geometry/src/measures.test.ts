import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { runs } from '../../../tests/counts.ts'
import { addedUp, ballSolid, boxSolid, cornerSolid, ringSolid } from '../../../tests/solids.ts'
import { closedness } from './closedness.ts'
import { joined } from './joined.ts'
import { boundsOf, measures } from './measures.ts'

/** The same triangles, each with corners of its own, as STL gives them. */
const apart = ({ positions, triangles }: { positions: Float64Array | Float32Array; triangles: Uint32Array }) => ({
  positions: Float64Array.from([...triangles].flatMap(t => [...positions.subarray(3 * t, 3 * t + 3)])),
  triangles: triangles.map((_, i) => i),
})

describe('a closed mesh', () => {
  const side = fc.double({ min: 0.01, max: 3, noNaN: true })
  test('has volume, area and middle of the body it is, wherever it stands', () => {
    fc.assert(
      fc.property(fc.tuple(side, side, side), fc.tuple(side, side, side), (sides, low) => {
        const solid = boxSolid(sides, [1000 * low[0], -100 * low[1], low[2]]),
          found = measures(apart(solid.mesh))
        expect(found).toMatchObject({ closed: true, openEdges: 0, oddEdges: 0, triangles: 12 })
        expect((found.volume as number) / solid.volume).toBeCloseTo(1, 8)
        expect(found.area / solid.area).toBeCloseTo(1, 8)
        const { low: l, high: h } = found.bounds
        for (const i of [0, 1, 2] as const) expect(found.centre?.[i]).toBeCloseTo((l[i] + h[i]) / 2, 8)
      }),
      { numRuns: runs(2000) },
    )
  })
  test('with a corner has its middle a quarter up from each face', () => {
    const found = measures(cornerSolid(1, 2, 4).mesh)
    for (const [i, x] of [0.25, 0.5, 1].entries()) expect(found.centre?.[i]).toBeCloseTo(x, 12)
  })
  test('of patches nears the smooth body by the square of their number', () => {
    const off = (n: number): number => 1 - (measures(ringSolid(1, 0.3, 2 * n, n).mesh).volume as number) / ringSolid(1, 0.3, 3, 3).volume
    expect(off(32) / off(64)).toBeCloseTo(4, 1)
    const ball = ballSolid(0.5, 5)
    expect((measures(ball.mesh).volume as number) / ball.volume).toBeCloseTo(1, 2)
  })
  test('agrees with sums made another way', () => {
    const { mesh } = ringSolid(0.7, 0.2, 31, 17),
      found = measures(mesh),
      { volume, area } = addedUp(mesh)
    expect(found.volume).toBeCloseTo(volume, 12)
    expect(found.area).toBeCloseTo(area, 9)
  })
  test('turned inside out has a volume below zero', () => {
    const { mesh, volume } = boxSolid([1, 2, 3])
    expect(measures({ ...mesh, triangles: mesh.triangles.slice().reverse() }).volume).toBeCloseTo(-volume, 12)
  })
})

describe('a mesh that is not closed', () => {
  const { mesh } = ballSolid(1, 2)
  test('has no volume, and says how many edges are open', () => {
    const holed = { ...mesh, triangles: mesh.triangles.slice(3) },
      found = measures(holed)
    expect(found).toMatchObject({ closed: false, openEdges: 3, oddEdges: 0 })
    expect('volume' in found).toBe(false)
    expect(found.area).toBeGreaterThan(0)
  })
  test('is also one with a triangle turned over, or a wall inside', () => {
    const over = mesh.triangles.slice()
    over.set([over[1], over[0], over[2]] as number[], 0)
    expect(closedness({ ...mesh, triangles: over })).toMatchObject({ closed: false, openEdges: 0, oddEdges: 3 })
    expect(closedness({ ...mesh, triangles: Uint32Array.of(...mesh.triangles, ...mesh.triangles.subarray(0, 3)) })).toMatchObject({
      closed: false,
      oddEdges: 3,
    })
  })
  test('triangles without area change nothing', () => {
    expect(closedness({ ...mesh, triangles: Uint32Array.of(...mesh.triangles, 0, 0, 5) }).closed).toBe(true)
  })
})

test('corners at one place become one, near ones stay two', () => {
  const { mesh } = ballSolid(1, 3),
    together = joined(apart(mesh))
  expect(together.positions.length).toBe(mesh.positions.length)
  expect(together.triangles.length).toBe(mesh.triangles.length)
  const near = joined({ positions: Float64Array.of(0, 0, 0, -0, 0, -0, 1e-15, 0, 0), triangles: Uint32Array.of(0, 1, 2) })
  expect([...near.triangles]).toEqual([0, 0, 1])
  expect(boundsOf({ positions: Float64Array.of(9, 9, 9, 0, 0, 0, 1, 0, 0, 0, 2, 0), triangles: Uint32Array.of(1, 2, 3) })).toEqual({
    low: [0, 0, 0],
    high: [1, 2, 0],
  })
})
