import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { airToWalls, depthIn, type InPlan, roundOf } from './slanted-walls.ts'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const point = fc.tuple(number(-1, 1), number(-1, 1))
const square = (half: number): readonly InPlan[] => [
  [-half, -half],
  [half, -half],
  [half, half],
  [-half, half],
]

describe('air to slanted walls', () => {
  it('should be that of the nearest wall for a square in a square, on either side of it', () => {
    fc.assert(
      fc.property(number(0.1, 1), number(0.1, 1), (inner, outer) => {
        const air = airToWalls(square(outer), square(inner))
        if (inner < outer) expect(air).toBeCloseTo(outer - inner, 9)
        else expect(air).toBeLessThanOrEqual(1e-9)
      }),
      { numRuns: runs(400) },
    )
  })
  it('should never be more than the distance between any two points of body and wall', () => {
    fc.assert(
      fc.property(
        fc.array(point, { minLength: 4, maxLength: 8 }),
        fc.array(point, { minLength: 4, maxLength: 8 }),
        number(0, 1),
        number(0, 1),
        (a, b, s, t) => {
          const walls = roundOf(a),
            shape = roundOf(b)
          fc.pre(walls.length > 2 && shape.length > 2)
          const on = (ring: readonly InPlan[], u: number): InPlan => {
            const [p, q] = [ring[0] as InPlan, ring[1] as InPlan]
            return [p[0] + u * (q[0] - p[0]), p[1] + u * (q[1] - p[1])]
          }
          const [p, q] = [on(walls, s), on(shape, t)]
          expect(airToWalls(walls, shape)).toBeLessThanOrEqual(Math.hypot(p[0] - q[0], p[1] - q[1]) + 1e-9)
        },
      ),
      { numRuns: runs(2000) },
    )
  })
  it('sees a wall that points inwards between the corners of a body', () => {
    const notched: readonly InPlan[] = [
      [-1, -1],
      [1, -1],
      [1, 1],
      [0.1, 1],
      [0, 0.25],
      [-0.1, 1],
      [-1, 1],
    ]
    expect(airToWalls(notched, square(0.2))).toBeCloseTo(0.05, 9)
    expect(airToWalls(notched, square(0.3))).toBeLessThan(0)
  })
  it('tells inside from outside of a corner that points inwards', () => {
    const ell: readonly InPlan[] = [
      [0, 0],
      [2, 0],
      [2, 1],
      [1, 1],
      [1, 2],
      [0, 2],
    ]
    expect(depthIn(ell, [0.5, 0.5])).toBeCloseTo(0.5, 9)
    expect(depthIn(ell, [1.5, 1.5])).toBeCloseTo(-0.5, 9)
  })
})
