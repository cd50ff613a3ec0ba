import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { exact, minus, nearestDouble, over, PI, plus, powerOfTen, scaledDigits, times } from './exact.ts'

describe('exact fractions', () => {
  it('become the double a compiler reads from the same decimal', () => {
    fc.assert(
      fc.property(fc.bigInt({ min: -(10n ** 20n), max: 10n ** 20n }), fc.integer({ min: -330, max: 300 }), (digits, exponent) => {
        expect(nearestDouble(scaledDigits(String(digits), exponent)) === Number(`${digits}e${exponent}`)).toBe(true)
      }),
      { numRuns: runs(10000) },
    )
  })

  it('divide as IEEE 754 does, for whole numbers a double holds', () => {
    const whole = fc.integer({ min: 1, max: 2 ** 31 - 1 })
    fc.assert(
      fc.property(whole, whole, (a, b) => {
        expect(nearestDouble(over(scaledDigits(String(a), 0), scaledDigits(String(b), 0)))).toBe(a / b)
      }),
      { numRuns: runs(10000) },
    )
  })

  it('round an exact tie to the even neighbour and anything above it upward', () => {
    expect(nearestDouble(scaledDigits(String(2n ** 53n + 1n), 0))).toBe(2 ** 53)
    expect(nearestDouble(scaledDigits(`${2n ** 53n + 1n}00000000000000000000001`, -23))).toBe(2 ** 53 + 2)
  })

  it('know π as the language does', () => {
    expect(nearestDouble(PI)).toBe(Math.PI)
    expect(nearestDouble(over(exact('1'), PI))).toBe(1 / Math.PI)
    expect(nearestDouble(times(PI, PI))).toBeCloseTo(Math.PI ** 2, 14)
  })

  it('add and take away without loss', () => {
    expect(nearestDouble(plus(exact('0.1'), exact('0.2')))).toBe(0.3)
    expect(nearestDouble(plus(exact('5/9'), minus(exact('5/9'))))).toBe(0)
    expect(() => plus(PI, exact('1'))).toThrow(RangeError)
    expect(() => over(PI, exact('0'))).toThrow(RangeError)
    expect(() => exact('1,5')).toThrow(RangeError)
  })

  it('know a power of ten from anything else', () => {
    expect(['0.000001', '1', '1000', '254/254'].map(text => powerOfTen(exact(text)))).toEqual([-6, 0, 3, 0])
    expect([exact('3.6'), exact('1/3'), PI].map(powerOfTen)).toEqual([undefined, undefined, undefined])
  })
})
