import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { secondsOf, stampOf } from './timestamp.ts'

describe('a time stamp', () => {
  test('is the number of seconds the platform counts', () => {
    fc.assert(
      fc.property(fc.date({ min: new Date('0001-01-01T00:00:00Z'), max: new Date('9999-12-31T23:59:59Z'), noInvalidDate: true }), date => {
        expect(secondsOf(date.toISOString())).toBeCloseTo(date.getTime() / 1000, 3)
        expect(secondsOf(stampOf(date.getTime() / 1000))).toBeCloseTo(date.getTime() / 1000, 3)
      }),
    )
  })

  test('may be shifted, may have a fraction, and is UTC without a shift', () => {
    expect(secondsOf('1970-01-01T01:00:00+01:00')).toBe(0)
    expect(secondsOf('1969-12-31T20:30:00-03:30')).toBe(0)
    expect(secondsOf('1970-01-01T00:00:01.25')).toBe(1.25)
    expect(secondsOf('2024-02-29T00:00:00Z')).toBe(1709164800)
    expect(secondsOf('2016-12-31T23:59:60Z')).toBe(secondsOf('2017-01-01T00:00:00Z'))
  })

  test('is none when the day does not exist or the form is another', () => {
    for (const stamp of [
      '2023-02-29T00:00:00Z',
      '2024-13-01T00:00:00Z',
      '2024-01-01T24:00:00Z',
      '2024-01-01T00:60:00Z',
      '2024-01-01',
      '12.05.2024 08:30',
      '',
      '2024-01-01T00:00:00+25:00',
    ]) {
      expect(secondsOf(stamp)).toBeUndefined()
    }
  })

  test('is written in UTC and only for years of four digits', () => {
    expect(stampOf(0)).toBe('1970-01-01T00:00:00Z')
    expect(stampOf(1709164800.5)).toBe('2024-02-29T00:00:00.500Z')
    expect(() => stampOf(1e15)).toThrow(RangeError('time must lie in the years 0 to 9999, found 1000000000000000 s'))
  })
})
