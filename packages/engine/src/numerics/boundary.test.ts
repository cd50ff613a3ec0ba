import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { firstTrue, lastTrue } from './boundary.ts'

describe('a boundary', () => {
  test('is met from the side where it holds, within the tolerance', () => {
    fc.assert(
      fc.property(fc.double({ min: -100, max: 100, noNaN: true }), fc.constantFrom(1, 1e-3, 1e-9), (edge, tolerance) => {
        const up = firstTrue(x => x >= edge, -101, 101, tolerance)!
        expect(up).toBeGreaterThanOrEqual(edge)
        expect(up - edge).toBeLessThanOrEqual(tolerance)
        const down = lastTrue(x => x <= edge, -101, 101, tolerance)!
        expect(down).toBeLessThanOrEqual(edge)
        expect(edge - down).toBeLessThanOrEqual(tolerance)
      }),
    )
  })

  test('is the near end when it holds everywhere, and undefined when nowhere', () => {
    expect(firstTrue(() => true, 2, 3, 0.1)).toBe(2)
    expect(lastTrue(() => true, 2, 3, 0.1)).toBe(3)
    expect(firstTrue(() => false, 2, 3, 0.1)).toBeUndefined()
    expect(lastTrue(() => false, 2, 3, 0.1)).toBeUndefined()
  })

  test('comes to an end when no number lies between any more', () => {
    expect(firstTrue(x => x > 1, 0, 4, Number.MIN_VALUE)).toBe(1 + Number.EPSILON)
  })

  test('refuses ends the wrong way round and a tolerance of nothing', () => {
    expect(() => firstTrue(() => true, 3, 2, 0.1)).toThrow(RangeError('firstTrue: low must lie below high, found 3 and 2'))
    expect(() => lastTrue(() => true, 2, 3, 0)).toThrow(RangeError('lastTrue: tolerance must be above zero, found 0'))
  })
})
