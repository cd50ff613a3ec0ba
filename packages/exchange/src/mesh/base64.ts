const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/'
const VALUES = new Int8Array(128).fill(-1)
for (const [value, letter] of [...LETTERS].entries()) VALUES[letter.charCodeAt(0)] = value

/** The bytes a base64 text stands for from a place on; undefined where it is none. Source: RFC 4648, section 4 (from memory). */
export function base64(text: string, from = 0): Uint8Array | undefined {
  let end = text.length
  while (end > from && text[end - 1] === '=') end--
  const bytes = new Uint8Array(Math.floor(((end - from) * 3) / 4))
  let at = 0,
    bits = 0,
    held = 0
  for (let i = from; i < end; i++) {
    const value = VALUES[text.charCodeAt(i)] ?? -1
    if (value < 0) return undefined
    held = ((held << 6) | value) & 0xffffff
    bits += 6
    if (bits >= 8) {
      bits -= 8
      bytes[at++] = held >> bits
    }
  }
  return bytes
}
