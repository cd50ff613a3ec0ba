import {
  between,
  boxDistance,
  cross,
  lengthOf,
  type OrientedBox,
  pointToBox,
  segmentToSegment,
  type TriangleMesh,
  turned,
  type Vector,
} from '@ampwright/engine'
import fc from 'fast-check'
import { Vector3 } from 'three'
import { ExtendedTriangle } from 'three-mesh-bvh'
import { describe, expect, test } from 'vitest'
import { runs } from '../../../tests/counts.ts'
import { ballSolid, boxSolid } from '../../../tests/solids.ts'
import { type Gap, gapBetween, gapToBox, gapToTube } from './gap.ts'
import { placed } from './align/placement.ts'
import { prepare } from './prepare.ts'
import { insideOf } from './winding.ts'

// Doubles as drawn are mostly next to nothing: whole micrometres are spread evenly.
const at = fc.noBias(fc.integer({ min: -1_000_000, max: 1_000_000 })).map(n => n / 1e6)
const place = fc.tuple(at, at, at)
const meshOf = (triangles: readonly (readonly number[])[]): TriangleMesh => ({
  positions: Float64Array.from(triangles.flat()),
  triangles: Uint32Array.from({ length: 3 * triangles.length }, (_, i) => i),
})
const area = ([a, b, c, d, e, f, g, h, i]: readonly number[]): number => {
  const [u, v] = [
    [d, e, f].map((x, k) => (x as number) - ([a, b, c][k] as number)),
    [g, h, i].map((x, k) => (x as number) - ([a, b, c][k] as number)),
  ] as [number[], number[]]
  return lengthOf(cross(u as unknown as Vector, v as unknown as Vector)) / 2
}
/** Triangles anywhere in a cube of two metres, long and short, slim ones too. The library takes those without area to cross what they do not: none here. */
const soup = (most: number): fc.Arbitrary<TriangleMesh> =>
  fc
    .array(
      fc
        .tuple(place, place, place, fc.constantFrom(1, 0.2, 0.01))
        .map(([a, b, c, size]) => [a, b.map((x, i) => (a[i] as number) + size * x), c.map((x, i) => (a[i] as number) + size * x)].flat())
        .filter(t => area(t) > 1e-7),
      { minLength: 1, maxLength: most },
    )
    .map(meshOf)
const box: fc.Arbitrary<OrientedBox> = fc.record({
  centre: place,
  half: fc.tuple(
    fc.double({ min: 0.01, max: 0.4, noNaN: true }),
    fc.double({ min: 0.01, max: 0.4, noNaN: true }),
    fc.double({ min: 0.01, max: 0.4, noNaN: true }),
  ),
  axes: fc.tuple(at, at, at).map(([a, b, c]) => turned(2, 3 * c, turned(1, 3 * b, turned(0, 3 * a)))),
})
const boxMesh = ({ centre, half, axes }: OrientedBox): TriangleMesh => {
  const columns = [0, 1, 2].map(row => axes.map(axis => axis[row])) as unknown as [Vector, Vector, Vector]
  return placed(boxSolid([2 * half[0], 2 * half[1], 2 * half[2]], [-half[0], -half[1], -half[2]]).mesh, {
    scale: 1,
    turn: columns,
    shift: centre,
  })
}

/** The slow and obvious way, by the library's own triangles: every pair. */
function everyPair(a: TriangleMesh, b: TriangleMesh): number {
  const list = ({ positions, triangles }: TriangleMesh): ExtendedTriangle[] =>
    Array.from({ length: triangles.length / 3 }, (_, k) => {
      const corner = (i: number): Vector3 => new Vector3().fromArray(positions, 3 * (triangles[3 * k + i] as number))
      return new ExtendedTriangle(corner(0), corner(1), corner(2))
    })
  const others = list(b)
  return Math.min(...list(a).flatMap(t => others.map(o => t.distanceToTriangle(o))))
}
const apart = ({ onFirst, onSecond }: Gap): number => Math.hypot(...onFirst.map((x, i) => x - (onSecond[i] as number)))

