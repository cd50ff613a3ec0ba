import { part } from '@ampwright/catalogue'
import { holderOf, type ShelfCar, type ShelfPiece, type Workshop, writeQuantity } from '@ampwright/conversion'
import { classLabel } from '../parts/places.ts'
import { headed } from '../shown.ts'

/** Whom a piece is kept for: the car by its name, the conversion where it is there; `missing` where it is known to be gone. */
export type KeptFor = { readonly car: string; readonly id?: string; readonly missing: boolean }
/** A piece of the shelf as people read it; what the file does not say is absent. */
export type ShelfLine = Omit<ShelfPiece, 'price' | 'reserved' | 'what'> & {
  /** How the catalogue describes it, else its own words. */
  readonly label: string
  readonly class?: string
  /** Its record is not in the catalogue. */
  readonly unknown: boolean
  /** Price of one piece for people, and as a file spells it. */
  readonly price?: string
  readonly priceTyped?: string
  /** The quote held until a day that has passed. */
  readonly lapsed: boolean
  readonly reserved?: KeptFor
}
export type ShelfView = {
  readonly name: string
  readonly pieces: readonly ShelfLine[]
  readonly classes: readonly { readonly class: string; readonly label: string; readonly count: number }[]
}
export type ShelfAsked = {
  /** The cars there are; left out where nobody knows them, as at the command line. */
  readonly cars?: readonly ShelfCar[]
  /** Today as yyyy-mm-dd; left out, no quote is said to have lapsed. */
  readonly today?: string
}

/** Pieces without a record, as a class to look for. */
export const OWN_WORDS = 'none'

/** The shelf of a workshop file: each piece with what it is called, what it costs, where it lies and whom it is kept for. */
export function shelfView(w: Workshop, asked: ShelfAsked = {}): ShelfView {
  const pieces = w.shelf.map(p => lineOf(p, asked)),
    count = (c: string): number => pieces.filter(p => (p.class ?? OWN_WORDS) === c).length
  const classes = [...new Set(pieces.map(p => p.class ?? OWN_WORDS))].map(c => ({
    class: c,
    label: c === OWN_WORDS ? 'Without a record' : headed(classLabel(c)),
    count: count(c),
  }))
  return { name: w.name ?? '', pieces, classes }
}

function lineOf({ price, reserved, what, ...p }: ShelfPiece, { cars, today }: ShelfAsked): ShelfLine {
  const record = p.part === undefined ? undefined : part(p.part)
  return {
    ...p,
    label: headed(record?.label ?? what ?? p.part ?? p.key),
    ...(record ? { class: record.class } : {}),
    unknown: p.part !== undefined && record === undefined,
    ...(price === undefined
      ? {}
      : {
          price: writeQuantity(price.value, 'money', price.half === undefined ? {} : { half: price.half }),
          priceTyped: price.typed,
        }),
    lapsed: today !== undefined && p.priceIs !== 'paid' && p.quoteUntil !== undefined && p.quoteUntil < today,
    ...(reserved === undefined ? {} : { reserved: keptFor(reserved, cars) }),
  }
}

function keptFor(reserved: NonNullable<ShelfPiece['reserved']>, cars: readonly ShelfCar[] | undefined): KeptFor {
  const { name, car } = holderOf(reserved, cars ?? [])
  if (car) return { car: name, id: car.id, missing: false }
  return { car: name, ...(reserved.conversion === undefined ? {} : { id: reserved.conversion }), missing: cars !== undefined }
}
