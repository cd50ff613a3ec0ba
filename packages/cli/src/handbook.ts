import { nearest, readQuantity, type System } from '@ampwright/conversion'
import {
  type AnyFormula,
  type AnyValue,
  type Curve,
  dimensionFaults,
  type Fact,
  type Figure,
  FORMULAS,
  formulaById,
  type Grid,
  isOne,
  type Kind,
  kindOf,
  type Line,
  markOf,
  type One,
  type Plane,
  type Take,
  type Value,
  WORKS,
  work,
  workAll,
} from '@ampwright/engine'
import { curveOrMap, datumOf, plain, Refusal, shown } from '@ampwright/workbench'
import { bytesOf } from './load.ts'
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
      `  ${take.symbol} [${unitOf(take)}]  ${take.label ?? name}${'holds' in take && take.holds ? `, ${plain(take.holds[0])} … ${plain(take.holds[1])}` : ''}  (--input ${name}=${'curve' in take || 'grid' in take ? '@FILE.csv' : '…'})`,
    )
  if (isPlan(f)) for (const line of wrapped(`  ${PLAN}`, t.width, '  ')) t.out(line)
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

/** Typed inputs as values: any unit of the right kind, lists between semicolons, curves and maps from a file or in rows. */
export function inputsOf(f: AnyFormula, given: readonly string[]): Record<string, AnyValue | readonly AnyValue[]> {
  const takes = f.card.takes as Record<string, Take>,
    out: Record<string, AnyValue | readonly AnyValue[]> = {}
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
    } else if ('curve' in take || 'grid' in take) out[name] = lookedUp(name, value, take)
    else if ('many' in take) out[name] = value.split(';').map((v, i) => typed(`${name} ${i + 1}`, v.trim(), take))
    else out[name] = typed(name, value, take)
  }
  const missing = Object.keys(takes).filter(name => !(name in out))
  if (missing.length)
    throw new Refusal(`handbook: ${f.card.id} also needs ${missing.map(m => `--input ${m}=…`).join(' ')}${isPlan(f) ? `\n${PLAN}` : ''}`)
  return out
}

/** Formulas that run a whole drive or charge take more than anybody types. */
const isPlan = (f: AnyFormula): boolean => Object.keys(f.card.takes as object).length >= 20
const PLAN =
  'It takes a whole plan. `ampwright assess FILE --figures` runs it for the car of a file; `ampwright why FILE FIGURE` shows what went in.'

/** A curve or a map: from a CSV file behind @, or rows typed as `x:y, x:y`. */
function lookedUp(name: string, text: string, take: Line | Plane): Value<Curve | Grid> {
  const kinds = take.unit.map(unit => (unit === '1' ? 'share' : (kindOf(unit) ?? 'number'))),
    wanted = `--input ${name}=@FILE.csv with the columns ${columnsOf(take)}, or rows such as '${take.unit.map(u => (u === '1' ? '50 %' : `20 ${u}`)).join(':')}, …'`
  const datum = text.startsWith('@')
    ? datumOf(bytesOf(text.slice(1), 'a CSV table'), kinds)
    : curveOrMap(rowsOf(name, text, take, kinds, wanted))
  if (!datum.ok) throw new Refusal(`handbook: --input ${name}: found ${datum.found}; accepted ${datum.accepted}; ${wanted}`)
  const value = datum.datum as Curve | Grid
  return { path: name, label: take.label ?? name, symbol: take.symbol, unit: take.unit.join(' → '), value, text }
}
const columnsOf = (take: Line | Plane): string => take.unit.map(u => `[${u === '1' ? '%' : u}]`).join(', ')

/** Rows between semicolons, or between commas that are no decimal commas. */
function rowsOf(name: string, text: string, take: Line | Plane, kinds: readonly Kind[], wanted: string): readonly Float64Array[] {
  const rows = text.split(/;|,(?=[^:,;]*:)/).map(row => row.split(':').map(cell => cell.trim()))
  if (rows.some(r => r.length !== take.unit.length || r.includes('')))
    throw new Refusal(`handbook: --input ${name}: found «${text}»; ${wanted}`)
  return kinds.map((kind, i) => Float64Array.from(rows, r => inColumn(name, r[i] as string, kind, i === kinds.length - 1)))
}

/** One cell in SI. What is looked up may be a factor above 1, which a share may not. */
function inColumn(name: string, cell: string, kind: Kind, last: boolean): number {
  const read = readQuantity(cell, kind === 'share' && last && !cell.includes('%') ? 'number' : kind)
  if (read.ok) return read.quantity.value
  throw new Refusal(`handbook: --input ${name}: found ${read.problem.found}, ${read.problem.why}; accepted ${read.problem.accepted}`)
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
export function compute(f: AnyFormula, inputs: Record<string, AnyValue | readonly AnyValue[]>): readonly Figure[] {
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
