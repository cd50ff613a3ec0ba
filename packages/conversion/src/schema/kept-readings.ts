import type { Fact } from '@ampwright/engine'
import { readQuantity } from '../quantities/read.ts'
import type { TextNode } from '../text/tree.ts'
import type { Leaf, QuantityField } from './field.ts'

/** Facts that a piece of text gave: after an edit the sections it did not touch give the same ones. */
export const understood = new WeakMap<
  TextNode,
  { readonly schema: Leaf; readonly path: string; readonly entry: string | undefined; readonly fact: Fact<never> }
>()
/** Kinds of field whose fact depends on its own text alone. */
export const ALONE: ReadonlySet<Leaf['is']> = new Set(['quantity', 'choice', 'date', 'words'])

/** Texts of quantities already read: after an edit all but a few are as before. Emptied when full, so a long session does not grow. */
const read = new Map<string, ReturnType<typeof readQuantity>>()
const MOST_READ = 20_000
export function quantityOf(text: string, kind: QuantityField['kind']): ReturnType<typeof readQuantity> {
  const key = `${kind} ${text}`,
    before = read.get(key)
  if (before) return before
  const now = readQuantity(text, kind)
  if (read.size >= MOST_READ) read.clear()
  read.set(key, now)
  return now
}
