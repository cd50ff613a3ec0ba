import type { Group } from './field.ts'

type Filling = ReadonlyMap<string, { readonly by: string; readonly from: string }>
const NOTHING: Filling = new Map()
/** Groups of the schema are few and met at every reading. */
const fillings = new WeakMap<Group, Filling>()
/** The keys of a group that parts named under another key than `part` fill. */
export function filledIn(schema: Group): Filling {
  const before = fillings.get(schema)
  if (before) return before
  const all = Object.entries(schema.fields).flatMap(([by, f]) =>
    f.is === 'part' && f.fills ? Object.entries(f.fills).map(([key, from]) => [key, { by, from }] as const) : [],
  )
  const now = all.length ? new Map(all) : NOTHING
  fillings.set(schema, now)
  return now
}
