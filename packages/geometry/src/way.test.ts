import { type OrientedBox, SQUARE, turned, type Vector } from '@ampwright/engine'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { runs } from '../../../tests/counts.ts'
import { ballSolid, boxSolid } from '../../../tests/solids.ts'
import { placed } from './align/placement.ts'
import { firstHit } from './first-hit.ts'
import { type Gap, gapBetween, gapToBox, type Pose } from './gap.ts'
import { prepare } from './prepare.ts'
import { section } from './section.ts'
import { tightestOnWay } from './way.ts'

// Doubles as drawn are mostly next to nothing: whole micrometres are spread evenly.
const at = fc.integer({ min: -1_000_000, max: 1_000_000 }).map(n => n / 1e6)
const pose = fc
  .record({ centre: fc.tuple(at, at, at), turns: fc.tuple(at, at, at) })
  .map(({ centre, turns: [a, b, c] }): Pose => ({ centre, axes: turned(2, 0.8 * c, turned(1, 0.8 * b, turned(0, 0.8 * a))) }))
const columns = (axes: OrientedBox['axes']) => [0, 1, 2].map(row => axes.map(axis => axis[row])) as unknown as [Vector, Vector, Vector]

describe('a mesh that stands elsewhere', () => {
  test('has the gap it has when it is moved itself', () => {
    const [one, part] = [prepare(ballSolid(0.4, 2).mesh), ballSolid(0.2, 1).mesh]
    fc.assert(
      fc.property(pose, p => {
        const moved = prepare(placed(part, { scale: 1, turn: columns(p.axes), shift: p.centre }), { solid: true }),
          [found, wanted] = [gapBetween(one, prepare(part, { solid: true }), { pose: p }), gapBetween(one, moved)] as [Gap, Gap]
        expect(found.overlap).toBe(wanted.overlap)
        expect(found.gap).toBeCloseTo(wanted.gap, 9)
      }),
      { numRuns: runs(2000) },
    )
  })
})

describe('the way of a box past a mesh', () => {
  // A doorway: two posts half a metre apart.
  const post = (x: number) => boxSolid([0.1, 0.1, 2], [x, 0, 0]).mesh
  const [left, right] = [post(-0.35), post(0.25)],
    door = prepare({
      positions: Float64Array.of(...left.positions, ...right.positions),
      triangles: Uint32Array.of(...left.triangles, ...right.triangles.map(t => t + 8)),
    })
  const through = (half: Vector, ...stations: Pose[]) => tightestOnWay(door, half, stations)
  const station = (y: number, turn = 0): Pose => ({ centre: [0, y, 1], axes: turned(2, turn) })

  test('is tightest in the doorway', () => {
    const { gap, along, atLeast } = through([0.2, 0.1, 0.1], station(-2), station(2))
    expect(gap.gap).toBeCloseTo(0.05, 9)
    expect(atLeast).toBeGreaterThan(0.049)
    expect(Math.abs(4 * along - 2)).toBeLessThan(0.16)
  })
  test('ends where the box runs in, and where it fits only turned, turning helps', () => {
    const half: Vector = [0.4, 0.15, 0.1]
    expect(through(half, station(-2), station(2)).gap.overlap).toBe(true)
    expect(through(half, station(-2), station(-1, Math.PI / 2), station(1, Math.PI / 2), station(2)).gap).toMatchObject({ overlap: false })
    // Turning within the doorway is too late.
    expect(through(half, station(-1), station(1, Math.PI / 2)).gap.overlap).toBe(true)
  })
  test('is nowhere tighter than told, tried step by step', () => {
    fc.assert(
      fc.property(pose, pose, fc.tuple(at, at, at), (a, b, size) => {
        const half = size.map(x => 0.02 + 0.1 * Math.abs(x)) as unknown as Vector,
          mesh = prepare(boxSolid([0.3, 0.3, 0.3], [-0.15, -0.15, -0.15]).mesh),
          found = tightestOnWay(mesh, half, [a, b])
        expect(found.gap.gap).toBeGreaterThanOrEqual(found.atLeast)
        if (!found.gap.overlap) expect(found.gap.gap - found.atLeast).toBeLessThanOrEqual(0.001 + 1e-12)
        expect((gapToBox(mesh, { ...found.pose, half }) as Gap).gap).toBe(found.gap.gap)
        // Straight on without turning, every step can be told without the way's own reckoning.
        const plain = tightestOnWay(mesh, half, [
          { ...a, axes: SQUARE },
          { ...b, axes: SQUARE },
        ])
        for (let n = 0; n <= 100; n++) {
          const centre = a.centre.map((x, i) => x + (n / 100) * ((b.centre[i] as number) - x)) as unknown as Vector
          expect((gapToBox(mesh, { centre, axes: SQUARE, half }) as Gap).gap).toBeGreaterThanOrEqual(plain.atLeast - 1e-12)
        }
      }),
      { numRuns: runs(400) },
    )
  })
  test('of one station is the gap there; without any, or with half a turn at once, it is a programmer’s fault', () => {
    expect(through([0.1, 0.1, 0.1], station(0)).gap.gap).toBeCloseTo(0.15, 12)
    expect(() => through([1, 1, 1])).toThrow('the way must have stations')
    expect(() => through([1, 1, 1], station(0), station(1, Math.PI))).toThrow('leg 0 must turn by at most 170°, found 180°')
  })
})

