import { boxOf, type OrientedBox, plus, SQUARE, times, turned, type TriangleMesh, type Vector, type WayAsked } from '@ampwright/engine'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { ballSolid, boxSolid } from '../../../../tests/solids.ts'
import { airPastBox, outOf, roomBox, WAYS } from '../../../engine/src/fitting/way-in.ts'
import { type Gap, gapBetween, gapToBox } from '../gap.ts'
import { prepare } from '../prepare.ts'
import { wayPast } from './way-in.ts'

const together = (...meshes: readonly TriangleMesh[]): TriangleMesh => {
  const positions = meshes.flatMap(m => [...m.positions]),
    triangles = meshes.flatMap((m, i) => {
      const before = meshes.slice(0, i).reduce((n, b) => n + b.positions.length / 3, 0)
      return [...m.triangles].map(t => t + before)
    })
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) }
}
const from = (out: Vector, seat = 0.02): WayAsked => ({ pose: 'p', out, from: seat })
const UP: Vector = [0, 0, 1]

// A pit open above: floor at 0, walls at x = ±0.5, a lip on one wall that reaches in by 0.1 between heights 0.8 and 0.9.
const pit = prepare(
  together(
    boxSolid([1.2, 1, 0.01], [-0.6, -0.5, -0.01]).mesh,
    boxSolid([0.1, 1, 1], [-0.6, -0.5, 0]).mesh,
    boxSolid([0.1, 1, 1], [0.5, -0.5, 0]).mesh,
    boxSolid([0.1, 1, 0.1], [0.4, -0.5, 0.8]).mesh,
  ),
)
const box = (width: number, x = 0): OrientedBox => ({ centre: [x, 0, 0.3], half: [width / 2, 0.2, 0.1], axes: SQUARE })

