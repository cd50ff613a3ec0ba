import type { Kind } from '@ampwright/engine'
import { type Exact, exact, minus, nearestDouble, over, plus, times } from './exact.ts'
import { numberText } from './number-text.ts'
import { type Fault, fault } from './quantity.ts'
import { gaugeNumber } from './wire-gauge.ts'

/** A number and the unit typed with it, not yet looked up. */
export type Amount = { readonly ok: true; readonly x: Exact; readonly sign: '' | '+' | '-'; readonly unit: string }

const MONEY_FIRST = /^(€|EUR|[$£¥]|USD|GBP|CHF|SEK|NOK|DKK|PLN|CZK|CAD|AUD|JPY)\s*(?=[\d.,+\-−])/i
/** What parts the two numbers of a pair: a ratio 3.92:1, a slope 1:8 or 1 in 8. */
const PAIRED: Partial<Record<Kind, RegExp>> = { ratio: /^\s*:\s*/, slope: /^\s*(?::|in\s)\s*/ }
const RANGE = /^\s*(?:-|–|—|…|\.{2,3}|to\s)\s*(?=\d)/

/** Reads `12,5 kg`, and where the kind has them a pair (`3.92:1`, `1:8`, `1 in 8`), a gauge (`2/0 AWG`, `AWG 2`) or a currency in front. */
export function amount(text: string, kind: Kind): Amount | Fault {
  if (kind === 'conductor size' && /awg/i.test(text)) return gauge(text)
  const currency = kind === 'money' ? MONEY_FIRST.exec(text) : null
  if (currency) {
    const rest = amount(text.slice(currency[0].length), kind)
    return rest.ok && rest.unit === '' ? { ...rest, unit: currency[1] ?? '' } : rest.ok ? fault(text, 'this names a currency twice') : rest
  }
  const number = numberText(text)
  if (!number.ok) return fault(number.found, number.why, number.instead)
  const rest = text.slice(number.end)
  const pairedBy = PAIRED[kind]?.exec(rest)?.[0]
  if (pairedBy !== undefined) return pair(text, number.exact, rest.slice(pairedBy.length), kind)
  const range = RANGE.exec(rest)
  return range
    ? middle(text, number.exact, rest.slice(range[0].length))
    : { ok: true, x: number.exact, sign: number.sign, unit: rest.trim() }
}

function gauge(text: string): Amount | Fault {
  const parts = /^(AWG)?\s*([0-9]{1,4}(?:\/0)?)\s*(AWG)?$/i.exec(text)
  const n = parts && !parts[1] !== !parts[3] ? gaugeNumber(parts[2] ?? '') : undefined
  if (n === undefined) return fault(text, 'there is no such wire gauge; they run from 4/0 (0000) to 56')
  return { ok: true, x: { top: BigInt(n), bottom: 1n, pi: 0 }, sign: '', unit: 'AWG' }
}

function pair(text: string, first: Exact, rest: string, kind: Kind): Amount | Fault {
  const second = numberText(rest)
  if (!second.ok) return fault(text, second.why, second.instead)
  if (rest.slice(second.end).trim() !== '') return fault(text, 'nothing may follow a pair of numbers')
  if (first.top <= 0n || second.exact.top <= 0n) return fault(text, 'both numbers of a pair have to be above zero')
  if (kind === 'ratio') return { ok: true, x: over(first, second.exact), sign: '', unit: ':1' }
  const run = over(second.exact, first)
  return run.top < run.bottom
    ? fault(text, 'the rise comes first: 1:8 is one up in eight along')
    : { ok: true, x: run, sign: '', unit: '1:' }
}

/** A range is no value: says which spread would say the same. */
function middle(text: string, low: Exact, rest: string): Fault {
  const why = 'this is a range; a spread is written with ±',
    high = numberText(rest)
  if (!high.ok) return fault(text, why)
  const half = (x: Exact): number => nearestDouble(times(x, exact('1/2')))
  const mid = half(plus(low, high.exact)),
    spread = half(plus(high.exact, minus(low)))
  return fault(text, why, `${mid} ± ${spread} ${rest.slice(high.end).trim()}`.trim())
}
