import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { base64 } from './base64.ts'
import { decimal } from './decimal.ts'

const read = (text: string): number => {
  const bytes = new TextEncoder().encode(`x${text}y`)
  return decimal(bytes, 1, bytes.length - 1)
}

describe('a number in bytes', () => {
  test('is the number the language reads, to the last bit', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), fc.integer({ min: 0, max: 20 }), (value, digits) => {
        for (const text of [String(value), value.toExponential(), Math.abs(value) < 1e6 ? value.toFixed(digits) : '0'])
          expect(Object.is(read(text) + 0, Number(text) + 0)).toBe(true)
      }),
      { numRuns: runs(100_000) },
    )
  })
  test.each(['1', '-1.', '+.5', '1e5', '1E-5', '0.000000000000000000000000000001', '123456789012345678901234567890', '1e400', '-0'])(
    '%s',
    text => expect(read(text) + 0).toBe(Number(text) + 0),
  )
  test.each(['', '-', '.', 'e5', '1e', '1e+', 'nan', 'inf', '1,5', '1.2.3', '0x1', '1 '])('is none in «%s»', text =>
    expect(read(text)).toBeNaN(),
  )
})

test('base64 gives the bytes another program put into it', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 50 }), bytes => {
      expect(base64(`,${Buffer.from(bytes).toString('base64')}`, 1)).toEqual(bytes)
    }),
    { numRuns: runs(2000) },
  )
  expect(base64('a*b=')).toBeUndefined()
})
