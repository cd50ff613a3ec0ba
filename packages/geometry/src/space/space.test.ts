import { type AlignedBox, type TriangleMesh, turned, type Vector } from '@ampwright/engine'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { ballSolid, boxSolid, ringSolid } from '../../../../tests/solids.ts'
import { placed } from '../align/placement.ts'
import { gapToBox } from '../gap.ts'
import { prepare } from '../prepare.ts'
import { insideOf } from '../winding.ts'
import { type FreeSpace, type FreeSpaceAsked, freeSpace } from './free-space.ts'

const around = (reach: number): AlignedBox => ({ low: [-reach, -reach, -reach], high: [reach, reach, reach] })
const found = (mesh: TriangleMesh, asked: FreeSpaceAsked): FreeSpace => {
  const answer = freeSpace(mesh, asked)
  if ('problem' in answer) throw new Error(JSON.stringify(answer.problem))
  return answer
}
const problem = (mesh: TriangleMesh, asked: FreeSpaceAsked): string => {
  const answer = freeSpace(mesh, asked)
  if (!('problem' in answer)) throw new Error('no problem')
  return `${answer.problem.what}; found ${answer.problem.found}; accepted ${answer.problem.accepted}`
}
const tilted = (mesh: TriangleMesh): TriangleMesh =>
  placed(mesh, { scale: 1, turn: turned(2, 0.4, turned(0, 0.7)), shift: [0.013, -0.007, 0.021] })

describe('the free space inside a known body', () => {
  const bodies = {
    ball: { solid: ballSolid(0.5, 6), from: [0, 0, 0] as Vector },
    box: { solid: boxSolid([0.8, 0.6, 0.5], [-0.4, -0.3, -0.25]), from: [0, 0, 0] as Vector },
    ring: { solid: ringSolid(0.45, 0.2, 96, 48), from: [0.45, 0, 0] as Vector },
  }
  test.each(Object.entries(bodies))('nears its volume from below as cubes get smaller: %s', (_, { solid, from }) => {
    const turn = turned(2, 0.4, turned(0, 0.7)),
      mesh = tilted(solid.mesh),
      start = turn.map(
        (row, i) => row[0] * from[0] + row[1] * from[1] + row[2] * from[2] + ([0.013, -0.007, 0.021][i] as number),
      ) as unknown as Vector
    const short = [0.04, 0.02, 0.01].map(edge => 1 - found(mesh, { from: start, edge, within: around(0.8) }).volume / solid.volume) as [
      number,
      number,
      number,
    ]
    expect(short[2]).toBeGreaterThan(0)
    // What is missing is a layer of about a cube under the skin: halved with the edge.
    expect(short[0] / short[1]).toBeGreaterThan(1.6)
    expect(short[1] / short[2]).toBeGreaterThan(1.6)
    expect(short[2]).toBeLessThan((0.02 * solid.area) / solid.volume)
  })
  test('is made of cubes that lie inside and that no triangle touches, told by other means', () => {
    fc.assert(
      fc.property(
        fc.tuple(fc.double({ min: 0, max: 3, noNaN: true }), fc.double({ min: 0, max: 3, noNaN: true })),
        fc.double({ min: 0.05, max: 0.2, noNaN: true }),
        ([a, b], edge) => {
          const mesh = placed(boxSolid([0.9, 0.7, 0.5], [-0.45, -0.35, -0.25]).mesh, {
              scale: 1,
              turn: turned(2, a, turned(0, b)),
              shift: [0, 0, 0],
            }),
            answer = freeSpace(mesh, { from: [0, 0, 0], edge, within: around(0.7) })
          if ('problem' in answer) return
          const { field } = answer,
            tree = prepare(mesh),
            [nx, ny] = field.counts
          for (const [at, free] of field.free.entries()) {
            const [i, j, k] = [at % nx, Math.floor(at / nx) % ny, Math.floor(at / nx / ny)],
              centre: Vector = [field.low[0] + (i + 0.5) * edge, field.low[1] + (j + 0.5) * edge, field.low[2] + (k + 0.5) * edge],
              gap = gapToBox(tree, { centre, half: [edge / 2, edge / 2, edge / 2], axes: turned(0, 0) }, { upTo: 1e-5 })
            if (free) expect([gap?.overlap ?? false, insideOf(mesh, centre)]).toEqual([false, true])
            // In a body that bulges everywhere, cubes free of its skin hang together: each of them is reached.
            else if (insideOf(mesh, centre) && edge < 0.08) expect(gap?.gap ?? Infinity).toBeLessThan(1e-5)
          }
        },
      ),
      { numRuns: runs(100) },
    )
  })
})

