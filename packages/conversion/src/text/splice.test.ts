import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { applySplice, invertSplice, spliceBetween } from './splice.ts'

describe('a splice', () => {
  it('replaces what it names and is undone by its inverse', () => {
    const splice = { at: 6, out: '960', in: '1 000' }
    expect(applySplice('mass: 960 kg', splice)).toBe('mass: 1 000 kg')
    expect(applySplice('mass: 1 000 kg', invertSplice(splice))).toBe('mass: 960 kg')
  })

  it('is not made on another text than its own', () => {
    expect(applySplice('mass: 961 kg', { at: 6, out: '960', in: '1' })).toBeUndefined()
    for (const at of [-1, 0.5, 99, Number.NaN]) expect(applySplice('abc', { at, out: '', in: 'x' })).toBeUndefined()
  })

  it('between two texts leads from one to the other and back, and cuts no character in half', () => {
    const texts = fc.string({ unit: fc.constantFrom('a', 'b', '😀', '😁', '\n'), maxLength: 8 })
    fc.assert(
      fc.property(texts, texts, (before, after) => {
        const splice = spliceBetween(before, after)
        expect(applySplice(before, splice)).toBe(after)
        expect(applySplice(after, invertSplice(splice))).toBe(before)
        expect(splice.in).not.toMatch(/\p{Cs}/u)
        expect(splice.out).not.toMatch(/\p{Cs}/u)
      }),
      { numRuns: runs(4000) },
    )
  })
})
