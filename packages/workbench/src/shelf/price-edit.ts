import { type Edit, fieldAt } from '@ampwright/conversion'
import { headed } from '../shown.ts'
import type { ShelfLine } from './shelf-view.ts'

/** Where the file keeps the price of what stands at a place for a part. */
export type PricePlace = { readonly path: string; readonly label: string; readonly says?: string }

/** The price that belongs to a place for a part: in its group, for a whole drive unit that of its motor; undefined where the file has none. */
export function pricePlace(path: string): PricePlace | undefined {
  const group = path.slice(0, path.lastIndexOf('.') + 1)
  // A part that fills only what it is named for is one of several in its group: a price there would not be its own.
  if (path !== `${group}part`) return undefined
  for (const at of [`${group}price`, `${group}motor.price`]) {
    const field = fieldAt(at)
    if (field?.is === 'quantity' && field.kind === 'money')
      return { path: at, label: headed(field.label), ...(field.says === undefined ? {} : { says: field.says }) }
  }
  return undefined
}

type Priced = Pick<ShelfLine, 'key' | 'priceTyped' | 'priceIs' | 'pricedOn' | 'from'>

/** The price of a piece as a value for a conversion, with how it is known; undefined where the shelf does not say it. */
export function priceText({ key, priceTyped, priceIs, pricedOn, from }: Priced): string | undefined {
  if (priceTyped === undefined || priceIs === undefined) return priceTyped
  const day = pricedOn === undefined ? '' : ` ${pricedOn}`,
    who = from === undefined ? '' : `, ${from.slice(0, 60)}`
  return `${priceTyped} (${priceIs === 'paid' ? `measured, paid${day}` : `datasheet, quoted${day}`}${who}, shelf ${key.slice(0, 40)})`
}

/** Edits that choose a part, with the price of the piece beside them: it takes the place of whatever they do to that value. */
export const withPrice = (edits: readonly Edit[], at: PricePlace, price: string): readonly Edit[] => [
  ...edits.filter(e => e.path !== at.path),
  { path: at.path, now: price },
]
