import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { alignedGap, boxGap } from './aligned-gap.ts'
import { corners, type OrientedBox, outOfBox, SQUARE, turned } from './box.ts'
import { boxDistance } from './box-distance.ts'
import { type Tube, tubeClearance } from './capsules.ts'
import { nearestInBox, pointToBox } from './point-to-box.ts'
import { pipeClearance, segmentToSegment } from './segments.ts'
import { separation } from './separating-axes.ts'
import { between, cross, dot, lengthOf, minus, plus, times, type Vector } from './vector.ts'

const DEGREE = Math.PI / 180
const box = (centre: Vector, half: Vector, axes: OrientedBox['axes'] = SQUARE): OrientedBox => ({ centre, half, axes })
const near = (a: readonly number[], b: readonly number[], within = 0.00005): void =>
  b.forEach((x, i) => {
    expect(Math.abs((a[i] as number) - x), `${a} against ${b}`).toBeLessThanOrEqual(within)
  })

describe('two boxes, cases worked by hand', () => {
  const a = box([0, 0, 0], [0.3, 0.2, 0.1])
  const b = (x: number): OrientedBox => box([x, 0.1, 0.05], [0.25, 0.15, 0.1], turned(2, 30 * DEGREE))
  it('turned 30 degrees at 0.62 m they are 28.5 mm apart', () => {
    const found = separation(a, b(0.62))
    near(found.ofFirst, [0.0285, -0.3549, -0.15])
    near(found.ofSecond, [-0.0229, -0.2498, -0.15])
    near([found.gap, boxDistance(a, b(0.62))?.distance ?? Number.NaN], [0.0285, 0.0285])
    expect(found.overlap).toBe(false)
  })
  it('at 0.50 m they overlap by 91.5 mm', () => {
    const found = separation(a, b(0.5))
    near(found.ofFirst, [-0.0915, -0.3549, -0.15], 0.00006)
    near(found.ofSecond, [-0.1268, -0.3098, -0.15])
    near([found.gap], [-0.0915], 0.00006)
    expect(found.overlap).toBe(true)
    expect(boxDistance(a, b(0.5))).toBeUndefined()
  })
  it('two crossed bars are parted only by the axis square to both', () => {
    const one = box([0, 0, 0], [1, 0.05, 0.05], turned(0, 45 * DEGREE)),
      other = (z: number): OrientedBox => box([0, 0, z], [0.05, 1, 0.05], turned(1, 45 * DEGREE))
    const found = separation(one, other(0.15))
    near([Math.max(...found.ofFirst, ...found.ofSecond)], [-0.701])
    near([found.gap, boxDistance(one, other(0.15))?.distance ?? Number.NaN], [0.0086, 0.0086])
    near([separation(one, other(0.14)).gap], [-0.0014])
    expect(separation(one, other(0.14)).overlap).toBe(true)
  })
  it('where corners meet, the axes tell 18.2 mm, the distance is 19.2 mm', () => {
    const one = box([0, 0, 0], [0.4, 0.25, 0.15]),
      other = box([0.7, 0.4, 0.1], [0.3, 0.1, 0.12], turned(2, 45 * DEGREE))
    near([separation(one, other).gap, boxDistance(one, other)?.distance ?? Number.NaN], [0.0182, 0.0192])
  })
  it('square to the car: 130 mm, the best axis alone 120 mm', () => {
    near([alignedGap({ low: [0, 0, 0], high: [0.6, 0.4, 0.25] }, { low: [0.72, 0.45, 0.2], high: [1, 0.9, 0.5] })], [0.13])
    const one = box([0.3, 0.2, 0.125], [0.3, 0.2, 0.125]),
      other = box([0.86, 0.675, 0.35], [0.14, 0.225, 0.15])
    near([separation(one, other).gap, boxDistance(one, other)?.distance ?? Number.NaN], [0.12, 0.13])
  })
  it('a place without three lengths is refused by name', () => {
    expect(() => boxGap({ lowA: [0, 0, 0], highA: [1, 1], lowB: [2, 2, 2], highB: [3, 3, 3] })).toThrow(
      'box-gap: highA must be three lengths, x, y and z; found 2',
    )
    expect(() => pipeClearance({ fromA: [0, 0, 0], toA: [1, 0, 0], radiusA: 0, fromB: [0, 0, 1, 0], toB: [1, 0, 1], radiusB: 0 })).toThrow(
      'pipe-clearance: fromB must be three lengths, x, y and z; found 4',
    )
  })
  it('segments: crossing, and end against start', () => {
    const first = segmentToSegment([0, 0, 0], [1, 0, 0], [0.3, -0.4, 0.12], [0.5, 0.6, 0.12])
    near([first.distance, first.s, first.t], [0.12, 0.38, 0.4])
    const second = segmentToSegment([0, 0, 0], [1, 0, 0], [1.2, 0.1, 0.05], [1.4, 0.5, 0.05])
    near([second.distance, second.s, second.t], [0.2291, 1, 0])
  })
  it('a point beside a box turned 30 degrees: 382.9 mm', () => {
    const turnedBox = box([0, 0, 0], [0.4, 0.3, 0.2], turned(2, 30 * DEGREE))
    near([pointToBox(turnedBox, [0.6, 0.5, 0.3])], [0.3829])
  })
})

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true })
const place = fc.tuple(number(-1, 1), number(-1, 1), number(-1, 1))
const angle = number(-Math.PI, Math.PI)
/** Boxes turned any way, many of them square to the car or by quarter turns, where sides are parallel. */
const anyBox: fc.Arbitrary<OrientedBox> = fc
  .record({
    centre: place,
    half: fc.tuple(number(0.01, 0.6), number(0.01, 0.6), number(0.01, 0.6)),
    turns: fc.oneof(fc.tuple(angle, angle, angle), fc.tuple(angle, fc.constant(0), fc.constant(0)), fc.constant([0, 0, 0] as const)),
  })
  .map(({ centre, half, turns: [x, y, z] }) => box(centre, half, turned(2, z, turned(1, y, turned(0, x)))))
