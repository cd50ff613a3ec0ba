import type { System } from '@ampwright/conversion'
import {
  type AnyValue,
  type Assessment,
  assumptions,
  type Datum,
  type Fact,
  type Field,
  isFigure,
  isGap,
  type Model,
  nameOf,
} from '@ampwright/engine'
import { shown } from '../shown.ts'

/** A value of the car by the name of its figure or fact, in the reader's units. No number stands in a letter otherwise. */
export type Said = { readonly name: string; readonly text: string }
/** Words that are not the letter's own: a name given in the file, the text of a rule set. */
export type Quoted = { readonly quoted: string }
export type Piece = string | Said | Quoted
export type Pieces = readonly Piece[]
/** Something the letter would say and nobody has said yet; `path` is where it is filled in. */
export type Open = { readonly open: string; readonly path?: string }

type Worded<K extends string> = { readonly is: K; readonly pieces: Pieces }
export type LetterLine =
  | Worded<'text'>
  | Worded<'item'>
  | Worded<'question'>
  | Worded<'caution'>
  /** One thing by the columns of its part; a cell nobody can fill yet, or that has no sense there, is absent. */
  | { readonly is: 'row'; readonly label: Pieces; readonly cells: readonly (Piece | undefined)[] }
  | { readonly is: 'rule'; readonly asks: Quoted; readonly says: Quoted; readonly source: Quoted; readonly stands: readonly Pieces[] }
  | ({ readonly is: 'open' } & Open)
export type LetterPart = { readonly heading: string; readonly columns?: readonly string[]; readonly lines: readonly LetterLine[] }

/** What a letter is made from. */
export type Matter = { readonly a: Assessment; readonly m: Model; readonly system: System }

export const isOpen = (x: object | string): x is Open => typeof x === 'object' && 'open' in x
const saidOf = (v: AnyValue, { a, system }: Matter): Said => {
  const half = isFigure(v) ? a.halves.get(v.id) : (v as Fact).half,
    assumed = !isFigure(v) && (v as Fact).origin?.how === 'assumed'
  return { name: nameOf(v), text: `${shown(v, system, half)}${assumed ? ' (assumed)' : ''}` }
}
/** A value met in a finding. */
export const valueSaid = saidOf

/** A figure, or what to call it while it cannot be worked out. */
export function figure(k: Matter, id: string, label: string): Said | Open {
  const f = k.a.figures.get(id)
  return f === undefined || !Number.isFinite(f.value) ? { open: label } : saidOf(f, k)
}

/** A fact of the file, or the gap it leaves; `label` where the field's own would say too little in a letter. */
export const fact = <V extends Datum>(k: Matter, field: Field<V>, label?: string): Said | Open =>
  isGap(field) ? { open: label ?? field.label, path: field.path } : saidOf(field as AnyValue, k)

/** A fact only some cars have to state: it is missed only where something asks for it. */
export const factWhereAsked = <V extends Datum>(k: Matter, field: Field<V>): Said | Open | undefined => {
  const said = fact(k, field)
  return isOpen(said) && !k.a.gaps.some(g => g.path === said.path) ? undefined : said
}

/** A fact only some cars have: not missed where it is not stated. */
export const factWhereKnown = <V extends Datum>(k: Matter, field: Field<V>): Said | undefined => {
  const said = fact(k, field)
  return isOpen(said) ? undefined : said
}

export const text = (...pieces: Pieces): LetterLine => ({ is: 'text', pieces })
export const question = (...pieces: Pieces): LetterLine => ({ is: 'question', pieces })
export const open = (o: Open): LetterLine => ({ is: 'open', ...o })
export const quoted = (words: string): Quoted => ({ quoted: words })

/** A row with what is known of it, and an open line for each of its cells nobody knows; no row where nothing is known. */
export function row(label: Piece | Pieces, ...cells: readonly (Said | Open | Quoted | undefined)[]): readonly LetterLine[] {
  const known = cells.map(c => (c === undefined || isOpen(c) ? undefined : c)),
    unknown = new Map(cells.flatMap(c => (c !== undefined && isOpen(c) ? [[c.open, open(c)] as const] : []))),
    missing = [...unknown.values()]
  return known.some(c => c !== undefined)
    ? [{ is: 'row', label: typeof label === 'object' && Array.isArray(label) ? label : [label as Piece], cells: known }, ...missing]
    : missing
}
/** A row that is left out where it has nothing to say and nobody asks. */
export const rowIf = (label: Piece | Pieces, cell: Said | Open | undefined): readonly LetterLine[] =>
  cell === undefined ? [] : row(label, cell)

/** The sentence of a finding with its slots as values. */
export function piecesOf(says: string, slots: Readonly<Record<string, AnyValue | undefined>>, item: string | undefined, k: Matter): Pieces {
  return says
    .split(/(\{[\w-]+\})/)
    .filter(Boolean)
    .map((piece): Piece => {
      const name = /^\{(.+)\}$/.exec(piece)?.[1]
      if (name === undefined) return piece
      const value = slots[name]
      return name === 'item'
        ? quoted(item ?? '')
        : value === undefined
          ? 'not known yet'
          : isRuleText(value)
            ? quoted(String(value.value))
            : saidOf(value, k)
    })
}
/** Words of a rule set reach a sentence as a value without unit. */
const isRuleText = (v: AnyValue): boolean => typeof v.value === 'string' && nameOf(v).startsWith('rule-set.')

/** Figures among some lines that were worked out from values nobody has measured. */
export function assumedNote(lines: readonly LetterLine[], k: Matter): readonly LetterLine[] {
  const names = lines.flatMap(l =>
    l.is === 'row' ? l.cells.flatMap(c => (c !== undefined && typeof c === 'object' && 'name' in c ? [c.name] : [])) : [],
  )
  const on = [...new Set(names)].flatMap(n => k.a.figures.get(n) ?? []).filter(f => assumptions(f).length > 0)
  return on.length === 0
    ? []
    : [
        text(
          'Worked out from values nobody has measured yet, among others: ',
          ...on.flatMap((f, i): Pieces => [i === 0 ? '' : '; ', quoted(f.label)]),
          '.',
        ),
      ]
}