describe('the gap between a mesh and a box', () => {
  test('is that of every triangle against every face of the box, told by other means', () => {
    fc.assert(
      fc.property(soup(40), box, (mesh, around) => {
        const found = gapToBox(prepare(mesh), around) as Gap,
          skin = everyPair(mesh, boxMesh(around)),
          within = Array.from(
            { length: mesh.positions.length / 3 },
            (_, i) => [...mesh.positions.subarray(3 * i, 3 * i + 3)] as unknown as Vector,
          ).some(p => pointToBox(around, p) === 0)
        expect(found.gap).toBeCloseTo(within ? 0 : skin, 7)
        expect(apart(found)).toBeCloseTo(found.gap, 9)
        expect(pointToBox(around, found.onSecond)).toBeLessThan(1e-9)
        if (within) expect(found.overlap).toBe(true)
      }),
      { numRuns: runs(4000) },
    )
  })
  test('of a box as mesh is the exact distance of the two boxes', () => {
    fc.assert(
      fc.property(box, box, (a, b) => {
        const found = gapToBox(prepare(boxMesh(a), { solid: true }), b) as Gap,
          wanted = boxDistance(a, b)
        expect(found.gap).toBeCloseTo(wanted?.distance ?? 0, 9)
        if (wanted && wanted.distance > 1e-9) expect(found.overlap).toBe(false)
      }),
      { numRuns: runs(10_000) },
    )
  })
  test('is nothing where a solid holds the box, or the box the mesh; a surface round a box keeps its distance', () => {
    const ball = ballSolid(1, 4).mesh,
      small: OrientedBox = { centre: [0, 0, 0], half: [0.1, 0.1, 0.1], axes: turned(0, 0.3) }
    expect(gapToBox(prepare(ball, { solid: true }), small)).toMatchObject({ gap: 0, overlap: true })
    expect((gapToBox(prepare(ball), small) as Gap).gap).toBeCloseTo(1 - Math.sqrt(0.03), 2)
    expect(gapToBox(prepare(ball), { ...small, half: [2, 2, 2] })).toMatchObject({ gap: 0, overlap: true })
  })
  test('wider than asked for is not told', () => {
    const ball = prepare(ballSolid(1, 3).mesh),
      away: OrientedBox = { centre: [3, 0, 0], half: [0.5, 0.5, 0.5], axes: turned(0, 0) }
    expect(gapToBox(ball, away)?.gap).toBeCloseTo(1.5, 12)
    expect(gapToBox(ball, away, { upTo: 1.4 })).toBeUndefined()
    expect(gapToBox(ball, away, { upTo: 1.6 })?.gap).toBeCloseTo(1.5, 12)
  })
  test('through a wall with no corner in it is an overlap', () => {
    const wall = prepare({ positions: Float64Array.of(-5, -5, 0, 5, -5, 0, 0, 9, 0), triangles: Uint32Array.of(0, 1, 2) })
    expect(gapToBox(wall, { centre: [0, 0, 0.05], half: [0.1, 0.1, 0.1], axes: turned(1, 0.2) })).toMatchObject({ gap: 0, overlap: true })
    expect(gapToBox(wall, { centre: [0, 0, 0.101], half: [0.1, 0.1, 0.1], axes: turned(2, 1) })?.gap).toBeCloseTo(0.001, 12)
  })
})

