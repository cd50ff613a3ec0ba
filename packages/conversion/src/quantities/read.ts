import type { Kind } from '@ampwright/engine'
import { type Amount, amount } from './amount.ts'
import { halfToSI, toSI } from './conversion.ts'
import { type Exact, exact, minus, nearestDouble, times } from './exact.ts'
import { partedOrigin } from './origin-text.ts'
import { type Fault, fault, type Problem, type Quantity } from './quantity.ts'
import { acceptedUnits, aKind, canonical, kindOfUnit, nearestUnit, unitOf } from './unit-lookup.ts'
import type { Unit } from './units.ts'

const LONGEST = 200
const SPREAD = /±|\+\s?\/\s?[-−]|\+[-−]/
const PERCENT: Exact = exact('1/100')
const OTHER_CURRENCY = /^(?:[$£¥]|USD|GBP|CHF|SEK|NOK|DKK|PLN|CZK|CAD|AUD|JPY)/i

/** A value in SI with its half-width. */
type Measure = { readonly ok: true; readonly value: number; readonly half?: number; readonly unit: string }
type Found = { readonly ok: true; readonly unit: Unit }

/**
 * Reads a quantity of a known kind from text: `1180 ± 10 kg (measured, corner scales 12 May)`, `12,5 kg`, `250 Nm ± 5 %`, `2/0 AWG`.
 *
 * Every fault comes back as a problem; nothing is thrown, and the time is bounded by the length of the text, which may be 200 characters.
 */
export function readQuantity(
  text: string,
  kind: Kind,
): { readonly ok: true; readonly quantity: Quantity } | { readonly ok: false; readonly problem: Problem } {
  const read = understood(text, kind)
  if (read.ok) return read
  const { found, why, nearest, accepted = acceptedUnits(kind) } = read
  return { ok: false, problem: { found, accepted, ...(nearest === undefined ? {} : { nearest }), why } }
}

function understood(text: string, kind: Kind): { readonly ok: true; readonly quantity: Quantity } | Fault {
  if (text.length > LONGEST) return fault(`${text.slice(0, 40)}…`, `this is longer than ${LONGEST} characters`)
  if (/[^\P{Cc}\t\n\r]/u.test(text)) return fault('a control character', 'control characters have no place in a quantity')
  const parted = partedOrigin(text)
  if (!parted.ok) return parted
  if (parted.before === '') return fault(text, `${aKind(kind)} is wanted here`)
  const measure = measured(parted.before, kind)
  if (!measure.ok) return measure
  const { value, half, unit } = measure
  return {
    ok: true,
    quantity: { value, ...(half === undefined ? {} : { half }), text, unit, ...(parted.origin ? { origin: parted.origin } : {}) },
  }
}

function measured(text: string, kind: Kind): Measure | Fault {
  const [left = '', right, ...more] = text.split(SPREAD)
  if (more.length > 0) return fault(text, 'this has more than one ±')
  const main = amount(left.trim(), kind)
  if (!main.ok) return main
  if (right === undefined) {
    const unit = lookedUp(main.unit, kind, text)
    return unit.ok ? withHalf(text, kind, main, unit.unit) : unit
  }
  const spread = amount(right.trim(), kind === 'money' ? 'money' : 'number')
  if (!spread.ok) return spread
  if (spread.sign !== '') return fault(right.trim(), 'a spread has no sign: ± says both')
  return spreadMeasure(text, kind, main, spread)
}

/** Which unit the value and which the spread is in. One unit after the ± holds for both: `95 ± 2 %`. */
function spreadMeasure(text: string, kind: Kind, main: Amount, spread: Amount): Measure | Fault {
  const points = unitOf(kind, '%') !== undefined
  if (main.unit === '' && spread.unit !== '') {
    const relative = !points && spread.unit.startsWith('%'),
      typed = relative ? spread.unit.slice(1).trim() : spread.unit
    const unit = lookedUp(typed, kind, text)
    if (!unit.ok) return unit
    const both = { ...main, unit: typed }
    if (relative) return withHalf(text, kind, both, unit.unit, relativeHalf(both, spread.x, unit.unit))
    const half = halfToSI(main.x, spread.x, unit.unit)
    const size = Math.abs(nearestDouble(main.x))
    if (points && size > 0 && size <= 1 && half > Math.abs(toSI(main.x, unit.unit))) {
      return fault(text, 'the unit at the end holds for both numbers, and this spread is larger than the value; give each its own unit')
    }
    return withHalf(text, kind, both, unit.unit, half)
  }
  const unit = lookedUp(main.unit, kind, text)
  if (!unit.ok) return unit
  if (spread.unit === '%' && !points) return withHalf(text, kind, main, unit.unit, relativeHalf(main, spread.x, unit.unit))
  return withHalf(text, kind, main, unit.unit, ownHalf(text, kind, main, spread, unit.unit))
}

