/** Beyond these a number is written with an exponent. */
const LARGEST = 1e15
const SMALLEST = 1e-6
/** Decimals a spread may ask for; what is finer is written with an exponent. */
const MOST_DECIMALS = 15

/** A double as its shortest decimal, −0 as 0. */
export const plainDecimal = (x: number): string => String(x === 0 ? 0 : x)

/** The shortest decimal of x · 10^places, without a rounding: 0.185 by 3 places is 185, digit for digit. */
export function movedPoint(x: number, places: number): string {
  if (x === 0) return '0'
  const [mantissa = '', exponent] = Math.abs(x).toExponential().split('e')
  const digits = mantissa.replace('.', ''),
    point = Number(exponent) + places + 1,
    sign = x < 0 ? '-' : ''
  if (point < -5 || point > 21) return `${sign}${mantissa}e${point - 1}`
  if (point <= 0) return `${sign}0.${'0'.repeat(-point)}${digits}`
  return point >= digits.length ? sign + digits.padEnd(point, '0') : `${sign}${digits.slice(0, point)}.${digits.slice(point)}`
}

/**
 * Rounded for reading. `sensible` is three significant digits, four after a leading 1 or up to 9999, and no zeros at the end; money keeps
 * whole units. A number of digits asked for is kept, zeros and all.
 */
export function roundedTo(x: number, digits: number | 'sensible', whole = false): string {
  if (x === 0) return '0'
  const size = Math.abs(x)
  if (size >= LARGEST || size < SMALLEST) return plainDecimal(Number(x.toPrecision(digits === 'sensible' ? 4 : digits)))
  if (digits !== 'sensible') return fixed(x, digits - 1 - leadingPlace(size))
  if (whole && size >= 100) return fixed(x, 0)
  const significant = whole ? leadingPlace(size) + 3 : size.toExponential().startsWith('1') ? 4 : 3
  const decimals = significant - 1 - leadingPlace(size)
  return withoutZeros(fixed(x, size < 1e4 ? Math.max(decimals, 0) : decimals))
}

/** Value and half-width rounded at the same place, the second of the half-width's digits. */
export function roundedTogether(x: number, half: number): readonly [main: string, half: string] {
  if (half === 0) return [roundedTo(x, 'sensible'), '0']
  const twoDigits = Number(half.toPrecision(2)),
    decimals = 1 - leadingPlace(twoDigits)
  if (decimals > MOST_DECIMALS || Math.abs(x) >= LARGEST || twoDigits >= LARGEST) return [plainDecimal(x), plainDecimal(twoDigits)]
  const main = fixed(x, decimals),
    spread = fixed(twoDigits, decimals)
  const bothEndInZero = decimals > 0 && main.endsWith('0') && spread.endsWith('0')
  return bothEndInZero ? [fixed(x, decimals - 1), fixed(twoDigits, decimals - 1)] : [main, spread]
}

/** Place of the first digit: 2 for hundreds, −1 for tenths. */
const leadingPlace = (size: number): number => Number(size.toExponential().split('e')[1])

/** Rounded to so many decimals; fewer than none rounds to tens, hundreds. */
function fixed(x: number, decimals: number): string {
  const text = decimals >= 0 ? x.toFixed(decimals) : (Math.round(x / 10 ** -decimals) * 10 ** -decimals).toFixed(0)
  return /[1-9]/.test(text) ? text : text.replace('-', '')
}

const withoutZeros = (decimal: string): string => (decimal.includes('.') ? decimal.replace(/\.?0+$/, '') : decimal)
