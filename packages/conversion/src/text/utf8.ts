/** Text decoded from UTF-8, or the number of the first byte (from 0) that is not UTF-8. */
export type Decoded = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly byte: number }

const PIECE = 8192

/**
 * Decodes UTF-8 strictly: no overlong forms, no surrogates, nothing above U+10FFFF, nothing cut short.
 *
 * Written out because the platform's decoder says only that something is wrong, not where. Well-formed sequences: The Unicode Standard,
 * table 3-7 (from memory).
 */
export function decodedUtf8(bytes: Uint8Array): Decoded {
  const pieces: string[] = []
  let units: number[] = []
  for (let i = 0; i < bytes.length; ) {
    const size = sequenceLength(bytes, i)
    if (size === 0) return { ok: false, byte: i }
    const point = codePoint(bytes, i, size)
    if (point > 0xffff) units.push(0xd800 + ((point - 0x10000) >> 10), 0xdc00 + ((point - 0x10000) & 0x3ff))
    else units.push(point)
    if (units.length >= PIECE) {
      pieces.push(String.fromCharCode(...units))
      units = []
    }
    i += size
  }
  pieces.push(String.fromCharCode(...units))
  return { ok: true, text: pieces.join('') }
}

/** Bytes in the well-formed sequence starting here; 0 where there is none. */
function sequenceLength(bytes: Uint8Array, at: number): number {
  const lead = bytes[at] ?? 0
  if (lead < 0x80) return 1
  const size = lead >= 0xc2 && lead <= 0xdf ? 2 : lead >= 0xe0 && lead <= 0xef ? 3 : lead >= 0xf0 && lead <= 0xf4 ? 4 : 0
  for (let k = 1; k < size; k++) {
    const next = bytes[at + k] ?? 0
    if (next < 0x80 || next > 0xbf) return 0
  }
  const second = bytes[at + 1] ?? 0
  if (lead === 0xe0 && second < 0xa0) return 0
  if (lead === 0xed && second > 0x9f) return 0
  if (lead === 0xf0 && second < 0x90) return 0
  if (lead === 0xf4 && second > 0x8f) return 0
  return size
}

function codePoint(bytes: Uint8Array, at: number, size: number): number {
  let point = (bytes[at] ?? 0) & (size === 1 ? 0x7f : 0xff >> (size + 1))
  for (let k = 1; k < size; k++) point = (point << 6) | ((bytes[at + k] ?? 0) & 0x3f)
  return point
}
