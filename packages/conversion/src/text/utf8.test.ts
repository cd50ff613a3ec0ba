import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { decodedUtf8 } from './utf8.ts'

const platform = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true })

const byPlatform = (bytes: Uint8Array): string | undefined => {
  try {
    return platform.decode(bytes)
  } catch {
    return undefined
  }
}

describe('UTF-8', () => {
  it('is decoded as the platform decodes it, and refused where the platform refuses it', () => {
    const chunk = fc.oneof(
      fc.uint8Array({ maxLength: 6 }),
      fc
        .constantFrom(0xc0, 0xc1, 0xc2, 0xe0, 0xed, 0xef, 0xf0, 0xf4, 0xf5, 0xff, 0x80, 0x90, 0x9f, 0xa0, 0xbf)
        .map(byte => Uint8Array.of(byte)),
      fc.string({ unit: 'binary', maxLength: 6 }).map(text => new TextEncoder().encode(text)),
    )
    fc.assert(
      fc.property(fc.array(chunk, { maxLength: 8 }), chunks => {
        const bytes = Uint8Array.from(chunks.flatMap(part => [...part]))
        const decoded = decodedUtf8(bytes)
        expect(decoded.ok ? decoded.text : undefined).toBe(byPlatform(bytes))
        if (!decoded.ok) expect(byPlatform(bytes.slice(0, decoded.byte))).toBeDefined()
      }),
      { numRuns: runs(20_000) },
    )
  })

  it('is decoded over more than one piece', () => {
    const text = `${'x'.repeat(8191)}😀${'ä'.repeat(9000)}`
    expect(decodedUtf8(new TextEncoder().encode(text))).toEqual({ ok: true, text })
  })

  it('that is broken says at which byte', () => {
    expect(decodedUtf8(Uint8Array.of(0x61, 0xc3, 0xa4, 0xff))).toEqual({ ok: false, byte: 3 })
    expect(decodedUtf8(Uint8Array.of(0xe2, 0x82))).toEqual({ ok: false, byte: 0 })
  })
})
