/** A byte that cannot stand where it stands, counted from the first byte of the file. */
export type BadByte = { readonly offset: number; readonly byte: number | undefined }

export type Utf8Decoder = {
  /** Text of the bytes so far complete; with `bad`, the text before a byte that is no UTF-8. Nothing may be pushed after that. */
  readonly push: (bytes: Uint8Array) => { readonly text: string; readonly bad?: BadByte }
  /** The bad place when the bytes end within a character. */
  readonly end: () => BadByte | undefined
}

const BYTE_ORDER_MARK = 0xfeff

/**
 * Decodes UTF-8 piece by piece, pieces cut anywhere; a byte-order mark at the start is dropped.
 *
 * Why own: strict, so that a file in another encoding is refused with its place and no letter is silently replaced, and free of any platform.
 * Source: The Unicode Standard, table of well-formed UTF-8 byte sequences (from memory).
 */
export function utf8Decoder(): Utf8Decoder {
  const units = new Uint16Array(8192)
  let missing = 0
  let code = 0
  // The second byte of some characters has a narrower range: no overlong forms, no surrogates, nothing above U+10FFFF.
  let low = 0x80
  let high = 0xbf
  // Where a character of several bytes began, and with which.
  let lead: BadByte = { offset: 0, byte: 0 }
  let seen = 0
  let first = true

  const push = (bytes: Uint8Array): { text: string; bad?: BadByte } => {
    let text = ''
    let n = 0
    for (let i = 0; i < bytes.length; i++) {
      const byte = bytes[i]!
      if (missing === 0) {
        if (byte < 0x80) units[n++] = byte
        else if (byte >= 0xc2 && byte <= 0xf4) {
          lead = { offset: seen + i, byte }
          missing = byte < 0xe0 ? 1 : byte < 0xf0 ? 2 : 3
          code = byte & (0x3f >> missing)
          low = byte === 0xe0 ? 0xa0 : byte === 0xf0 ? 0x90 : 0x80
          high = byte === 0xed ? 0x9f : byte === 0xf4 ? 0x8f : 0xbf
          continue
        } else return { text: text + textOf(units, n), bad: { offset: seen + i, byte } }
      } else {
        if (byte < low || byte > high) return { text: text + textOf(units, n), bad: lead }
        low = 0x80
        high = 0xbf
        code = (code << 6) | (byte & 0x3f)
        if (--missing > 0) continue
        if (code > 0xffff) {
          units[n++] = 0xd800 + ((code - 0x10000) >> 10)
          units[n++] = 0xdc00 + ((code - 0x10000) & 0x3ff)
        } else if (!(first && code === BYTE_ORDER_MARK)) units[n++] = code
      }
      first = false
      if (n > units.length - 2) {
        text += textOf(units, n)
        n = 0
      }
    }
    seen += bytes.length
    return { text: text + textOf(units, n) }
  }
  return { push, end: () => (missing > 0 ? { offset: seen, byte: undefined } : undefined) }
}

const textOf = (units: Uint16Array, n: number): string => String.fromCharCode.apply(null, units.subarray(0, n) as unknown as number[])

/** A bad byte in words: what is wrong and what was found. */
export function badByte({ offset, byte }: BadByte): { what: string; found: string; accepted: string } {
  const accepted = 'text saved as UTF-8'
  if (byte === undefined) return { what: 'the file ends in the middle of a character', found: `the end after ${offset} bytes`, accepted }
  const found = `byte 0x${byte.toString(16).padStart(2, '0')} at offset ${offset}`
  const what = offset === 0 && byte >= 0xfe ? 'the file is no text, or text saved as UTF-16' : 'a byte is no UTF-8'
  return { what, found, accepted }
}
