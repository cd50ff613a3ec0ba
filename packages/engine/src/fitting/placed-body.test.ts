import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { corners, outOfBox } from './box.ts'
import { airInSpace, bodyEnds, bodyGap, bodyToRoom, boxOf, type Face, FACES, freeBeforeFace, gapOf, roomBefore } from './placed-body.ts'
import { pointToBox } from './point-to-box.ts'
import { pieceToBox, shaftToBody } from './tube-to-box.ts'
import type { Vector } from './vector.ts'
import { sweptBoxes, wheelToBody } from './wheel-to-body.ts'

const coordinate = fc.double({ min: -2, max: 2, noNaN: true }),
  side = fc.double({ min: 0.02, max: 1, noNaN: true }),
  angle = fc.double({ min: -3, max: 3, noNaN: true })
const body = fc.record({
  place: fc.tuple(coordinate, coordinate, coordinate),
  sides: fc.tuple(side, side, side),
  turns: fc.tuple(angle, angle, angle),
})
const level = body.map(b => ({ ...b, turns: [0, 0, 0] as const }))
type Body = { readonly place: readonly number[]; readonly sides: readonly number[]; readonly turns: readonly number[] }
const pair = (a: Body, b: Body) => ({
  place1: a.place,
  sides1: a.sides,
  turns1: a.turns,
  place2: b.place,
  sides2: b.sides,
  turns2: b.turns,
})
const mirrored = (b: Body): Body => ({
  place: [b.place[0] as number, -(b.place[1] as number), b.place[2] as number],
  sides: b.sides,
  turns: [-(b.turns[0] as number), b.turns[1] as number, -(b.turns[2] as number)],
})

