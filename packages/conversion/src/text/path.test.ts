import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { pathKeys, pathText } from './path.ts'

describe('a path', () => {
  it('is written with dots, and with quotes where a key has dots of its own', () => {
    expect(pathText(['donor', 'drag area'])).toBe('donor.drag area')
    expect(pathText(['trips', '0.5 g', ''])).toBe('trips."0.5 g".""')
  })

  it('reads back as the keys it was written from, whatever they hold', () => {
    const keys = fc.array(fc.oneof(fc.string(), fc.constantFrom('a.b', '"', '\\', ' a', 'a"b')), { minLength: 1, maxLength: 5 })
    fc.assert(
      fc.property(keys, path => {
        expect(pathKeys(pathText(path))).toEqual(path)
      }),
      { numRuns: runs(4000) },
    )
  })

  it('that cannot be read gives nothing', () => {
    for (const bad of ['', '.', 'a..b', 'a.', '.a', '"a', '"a"b', 'a"b"', '"\\x"']) expect(pathKeys(bad)).toBeUndefined()
    expect(pathKeys([])).toBeUndefined()
  })
})
