import { fieldAt } from '@ampwright/conversion'
import { headed } from '../shown.ts'

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
