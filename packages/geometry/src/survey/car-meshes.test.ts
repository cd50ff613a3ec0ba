import { type MeshTask, type OrientedBox, type PairTask, SQUARE, turned, type TriangleMesh, type Vector } from '@ampwright/engine'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { ballSolid, boxSolid, ringSolid } from '../../../../tests/solids.ts'
import { boxOf, gapOf } from '../../../engine/src/fitting/placed-body.ts'
import { placed } from '../align/placement.ts'
import { boundsOf } from '../measures.ts'
import { carMeshes } from './car-meshes.ts'
import { type PartFile, partMesh } from './part-mesh.ts'

const extent = ({ mesh }: PartFile): Vector => {
  const { low, high } = boundsOf(mesh)
  return [high[0] - low[0], high[1] - low[1], high[2] - low[2]]
}
const asked = (shape: string, sides: Vector, more: Partial<MeshTask> = {}): MeshTask => ({
  shape,
  file: `${shape}.stl`,
  mark: shape,
  pose: JSON.stringify(sides),
  sides,
  within: 0.002,
  ...more,
})
const scaled = (mesh: TriangleMesh, by: number): TriangleMesh => ({ ...mesh, positions: mesh.positions.map(x => by * x) })
const square = (centre: Vector, sides: Vector): OrientedBox => ({ centre, half: sides.map(s => s / 2) as unknown as Vector, axes: SQUARE })

/** Surveys two shapes, each with a mesh or without. */
function between(
  one: { readonly box: OrientedBox; readonly file?: PartFile },
  other: { readonly box: OrientedBox; readonly file?: PartFile },
) {
  const pair: PairTask = { name: 'one and other', pose: 'p', one: { name: 'one', box: one.box }, other: { name: 'other', box: other.box } },
    files = new Map([
      ['one', one],
      ['other', other],
    ]),
    meshes = [...files].flatMap(([name, { box, file }]) => (file ? [asked(name, box.half.map(h => 2 * h) as unknown as Vector)] : []))
  return carMeshes({ meshes, pairs: [pair] }, ({ shape }) => files.get(shape)?.file as PartFile).survey.pairs['one and other']
}

// An L of two bars, 0.4 long, 0.3 high, its bars 0.1 thick, along z and along x.
const ell: PartFile = {
  mesh: (() => {
    const profile = [
      [0, 0],
      [0.4, 0],
      [0.4, 0.1],
      [0.1, 0.1],
      [0.1, 0.3],
      [0, 0.3],
    ] as const
    const positions = [0, 0.2].flatMap(y => profile.flatMap(([x, z]) => [x, y, z]))
    const triangles = [0, 1, 2, 0, 2, 3, 0, 3, 4, 0, 4, 5]
    const sides = profile.flatMap((_, i) => {
      const j = (i + 1) % 6
      return [i, i + 6, j, j, i + 6, j + 6]
    })
    const back = Array.from({ length: 4 }, (_, t) =>
      [triangles[3 * t], triangles[3 * t + 2], triangles[3 * t + 1]].map(v => 6 + (v as number)),
    ).flat()
    return { positions: Float64Array.from(positions), triangles: Uint32Array.from([...triangles, ...sides, ...back]) }
  })(),
}
const ellBox = square([0.2, 0.1, 0.15], [0.4, 0.2, 0.3])