describe('the gap between two meshes', () => {
  test('is that of every pair of triangles, told by other means, whichever comes first', () => {
    fc.assert(
      fc.property(soup(30), soup(30), fc.double({ min: -2, max: 2, noNaN: true }), (a, b, away) => {
        const moved = { ...b, positions: b.positions.map((x, i) => (i % 3 === 0 ? x + away : x)) },
          [one, other] = [prepare(a), prepare(moved)],
          found = gapBetween(one, other) as Gap
        expect(found.gap).toBeCloseTo(everyPair(a, moved), 7)
        expect(apart(found)).toBeCloseTo(found.gap, 9)
        expect((gapBetween(other, one) as Gap).gap).toBeCloseTo(found.gap, 9)
      }),
      { numRuns: runs(2000) },
    )
  })
  test('of triangles that are lines or places is that of the lines', () => {
    fc.assert(
      fc.property(place, place, place, place, fc.double({ min: 0, max: 1, noNaN: true }), (p, q, r, s, share) => {
        // The third corner on the line of the other two.
        const line = (from: Vector, to: Vector): TriangleMesh =>
            meshOf([[...from, ...to, ...from.map((x, i) => x + share * ((to[i] as number) - x))]]),
          wanted = segmentToSegment(p, q, r, s).distance
        expect((gapBetween(prepare(line(p, q)), prepare(line(r, s))) as Gap).gap).toBeCloseTo(wanted, 9)
        expect((gapBetween(prepare(line(p, p)), prepare(line(r, r))) as Gap).gap).toBeCloseTo(between(p, r), 12)
      }),
      { numRuns: runs(4000) },
    )
  })
  test('of many triangles at one place is found all the same', () => {
    const heap = prepare(meshOf(Array.from({ length: 3000 }, () => [0, 0, 0, 1, 0, 0, 0, 1, 0])))
    expect(gapBetween(heap, prepare(meshOf([[0, 0, 1, 1, 0, 1, 0, 1, 2]])))?.gap).toBe(1)
  })
  test('of two boxes as solids is their exact distance', () => {
    fc.assert(
      fc.property(box, box, (a, b) => {
        const found = gapBetween(prepare(boxMesh(a), { solid: true }), prepare(boxMesh(b), { solid: true })) as Gap
        expect(found.gap).toBeCloseTo(boxDistance(a, b)?.distance ?? 0, 9)
      }),
      { numRuns: runs(4000) },
    )
  })
  test('is nothing where they touch, cross, lie in one plane or one holds the other', () => {
    const flat = (x: number, z = 0): TriangleMesh => ({
      positions: Float64Array.of(x, 0, z, x + 1, 0, z, x, 1, z),
      triangles: Uint32Array.of(0, 1, 2),
    })
    const gap = (a: TriangleMesh, b: TriangleMesh): Gap | undefined => gapBetween(prepare(a), prepare(b))
    expect(gap(flat(0), flat(0.2))).toMatchObject({ gap: 0, overlap: true })
    expect(gap(flat(0), flat(1))).toMatchObject({ gap: 0, overlap: true })
    expect(gap(flat(0), flat(0, 0.25))).toMatchObject({ gap: 0.25, overlap: false })
    const [ball, small] = [ballSolid(1, 3).mesh, ballSolid(0.2, 3).mesh]
    expect(gapBetween(prepare(ball, { solid: true }), prepare(small))).toMatchObject({ gap: 0, overlap: true })
    expect(gapBetween(prepare(small), prepare(ball, { solid: true }))).toMatchObject({ gap: 0, overlap: true })
    expect(gapBetween(prepare(ball), prepare(small))?.overlap).toBe(false)
  })
})

describe('the gap between a mesh and a hose', () => {
  test('is that to a ball’s middle less both radii', () => {
    const ball = prepare(ballSolid(0.5, 6).mesh)
    fc.assert(
      fc.property(fc.double({ min: 0.7, max: 3, noNaN: true }), fc.double({ min: -1, max: 1, noNaN: true }), (away, along) => {
        const found = gapToTube(ball, {
          points: [
            [along - 1, away, 0],
            [along + 1, away, 0],
            [along + 1, away + 1, 1],
          ],
          radius: 0.1,
        }) as Gap
        expect(found.gap).toBeCloseTo(away - 0.6, 3)
        expect(apart(found)).toBeCloseTo(found.gap, 9)
      }),
      { numRuns: runs(2000) },
    )
  })
  test('is nothing where the hose runs through or touches; one point is a ball', () => {
    const ball = prepare(ballSolid(0.5, 4).mesh)
    expect(
      gapToTube(ball, {
        points: [
          [-2, 0, 0],
          [2, 0, 0],
        ],
        radius: 0.01,
      }),
    ).toMatchObject({ gap: 0, overlap: true })
    expect(gapToTube(ball, { points: [[0, 0, 0.55]], radius: 0.06 })).toMatchObject({ gap: 0, overlap: true })
    expect(gapToTube(ball, { points: [[0, 0, 1]], radius: 0.1 })?.gap).toBeCloseTo(0.4, 12)
    expect(() => gapToTube(ball, { points: [], radius: 0.1 })).toThrow('at least one point')
  })
})

test('a mesh that is none, or a solid with a hole, is a programmer’s fault', () => {
  const { mesh } = ballSolid(1, 1)
  expect(() => prepare({ ...mesh, triangles: new Uint32Array() })).toThrow('must have triangles')
  expect(() => prepare({ ...mesh, triangles: Uint32Array.of(0, 1, 99) })).toThrow('triangle 0 must name one of 18 corners, found 99')
  expect(() => prepare({ ...mesh, triangles: mesh.triangles.slice(3) }, { solid: true })).toThrow('a solid must be closed')
  const kept = mesh.triangles.slice()
  prepare(mesh)
  expect(mesh.triangles).toEqual(kept)
  expect([insideOf(mesh, [0.1, 0.2, 0]), insideOf(mesh, [2, 0, 0])]).toEqual([true, false])
})
