import { fieldAt } from '@ampwright/conversion'
import type { Fact } from '@ampwright/engine'
import type { Desk } from '../desk/desk.ts'
import { shown } from '../shown.ts'

/** A value that stands at a place now, under the key a record has for it, and how it is known. */
export type Standing = Readonly<Record<string, { readonly text: string; readonly how: string }>>

/** Of a part that stands among others in its group: the keys it fills, and from which of its own. */
export function namedFills(path: string): Readonly<Record<string, string>> | undefined {
  const place = fieldAt(path)
  return place?.is === 'part' ? place.fills : undefined
}

/** What stands at a place of the file, by the keys of part records: what a record is held against. */
export function standing(desk: Desk, path: string): Standing {
  const group = path.slice(0, path.lastIndexOf('.') + 1),
    named = namedFills(path),
    out: Record<string, { readonly text: string; readonly how: string }> = {}
  const below = (desk.current().facts as readonly Fact[]).filter(f => f.path.startsWith(group) && f.path !== path && !f.path.includes('#'))
  // What stands in the group itself goes before what stands deeper: the mass of the unit before that of its motor.
  for (const f of below.toSorted((a, b) => depth(a) - depth(b))) {
    const key = f.path.slice(f.path.lastIndexOf('.') + 1),
      of = named ? named[key] : key
    if (of !== undefined && !(of in out)) out[of] = { text: shown(f, desk.system, f.half), how: howOf(f) }
  }
  return out
}
const depth = (f: Fact): number => f.path.split('.').length
const howOf = ({ origin }: Fact): string => (origin === undefined ? 'typed' : origin.how)
