import { type Fact, type Field, isGap } from '@ampwright/engine'
import type { Resolved } from '../schema/resolved.ts'
import { standingOf } from '../text/standing.ts'
import { isEmptyValue, type TextNode } from '../text/tree.ts'
import type { WORKSHOP_SECTIONS } from './sections.ts'

/** For which car a piece is kept: what the file calls the car, and the conversion it is where that is known. */
export type Reserved = { readonly car?: string; readonly conversion?: string }
/** A price of one piece in €, ± as half-width, and as it is typed without the bracket. */
export type ShelfPrice = { readonly value: number; readonly half?: number; readonly typed: string }

/** One piece on the shelf of a workshop; what the file does not say is absent. */
export type ShelfPiece = {
  readonly key: string
  readonly part?: string
  readonly what?: string
  readonly serial?: string
  /** How many lie there together; one where nothing is said. */
  readonly pieces: number
  readonly price?: ShelfPrice
  readonly priceIs?: 'paid' | 'quoted'
  readonly pricedOn?: string
  readonly from?: string
  readonly quoteUntil?: string
  readonly place?: string
  readonly condition?: string
  readonly reserved?: Reserved
  readonly note?: string
  /** The values as they stand in the text, by key, and the whole piece: what an edit says it saw. */
  readonly typed: Readonly<Record<string, string>>
  readonly stands: string
}

type Read = Resolved<typeof WORKSHOP_SECTIONS.shelf>[string]

/** A piece as the file says it: gaps are left out. */
export function pieceOf(key: string, read: Read, node: TextNode | undefined, text: string): ShelfPiece {
  const typed = typedIn(node, text),
    { reserved } = read,
    kept = { ...said('car', reserved.car), ...said('conversion', reserved.conversion) }
  return {
    key,
    ...said('part', read.part),
    ...said('what', read.what),
    ...said('serial', read.serial),
    pieces: isGap(read.pieces) ? 1 : (read.pieces as Fact).value,
    ...(isGap(read.price) ? {} : { price: priceOf(read.price as Fact) }),
    ...said('priceIs', read.priceIs),
    ...said('pricedOn', read.pricedOn),
    ...said('from', read.from),
    ...said('quoteUntil', read.quoteUntil),
    ...said('place', read.place),
    ...said('condition', read.condition),
    ...(Object.keys(kept).length ? { reserved: kept } : {}),
    ...(typed['note'] === undefined ? {} : { note: typed['note'] }),
    typed,
    stands: told(text, node),
  }
}

const said = <K extends string, W extends string>(key: K, field: Field<W>): { readonly [k in K]?: W } =>
  (isGap(field) ? {} : { [key]: (field as Fact<W>).value }) as { readonly [k in K]?: W }

const priceOf = ({ value, half, text = '' }: Fact): ShelfPrice => ({
  value,
  ...(half === undefined ? {} : { half }),
  typed: text.replace(/\s*\(.*$/s, ''),
})

function typedIn(node: TextNode | undefined, text: string): Readonly<Record<string, string>> {
  if (node?.kind !== 'group') return {}
  return Object.fromEntries([...node.entries].flatMap(([key, { node: n }]) => (isEmptyValue(n) ? [] : [[key, told(text, n)]])))
}

/** What stands there, in one text. */
function told(text: string, node: TextNode | undefined): string {
  const standing = standingOf(text, node)
  return typeof standing === 'string' ? standing : (standing ?? []).join(', ')
}
