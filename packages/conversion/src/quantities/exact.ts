/**
 * Fractions without rounding, with a power of π kept apart. A quantity is read in these and rounded once, at the end, so
 * `185 mm`, `18,5 cm` and `0.185 m` are the same number to the last bit.
 */
export type Exact = { readonly top: bigint; readonly bottom: bigint; readonly pi: number }

/** π to 60 decimals (the digits are those of any table of constants). */
const PI_TOP = 3_141592653589793238462643383279502884197169399375105820974944n
const PI_BOTTOM = 10n ** 60n
/** Digits kept when a fraction becomes a double; a double holds 17, so the last rounding is right short of a tie beyond the 40th. */
const DIGITS = 40

export const ONE: Exact = { top: 1n, bottom: 1n, pi: 0 }
export const PI: Exact = { top: 1n, bottom: 1n, pi: 1 }

/** Digits (no point) times ten to a power. */
export function scaledDigits(digits: string, exponent: number): Exact {
  const top = BigInt(digits)
  return exponent >= 0 ? { top: top * 10n ** BigInt(exponent), bottom: 1n, pi: 0 } : { top, bottom: 10n ** BigInt(-exponent), pi: 0 }
}

/** A fraction from its text: `0.45359237`, `5/9`, `1/3600`. Meant for the table; throws on anything else. */
export function exact(text: string): Exact {
  const [above = '', below] = text.split('/')
  if (below !== undefined) return over(exact(above), exact(below))
  const [, whole, decimals = ''] = /^(\d+)(?:\.(\d+))?$/.exec(above) ?? []
  if (whole === undefined) throw new RangeError(`not an exact number: ${text}`)
  return scaledDigits(whole + decimals, -decimals.length)
}

/** Product. */
export const times = (...of: readonly Exact[]): Exact =>
  of.reduce((a, b) => ({ top: a.top * b.top, bottom: a.bottom * b.bottom, pi: a.pi + b.pi }), ONE)
/** Quotient; the divisor is not zero. */
export function over(a: Exact, b: Exact): Exact {
  if (b.top === 0n) throw new RangeError('division by an exact zero')
  const sign = b.top < 0n ? -1n : 1n
  return { top: a.top * b.bottom * sign, bottom: a.bottom * b.top * sign, pi: a.pi - b.pi }
}
/** Sum, of fractions with the same power of π. */
export function plus(a: Exact, b: Exact): Exact {
  if (a.pi !== b.pi) throw new RangeError('a sum of different powers of π')
  return { top: a.top * b.bottom + b.top * a.bottom, bottom: a.bottom * b.bottom, pi: a.pi }
}
/** The same with the sign turned. */
export const minus = (a: Exact): Exact => ({ ...a, top: -a.top })

/** The double nearest to the fraction: Infinity or 0 where it is out of a double's range. */
export function nearestDouble({ top, bottom, pi }: Exact): number {
  const above = pi > 0 ? top * PI_TOP ** BigInt(pi) : top * PI_BOTTOM ** BigInt(-pi)
  const below = pi > 0 ? bottom * PI_BOTTOM ** BigInt(pi) : bottom * PI_TOP ** BigInt(-pi)
  if (above === 0n) return 0
  const size = above < 0n ? -above : above
  const shift = DIGITS + below.toString().length - size.toString().length
  const scaled = shift >= 0 ? size * 10n ** BigInt(shift) : size
  const divisor = shift >= 0 ? below : below * 10n ** BigInt(-shift)
  const digits = scaled / divisor
  // A last digit 1 stands for everything cut off, so that a value just above a tie is not rounded down.
  const rest = digits * divisor === scaled ? '0' : '1'
  const value = Number(`${digits}${rest}e${-shift - 1}`)
  return above < 0n ? -value : value
}

/** k of a factor 10^k; undefined for every other. */
export function powerOfTen(x: Exact): number | undefined {
  const [, power] = x.pi === 0 ? (/^1e([+-]\d+)$/.exec(nearestDouble(x).toExponential()) ?? []) : []
  return power === undefined ? undefined : Number(power)
}
