import { type System, writeQuantity } from '@ampwright/conversion'
import { type AnyValue, type Finding, isFigure, type Kind, kindOf, type Value } from '@ampwright/engine'

/** A computed spread finer than this part of its figure says more of the sum than of the car: it would only ask for digits nobody reads. */
const FINEST = 2e-4
const tooFine = (v: number, kind: Kind | undefined, half: number | undefined): boolean =>
  half !== undefined && kind !== 'temperature' && half < FINEST * Math.abs(v)

/** A value for people: number, spread where known, unit of the reader's choice. */
export function shown(value: AnyValue, system: System, half?: number): string {
  const v = value.value
  if (typeof v === 'string') return v
  if (typeof v !== 'number') return 'z' in v ? `a map of ${v.x.length} × ${v.y.length} points` : `a curve of ${v.x.length} points`
  const kind = (value as Value).shows ?? kindOf(value.unit)
  return shownNumber(v, kind, value.unit, system, isFigure(value) && tooFine(v, kind, half) ? undefined : half)
}

export function shownNumber(v: number, kind: Kind | undefined, unit: string, system: System, half?: number): string {
  if (v === Number.POSITIVE_INFINITY && (kind === 'time' || kind === 'duration')) return 'never'
  if (!Number.isFinite(v)) return v > 0 ? 'without limit' : v < 0 ? 'below every limit' : '–'
  const spread = half !== undefined && half > 0 && Number.isFinite(half) ? half : undefined
  if (kind && kind !== 'number') return writeQuantity(v, kind, { system, ...(spread === undefined ? {} : { half: spread }) })
  return `${plain(v)}${spread === undefined ? '' : ` ± ${plain(spread, 2)}`}${unit === '1' || unit === '' ? '' : ` ${unit}`}`
}

/** A bare number: four digits that matter, no exponent where none is needed. */
export function plain(v: number, digits = 4): string {
  if (v === 0) return '0'
  const size = Math.abs(v)
  return size >= 1e6 || size < 1e-4 ? v.toExponential(digits - 1).replace('e+', 'e') : String(Number(v.toPrecision(digits)))
}

/** A text of the engine with its slots filled. */
export function filled(text: string, f: Pick<Finding, 'slots' | 'found' | 'required' | 'item'>, system: System): string {
  return text.replace(/\{([\w-]+)\}/g, (_, name: string) => {
    if (name === 'item') return f.item ?? ''
    const value = f.slots[name] ?? (name === 'found' ? f.found : name === 'limit' ? f.required?.limit : undefined)
    return value ? shown(value, system) : `{${name}}`
  })
}

/** A value as the right-hand side of a line in a working, with where it is from. */
export const labelled = (value: AnyValue, system: System, half?: number): string =>
  `${value.symbol || value.label} = ${shown(value, system, half)}${isFigure(value) || !value.symbol ? '' : `  ${value.label}`}`

/** A label at the head of a line. */
export const headed = (label: string): string => label.replace(/^\p{Ll}/u, c => c.toUpperCase())
