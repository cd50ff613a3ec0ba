import { KINDS, type Kind } from '@ampwright/engine'
import { fromSI, halfFromSI } from './conversion.ts'
import { namedUnit, type System, shownUnit } from './display.ts'
import { powerOfTen } from './exact.ts'
import { readQuantity } from './read.ts'
import { movedPoint, plainDecimal, roundedTo, roundedTogether } from './rounding.ts'
import type { Unit } from './units.ts'
import { gaugeName } from './wire-gauge.ts'

export { displayUnit, type System } from './display.ts'

/** Thin no-break space: between groups of three digits and before the unit. */
const THIN = '\u202f'

export type Writing = {
  readonly system?: System
  /** Significant digits, where no spread says how many are worth printing. */
  readonly digits?: number
  /** ± in SI; it is given two digits and the value as many places. */
  readonly half?: number
  /** One unit of the kind, instead of the system's. */
  readonly unit?: string
}

/**
 * A quantity for people: `1 180 ± 10 kg`. What it prints, `readQuantity` reads back to the same value within the digits printed.
 *
 * Takes SI; throws a RangeError on numbers that are not finite, on a negative half-width and on a unit that is not of the kind.
 */
export function writeQuantity(value: number, kind: Kind, { system = 'metric', digits, half, unit: wanted }: Writing = {}): string {
  check(value, kind, half)
  const unit = wanted === undefined ? shownUnit(kind, system, value) : namedUnit(kind, wanted)
  const american =
    kind === 'conductor size' &&
    half === undefined &&
    digits === undefined &&
    (unit.form === 'gauge' || (wanted === undefined && system === 'us'))
  const gauge = american ? gaugeName(value) : undefined
  if (gauge !== undefined) return `${gauge}${THIN}AWG`
  const again = { system, ...(digits === undefined ? {} : { digits }), ...(half === undefined ? {} : { half }) }
  if (unit.form === 'gauge') return writeQuantity(value, kind, { ...again, unit: 'mm²' })
  const x = fromSI(value, unit)
  if (unit.form === 'inverse' && !(x > 0 && Number.isFinite(x))) return writeQuantity(value, kind, again)
  const alone = kind === 'count' ? plainDecimal(x) : roundedTo(x, digits ?? 'sensible', kind === 'money')
  const [main, spread] = half === undefined ? [alone] : roundedTogether(x, halfFromSI(value, half, unit))
  return joined(main, spread, unit, FOR_PEOPLE)
}

/**
 * A quantity for a file: plain characters, a unit of the trade, and exactly the same value when read again, with as few digits as that takes.
 *
 * `half` goes with it, as exactly. Throws as `writeQuantity`, and on what no text of this kind says: half a count, a temperature below zero kelvin.
 */
export function spellQuantity(value: number, kind: Kind, { half, unit }: { readonly half?: number; readonly unit?: string } = {}): string {
  check(value, kind, half)
  const units = [
    ...(unit === undefined ? [] : [namedUnit(kind, unit)]),
    shownUnit(kind, 'metric', value),
    namedUnit(kind, SPELLED_SI[kind] ?? KINDS[kind].unit),
  ]
  const texts = units.flatMap(u => spelled(value, half, kind, u) ?? [])
  const [first] = unit === undefined ? texts.toSorted((a, b) => a.length - b.length) : texts
  if (first === undefined) throw new RangeError(`no text says ${value}${half === undefined ? '' : ` ± ${half}`} as ${kind}`)
  return first
}

/** SI units this project writes otherwise than KINDS names them. */
const SPELLED_SI: Partial<Record<Kind, string>> = {
  slope: 'm/m',
  ratio: '',
  share: '',
  count: '',
  number: '',
  'speed drag': 'N/(m/s)',
  'air drag': 'N/(m/s)²',
  torque: 'Nm',
  'rotational stiffness': 'Nm/rad',
}

function spelled(value: number, half: number | undefined, kind: Kind, unit: Unit): string | undefined {
  if (unit.form === 'gauge') return undefined
  const reads = (main: string, spread?: string): boolean => {
    const read = readQuantity(joined(main, spread, unit), kind)
    return read.ok && read.quantity.value === value && (spread === undefined || read.quantity.half === half)
  }
  const power = powerOfTen(unit.factor)
  const main = candidates(value, fromSI(value, unit), unit.shift ? undefined : power).find(text => reads(text))
  if (main === undefined || half === undefined) return main === undefined ? undefined : joined(main, undefined, unit)
  const spread = candidates(half, halfFromSI(value, half, unit), power).find(text => reads(main, text))
  return spread === undefined ? undefined : joined(main, spread, unit)
}

/** Decimals for a value that is x in the unit: its own digits with the point moved, or shortest first up to the 17 a double can hold. */
function candidates(value: number, x: number, power: number | undefined): readonly string[] {
  if (power !== undefined) return [movedPoint(value, -power)]
  return Number.isFinite(x) ? Array.from({ length: 17 }, (_, i) => plainDecimal(Number(x.toPrecision(i + 1)))) : []
}

type Style = { readonly number: (decimal: string) => string; readonly gap: string }
const FOR_FILES: Style = { number: decimal => decimal, gap: ' ' }
const FOR_PEOPLE: Style = { number: decimal => grouped(decimal).replace('-', '−'), gap: THIN }

/** Number, spread and unit as one text. A spread in % wider than its value gets a unit of its own: `0.5 ± 2 %` would be refused. */
function joined(main: string, spread: string | undefined, unit: Unit, { number, gap }: Style = FOR_FILES): string {
  const [name] = unit.spellings
  const after =
    name === '' || name === '1:' || (name === ':1' && spread !== undefined) ? '' : name === '°' || name === ':1' ? name : gap + name
  const before = name === '1:' ? '1:' : ''
  if (spread === undefined) return before + number(main) + after
  const wide = name === '%' && Number(spread) >= Math.abs(Number(main))
  return `${before}${number(main)}${wide ? after : ''}${gap}±${gap}${number(spread)}${after}`
}

/** Digits of the whole part in groups of three. */
function grouped(decimal: string): string {
  const [, sign = '', whole = '', rest = ''] = /^(-?)(\d+)(.*)$/.exec(decimal) ?? []
  return sign + whole.replace(/\B(?=(?:\d{3})+$)/g, THIN) + rest
}

function check(value: number, kind: Kind, half?: number): void {
  if (!Number.isFinite(value)) throw new RangeError(`${kind}: a finite number is wanted, not ${value}`)
  if (half !== undefined && !(half >= 0 && Number.isFinite(half)))
    throw new RangeError(`${kind}: a half-width is finite and not negative, not ${half}`)
}