describe('air between two bodies', () => {
  it('is the same whichever is named first', () =>
    fc.assert(
      fc.property(body, body, (a, b) => {
        expect(bodyGap(pair(a, b))).toBeCloseTo(bodyGap(pair(b, a)), 9)
      }),
      { numRuns: runs(2000) },
    ))
  it('is the same in a mirror, left and right changed', () =>
    fc.assert(
      fc.property(body, body, (a, b) => {
        expect(bodyGap(pair(mirrored(a), mirrored(b)))).toBeCloseTo(bodyGap(pair(a, b)), 8)
      }),
      { numRuns: runs(2000) },
    ))
  it('is no more than between any two points of them, and some two come near to it: by trying points', () =>
    fc.assert(
      fc.property(body, body, (a, b) => {
        const gap = bodyGap(pair(a, b))
        if (gap <= 0) return
        const other = boxOf(b),
          one = boxOf(a)
        let least = Infinity
        const N = 7
        for (let i = 0; i < N ** 3; i++) {
          const at = [i % N, Math.floor(i / N) % N, Math.floor(i / N / N)].map(
            (n, k) => ((2 * n) / (N - 1) - 1) * (one.half[k as 0 | 1 | 2] as number),
          )
          least = Math.min(least, pointToBox(other, outOfBox(one, at as unknown as Vector)))
        }
        expect(least).toBeGreaterThan(gap - 1e-9)
        expect(least).toBeLessThan(gap + Math.max(...a.sides))
      }),
      { numRuns: runs(1000) },
    ))
  it('of level bodies is that of their six ends', () =>
    fc.assert(
      fc.property(level, level, (a, b) => {
        const [p, q] = [a, b].map(x => bodyEnds(x)) as [ReturnType<typeof bodyEnds>, ReturnType<typeof bodyEnds>]
        const apart = [
          Math.max(q.front - p.rear, p.front - q.rear),
          Math.max(q.left - p.right, p.left - q.right),
          Math.max(q.bottom - p.top, p.bottom - q.top),
        ]
        const expected = apart.some(d => d > 0) ? Math.hypot(...apart.map(d => Math.max(0, d))) : Math.max(...apart)
        expect(bodyGap(pair(a, b))).toBeCloseTo(expected, 9)
        const low = [q.front, q.left, q.bottom],
          high = [q.rear, q.right, q.top]
        expect(bodyToRoom({ low, high, ...a })).toBeCloseTo(expected, 9)
      }),
      { numRuns: runs(2000) },
    ))
})
describe('ends of a body', () => {
  it('hold all of its corners, and touch some', () =>
    fc.assert(
      fc.property(body, b => {
        const e = bodyEnds(b),
          all = corners(boxOf(b))
        expect(all.every(([x, y, z]) => x >= e.front && x <= e.rear && y >= e.left && y <= e.right && z >= e.bottom && z <= e.top)).toBe(
          true,
        )
      }),
      { numRuns: runs(2000) },
    ))
  it('in a space: positive air means that no corner is outside it', () =>
    fc.assert(
      fc.property(body, b => {
        const e = bodyEnds(b),
          air = airInSpace({ ...e, spaceFront: -1, spaceRear: 1, spaceLeft: -1, spaceRight: 1, spaceBottom: -1, spaceTop: 1 })
        const out = corners(boxOf(b)).some(p => p.some(v => Math.abs(v) > 1 + 1e-12))
        if (air > 1e-9) expect(out).toBe(false)
        if (air < -1e-9) expect(out).toBe(true)
      }),
      { numRuns: runs(2000) },
    ))
  it('refuses a side of no length', () =>
    expect(() => boxOf({ place: [0, 0, 0], sides: [1, 0, 1], turns: [0, 0, 0] })).toThrow('sides must be above 0'))
})
describe('free depth before a face', () => {
  it('is all that is wanted or what the room before it leaves: a little more touches', () =>
    fc.assert(
      fc.property(body, body, fc.constantFrom(...FACES), fc.double({ min: 0.01, max: 1, noNaN: true }), (a, b, face: Face, wanted) => {
        if (gapOf(boxOf(a), boxOf(b)) <= 1e-6) return
        const free = freeBeforeFace({ face, wanted, ...pair(a, b) })
        expect(free).toBeLessThanOrEqual(wanted)
        if (free > 1e-6) expect(gapOf(roomBefore(boxOf(a), face, free - 1e-7), boxOf(b))).toBeGreaterThan(-1e-6)
        if (free < wanted - 1e-6) expect(gapOf(roomBefore(boxOf(a), face, free + 1e-6), boxOf(b))).toBeLessThan(1e-6)
      }),
      { numRuns: runs(2000) },
    ))
})
describe('a straight piece beside a box', () => {
  it('is as near as its nearest point, found by trying many', () =>
    fc.assert(
      fc.property(body, fc.tuple(coordinate, coordinate, coordinate), fc.tuple(coordinate, coordinate, coordinate), (b, from, to) => {
        const box = boxOf(b),
          found = pieceToBox(from, to, box)
        let least = Infinity
        for (let i = 0; i <= 400; i++) {
          const at = (k: 0 | 1 | 2): number => from[k] + ((to[k] - from[k]) * i) / 400
          least = Math.min(least, pointToBox(box, [at(0), at(1), at(2)]))
        }
        expect(found).toBeLessThanOrEqual(least + 1e-12)
        expect(found).toBeGreaterThan(least - Math.hypot(...[0, 1, 2].map(k => (to[k] as number) - (from[k] as number))) / 400 - 1e-12)
      }),
      { numRuns: runs(1000) },
    ))
})
describe('what moves', () => {
  const still = { from: [0, 0, 0.3], to: [1, 0, 0.3], diameter: 0.05, place: [0.5, 0.3, 0.3], sides: [0.2, 0.2, 0.2], turns: [0, 0, 0] }
  it('a shaft that travels never leaves more air than one that stands', () =>
    fc.assert(
      fc.property(body, fc.double({ min: 0, max: 0.2, noNaN: true }), (b, bump) => {
        const stands = shaftToBody({ ...still, ...b, bump: 0, droop: 0 }).gap,
          travels = shaftToBody({ ...still, ...b, bump, droop: bump }).gap
        expect(travels).toBeLessThanOrEqual(stands + 1e-9)
      }),
      { numRuns: runs(400) },
    ))
  const wheel = { axle: 0, track: 1.4, radius: 0.3, width: 0.2, height: 0.28, lock: 0.6, offset: 0.03, bump: 0.07, droop: 0.08 }
  it('the room of a wheel holds the wheel itself, straight and at full lock, up and down', () => {
    for (const turn of [0, 0.3, 0.6])
      for (const travel of [-0.08, 0, 0.07])
        for (let a = 0; a < 24; a++)
          for (const w of [-0.1, 0.1]) {
            // A point of the tread of a wheel turned about its steering axis, the right one.
            const u = wheel.radius * Math.cos((a * Math.PI) / 12),
              v = w + wheel.offset
            const x = u * Math.cos(turn) - v * Math.sin(turn),
              y = wheel.track / 2 - wheel.offset + v * Math.cos(turn) + u * Math.sin(turn),
              z = wheel.height + travel + wheel.radius * Math.sin((a * Math.PI) / 12)
            const nearest = Math.min(...sweptBoxes(wheel, 'right').map(b => pointToBox(b, [x, y, z])))
            expect(nearest, `turned ${turn}, travel ${travel}, at ${a}`).toBeLessThan(1e-9)
          }
  })
  it('left and right wheels leave the same air to mirrored bodies', () => {
    const { radius, ...rest } = wheel,
      b = { sides: [0.2, 0.3, 0.2], turns: [0.2, 0, 0.1] }
    const right = wheelToBody({ ...rest, diameter: 2 * radius, side: 'right', place: [0.1, 0.25, 0.4], ...b }),
      left = wheelToBody({ ...rest, diameter: 2 * radius, side: 'left', place: [0.1, -0.25, 0.4], sides: b.sides, turns: [-0.2, 0, -0.1] })
    expect(left).toBeCloseTo(right, 9)
  })
})
