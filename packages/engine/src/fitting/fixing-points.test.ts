import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { corners } from './box.ts'
import { pointOfPart, pointToPart, pointToRoom } from './fixing-points.ts'
import { bodyToRoom, boxOf } from './placed-body.ts'

const place = fc.tuple(...[0, 1, 2].map(() => fc.double({ min: -3, max: 3, noNaN: true }))),
  sides = fc.tuple(...[0, 1, 2].map(() => fc.double({ min: 0.05, max: 2, noNaN: true }))),
  turns = fc.tuple(...[0, 1, 2].map(() => fc.double({ min: -Math.PI, max: Math.PI, noNaN: true })))

describe('a point of a part', () => {
  it('at an end of each side is a corner of its box, however it is turned', () => {
    fc.assert(
      fc.property(place, sides, turns, fc.integer({ min: 0, max: 7 }), (at, s, t, n) => {
        const [l, w, h] = s as [number, number, number],
          { x, y, z } = pointOfPart({ place: at, sides: s, turns: t, back: n & 1 ? l : 0, across: n & 2 ? w : 0, up: n & 4 ? h : 0 })
        const off = Math.min(...corners(boxOf({ place: at, sides: s, turns: t })).map(c => Math.hypot(c[0] - x, c[1] - y, c[2] - z)))
        expect(off).toBeLessThan(1e-9)
      }),
      { numRuns: runs(2000) },
    )
  })
  it('stays as far from any other as it was measured', () => {
    const on = fc.record({
      back: fc.double({ min: -1, max: 3, noNaN: true }),
      across: fc.double({ min: -1, max: 3, noNaN: true }),
      up: fc.double({ min: -1, max: 3, noNaN: true }),
    })
    fc.assert(
      fc.property(place, sides, turns, on, on, (at, s, t, one, other) => {
        const body = { place: at, sides: s, turns: t },
          a = pointOfPart({ ...body, ...one }),
          b = pointOfPart({ ...body, ...other })
        expect(Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z)).toBeCloseTo(
          Math.hypot(one.back - other.back, one.across - other.across, one.up - other.up),
          9,
        )
      }),
      { numRuns: runs(2000) },
    )
  })
  it('is as far from a room, or from another part, as a part of a hair in its place', () => {
    fc.assert(
      fc.property(place, place, sides, turns, (p, at, s, t) => {
        const [x, y, z] = p as [number, number, number],
          hair = { place: p, sides: [1e-9, 1e-9, 1e-9], turns: [0, 0, 0] },
          low = at.map((c, i) => c - (s[i] as number) / 2),
          high = at.map((c, i) => c + (s[i] as number) / 2)
        expect(pointToRoom({ x, y, z, low, high })).toBeCloseTo(Math.max(0, bodyToRoom({ low, high, ...hair })), 7)
        // The same turned about itself: the hair seen from the part.
        const turned = { place: at, sides: s, turns: t },
          d = pointToPart({ x, y, z, ...turned }),
          own = pointOfPart({ ...turned, back: 0, across: 0, up: 0 })
        expect(d).toBeLessThanOrEqual(Math.hypot(own.x - x, own.y - y, own.z - z) + 1e-9)
        expect(
          pointToPart({ ...pointOfPart({ ...turned, back: (s[0] as number) / 3, across: 0, up: s[2] as number }), ...turned }),
        ).toBeCloseTo(0, 9)
        expect(pointToPart({ x, y, z, place: at, sides: s, turns: [0, 0, 0] })).toBeCloseTo(pointToRoom({ x, y, z, low, high }), 9)
      }),
      { numRuns: runs(2000) },
    )
  })
})
