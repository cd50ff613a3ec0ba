import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { lookUpsBeside } from '@ampwright/cli'
import { type Conversion, formatIssue, isUsable, readConversion } from '@ampwright/conversion'
import { type AnyValue, type Assessment, type Fact, leaves, type Model } from '@ampwright/engine'
import { assessModel } from '@ampwright/workbench'
import { surveyed } from './surveyed.ts'

/** The four sample cars, as the sweeps read them. */
export const root = join(new URL('.', import.meta.url).pathname, '..')
export const CARS = ['lapwing', 'wren', 'badger', 'otter'] as const
export type Car = (typeof CARS)[number]
export const fileOf = (car: Car): string => join(root, 'samples', `${car}.conversion.yaml`)
export const textOf = (car: Car): string => readFileSync(fileOf(car), 'utf8')

export const lookUps = lookUpsBeside(join(root, 'samples'))
export function conversionOf(text: string, strict = false): Conversion {
  const c = readConversion(text, { lookUps, strict })
  if (!isUsable(c)) throw new Error(c.issues.map(formatIssue).join('\n'))
  return withSurveys(c)
}
/** With what is measured of the scans and meshes it names. */
export function withSurveys(c: Conversion): Conversion {
  const measured = surveyed(c.model)
  return Object.keys(measured).length > 0 ? { ...c, model: { ...c.model, ...measured } } : c
}
export const assessText = (
  text: string,
  options: { strict?: boolean; bands?: boolean } = {},
): { conversion: Conversion; assessment: Assessment } => {
  const conversion = conversionOf(text, options.strict)
  return { conversion, assessment: assessModel(conversion.model, options.bands ?? false) }
}
export type { Model }

/** Facts the file itself states, at paths that can be edited. */
export const typedFacts = (c: Conversion): readonly Fact[] =>
  (c.facts as readonly Fact[]).filter(f => f.text !== undefined && !f.path.includes('#') && !f.origin?.note?.startsWith('part '))

/** Paths of the facts each figure rests on; pieces of a marking count as the marking. */
export function leafPaths(a: Assessment): ReadonlyMap<string, ReadonlySet<string>> {
  const memo = new Map<AnyValue, ReadonlySet<string>>()
  const of = (v: AnyValue): ReadonlySet<string> => {
    let known = memo.get(v)
    if (!known) memo.set(v, (known = new Set(leaves(v).map(f => f.path.replace(/#.*/, '')))))
    return known
  }
  return new Map([...a.figures.values()].map(f => [f.id, of(f)]))
}

/** Everything an assessment says, flattened so that two can be compared. */
export function said(a: Assessment): ReadonlyMap<string, number | string> {
  const out = new Map<string, number | string>()
  for (const f of a.figures.values()) out.set(`figure ${f.id}`, typeof f.value === 'number' ? f.value : digest(f.value))
  for (const t of a.tables.values())
    for (const r of t.rows)
      for (const [k, c] of Object.entries(r.cells))
        out.set(
          `table ${t.id} ${r.name} ${k}`,
          c === undefined ? '' : typeof c === 'object' ? (typeof c.value === 'number' ? c.value : digest(c.value)) : c,
        )
  for (const f of a.findings) {
    out.set(`finding ${f.rule}@${f.item ?? ''}`, f.outcome)
    if (f.required) out.set(`limit ${f.rule}@${f.item ?? ''}`, f.required.limit.value)
    if (f.found) out.set(`found ${f.rule}@${f.item ?? ''}`, f.found.value)
    for (const [k, v] of Object.entries(f.slots))
      if (v && typeof v.value === 'number') out.set(`slot ${f.rule}@${f.item ?? ''} ${k}`, v.value)
  }
  return out
}
const digest = (v: unknown): string =>
  typeof v === 'object' && v !== null
    ? Object.values(v)
        .map(a => [...(a as Float64Array)].map(x => x.toPrecision(9)).join(','))
        .join(';')
    : String(v)

export const moved = (a: ReadonlyMap<string, number | string>, b: ReadonlyMap<string, number | string>): readonly string[] =>
  [...new Set([...a.keys(), ...b.keys()])].filter(k => !Object.is(a.get(k), b.get(k)))
