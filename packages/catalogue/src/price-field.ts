import type { Part, PartField } from './part.ts'

/**
 * The price of a part as a field of the conversion file: the middle of its band, and half the band as spread. Nothing for a part without a price, or
 * with one that is not the price of a piece.
 */
export function priceField({ price }: Part): PartField | undefined {
  if (!price || price.per !== undefined) return undefined
  const half = (price.high - price.low) / 2
  const text = half > 0 ? `${(price.low + price.high) / 2} ± ${half} €` : `${price.low} €`
  return { text, mark: 'common practice' }
}

/** The fields a part fills in a conversion file, its price among them. */
export function filling(part: Part): Part['fields'] {
  const price = priceField(part)
  return price ? { ...part.fields, price } : part.fields
}
