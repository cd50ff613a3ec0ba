import { KINDS, type Kind } from '@ampwright/engine'
import { nearest } from '../nearest.ts'
import { unitMeant } from './meant.ts'
import { UNITS, type Unit } from './units.ts'

/** No spelling comes near this; longer texts are not compared. */
const LONGEST = 24
const KIND_NAMES = Object.keys(KINDS) as Kind[]

/**
 * One form for all ways to type a unit: `N m`, `N·m`, `N*m`; `lb-ft`, `lb ft`; `m2`, `m^2`, `m²`; the three micro and ohm signs. Case is kept,
 * because mΩ is not MΩ.
 */
export function canonical(text: string): string {
  return text
    .replace(/[º˚]/g, '°')
    .normalize('NFKC')
    .replaceAll('∆', 'Δ')
    .replaceAll('−', '-')
    .replaceAll('^', '')
    .trim()
    .replace(/\s+/g, ' ')
    .replace(/ ?([/()]) ?/g, '$1')
    .replace(/° (?=[CF])/g, '°')
    .replace(/([0-9]) (?=\p{L})/gu, '$1')
    .replace(/ ?[·*×⋅∙•] ?| |(?<=\p{L})[.-](?=\p{L})/gu, '·')
}

const BY_KIND: ReadonlyMap<Kind, ReadonlyMap<string, Unit>> = new Map(
  KIND_NAMES.map(kind => [kind, new Map(UNITS[kind].flatMap(u => u.spellings.map(s => [canonical(s), u] as const)))]),
)

/** The unit of a kind by any of its spellings. */
export function unitOf(kind: Kind, text: string): Unit | undefined {
  const known = BY_KIND.get(kind)
  return text.length > LONGEST ? undefined : (known?.get(text) ?? known?.get(canonical(text)))
}

/** What a spelling is a unit of, first the kind it is known best for. */
export function kindOfUnit(text: string): Kind | undefined {
  if (text.length > LONGEST || text === '') return undefined
  const key = canonical(text)
  return KIND_NAMES.find(kind => BY_KIND.get(kind)?.has(key))
}

const IN_WORDS: Partial<Record<Kind, string>> = {
  ratio: 'a plain number or a pair such as 3.92:1',
  share: '95 % or 0.95',
  count: 'a whole number',
  number: 'a plain number',
  slope: '25 %, 8° or 1:8',
  money: 'an amount in € (EUR)',
  'conductor size': 'mm², kcmil, or a gauge such as 2 AWG or 2/0 AWG',
}

/** The units of a kind, as one line for people. */
export const acceptedUnits = (kind: Kind): string => IN_WORDS[kind] ?? UNITS[kind].map(u => u.spellings[0]).join(', ')

/** `a mass`, `an area`. */
export const aKind = (kind: Kind): string => (/^[aeiou]/.test(KINDS[kind].label) ? `an ${KINDS[kind].label}` : `a ${KINDS[kind].label}`)

/**
 * The spelling of this kind nearest to what was typed, if it is near. What is a unit of another kind is taken to be meant so, unless one of
 * this kind contains it: `lbf` for `lb`, `Ah` for `A`, `Δ°C` for `°C`.
 */
export function nearestUnit(kind: Kind, text: string): string | undefined {
  const meant = unitMeant(kind, text)
  if (meant !== undefined) return meant
  if (text.length > LONGEST) return undefined
  const typed = canonical(text),
    spellings = new Map(UNITS[kind].flatMap(u => u.spellings.map(s => [canonical(s), s] as const)))
  const key = kindOfUnit(text) ? [...spellings.keys()].find(s => s.includes(typed)) : nearest(typed, spellings.keys())
  return key === undefined ? undefined : spellings.get(key)
}
