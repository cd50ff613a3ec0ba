import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { runs } from '../../../tests/counts.ts'
import { ballSolid, boxSolid, ringSolid } from '../../../tests/solids.ts'
import { coarser } from './coarser.ts'
import { boundsOf, measures } from './measures.ts'

const ball = ballSolid(0.5, 5).mesh
const places = ({ positions }: { positions: Float64Array | Float32Array }) =>
  [...Array(positions.length / 3).keys()].map(n => positions.slice(3 * n, 3 * n + 3))

describe('a coarser mesh', () => {
  test('has no more triangles than asked, each with three corners, and none further from the mesh than a cell is wide across', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 6000 }), fc.constantFrom(ball, ringSolid(0.7, 0.2, 60, 40).mesh), (most, mesh) => {
        const { mesh: coarse, cell } = coarser(mesh, most)
        expect(coarse.triangles.length / 3).toBeLessThanOrEqual(most)
        for (let k = 0; k < coarse.triangles.length; k += 3) expect(new Set(coarse.triangles.slice(k, k + 3)).size).toBe(3)
        const near = places(mesh)
        for (const at of places(coarse).filter((_, n) => n % 37 === 0)) {
          const off = Math.min(...near.map(p => Math.hypot(...p.map((x, i) => x - (at[i] as number)))))
          expect(off).toBeLessThanOrEqual(cell * Math.sqrt(3) + 1e-12)
        }
        const was = boundsOf(mesh),
          is = coarse.triangles.length ? boundsOf(coarse) : was
        for (const i of [0, 1, 2] as const) {
          expect(is.low[i]).toBeGreaterThanOrEqual(was.low[i] - 1e-12)
          expect(is.high[i]).toBeLessThanOrEqual(was.high[i] + 1e-12)
        }
      }),
      { numRuns: runs(400) },
    )
  })
  test('nears area and volume of the body the more triangles it may have', () => {
    const off = [500, 2000, 8000].map(most => {
      const found = measures(coarser(ball, most).mesh)
      expect(found.closed).toBe(true)
      return Math.abs((found.volume as number) / (measures(ball).volume as number) - 1)
    }) as [number, number, number]
    expect(off[1]).toBeLessThan(off[0])
    expect(off[2]).toBeLessThan(off[1])
    expect(off[1]).toBeLessThan(0.02)
  })
  test('is the mesh itself where that is small enough', () => {
    const { mesh } = boxSolid([1, 2, 3])
    expect(coarser(mesh, 12)).toEqual({ mesh, cell: 0 })
    expect(coarser(mesh, 12).mesh).toBe(mesh)
  })
  test('takes no notice of corners that no triangle uses', () => {
    const far = { ...ball, positions: Float64Array.from([...ball.positions, 1e6, -1e6, 1e6]) }
    expect(coarser(far, 500)).toEqual(coarser(ball, 500))
  })
  test('of a mesh on one spot, or without area, ends', () => {
    const spot = { positions: new Float64Array(9).fill(2), triangles: Uint32Array.from([0, 1, 2, 0, 1, 2]) }
    expect(coarser(spot, 1).mesh.triangles).toHaveLength(0)
    const line = { positions: Float64Array.from([0, 0, 0, 1, 0, 0, 2, 0, 0]), triangles: Uint32Array.from([0, 1, 2, 0, 2, 1]) }
    expect(coarser(line, 1).mesh.triangles.length / 3).toBeLessThanOrEqual(1)
  })
  test('of no triangle is refused', () => {
    expect(() => coarser(ball, 0)).toThrow(new RangeError('at least one triangle is asked for, not 0'))
    expect(() => coarser(ball, NaN)).toThrow(RangeError)
  })
})
