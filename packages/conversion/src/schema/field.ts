import type { Curve, Kind, Measure, Source, Until } from '@ampwright/engine'
import { GREATEST } from './reach.ts'

/** A value a class table offers for a gap. It shows as assumed, with its spread, wherever it flows. */
export type Assumption = { readonly value: number; readonly half: number; readonly note: string; readonly source: Source }
/** A curve a class table offers for a gap; it carries no spread of its own. */
export type CurveAssumption = { readonly value: Curve; readonly note: string; readonly source: Source }
/** What an assumption may look at: the typed words beside and above it, read by path in the file. */
export type Near = {
  readonly word: (path: string) => string | undefined
  readonly value: (path: string) => number | undefined
  readonly at: string
}

type About = {
  readonly label: string
  /** One line for the file-format page and for editors. */
  readonly says?: string
  readonly until?: Until
  readonly measure?: Measure
}
export type QuantityField<K extends Kind = Kind> = About & {
  readonly is: 'quantity'
  readonly kind: K
  readonly symbol: string
  readonly least?: number
  readonly most?: number
  /** Where a class table may stand in while the value is missing. Never for a decision, a rating, a limit, or what a rule with harm S3 compares. */
  readonly assume?: (near: Near) => Assumption | undefined
}
export type ChoiceField<W extends string = string> = About & { readonly is: 'choice'; readonly oneOf: readonly W[] }
export type WordsField = About & { readonly is: 'words' }
/** A day; where it may be coarse, a month or a year will do. */
export type DateField = About & { readonly is: 'date'; readonly coarse?: boolean }
/** Names a thing in a map elsewhere in the file; `to` is the path of that map. Several maps may serve. */
export type ReferenceField = About & { readonly is: 'reference'; readonly to: readonly string[] }
export type PartField = About & {
  readonly is: 'part'
  readonly classes: readonly string[]
  /** Which keys beside it the part fills, and from which of its own; left out: every key of its group by the same name. */
  readonly fills?: Readonly<Record<string, string>>
}
export type TyreField = About & { readonly is: 'tyre' }
/** The name of a file beside the conversion; read by the look-up that is handed to `resolve`. */
export type FileField<D extends 'curve' | 'grid' | 'fingerprint' = 'curve' | 'grid' | 'fingerprint'> = About & {
  readonly is: 'file'
  readonly holds: D
  readonly format: string
  readonly unit: string
  readonly assume?: (near: Near) => CurveAssumption | undefined
  readonly named?: NamedBy
}
/** A key beside this one whose word names the file, or a cycle of the catalogue. */
export type NamedBy = { readonly by: string; readonly in: 'cycles' | 'attachments' }
export type Leaf = QuantityField | ChoiceField | WordsField | DateField | ReferenceField | PartField | TyreField | FileField

export interface Group<F extends Fields = Fields> {
  readonly is: 'group'
  readonly label: string
  readonly says?: string
  /** A part chosen one level up fills the fields of this group too. */
  readonly fromPartAbove?: boolean
  readonly fields: F
}
export interface MapOf<E extends Node = Node> {
  readonly is: 'map'
  readonly label: string
  readonly says?: string
  readonly entry: string
  readonly of: E
}
export interface Variants<V extends Readonly<Record<string, Group>> = Readonly<Record<string, Group>>> {
  readonly is: 'variants'
  readonly label: string
  readonly by: string
  readonly of: V
}
export type Node = Leaf | Group | MapOf | Variants
export interface Fields {
  readonly [key: string]: Node
}

const about = <T extends object>(more: T | undefined): T => more ?? ({} as T)

/** A quantity of a kind, in any unit of that kind; where nothing else is said, at most what nothing in a car on the road reaches. */
export const quantity = <K extends Kind>(
  kind: K,
  label: string,
  symbol: string,
  more?: Omit<QuantityField<K>, 'is' | 'kind' | 'label' | 'symbol'>,
): QuantityField<K> => {
  const most = more?.most ?? GREATEST[kind]
  return { is: 'quantity', kind, label, symbol, ...about(more), ...(most === undefined ? {} : { most }) }
}
/** One of a few words. */
export const choice = <const W extends string>(label: string, oneOf: readonly W[], more?: Omit<About, 'label'>): ChoiceField<W> => ({
  is: 'choice',
  label,
  oneOf,
  ...about(more),
})
export const words = (label: string, more?: Omit<About, 'label'>): WordsField => ({ is: 'words', label, ...about(more) })
export const date = (label: string, more?: Omit<About, 'label'> & { coarse?: boolean }): DateField => ({
  is: 'date',
  label,
  ...about(more),
})
export const reference = (label: string, ...to: string[]): ReferenceField => ({ is: 'reference', label, to })
export const part = (...classes: string[]): PartField => ({ is: 'part', label: 'part of the catalogue', classes })
/** A part that stands in a group with others of its kind, and fills only what it is named for. */
export const partFor = (label: string, fills: Readonly<Record<string, string>>, ...classes: string[]): PartField => ({
  is: 'part',
  label: `part of the catalogue: ${label}`,
  classes,
  fills,
})
export const tyre = (label: string, more?: Omit<About, 'label'>): TyreField => ({ is: 'tyre', label, ...about(more) })
export const file = <const D extends 'curve' | 'grid' | 'fingerprint'>(
  label: string,
  holds: D,
  format: string,
  unit: string,
  more?: Omit<About, 'label'> & Pick<FileField, 'assume' | 'named'>,
): FileField<D> => ({ is: 'file', label, holds, format, unit, ...about(more) })
export const group = <const F extends Fields>(
  label: string,
  fields: F,
  more: { says?: string; fromPartAbove?: boolean } = {},
): Group<F> => ({ is: 'group', label, fields, ...more })
export const mapOf = <const E extends Node>(label: string, entry: string, of: E, says?: string): MapOf<E> => ({
  is: 'map',
  label,
  entry,
  of,
  ...(says ? { says } : {}),
})
export const variants = <const V extends Readonly<Record<string, Group>>>(label: string, by: string, of: V): Variants<V> => ({
  is: 'variants',
  label,
  by,
  of,
})
