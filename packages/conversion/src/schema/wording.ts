import { KINDS } from '@ampwright/engine'
import { writeQuantity } from '../quantities/write.ts'
import type { ChoiceField, Group, Leaf, QuantityField } from './field.ts'

/** Least and most of a quantity, for a message. */
export const bounds = (f: QuantityField): string => {
  const written = (value: number): string => writeQuantity(value, f.kind, f.kind === 'length' ? { unit: 'm' } : {})
  return [f.least === undefined ? '' : `at least ${written(f.least)}`, f.most === undefined ? '' : `at most ${written(f.most)}`]
    .filter(Boolean)
    .join(', ')
}
/** What a field accepts, for a message. */
export const acceptedOf = (f: Leaf): string =>
  f.is === 'choice'
    ? (f as ChoiceField).oneOf.join(', ')
    : f.is === 'quantity'
      ? `a ${KINDS[f.kind].label} with its unit`
      : 'one value on the line'
/** Labels of things in a map name the thing: «mass (charger)». */
export const labelOf = (f: Leaf, at: { readonly entry?: string }): string => (at.entry === undefined ? f.label : `${f.label} (${at.entry})`)
/** More keys than this are no help in a message that guesses the right one already. */
const FEW = 12
/** Keys of a group, for a message about one it does not know. */
export const acceptedKeys = ({ label, fields }: Group, guessed: boolean): string => {
  const keys = Object.keys(fields)
  return guessed && keys.length > FEW ? `one of the ${keys.length} keys of ${label}, listed in docs/file-format.md` : keys.join(', ')
}
