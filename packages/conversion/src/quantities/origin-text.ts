import type { Origin } from '@ampwright/engine'
import { nearest } from '../nearest.ts'
import { type Fault, fault } from './quantity.ts'

const WAYS = ['measured', 'datasheet', 'standard', 'assumed'] as const
const ACCEPTED = `(${WAYS.join('), (')}), with a note after a comma if wanted`

/** Parts `1180 ± 10 kg (measured, corner scales 12 May)` into what stands before the bracket and the origin in it. */
export function partedOrigin(text: string): { readonly ok: true; readonly before: string; readonly origin?: Origin } | Fault {
  const open = openingBracket(text)
  if (open < 0) return { ok: true, before: text.trim() }
  const bracket = text.slice(open).trimEnd()
  const wrong = (why: string, meant?: string): Fault => ({ ...fault(bracket, why, meant), accepted: ACCEPTED })
  if (!bracket.includes(')')) return wrong('the bracket is not closed')
  if (!bracket.endsWith(')')) return wrong('nothing may follow the bracket that says how the value is known')
  const inside = bracket.slice(1, -1).trim()
  const word = /^\p{L}+/u.exec(inside)?.[0] ?? ''
  const how = WAYS.find(w => w === word.toLowerCase())
  if (!how) return wrong('the bracket has to begin with how the value is known', nearest(word.toLowerCase(), WAYS))
  const note = inside.slice(word.length).replace(/^[\s,;:]+/, '')
  return { ok: true, before: text.slice(0, open).trim(), origin: { how, ...(note === '' ? {} : { note }) } }
}

/** The first bracket that is not part of a unit such as N/(m/s)². */
function openingBracket(text: string): number {
  for (let i = text.indexOf('('); i >= 0; i = text.indexOf('(', i + 1)) if (!text.slice(0, i).trimEnd().endsWith('/')) return i
  return -1
}