describe('a flood', () => {
  // Five sides of a box of 1 m × 0.8 m × 0.6 m, open at the top.
  const { mesh: whole } = boxSolid([1, 0.8, 0.6])
  const open: TriangleMesh = {
    ...whole,
    triangles: Uint32Array.from([...whole.triangles].filter((_, i) => ![2, 3].includes(Math.floor(i / 3)))),
  }
  const within: AlignedBox = { low: [-0.3, -0.3, -0.3], high: [1.3, 1.1, 0.6] }

  test('is shut by the limits where the body is open, and says how much of each side it reached', () => {
    const { volume, reached } = found(open, { from: [0.5, 0.4, 0.3], edge: 0.02, within })
    // The walls stand on sides of cubes, and a touched cube is not free: a layer of one cube is missing at each wall, none at the open top.
    expect(volume).toBeCloseTo(0.96 * 0.76 * 0.58, 9)
    expect(reached.top).toBeCloseTo((0.96 * 0.76) / (1.6 * 1.4), 9)
    expect({ ...reached, top: 0 }).toEqual({ front: 0, rear: 0, left: 0, right: 0, bottom: 0, top: 0 })
  })
  test('from outside, or over an open top that no limit shuts, is refused with what it reached', () => {
    const words =
      /^the flood reaches the limits on every side: the place is outside, or the scan is open all round; found front 100 %, .*, top 100 %; accepted a place inside/
    expect(problem(open, { from: [0.5, 0.4, 0.3], edge: 0.05, within: { ...within, high: [1.3, 1.1, 0.9] } })).toMatch(words)
    expect(problem(open, { from: [-0.2, 0, 0], edge: 0.05, within: { ...within, high: [1.3, 1.1, 0.9] } })).toMatch(words)
  })
  test('in a wall, outside the limits, or in cubes that do not suit is refused in words', () => {
    expect(problem(open, { from: [0.5, 0.4, 0.01], edge: 0.05, within })).toMatch(
      /^the place the flood starts from is in a wall: its cube is touched; found 500, 400, 10 mm; accepted a place in the open; the nearest free cube is at [45][27]5, [34][27]5, 75 mm$/,
    )
    expect(problem(open, { from: [5, 0, 0], edge: 0.05, within })).toBe(
      'the place the flood starts from lies outside the limits; found 5000, 0, 0 mm; accepted -300, -300, -300 to 1300, 1100, 600 mm',
    )
    expect(problem(open, { from: [0.5, 0.4, 0.3], edge: 3, within })).toMatch(/^no cube fits into the limits; found cubes of 3000 mm in/)
    expect(problem(open, { from: [0.5, 0.4, 0.3], edge: 0.001, within })).toMatch(/^there are too many cubes; found 1600 × 1400 × 900;/)
    expect(problem(open, { from: [0.5, 0.4, 0.3], edge: 0, within })).toMatch(/^the cubes must have a size/)
  })
  test('passes a hole wider than two cubes and not one narrower than a cube', () => {
    // A plate across the middle, with a square hole of 60 mm.
    const hole = 0.06,
      plate = [
        boxSolid([0.5 - hole / 2, 0.8, 0.001], [0, 0, 0.3]),
        boxSolid([0.5 - hole / 2, 0.8, 0.001], [0.5 + hole / 2, 0, 0.3]),
        boxSolid([hole, 0.4 - hole / 2, 0.001], [0.5 - hole / 2, 0, 0.3]),
        boxSolid([hole, 0.4 - hole / 2, 0.001], [0.5 - hole / 2, 0.4 + hole / 2, 0.3]),
      ]
    const all = [{ mesh: whole }, ...plate].reduce<TriangleMesh>(
      (sum, { mesh }) => ({
        positions: Float64Array.of(...sum.positions, ...mesh.positions),
        triangles: Uint32Array.of(...sum.triangles, ...mesh.triangles.map(t => t + sum.positions.length / 3)),
      }),
      { positions: new Float64Array(), triangles: new Uint32Array() },
    )
    const above = (edge: number): number =>
      found(all, { from: [0.5, 0.4, 0.45], edge, within: { low: [-0.1, -0.1, -0.1], high: [1.1, 0.9, 0.7] } }).volume
    expect(above(0.025)).toBeGreaterThan(0.35)
    expect(above(0.065)).toBeLessThan(0.24)
  })
  test('keeps away from the walls as far as asked', () => {
    const plain = found(open, { from: [0.5, 0.4, 0.3], edge: 0.02, within }).volume,
      kept = found(open, { from: [0.5, 0.4, 0.3], edge: 0.02, within, keep: 0.1 }).volume
    expect(plain).toBeGreaterThan(kept)
    expect(kept).toBeCloseTo(0.78 * 0.58 * 0.48, 1)
    expect(kept).toBeLessThanOrEqual(0.8 * 0.6 * 0.5)
  })
})
