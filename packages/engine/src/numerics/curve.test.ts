import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { along, at, type Curve, curve, integral, inverseAt, segment, segmentFrom, slopeAt } from './curve.ts'

const hill = curve([0, 1, 3, 4], [0, 2, 2, -2])
const number = fc.double({ min: -1e6, max: 1e6, noNaN: true })

/** Any curve: at least two different x. */
export const anyCurve: fc.Arbitrary<Curve> = fc
  .uniqueArray(fc.integer({ min: -1000, max: 1000 }), { minLength: 2, maxLength: 30 })
  .chain(x =>
    fc.array(fc.integer({ min: -1000, max: 1000 }), { minLength: x.length, maxLength: x.length }).map(y =>
      curve(
        x.sort((a, b) => a - b),
        y,
      ),
    ),
  )

describe('a curve', () => {
  test('takes its points as they are and goes straight between them', () => {
    expect([0, 0.5, 1, 2, 3, 3.25, 4].map(x => at(hill, x))).toEqual([0, 1, 2, 2, 2, 1, -2])
  })

  test('holds its ends', () => {
    expect([at(hill, -Infinity), at(hill, -1), at(hill, 5), at(hill, Infinity)]).toEqual([0, 0, -2, -2])
  })

  test('is not a number where nothing is asked', () => {
    expect(at(hill, Number.NaN)).toBeNaN()
  })

  test('is found the same by a plain walk over all pieces', () => {
    const walked = ({ x, y }: Curve, v: number): number => {
      for (let i = 1; i < x.length; i++) {
        if (v >= x[i - 1]! && v <= x[i]!) return (y[i - 1]! * (x[i]! - v) + y[i]! * (v - x[i - 1]!)) / (x[i]! - x[i - 1]!)
      }
      return v < x[0]! ? y[0]! : y[y.length - 1]!
    }
    fc.assert(
      fc.property(anyCurve, fc.double({ min: -1500, max: 1500, noNaN: true }), (c, v) => {
        expect(at(c, v)).toBeCloseTo(walked(c, v), 8)
      }),
    )
  })

  test('gives the same piece from any hint as from a search', () => {
    fc.assert(
      fc.property(anyCurve, fc.double({ min: -1500, max: 1500, noNaN: true }), fc.integer({ min: -5, max: 50 }), (c, v, hint) => {
        const i = segmentFrom(c.x, v, hint)
        expect(i).toBe(segment(c.x, v))
        expect(along(c, i, v)).toBe(at(c, v))
      }),
    )
  })

  test('refuses points that do not rise, are missing, or are no numbers, and says which', () => {
    expect(() => curve([0], [1])).toThrow(RangeError('x: at least two points are needed, found 1'))
    expect(() => curve([0, 2, 2], [1, 2, 3])).toThrow(RangeError('x must rise strictly, found 2 after 2 at 2'))
    expect(() => curve([0, 1], [1])).toThrow(RangeError('y must have as many points as x (2), found 1'))
    expect(() => curve([0, 1], [1, Number.NaN])).toThrow(RangeError('y[1] must be a finite number, found NaN'))
    expect(() => curve([0, Infinity], [1, 2])).toThrow(RangeError('x[1] must be a finite number, found Infinity'))
  })
})

describe('the slope of a curve', () => {
  test('is that of the piece to the right, at the last point that to the left, and zero outside', () => {
    expect([-1, 0, 0.5, 1, 3, 3.5, 4, 5].map(x => slopeAt(hill, x))).toEqual([0, 2, 2, 0, -4, -4, -4, 0])
  })
})

describe('a curve turned round', () => {
  const falling = curve([0, 1, 2, 5], [10, 8, 8, 2])

  test('gives the place of a value, the lowest where it is level, none outside', () => {
    expect([10, 9, 8, 5, 2].map(y => inverseAt(falling, y))).toEqual([0, 0.5, 1, 3.5, 5])
    expect(inverseAt(falling, 11)).toBeUndefined()
    expect(inverseAt(falling, 1.9)).toBeUndefined()
    expect(inverseAt(falling, Number.NaN)).toBeUndefined()
  })

  test('refuses a curve that turns', () => {
    expect(() => inverseAt(hill, 1)).toThrow(/must be monotone/)
  })

  test('leads back to the value it came from, and to nowhere before it', () => {
    const rising = anyCurve.map(c => curve(c.x, c.y.slice().sort()))
    fc.assert(
      fc.property(rising, fc.double({ min: 0, max: 1, noNaN: true }), (c, share) => {
        const low = c.y[0]!
        const y = low + (c.y[c.y.length - 1]! - low) * share
        const x = inverseAt(c, y)!
        expect(at(c, x)).toBeCloseTo(y, 7)
        if (x > c.x[0]!) expect(at(c, x - 1e-3)).toBeLessThan(y + 1e-9)
      }),
    )
  })
})

describe('the area under a curve', () => {
  test('adds up triangles and trapezoids, the held ends included', () => {
    expect(integral(hill, 0, 4)).toBe(1 + 4 + 0)
    expect(integral(hill, -3, 1)).toBe(1)
    expect(integral(hill, 3.5, 6)).toBe(-0.5 - 4)
    expect(integral(hill, 10, 12)).toBe(-4)
    expect(integral(hill, -4, -2)).toBe(0)
  })

  test('can be cut anywhere, and turns its sign with its direction', () => {
    fc.assert(
      fc.property(anyCurve, number, number, number, (c, a, b, d) => {
        const size = 1e-9 * (1 + 1000 * (Math.abs(a) + Math.abs(b) + Math.abs(d)))
        expect(Math.abs(integral(c, a, b) + integral(c, b, d) - integral(c, a, d))).toBeLessThan(size)
        expect(integral(c, a, b) + integral(c, b, a)).toBe(0)
      }),
    )
  })
})
