import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { badByte, utf8Decoder } from './utf-8.ts'

/** Decodes bytes cut at the given places. */
function decoded(bytes: Uint8Array, cuts: readonly number[] = []): { text: string; bad: number | undefined } {
  const decoder = utf8Decoder()
  const ends = [...cuts.map(c => c % (bytes.length + 1)).sort((a, b) => a - b), bytes.length]
  let text = ''
  let from = 0
  for (const end of ends) {
    const part = decoder.push(bytes.subarray(from, end))
    text += part.text
    if (part.bad) return { text, bad: part.bad.offset }
    from = end
  }
  return { text, bad: decoder.end()?.offset }
}

describe('UTF-8', () => {
  test('becomes the text it was made from, however it is cut', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 200 }), fc.array(fc.nat(), { maxLength: 8 }), (text, cuts) => {
        const bytes = new TextEncoder().encode(text)
        expect(decoded(bytes, cuts)).toEqual({ text: text.startsWith('\ufeff') ? text.slice(1) : text, bad: undefined })
      }),
    )
  })

  test('is refused exactly where the platform refuses it', () => {
    const strict = new TextDecoder('utf-8', { fatal: true })
    const nasty = fc.oneof(
      fc.uint8Array({ maxLength: 12 }),
      fc
        .array(fc.constantFrom(0x41, 0x80, 0xbf, 0xc1, 0xc3, 0xe0, 0xed, 0xf0, 0xf4, 0xf5, 0x8f, 0x90, 0xa0), { maxLength: 8 })
        .map(b => Uint8Array.from(b)),
    )
    fc.assert(
      fc.property(nasty, bytes => {
        let fine = true
        try {
          strict.decode(bytes)
        } catch {
          fine = false
        }
        expect(decoded(bytes).bad === undefined).toBe(fine)
      }),
      { numRuns: 2000 },
    )
  })

  test('gives the text before a bad byte and says where it stands', () => {
    expect(decoded(Uint8Array.of(0x61, 0xc3, 0xa9, 0xb0, 0x62))).toEqual({ text: 'aé', bad: 3 })
    expect(decoded(Uint8Array.of(0x61, 0xdf, 0x65), [2])).toEqual({ text: 'a', bad: 1 })
    expect(decoded(Uint8Array.of(0x61, 0xe2, 0x82))).toEqual({ text: 'a', bad: 3 })
  })

  test('longer than its working store is not lost', () => {
    const text = '°C ohne Ende 🚗 '.repeat(5000)
    expect(decoded(new TextEncoder().encode(text)).text).toBe(text)
  })

  test('names UTF-16 by its first byte', () => {
    expect(badByte({ offset: 0, byte: 0xff }).what).toBe('the file is no text, or text saved as UTF-16')
    expect(badByte({ offset: 7, byte: 0xb0 })).toEqual({
      what: 'a byte is no UTF-8',
      found: 'byte 0xb0 at offset 7',
      accepted: 'text saved as UTF-8',
    })
    expect(badByte({ offset: 7, byte: undefined }).what).toBe('the file ends in the middle of a character')
  })
})
