const POWERS = Float64Array.from({ length: 23 }, (_, n) => Number(`1e${n}`))
const DIGITS_EXACT = 15
const [ZERO, NINE, PLUS, MINUS, DOT, UPPER_E, LOWER_E] = [48, 57, 43, 45, 46, 69, 101]

/**
 * The number that bytes spell in decimal, or NaN where they spell none; `inf` and `nan` are none.
 *
 * Why own: a mesh as text holds tens of millions of numbers, and a text for each would take longer than all the rest. Up to fifteen digits times or
 * divided by a power of ten below 10²³ comes out correctly rounded, for both are exact; everything else goes the usual way.
 */
export function decimal(bytes: Uint8Array, from: number, to: number): number {
  let i = from,
    mantissa = 0,
    digits = 0,
    seen = 0,
    scale = 0
  const negative = bytes[i] === MINUS
  if (negative || bytes[i] === PLUS) i++
  for (let fraction = false; i < to; i++) {
    const c = bytes[i] as number
    if (c >= ZERO && c <= NINE) {
      mantissa = mantissa * 10 + c - ZERO
      seen++
      if (mantissa > 0) digits++
      if (fraction) scale--
    } else if (c === DOT && !fraction) fraction = true
    else break
  }
  if (seen === 0) return Number.NaN
  if (i < to) {
    const c = bytes[i++]
    if (c !== UPPER_E && c !== LOWER_E) return Number.NaN
    const exponent = whole(bytes, i, to)
    if (Number.isNaN(exponent)) return Number.NaN
    scale += exponent
  }
  if (digits > DIGITS_EXACT || Math.abs(scale) > 22) return Number(textOf(bytes, from, to))
  const size = scale < 0 ? mantissa / (POWERS[-scale] as number) : mantissa * (POWERS[scale] as number)
  return negative ? -size : size
}

/** The whole number that bytes spell, or NaN. Beyond 2⁵³ it is only near. */
export function whole(bytes: Uint8Array, from: number, to: number): number {
  let i = from,
    value = 0
  const negative = bytes[i] === MINUS
  if (negative || bytes[i] === PLUS) i++
  if (i >= to) return Number.NaN
  for (; i < to; i++) {
    const c = bytes[i] as number
    if (c < ZERO || c > NINE) return Number.NaN
    value = value * 10 + c - ZERO
  }
  return negative ? -value : value
}

/** Bytes as text, each as one character: names and numbers are plain, and anything else is only ever quoted. */
export const textOf = (bytes: Uint8Array, from: number, to: number): string =>
  String.fromCharCode.apply(null, bytes.subarray(from, Math.min(to, from + 200)) as unknown as number[])
