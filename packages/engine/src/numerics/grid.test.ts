import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { at, curve } from './curve.ts'
import { type Grid, grid, gridAt, uniformGrid, uniformGridAt } from './grid.ts'

const axis = fc.uniqueArray(fc.integer({ min: -50, max: 50 }), { minLength: 2, maxLength: 8 }).map(x => x.sort((a, b) => a - b))
const place = fc.double({ min: -80, max: 80, noNaN: true })
const anyGrid: fc.Arbitrary<Grid> = fc
  .tuple(axis, axis)
  .chain(([x, y]) =>
    fc.array(fc.integer({ min: -99, max: 99 }), { minLength: x.length * y.length, maxLength: x.length * y.length }).map(z => grid(x, y, z)),
  )

describe('a grid', () => {
  const small = grid([0, 10], [0, 1, 3], [1, 2, 6, 11, 12, 16])

  test('has one row for each x and one column for each y', () => {
    expect(gridAt(small, 0, 3)).toBe(6)
    expect(gridAt(small, 10, 0)).toBe(11)
    expect(gridAt(small, 5, 2)).toBe(9)
  })

  test('holds its edges', () => {
    expect([gridAt(small, -5, -5), gridAt(small, Infinity, Infinity), gridAt(small, 5, 99)]).toEqual([1, 16, 11])
  })

  test('equals two look-ups of curves one after the other, whichever axis comes first', () => {
    fc.assert(
      fc.property(anyGrid, place, place, (g, px, py) => {
        const columns = g.y.length
        const alongY = curve(
          g.x,
          Array.from(g.x, (_, i) => at(curve(g.y, g.z.slice(i * columns, (i + 1) * columns)), py)),
        )
        const alongX = curve(
          g.y,
          Array.from(g.y, (_, j) =>
            at(
              curve(
                g.x,
                Array.from(g.x, (_, i) => g.z[i * columns + j]!),
              ),
              px,
            ),
          ),
        )
        expect(gridAt(g, px, py)).toBeCloseTo(at(alongY, px), 8)
        expect(gridAt(g, px, py)).toBeCloseTo(at(alongX, py), 8)
      }),
    )
  })

  test('refuses a wrong number of values', () => {
    expect(() => grid([0, 1], [0, 1], [1, 2, 3])).toThrow(RangeError('z must have 2 × 2 = 4 values, found 3'))
    expect(() => grid([0, 0], [0, 1], [1, 2, 3, 4])).toThrow(/x must rise strictly/)
    expect(() => grid([0, 1], [0, 1], [1, 2, 3, Infinity])).toThrow(RangeError('z[3] must be a finite number, found Infinity'))
  })
})

describe('a grid at equal steps', () => {
  test('is the same surface where the points of its axes lie on the steps', () => {
    const whole = fc.integer({ min: 2, max: 6 })
    fc.assert(
      fc.property(
        whole,
        whole,
        fc.integer({ min: 1, max: 3 }),
        place,
        place,
        fc.infiniteStream(fc.integer({ min: -9, max: 9 })),
        (rows, columns, finer, x, y, z) => {
          const g = grid(
            Array.from({ length: rows }, (_, i) => 10 * i - 20),
            Array.from({ length: columns }, (_, j) => 7 * j),
            [...z.take(rows * columns)],
          )
          const u = uniformGrid(g, (rows - 1) * finer + 1, (columns - 1) * finer + 1)
          expect(uniformGridAt(u, x, y)).toBeCloseTo(gridAt(g, x, y), 9)
        },
      ),
    )
  })

  test('knows no value at NaN and holds its edges at infinity', () => {
    const u = uniformGrid(grid([0, 1], [0, 1], [1, 2, 3, 4]), 2, 2)
    expect(uniformGridAt(u, Number.NaN, 0)).toBeNaN()
    expect(gridAt(grid([0, 1], [0, 1], [1, 2, 3, 4]), 0, Number.NaN)).toBeNaN()
    expect(uniformGridAt(u, Infinity, -Infinity)).toBe(3)
    expect(() => uniformGrid(grid([0, 1], [0, 1], [1, 2, 3, 4]), 2, 1.5)).toThrow(
      RangeError('columns must be a whole number of at least 2, found 1.5'),
    )
  })
})