const reach = (b: OrientedBox, l: Vector): number => b.axes.reduce((sum, u, i) => sum + (b.half[i] as number) * Math.abs(dot(u, l)), 0)

/** Distance of two boxes by another way: nearest point of one, nearest point of the other, in turn (von Neumann), with steps that overshoot. */
function byTurns(a: OrientedBox, b: OrientedBox): number {
  let x = a.centre,
    momentum = x,
    t = 1
  for (let i = 0; i < 20000; i++) {
    const before = x
    x = nearestInBox(a, nearestInBox(b, momentum))
    const next = (1 + Math.sqrt(1 + 4 * t * t)) / 2
    // The overshoot is let go where it leads uphill.
    const uphill = dot(minus(momentum, x), minus(x, before)) > 0
    momentum = uphill ? x : plus(x, times(minus(x, before), (t - 1) / next))
    t = uphill ? 1 : next
    if (i > 20 && between(x, before) < 1e-13) break
  }
  return between(x, nearestInBox(b, x))
}

describe('two boxes, any', () => {
  it('their distance is certain: both points lie in their boxes, and no plane between them can be wider', () => {
    fc.assert(
      fc.property(anyBox, anyBox, (a, b) => {
        const found = boxDistance(a, b),
          axes = separation(a, b)
        expect(found === undefined).toBe(axes.overlap)
        if (!found) return
        expect(pointToBox(a, found.onFirst)).toBeLessThan(1e-9)
        expect(pointToBox(b, found.onSecond)).toBeLessThan(1e-9)
        const l = times(minus(found.onSecond, found.onFirst), 1 / found.distance)
        const between = dot(minus(b.centre, a.centre), l) - reach(a, l) - reach(b, l)
        if (found.distance > 1e-4) expect(Math.abs(between - found.distance)).toBeLessThan(2e-6)
        expect(axes.gap).toBeLessThan(found.distance + 1e-12)
        expect(found.distance).toBeGreaterThan(0)
      }),
      { numRuns: runs(100_000) },
    )
  })
  it('their distance is that of a search by turns, which knows no corners and edges', () => {
    fc.assert(
      fc.property(anyBox, anyBox, (a, b) => {
        expect(Math.abs(byTurns(a, b) - (boxDistance(a, b)?.distance ?? 0))).toBeLessThan(1e-4)
      }),
      { numRuns: runs(20_000) },
    )
  })
  it('it does not matter which is named first', () => {
    fc.assert(
      fc.property(anyBox, anyBox, (a, b) => {
        expect(Math.abs((boxDistance(a, b)?.distance ?? 0) - (boxDistance(b, a)?.distance ?? 0))).toBeLessThan(2e-6)
        expect(Math.abs(separation(a, b).gap - separation(b, a).gap)).toBeLessThan(1e-12)
      }),
      { numRuns: runs(20_000) },
    )
  })
  it('overlapping ones come free by the depth, and not by a little less', () => {
    fc.assert(
      fc.property(anyBox, anyBox, (a, b) => {
        const { overlap, gap, axis } = separation(a, b)
        if (!overlap) return
        const pushed = (by: number): OrientedBox => ({ ...b, centre: plus(b.centre, times(axis, by)) })
        expect(separation(a, pushed(-gap + 1e-9)).overlap).toBe(false)
        if (gap < -1e-6) expect(separation(a, pushed(-gap - 1e-7)).overlap).toBe(true)
      }),
      { numRuns: runs(20_000) },
    )
  })
  it('square ones: the turned way of reckoning and the plain one agree', () => {
    fc.assert(
      fc.property(place, place, place, place, (p, q, r, s) => {
        const low = (a: Vector, b: Vector): Vector => [Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.min(a[2], b[2])]
        const high = (a: Vector, b: Vector): Vector => [Math.max(a[0], b[0]), Math.max(a[1], b[1]), Math.max(a[2], b[2])]
        const one = { low: low(p, q), high: high(p, q) },
          other = { low: low(r, s), high: high(r, s) }
        const oriented = (x: typeof one): OrientedBox => box(times(plus(x.low, x.high), 0.5), times(minus(x.high, x.low), 0.5))
        expect(Math.abs((boxDistance(oriented(one), oriented(other))?.distance ?? 0) - alignedGap(one, other))).toBeLessThan(1e-9)
      }),
      { numRuns: runs(20_000) },
    )
  })
})

