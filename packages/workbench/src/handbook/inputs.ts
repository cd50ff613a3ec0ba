import { readQuantity } from '@ampwright/conversion'
import {
  type AnyFormula,
  type AnyValue,
  type Curve,
  type Grid,
  type Kind,
  kindOf,
  type Line,
  type One,
  type Plane,
  type Take,
  type Value,
} from '@ampwright/engine'
import { curveOrMap, datumOf } from '../file-datum.ts'

/** What is wrong with one typed input: where, what was found, what is accepted. */
export type InputWrong = {
  /** Name of the input; of one value of a list, its name and place. */
  readonly at: string
  readonly about: 'word' | 'rows' | 'table' | 'quantity' | 'number'
  readonly found: string
  readonly why?: string
  readonly accepted: string
}
export type TypedInput = AnyValue | readonly Value[]
export type InputRead = { readonly ok: true; readonly input: TypedInput } | { readonly ok: false; readonly wrong: InputWrong }
type OneRead = { readonly ok: true; readonly input: Value } | { readonly ok: false; readonly wrong: InputWrong }

/** What a formula takes, by name. */
export const takesOf = (f: AnyFormula): readonly (readonly [name: string, take: Take])[] =>
  Object.entries(f.card.takes as Record<string, Take>)

/** Formulas that run a whole drive or charge take more than anybody types. */
export const isPlan = (f: AnyFormula): boolean => takesOf(f).length >= 20

/** The kind a number of a card is typed and shown as; undefined where its unit belongs to none. */
export const kindOfOne = (one: One): Kind | undefined => one.shows ?? kindOf(one.unit)

/** Kinds of the columns of a curve or a map. */
export const columnKinds = (take: Line | Plane): readonly Kind[] =>
  take.unit.map(unit => (unit === '1' ? 'share' : (kindOf(unit) ?? 'number')))

/**
 * One typed input as a value in SI: a number in any unit of its kind, a list between semicolons or lines, a curve or a map in rows or as a CSV table, a
 * word of a choice. `table` is a CSV file where one was handed over instead of a text.
 */
export function readInput(name: string, take: Take, text: string, table?: Uint8Array): InputRead {
  if ('oneOf' in take) return word(name, take, text)
  if ('curve' in take || 'grid' in take) return lookedUp(name, take, text, table)
  return 'many' in take ? list(name, take, text) : typed(name, text, take)
}

function word(name: string, take: Take & { oneOf: readonly string[] }, text: string): InputRead {
  if (!take.oneOf.includes(text))
    return { ok: false, wrong: { at: name, about: 'word', found: `«${text}»`, accepted: take.oneOf.join(', ') } }
  return { ok: true, input: { path: name, label: take.label ?? name, symbol: take.symbol, unit: '', value: text } as AnyValue }
}

/** A comma between values is followed by a space: a decimal comma never is. */
function list(name: string, take: One, text: string): InputRead {
  const values: Value[] = []
  for (const [i, v] of text
    .trim()
    .split(/[;\n]|,\s+/)
    .entries()) {
    const read = typed(`${name} ${i + 1}`, v.trim(), take)
    if (!read.ok) return read
    values.push(read.input)
  }
  return { ok: true, input: values }
}

/** A curve or a map: a CSV table, or rows typed as `x:y, x:y`. */
function lookedUp(name: string, take: Line | Plane, text: string, table?: Uint8Array): InputRead {
  const kinds = columnKinds(take),
    pasted = table ?? (text.includes('\n') && !text.includes(':') ? new TextEncoder().encode(text) : undefined)
  if (pasted === undefined) {
    const rows = rowsOf(name, text, take, kinds)
    return 'wrong' in rows ? { ok: false, wrong: rows.wrong } : asInput(name, take, text, curveOrMap(rows.columns))
  }
  return asInput(name, take, text, datumOf(pasted, kinds))
}
function asInput(name: string, take: Line | Plane, text: string, datum: ReturnType<typeof curveOrMap>): InputRead {
  if (!datum.ok) return { ok: false, wrong: { at: name, about: 'table', found: datum.found, accepted: datum.accepted } }
  const value = datum.datum as Curve | Grid
  return {
    ok: true,
    input: { path: name, label: take.label ?? name, symbol: take.symbol, unit: take.unit.join(' → '), value, text } as AnyValue,
  }
}

/** How a row of a curve or a map is written: `20 °C:3.5 V`. */
export const rowExample = (take: Line | Plane): string => take.unit.map(u => (u === '1' ? '50 %' : `20 ${u}`)).join(':')

/** Rows between semicolons or lines, or between commas that are no decimal commas. */
function rowsOf(
  name: string,
  text: string,
  take: Line | Plane,
  kinds: readonly Kind[],
): { readonly columns: readonly Float64Array[] } | { readonly wrong: InputWrong } {
  const rows = text
    .trim()
    .split(/[;\n]|,(?=[^:,;]*:)/)
    .map(row => row.split(':').map(cell => cell.trim()))
  if (rows.some(r => r.length !== take.unit.length || r.includes('')))
    return { wrong: { at: name, about: 'rows', found: `«${text}»`, accepted: `rows such as ${rowExample(take)}` } }
  const columns = kinds.map(() => new Float64Array(rows.length))
  for (const [i, row] of rows.entries())
    for (const [j, kind] of kinds.entries()) {
      const cell = inColumn(name, row[j] as string, kind, j === kinds.length - 1)
      if (typeof cell !== 'number') return { wrong: cell }
      ;(columns[j] as Float64Array)[i] = cell
    }
  return { columns }
}

/** One cell in SI. What is looked up may be a factor above 1, which a share may not. */
function inColumn(at: string, cell: string, kind: Kind, last: boolean): number | InputWrong {
  const read = readQuantity(cell, kind === 'share' && last && !cell.includes('%') ? 'number' : kind)
  return read.ok ? read.quantity.value : quantityWrong(at, read.problem)
}
const quantityWrong = (at: string, p: { found: string; why: string; accepted: string }): InputWrong => ({
  at,
  about: 'quantity',
  found: p.found,
  why: p.why,
  accepted: p.accepted,
})

const BARE = /^[-−+]?\d+(?:[.,]\d+)?(?:e[-+]?\d+)?$/i

/** A number: with a unit of its kind, or bare where its unit belongs to no kind; there the unit of the card may stand behind it. */
function typed(name: string, text: string, one: One): OneRead {
  const kind = kindOfOne(one),
    alone = kind === undefined && text.endsWith(one.unit) ? text.slice(0, -one.unit.length).trim() : text
  const about = { path: name, label: one.label ?? name, symbol: one.symbol, unit: one.unit, ...(one.shows ? { shows: one.shows } : {}) }
  if (BARE.test(alone) && (one.unit === '1' || !kind))
    return { ok: true, input: { ...about, value: Number(alone.replace(',', '.').replace('−', '-')) } }
  if (!kind) return { ok: false, wrong: { at: name, about: 'number', found: `«${text}»`, accepted: `a bare number in ${one.unit}` } }
  const read = readQuantity(text, kind)
  if (!read.ok) return { ok: false, wrong: quantityWrong(name, read.problem) }
  const { value, half } = read.quantity
  return { ok: true, input: { ...about, value, text, ...(half === undefined ? {} : { half }) } }
}
