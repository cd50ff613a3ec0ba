import type { Edit } from '@ampwright/conversion'
import type { PricePlace } from './price-place.ts'
import type { ShelfLine } from './shelf-view.ts'

type Priced = Pick<ShelfLine, 'key' | 'priceTyped' | 'priceIs' | 'pricedOn' | 'from'>

/** The price of a piece as a value for a conversion, with how it is known; undefined where the shelf does not say it. */
export function priceText({ key, priceTyped, priceIs, pricedOn, from }: Priced): string | undefined {
  if (priceTyped === undefined || priceIs === undefined) return priceTyped
  const day = pricedOn === undefined ? '' : ` ${pricedOn}`,
    who = from === undefined ? '' : `, ${from.slice(0, 60)}`
  return `${priceTyped} (${priceIs === 'paid' ? `measured, paid${day}` : `datasheet, quoted${day}`}${who}, shelf ${key.slice(0, 40)})`
}

/** Edits that choose a part, with the price of the piece beside them: it takes the place of whatever they do to that value. */
export const withPrice = (edits: readonly Edit[], at: Pick<PricePlace, 'path'>, price: string): readonly Edit[] => [
  ...edits.filter(e => e.path !== at.path),
  { path: at.path, now: price },
]