describe('the mesh of a part', () => {
  test('is laid by its sides: in the unit that fits them, its middle at the origin', () => {
    const ball = { mesh: placed(scaled(ballSolid(0.2, 3).mesh, 1000), { scale: 1, turn: SQUARE as never, shift: [70, -3, 12] }) },
      { found, mesh, ready } = partMesh(ball, asked('ball', [0.4, 0.4, 0.4]))
    expect(found).toMatchObject({ closed: true, triangles: 512 })
    for (const s of found.sides) expect(s).toBeCloseTo(0.4, 9)
    for (const x of [...boundsOf(mesh).low, ...boundsOf(mesh).high]) expect(Math.abs(x)).toBeCloseTo(0.2, 9)
    expect(ready).toBeDefined()
    expect(partMesh({ mesh: scaled(ball.mesh, 1 / 25.4) }, asked('ball', [0.4, 0.4, 0.4])).ready).toBeDefined()
  })
  test('does not stand for a part that is larger or smaller than it', () => {
    const ball = { mesh: ballSolid(0.2, 3).mesh }
    expect(partMesh(ball, asked('ball', [0.4, 0.4, 0.4021])).ready).toBeUndefined()
    expect(partMesh(ball, asked('ball', [0.4, 0.4, 0.4019])).ready).toBeDefined()
    expect(partMesh(ball, asked('ball', [0.4, 0.4, 0.4], { unit: 'mm' })).ready).toBeUndefined()
    expect(partMesh(ball, asked('ball', [0.4, 0.4, 0.4], { unit: 'mm' })).found.sides[0]).toBeCloseTo(0.0004, 12)
  })
  test('of a format with its second axis up is turned upright, and its unit is that of the format', () => {
    // 1 across (to its left), 2 up, 3 ahead, as that format has it.
    const file: PartFile = { mesh: boxSolid([1, 2, 3]).mesh, unit: 'm', up: 'y' }
    const { sides } = partMesh(file, asked('box', [3, 1, 2])).found
    expect(sides.map(s => Number(s.toFixed(12)))).toEqual([3, 1, 2])
    // In millimetres it would fit better; the format says metres.
    expect(partMesh(file, asked('box', [0.003, 0.001, 0.002])).ready).toBeUndefined()
  })
  test('that is open stands for its part as a surface', () => {
    const { mesh } = boxSolid([1, 1, 1]),
      open = { ...mesh, triangles: mesh.triangles.slice(3) }
    const { found, ready } = partMesh({ mesh: open }, asked('box', [1, 1, 1]))
    expect(found.closed).toBe(false)
    expect(ready?.solid).toBe(false)
  })
  test('that cannot be read is told, and its box stands for it', () => {
    const { survey, parts } = carMeshes({ meshes: [asked('motor', [1, 1, 1])], pairs: [] }, () => 'byte 9: the file is cut off')
    expect(survey.shapes['motor']).toMatchObject({ fault: 'byte 9: the file is cut off', pose: '[1,1,1]' })
    expect(parts.size).toBe(0)
  })
  test('is laid once and measured once while it stays as it is', () => {
    let read = 0
    const file = { mesh: ballSolid(0.2, 2).mesh },
      task = {
        meshes: [asked('ball', [0.4, 0.4, 0.4])],
        pairs: [
          {
            name: 'ball and box',
            pose: 'p',
            one: { name: 'ball', box: square([0, 0, 0], [0.4, 0.4, 0.4]) },
            other: { name: 'box', box: square([1, 0, 0], [1, 1, 1]) },
          },
        ],
      },
      of = (before?: ReturnType<typeof carMeshes>, t = task) => carMeshes(t, () => (read++, file), before)
    const first = of(),
      again = of(first)
    expect(read).toBe(1)
    expect(again.survey.pairs['ball and box']).toBe(first.survey.pairs['ball and box'])
    const moved = of(first, {
      ...task,
      pairs: task.pairs.map(p => ({ ...p, pose: 'q', other: { name: 'box', box: square([1.1, 0, 0], [1, 1, 1]) } })),
    })
    expect(read).toBe(1)
    expect(moved.survey.pairs['ball and box']?.apart).toBeCloseTo(0.4, 9)
    expect(of(first, { ...task, meshes: [asked('ball', [0.4, 0.4, 0.401])] }).laid.get('ball')).not.toBe(first.laid.get('ball'))
    expect(read).toBe(2)
  })
})