describe('points, pieces and tubes, any', () => {
  it('the nearest point of a box lies in it, and none of many others is nearer', () => {
    fc.assert(
      fc.property(anyBox, place, fc.array(place, { minLength: 8, maxLength: 8 }), (b, p, others) => {
        const nearest = nearestInBox(b, p)
        expect(pointToBox(b, nearest)).toBeLessThan(1e-12)
        expect(Math.abs(between(p, nearest) - pointToBox(b, p))).toBeLessThan(1e-12)
        for (const [u, v, w] of others) {
          const inside = outOfBox(b, [u * b.half[0], v * b.half[1], w * b.half[2]])
          expect(between(p, inside)).toBeGreaterThan(pointToBox(b, p) - 1e-12)
        }
        for (const c of corners(b)) expect(between(p, c)).toBeGreaterThan(pointToBox(b, p) - 1e-12)
      }),
      { numRuns: runs(20_000) },
    )
  })
  it('of two straight pieces no pair of points on a fine net is nearer, and the net comes near', () => {
    fc.assert(
      fc.property(place, place, place, place, (p1, q1, p2, q2) => {
        const found = segmentToSegment(p1, q1, p2, q2)
        const along = (p: Vector, q: Vector, s: number): Vector => plus(p, times(minus(q, p), s))
        let least = Infinity
        for (let i = 0; i <= 40; i++)
          for (let j = 0; j <= 40; j++) least = Math.min(least, between(along(p1, q1, i / 40), along(p2, q2, j / 40)))
        expect(found.distance).toBeLessThan(least + 2e-6)
        expect(least - found.distance).toBeLessThan((between(p1, q1) + between(p2, q2)) / 40)
        expect(between(along(p1, q1, found.s), found.onFirst)).toBeLessThan(1e-12)
      }),
      { numRuns: runs(4000) },
    )
  })
  it('parallel pieces, and pieces that are points, have a distance too', () => {
    near([segmentToSegment([0, 0, 0], [1, 0, 0], [2, 0.3, 0], [3, 0.3, 0]).distance], [Math.hypot(1, 0.3)])
    near([segmentToSegment([0, 0, 0], [1, 0, 0], [0.2, 0.3, 0], [0.8, 0.3, 0]).distance], [0.3])
    near([segmentToSegment([0, 0, 0], [1, 0, 0], [-2, 0.3, 0], [-0.4, 0.3, 0]).distance], [0.5])
    near([segmentToSegment([0.5, 0, 0], [0.5, 0, 0], [0, 0.3, 0], [1, 0.3, 0]).distance], [0.3])
    near([segmentToSegment([0, 0.3, 0], [1, 0.3, 0], [0.5, 0, 0], [0.5, 0, 0]).distance], [0.3])
    near([segmentToSegment([0, 0, 0], [0, 0, 0], [3, 4, 0], [3, 4, 0]).distance], [5])
  })
  it('a hose over a cable: the nearest pieces are named, and radii taken off', () => {
    const hose: Tube = {
      points: [
        [0, 0, 0.3],
        [0.5, 0, 0.3],
        [0.5, 0, 0],
      ],
      radius: 0.02,
    }
    const cable: Tube = {
      points: [
        [0.4, -0.5, 0.1],
        [0.4, 0.5, 0.1],
      ],
      radius: 0.01,
    }
    const found = tubeClearance(hose, cable)
    near([found.clearance], [0.07])
    expect(found).toMatchObject({ pieceA: 1, pieceB: 0 })
    expect(() => tubeClearance(hose, { points: [], radius: 0 })).toThrow('tube: needs at least one point, found none')
    near([tubeClearance({ points: [[0.5, 0, 0.5]], radius: 0.05 }, hose).clearance], [0.13])
  })
  it('turned axes stay of length one and square to each other, right-handed', () => {
    fc.assert(
      fc.property(angle, angle, angle, (x, y, z) => {
        const [u, v, w] = turned(2, z, turned(1, y, turned(0, x)))
        expect(lengthOf(minus(cross(u, v), w))).toBeLessThan(1e-12)
        expect(Math.abs(dot(u, v))).toBeLessThan(1e-12)
        expect(Math.abs(lengthOf(u) - 1)).toBeLessThan(1e-12)
      }),
      { numRuns: runs(2000) },
    )
  })
})
