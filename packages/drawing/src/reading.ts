const NARROW = '\u202f'

/** Digits in threes, a true minus: how every number of a drawing is written. */
function grouped(digits: string): string {
  const [whole = '', part] = digits.replace('-', '').split('.')
  const spaced = whole.length > 3 ? whole.replace(/\B(?=(\d{3})+$)/g, NARROW) : whole
  const minus = digits.startsWith('-') && /[1-9]/.test(digits) ? '−' : ''
  return `${minus}${spaced}${part === undefined ? '' : `.${part}`}`
}

/** A value at a tick: as many decimals as the step between ticks needs. */
export const tickText = (value: number, step: number): string =>
  grouped(value.toFixed(Math.min(12, Math.max(0, -Math.floor(Math.log10(step) + 1e-9)))))

/** A value read off: three digits that matter, four after a leading 1, whole from a thousand on; no zeros at the end. */
export function reading(value: number): string {
  if (!Number.isFinite(value)) return '–'
  const size = Math.abs(value)
  if (size < 1e-9) return '0'
  const place = Math.floor(Math.log10(size) + 1e-12),
    digits = Math.floor(size / 10 ** place + 1e-9) === 1 ? 4 : 3
  const decimals = Math.max(0, digits - 1 - place),
    text = value.toFixed(Math.min(decimals, 12))
  return grouped(text.includes('.') ? text.replace(/\.?0+$/, '') : text)
}

/** Decimals with which values up to `greatest` keep three digits: a list of numbers is read more easily with one precision. */
export const decimalsFor = (greatest: number): number =>
  greatest > 0 ? Math.max(0, Math.min(6, 2 - Math.floor(Math.log10(greatest) + 1e-12))) : 0
/** A value with so many decimals. */
export const fixedReading = (value: number, decimals: number): string => (Number.isFinite(value) ? grouped(value.toFixed(decimals)) : '–')

/** A number with its unit, one thin space between. */
export const withUnit = (number: string, unit: string): string => (unit === '' ? number : `${number}${NARROW}${unit}`)