describe('the air between parts by their meshes', () => {
  test('of a ball beside a box, and beside a ball, is known by hand', () => {
    const ball = { file: { mesh: ballSolid(0.2, 4).mesh }, box: square([0, 0, 0], [0.4, 0.4, 0.4]) }
    // Over a corner: the corner of the box at (0.2, 0.2, 0.2), where their boxes touch, is √0.12 − 0.2 off the ball; its octahedron reaches out to a little less.
    const corner = between(ball, { box: square([0.3, 0.3, 0.3], [0.2, 0.2, 0.2]) })
    expect(corner?.apart).toBeCloseTo(Math.sqrt(0.12) - 0.2, 2)
    expect(corner?.apart).toBeGreaterThanOrEqual(Math.sqrt(0.12) - 0.2)
    // Along an axis a corner of the mesh lies on the ball.
    expect(between(ball, { box: square([0.35, 0, 0], [0.2, 0.2, 0.2]) })?.apart).toBeCloseTo(0.05, 9)
    const two = between(ball, { file: ball.file, box: square([0.3, 0.4, 0], [0.4, 0.4, 0.4]) })
    expect(two?.apart).toBeCloseTo(0.1, 2)
    expect(two?.away[0]).toBeCloseTo(0.6, 1)
    expect(two?.places).toEqual([
      [0, 0, 0],
      [0.3, 0.4, 0],
    ])
  })
  test('of a ring round a shaft is that through its hole', () => {
    const ring: PartFile = { mesh: ringSolid(0.3, 0.1, 64, 24).mesh },
      box = square([0, 0, 0], extent(ring)),
      shaft = square([0, 0, 0], [0.1, 0.1, 1])
    // The hole is 0.2 wide about its axis; the corners of the shaft are √2 · 0.05 from it.
    expect(between({ box, file: ring }, { box: shaft })?.apart).toBeCloseTo(0.2 - 0.05 * Math.SQRT2, 2)
    expect(gapOf(box, shaft)).toBeLessThan(0)
    // A shaft as thick as the hole and more runs into it.
    expect(between({ box, file: ring }, { box: square([0, 0, 0], [0.3, 0.3, 1]) })?.apart).toBe(0)
  })
  test('of an L and a box in its corner is air, though their boxes overlap', () => {
    const inCorner = square([0.3, 0.1, 0.25], [0.2, 0.2, 0.1])
    expect(gapOf(ellBox, inCorner)).toBeLessThan(-0.09)
    for (const pair of [
      between({ box: ellBox, file: ell }, { box: inCorner }),
      between({ box: ellBox, file: ell }, { box: inCorner, file: { mesh: boxSolid([0.2, 0.2, 0.1]).mesh } }),
    ])
      expect(pair?.apart).toBeCloseTo(0.1, 9)
    const turnedRound = between({ box: inCorner }, { box: ellBox, file: ell })
    expect(turnedRound?.apart).toBeCloseTo(0.1, 9)
    // From the first to the second: the box lies off the L.
    expect(turnedRound?.at[0]).toBeCloseTo(0.2, 9)
    expect(turnedRound?.away[0]).toBeCloseTo(-1, 9)
    // Two Ls hooked into each other: the end of each bar is 50 mm off the other along and up.
    const hooked: OrientedBox = { ...ellBox, centre: [0.35, 0.1, 0.3], axes: turned(1, Math.PI) }
    expect(gapOf(ellBox, hooked)).toBeLessThan(-0.1)
    expect(between({ box: ellBox, file: ell }, { box: hooked, file: ell })?.apart).toBeCloseTo(0.05 * Math.SQRT2, 9)
  })
  test('of one wholly inside another is none', () => {
    const ball = { file: { mesh: ballSolid(0.2, 3).mesh }, box: square([0, 0, 0], [0.4, 0.4, 0.4]) }
    expect(between(ball, { box: square([0.02, 0, 0], [0.05, 0.05, 0.05]) })?.apart).toBe(0)
    expect(between({ box: square([0.02, 0, 0], [2, 2, 2]) }, ball)?.apart).toBe(0)
  })

  const milli = (least: number, most: number) => fc.integer({ min: least, max: most }).map(n => n / 1000),
    three = (least: number, most: number) => fc.tuple(milli(least, most), milli(least, most), milli(least, most)),
    body = fc.record({ place: three(-500, 500), sides: three(50, 500), turns: three(-3000, 3000) })
  test('of meshes that are their boxes is as the formula for boxes says', () => {
    fc.assert(
      fc.property(body, body, (a, b) => {
        const [one, other] = [boxOf(a), boxOf(b)],
          said = Math.max(0, gapOf(one, other)),
          file = (sides: Vector): PartFile => ({ mesh: scaled(boxSolid(sides).mesh, 1000) })
        expect(between({ box: one, file: file(a.sides) }, { box: other })?.apart).toBeCloseTo(said, 9)
        expect(between({ box: one, file: file(a.sides) }, { box: other, file: file(b.sides) })?.apart).toBeCloseTo(said, 9)
      }),
      { numRuns: runs(400) },
    )
  })
  const scattered = fc.array(three(-200, 200), { minLength: 4, maxLength: 12 }).map((places): PartFile => {
    const corners = places.length
    return {
      mesh: {
        positions: Float64Array.from(places.flat()),
        triangles: Uint32Array.from(places.flatMap((_, i) => [i, (i + 1) % corners, (i + 2) % corners])),
      },
    }
  })
  test('is never less than that between their boxes', () => {
    fc.assert(
      fc.property(scattered, scattered, body, body, (a, b, at, bt) => {
        const [sa, sb] = [extent(a), extent(b)]
        fc.pre([...sa, ...sb].every(s => s > 0.01))
        const one = boxOf({ ...at, sides: sa }),
          other = boxOf({ ...bt, sides: sb }),
          said = Math.max(0, gapOf(one, other))
        expect(between({ box: one, file: a }, { box: other })?.apart).toBeGreaterThanOrEqual(said - 1e-9)
        expect(between({ box: one, file: a }, { box: other, file: b })?.apart).toBeGreaterThanOrEqual(said - 1e-9)
      }),
      { numRuns: runs(400) },
    )
  })
  test('is that of the nearest of all their triangles, tried point by point', () => {
    /** Places all over the triangles of a mesh as it stands in the car. */
    const places = ({ mesh }: PartFile, box: OrientedBox): readonly Vector[] => {
      const laid = partMesh({ mesh }, asked('x', extent({ mesh }))).mesh,
        out: Vector[] = [],
        at = (k: number): Vector => [0, 1, 2].map(i => laid.positions[3 * (laid.triangles[k] as number) + i]) as unknown as Vector
      for (let t = 0; t < laid.triangles.length; t += 3) {
        const [a, b, c] = [at(t), at(t + 1), at(t + 2)]
        for (let i = 0; i <= 6; i++)
          for (let j = 0; j <= 6 - i; j++) {
            const own = a.map((x, k) => x + (i / 6) * ((b[k] as number) - x) + (j / 6) * ((c[k] as number) - x))
            out.push(
              [0, 1, 2].map(
                k => (box.centre[k] as number) + own.reduce((s, x, n) => s + x * ((box.axes[n] as Vector)[k] as number), 0),
              ) as unknown as Vector,
            )
          }
      }
      return out
    }
    fc.assert(
      fc.property(scattered, scattered, body, body, (a, b, at, bt) => {
        const [sa, sb] = [extent(a), extent(b)]
        fc.pre([...sa, ...sb].every(s => s > 0.01))
        const one = boxOf({ ...at, sides: sa }),
          other = boxOf({ ...bt, sides: sb }),
          found = between({ box: one, file: a }, { box: other, file: b })?.apart as number,
          second = places(b, other)
        const tried = Math.min(...places(a, one).flatMap(p => second.map(q => Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]))))
        expect(found).toBeLessThanOrEqual(tried + 1e-9)
        // Between places so close on triangles so small nothing can be nearer by more than this.
        expect(found).toBeGreaterThanOrEqual(tried - 0.13)
      }),
      { numRuns: runs(60) },
    )
  })
})
