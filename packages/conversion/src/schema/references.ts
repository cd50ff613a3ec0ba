import { nearest } from '../nearest.ts'
import type { Group as TextGroup, TextNode } from '../text/tree.ts'

/** Where a name stands that points at an entry of one of these maps, elsewhere in the file. */
export type Naming = { readonly path: string; readonly to: readonly string[]; readonly name: string }
export type Reference = Naming & { readonly node: TextNode }
/** One that points at nothing. */
export type Lost = { readonly of: Reference; readonly names: readonly string[]; readonly near: string | undefined }

/** References that point at nothing. In a section that was not read whole (`torn`) the name may stand after all: those are let be. */
export function lostAmong(references: readonly Reference[], root: TextGroup | undefined, torn: ReadonlySet<string>): readonly Lost[] {
  return references.flatMap(of => {
    if (of.to.some(map => torn.has(map.split('.', 1)[0] as string))) return []
    const names = of.to.flatMap(map => namesIn(root, map))
    return names.includes(of.name) ? [] : [{ of, names, near: nearest(of.name, names) }]
  })
}

function namesIn(root: TextGroup | undefined, map: string): readonly string[] {
  let n: TextNode | undefined = root
  for (const key of map.split('.')) n = n?.kind === 'group' ? n.entries.get(key)?.node : undefined
  return n?.kind === 'group' ? [...n.entries.keys()] : []
}