/** A spread with its own unit, or none, which then is the value's. */
function ownHalf(text: string, kind: Kind, main: Amount, spread: Amount, unit: Unit): number | Fault {
  const other: Found | Fault =
    spread.unit === '' ? { ok: true, unit } : lookedUp(spread.unit, kind, text, kind === 'temperature' ? 'temperature difference' : kind)
  if (!other.ok) return other
  const shown = `± ${spread.unit}`
  if (spread.unit === '%' && other.unit !== unit)
    return fault(shown, '% after this value could be points or a part of it; give value and spread in the same unit')
  if (unit.form === 'gauge' && other.unit.form !== 'linear') return fault(shown, 'a gauge has no spread; give it in mm² or in %')
  if (other.unit === unit) return halfToSI(main.x, spread.x, unit)
  return other.unit.form === 'linear' ? halfToSI(spread.x, spread.x, other.unit) : fault(shown, 'give the spread in the unit of the value')
}

function relativeHalf(main: Amount, percent: Exact, unit: Unit): number | Fault {
  if (unit.shift) return fault('± %', 'a temperature has no percentage; give the spread in K', 'K')
  const size = main.x.top < 0n ? minus(main.x) : main.x
  if (unit.form === 'gauge') return toSI(main.x, unit) * nearestDouble(times(percent, PERCENT))
  return halfToSI(main.x, times(size, percent, PERCENT), unit)
}

/** The last look at a value: it is a number a thing of this kind can have. */
function withHalf(text: string, kind: Kind, main: Amount, unit: Unit, half?: number | Fault): Measure | Fault {
  if (typeof half === 'object') return half
  const value = toSI(main.x, unit)
  if (Number.isNaN(value)) return fault(text, unit.form === 'tangent' ? 'a slope is less than 90°' : 'this has to be above zero')
  if (!Number.isFinite(value) || (value === 0 && main.x.top !== 0n && !unit.shift)) return fault(text, 'this number is beyond any quantity')
  if (half !== undefined && !Number.isFinite(half)) return fault(text, 'the spread reaches where there is no such quantity')
  if (kind === 'temperature' && value < 0) return fault(text, 'this is below absolute zero')
  if (kind === 'count' && !(Number.isSafeInteger(value) && value >= 0)) return fault(text, 'a count is a whole number, not below zero')
  if (kind === 'share' && main.unit === '' && Math.abs(value) > 1)
    return fault(text, `${value} would be ${value * 100} %`, `${value} % or ${value / 100}`)
  return { ok: true, value, ...(half === undefined ? {} : { half }), unit: main.unit }
}

/** The unit typed, of this kind; `also` is a second kind whose units will do. */
function lookedUp(typed: string, kind: Kind, text: string, also: Kind = kind): Found | Fault {
  const unit = unitOf(also, typed) ?? unitOf(kind, typed)
  if (unit) return { ok: true, unit }
  if (typed === '') return fault(text, `${aKind(kind)} needs its unit`)
  if (kind.startsWith('money') && OTHER_CURRENCY.test(typed)) {
    return fault(
      typed,
      `amounts are kept in € and no exchange rate is assumed: convert '${typed}' at the rate of the day and note the rate`,
    )
  }
  const shown = typed.length > 24 ? `${typed.slice(0, 24)}…` : typed
  const other = canonical(shown) === '%' ? 'share' : kindOfUnit(typed)
  if (other && other !== kind) return fault(shown, `'${shown}' is ${aKind(other)}; ${aKind(kind)} is wanted`, nearestUnit(kind, typed))
  const way = /\s(measured|datasheet|standard|assumed)\b/.exec(typed)?.[1]
  if (way) return fault(shown, `how the value is known stands in brackets: (${way})`)
  return fault(shown, `'${shown}' is not a unit known here`, nearestUnit(kind, typed))
}