describe('a box on its way in past a mesh', () => {
  test('passes the lip with the air a rule shows', () => {
    const { apart, atLeast, out, at, away, place, pose } = wayPast(pit, box(0.6), from(UP))
    // Its side at 0.3, the lip from 0.4 on: 0.1 while it passes it.
    expect(apart).toBeCloseTo(0.1, 9)
    expect(atLeast).toBeGreaterThan(0.099)
    // It is beside the lip from where its top is at 0.8 until its bottom is at 0.9.
    expect(out).toBeGreaterThan(0.8 - 0.4 - 0.015)
    expect(out).toBeLessThan(0.9 - 0.2 + 0.015)
    expect(at[0]).toBeCloseTo(0.4, 9)
    expect(away[0]).toBeCloseTo(-1, 9)
    expect({ place, pose }).toEqual({ place: [0, 0, 0.3], pose: 'p' })
  })
  test('is not looked at before it has left its seat: that it stands on the floor is no matter', () => {
    const stands = { ...box(0.6), centre: [0, 0, 0.1] as Vector }
    expect(wayPast(pit, stands, from(UP, 0)).apart).toBeCloseTo(0, 9)
    expect(wayPast(pit, stands, from(UP)).apart).toBeCloseTo(0.02, 9)
    expect(wayPast(pit, stands, from(UP)).out).toBeCloseTo(0.02, 9)
  })
  test('runs into the lip, and it is told where it touches first, coming in', () => {
    const { apart, atLeast, out, at, away } = wayPast(pit, box(0.9), from(UP))
    expect(apart).toBe(0)
    expect(atLeast).toBe(0)
    expect(away).toEqual([0, 0, 0])
    // Its bottom, at 0.2, stops on top of the lip, at 0.9.
    expect(out).toBeGreaterThanOrEqual(0.7 - 1e-12)
    expect(out).toBeLessThan(0.7002)
    expect(at[2]).toBeCloseTo(0.9, 9)
    expect(at[0]).toBeGreaterThanOrEqual(0.4 - 1e-9)
  })
  test('that stands past all of it has the gap at its seat', () => {
    const above = { ...box(0.6), centre: [0, 0, 2] as Vector }
    expect(wayPast(pit, above, from(UP))).toMatchObject({ out: 0.02 })
    expect(wayPast(pit, above, from(UP)).apart).toBeCloseTo((gapToBox(pit, { ...above, centre: [0, 0, 2.02] }) as Gap).gap, 12)
  })
  test('is nowhere nearer than told, and runs in nowhere before it is told, tried step by step', () => {
    const part = fc.record({
      x: fc.integer({ min: -400, max: 400 }),
      y: fc.integer({ min: -400, max: 400 }),
      turn: fc.integer({ min: -800, max: 800 }),
      sides: fc.tuple(...[0, 0, 0].map(() => fc.integer({ min: 50, max: 500 }))),
      way: fc.constantFrom<Vector>([0, 0, 1], [1, 0, 0], [0, -1, 0], [0, 0, -1]),
      ball: fc.boolean(),
    })
    const ball = prepare(ballSolid(0.3, 2).mesh)
    fc.assert(
      fc.property(part, p => {
        const mesh = p.ball ? ball : pit,
          body: OrientedBox = {
            centre: [p.x / 1000, p.y / 1000, 0.2],
            half: p.sides.map(s => s / 2000) as unknown as Vector,
            axes: turned(2, p.turn / 1000),
          },
          found = wayPast(mesh, body, from(p.way)),
          gapAt = (t: number): Gap => gapToBox(mesh, { ...body, centre: plus(body.centre, times(p.way, t)) }) as Gap
        expect(gapAt(found.out).gap).toBeLessThanOrEqual(found.apart + 1e-4)
        // Past all of it from 3 m on.
        for (let n = 0; n <= 150; n++) {
          const t = 0.02 + n * 0.02,
            { gap, overlap } = gapAt(t)
          expect(gap).toBeGreaterThanOrEqual(found.atLeast - 1e-12)
          if (found.apart > 0) expect(overlap).toBe(false)
          else if (t > found.out + 1e-4) expect(overlap).toBe(false)
        }
      }),
      { numRuns: runs(200) },
    )
  })
  test('comes as its mesh where it has one: nowhere nearer than its box, and as far in as the mesh goes', () => {
    const ball = prepare(ballSolid(0.3, 4).mesh, { solid: true }),
      round: OrientedBox = { centre: [0, 0, 0.4], half: [0.3, 0.3, 0.3], axes: SQUARE },
      by = (part?: typeof ball, body = round) => wayPast(pit, body, from(UP), part)
    // The lip is 100 mm off its side at the middle, its box as much; moved towards the lip by 150 mm both run into it, the ball later.
    expect(by().apart).toBeCloseTo(0.1, 9)
    expect(by(ball).apart).toBeCloseTo(0.1, 3)
    const beside: OrientedBox = { ...round, centre: [0.15, 0, 0.4] },
      [boxed, rounded] = [by(undefined, beside), by(ball, beside)]
    expect([boxed.apart, rounded.apart]).toEqual([0, 0])
    expect(boxed.out).toBeCloseTo(0.9 - 0.1, 3)
    // Its middle 250 mm to the left of the edge of the lip and √(0.3² − 0.25²) above it.
    expect(rounded.out).toBeCloseTo(0.9 + Math.sqrt(0.3 ** 2 - 0.25 ** 2) - 0.4, 2)
    fc.assert(
      fc.property(
        fc.integer({ min: -250, max: 250 }),
        fc.integer({ min: -250, max: 250 }),
        fc.integer({ min: 310, max: 600 }),
        (x, y, z) => {
          const body: OrientedBox = { ...round, centre: [x / 1000, y / 1000, z / 1000] },
            [asBox, asBall] = [by(undefined, body), by(ball, body)]
          expect(asBall.apart).toBeGreaterThanOrEqual(asBox.atLeast - 1e-9)
          if (asBall.apart === 0) expect(asBall.out).toBeLessThanOrEqual(asBox.out + 2e-4)
          else
            for (let t = 0.02; t < 2; t += 0.02)
              expect(
                (gapBetween(pit, ball, { pose: { ...body, centre: plus(body.centre, times(UP, t)) } }) as Gap).gap,
              ).toBeGreaterThanOrEqual(asBall.atLeast - 1e-12)
        },
      ),
      { numRuns: runs(40) },
    )
  })
  test('comes past a mesh that is a box as the formula for boxes says', () => {
    const milli = (least: number, most: number) => fc.integer({ min: least, max: most }).map(n => n / 1000),
      three = (least: number, most: number) => fc.tuple(milli(least, most), milli(least, most), milli(least, most)),
      body = fc.record({ place: three(-600, 600), sides: three(50, 500), turns: three(-1500, 1500) })
    fc.assert(
      fc.property(body, three(-600, 600), three(50, 500), fc.constantFrom(...WAYS), (part, low, sides, way) => {
        const mesh = prepare(boxSolid(sides, low).mesh, { solid: true }),
          found = wayPast(mesh, boxOf(part), { pose: '', out: outOf(way), from: 0.02 }),
          said = airPastBox(boxOf(part), roomBox(low, plus(low, sides)), way, 0.02)
        expect(Math.abs(found.apart - Math.max(0, said))).toBeLessThan(0.0011)
        if (said > 1e-6) expect(found.atLeast).toBeLessThanOrEqual(said + 1e-6)
      }),
      { numRuns: runs(300) },
    )
  })
})
