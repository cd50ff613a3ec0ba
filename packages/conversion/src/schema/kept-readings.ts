import type { Fact, Gap } from '@ampwright/engine'
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

/**
 * What no text gave, by field and path: gaps, class values, figures of a part. The same again is the same object, so that nothing that read it looks twice. Emptied
 * when full.
 */
const untyped = new Map<Leaf, Map<string, Fact<never> | Gap>>()
let count = 0
export function sameAgain<T extends Fact<never> | Gap>(schema: Leaf, next: T): T {
  let paths = untyped.get(schema)
  const before = paths?.get(next.path)
  if (before && same(before, next)) return before as T
  if (count >= MOST_READ) {
    untyped.clear()
    count = 0
    paths = undefined
  }
  if (!paths) {
    paths = new Map()
    untyped.set(schema, paths)
  }
  paths.set(next.path, next)
  count++
  return next
}
/** Alike key by key; what lies deeper is written down once in schema or class table, so that it is the same or differs. An origin is made anew. */
function same(a: object, b: object): boolean {
  const keys = Object.keys(b)
  if (Object.keys(a).length !== keys.length) return false
  for (const key of keys) {
    const x = (a as Record<string, unknown>)[key],
      y = (b as Record<string, unknown>)[key]
    if (Object.is(x, y)) continue
    if (key !== 'origin' || typeof x !== 'object' || typeof y !== 'object' || !x || !y || !same(x, y)) return false
  }
  return true
}
