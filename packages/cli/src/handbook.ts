import { nearest, readQuantity, type System } from '@ampwright/conversion'
import {
  type AnyFormula,
  dimensionFaults,
  type Fact,
  type Figure,
  FORMULAS,
  formulaById,
  isOne,
  type Kind,
  kindOf,
  markOf,
  type One,
  type Take,
  type Value,
  WORKS,
  work,
  workAll,
} from '@ampwright/engine'
import { Refusal } from './load.ts'
import { plain, shown } from './shown.ts'
import { colours, type Terminal, wrapped } from './terminal.ts'

type Source = { readonly work: keyof typeof WORKS; readonly place: string; readonly mark?: 'from memory' | 'common practice' }
const sourceText = (s: Source): string => `${WORKS[s.work].title}, ${s.place}${markOf(s) ? ` (${markOf(s)})` : ''}`

export function printChapters(t: Terminal): void {
  const k = colours(t)
  let chapter = ''
  for (const { chapter: c, formula } of FORMULAS) {
    if (c !== chapter) {
      chapter = c
      t.out('')
      t.out(k.bold(c))
    }
    for (const line of wrapped(`${formula.card.id}  ${formula.card.label}`, t.width, '  ')) t.out(line)
  }
}

const givesOf = (f: AnyFormula): readonly One[] =>
  isOne(f.card.gives) ? [f.card.gives] : Object.values(f.card.gives as Record<string, One>)

export function printCard(f: AnyFormula, t: Terminal, system: System): void {
  const k = colours(t),
    { card } = f
  t.out(k.bold(card.label))
  t.out('')
  for (const line of (card.words ?? card.text).split('\n')) t.out(`  ${line}`)
  t.out('')
  for (const one of givesOf(f)) t.out(`  ${one.symbol} [${one.unit}]  ${one.label ?? card.label}`)
  for (const [name, take] of Object.entries(card.takes) as [string, Take][])
    t.out(
      `  ${take.symbol} [${unitOf(take)}]  ${take.label ?? name}${'holds' in take && take.holds ? `, ${plain(take.holds[0])} … ${plain(take.holds[1])}` : ''}  (--input ${name}=…)`,
    )
  for (const used of (card.uses ?? []) as Fact[]) t.out(`  ${used.symbol} = ${shown(used, system)}  ${used.label}`)
  t.out('')
  for (const line of wrapped(`Source: ${sourceText(card.source)}`, t.width, '  ')) t.out(line)
  if (card.leavesOut) for (const line of wrapped(`Leaves out: ${card.leavesOut}`, t.width, '  ')) t.out(line)
  if ('none' in card.proof) for (const line of wrapped(`No published example: ${card.proof.none}`, t.width, '  ')) t.out(line)
  else
    for (const e of card.proof.examples)
      for (const line of wrapped(
        `Example: ${JSON.stringify(e.takes)} gives ${JSON.stringify(e.gives)} within ${e.within} (${sourceText(e.source)})`,
        t.width,
        '  ',
      ))
        t.out(line)
}
const unitOf = (take: Take): string =>
  'oneOf' in take
    ? take.oneOf.join(' | ')
    : typeof take.unit === 'string'
      ? `${take.unit}${'many' in take ? ', list' : ''}`
      : take.unit.join(' → ')

export function formulaNamed(id: string): AnyFormula {
  const f = formulaById(id)
  if (f) return f
  const near = nearest(
    id,
    FORMULAS.map(x => x.formula.card.id),
  )
  throw new Refusal(`handbook: «${id}» is no formula${near ? `; did you mean ${near}?` : '.'} \`ampwright handbook\` lists them all.`)
}

/** Typed inputs as values: any unit of the right kind, lists between semicolons. */
export function inputsOf(f: AnyFormula, given: readonly string[]): Record<string, Value | readonly Value[]> {
  const takes = f.card.takes as Record<string, Take>,
    out: Record<string, Value | readonly Value[]> = {}
  for (const text of given) {
    const at = text.indexOf('='),
      name = text.slice(0, at),
      take = takes[name]
    if (at < 1 || !take)
      throw new Refusal(`handbook: --input ${text}: NAME=VALUE is wanted, with NAME one of ${Object.keys(takes).join(', ')}`)
    const value = text.slice(at + 1)
    if ('oneOf' in take) {
      if (!take.oneOf.includes(value)) throw new Refusal(`handbook: --input ${name}: «${value}» is not one of ${take.oneOf.join(', ')}`)
      out[name] = { path: name, label: take.label ?? name, symbol: take.symbol, unit: '', value: value as never }
    } else if ('curve' in take || 'grid' in take)
      throw new Refusal(`handbook: ${name} is a ${'curve' in take ? 'curve' : 'map'}; it cannot be typed`)
    else if ('many' in take) out[name] = value.split(';').map((v, i) => typed(`${name} ${i + 1}`, v.trim(), take))
    else out[name] = typed(name, value, take)
  }
  const missing = Object.keys(takes).filter(name => !(name in out))
  if (missing.length) throw new Refusal(`handbook: ${f.card.id} also needs ${missing.map(m => `--input ${m}=…`).join(' ')}`)
  return out
}
function typed(name: string, text: string, one: One): Value {
  const bare = /^[-−+]?\d+(?:[.,]\d+)?(?:e[-+]?\d+)?$/i.test(text),
    kind: Kind | undefined = one.shows ?? kindOf(one.unit)
  if (bare && (one.unit === '1' || !kind))
    return {
      path: name,
      label: one.label ?? name,
      symbol: one.symbol,
      unit: one.unit,
      value: Number(text.replace(',', '.').replace('−', '-')),
      ...(one.shows ? { shows: one.shows } : {}),
    }
  if (!kind) throw new Refusal(`handbook: --input ${name}: a bare number in ${one.unit} is wanted, «${text}» was found`)
  const read = readQuantity(text, kind)
  if (!read.ok)
    throw new Refusal(`handbook: --input ${name}: found ${read.problem.found}, ${read.problem.why}; accepted ${read.problem.accepted}`)
  return {
    path: name,
    label: one.label ?? name,
    symbol: one.symbol,
    unit: one.unit,
    value: read.quantity.value,
    text,
    ...(one.shows ? { shows: one.shows } : {}),
    ...(read.quantity.half === undefined ? {} : { half: read.quantity.half }),
  }
}

/** Runs one formula on typed inputs. */
export function compute(f: AnyFormula, inputs: Record<string, Value | readonly Value[]>): readonly Figure[] {
  if (isOne(f.card.gives)) return [work(f as never, inputs as never, { id: f.card.id })]
  return Object.values(workAll(f as never, inputs as never, { id: f.card.id }).figures as Record<string, Figure>)
}
export const cardJson = (f: AnyFormula, chapter: string): object => ({
  ...f.card,
  chapter,
  source: {
    ...f.card.source,
    title: WORKS[f.card.source.work as keyof typeof WORKS].title,
    ...(markOf(f.card.source) ? { mark: markOf(f.card.source) } : {}),
  },
  unitFaults: f.card.words ? undefined : dimensionFaults(f),
})