describe('a look at a mesh', () => {
  const ball = prepare(ballSolid(0.5, 6).mesh)
  test('meets it first where it comes in, facing the look', () => {
    fc.assert(
      fc.property(at, at, (a, b) => {
        const along: Vector = [-Math.cos(3 * a) * Math.cos(b), -Math.sin(3 * a) * Math.cos(b), -Math.sin(b)],
          hit = firstHit(ball, along.map(x => -2 * x) as unknown as Vector, along.map(x => 3 * x) as unknown as Vector)
        expect(hit?.distance).toBeCloseTo(1.5, 3)
        for (const i of [0, 1, 2] as const) expect(hit?.facing[i]).toBeCloseTo(-along[i], 1)
      }),
      { numRuns: runs(2000) },
    )
  })
  test('from inside meets the far skin, past it nothing', () => {
    expect(firstHit(ball, [0, 0, 0], [0, 0, 1])?.distance).toBeCloseTo(0.5, 3)
    expect(firstHit(ball, [0, 0, 2], [0, 0, 1])).toBeUndefined()
    expect(() => firstHit(ball, [0, 0, 0], [0, 0, 0])).toThrow('must have a direction')
  })
})

describe('a plane through a mesh', () => {
  const round = (pieces: Float64Array): number => {
    let sum = 0
    for (let i = 0; i < pieces.length; i += 6)
      sum += Math.hypot(...[0, 1, 2].map(k => (pieces[i + k] as number) - (pieces[i + k + 3] as number)))
    return sum
  }
  test('cuts a ball in a circle, at any height and tilt', () => {
    const ball = prepare(ballSolid(0.5, 6).mesh)
    fc.assert(
      fc.property(at, at, (a, b) => {
        const height = 0.45 * b,
          normal: Vector = [Math.sin(a), 0, Math.cos(a)]
        expect(round(section(ball, { normal, at: height }))).toBeCloseTo(2 * Math.PI * Math.sqrt(0.25 - height ** 2), 1)
      }),
      { numRuns: runs(400) },
    )
    expect(section(ball, { normal: [0, 0, 1], at: 0.6 })).toHaveLength(0)
  })
  test('cuts a closed mesh in closed lines, also through its corners', () => {
    const pieces = section(prepare(boxSolid([1, 2, 3]).mesh), { normal: [0, 0, 1], at: 1.5 })
    expect(round(pieces)).toBeCloseTo(6, 12)
    const ends = new Map<string, number>()
    for (let i = 0; i < pieces.length; i += 3) {
      const key = [...pieces.subarray(i, i + 3)].join(' ')
      ends.set(key, (ends.get(key) ?? 0) + 1)
    }
    expect([...ends.values()].every(n => n === 2)).toBe(true)
    expect(round(section(prepare(boxSolid([1, 2, 3]).mesh), { normal: [0, 0, 1], at: 3 }))).toBeCloseTo(6, 12)
  })
})
