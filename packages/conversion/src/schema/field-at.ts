import { SECTIONS } from '../sections/sections.ts'
import { pathKeys, pathText } from '../text/path.ts'
import type { Group, Leaf, Node } from './field.ts'

const nodesAt = (path: string, kindAt?: KindAt): readonly Node[] => {
  const keys = pathKeys(path.replace(/#.*/, '')),
    whole: Group = { is: 'group', label: 'conversion', fields: SECTIONS }
  return keys ? at([whole], keys, [], kindAt) : []
}

/** Whether a group of named values stands at a path of the file, as the schema has it. */
export const isGroupAt = (path: string): boolean => nodesAt(path).some(n => n.is === 'group' || n.is === 'map' || n.is === 'variants')

/** The word that says which kind stands at a place of the file, where it is known there. */
export type KindAt = (path: string) => string | undefined

/** The schema's field for a path of the file, or undefined where the schema knows none. Through variants every kind is tried, unless `kindAt` knows which it is. */
export function fieldAt(path: string, kindAt?: KindAt): Leaf | undefined {
  return nodesAt(path, kindAt).find((n): n is Leaf => n.is !== 'group' && n.is !== 'map' && n.is !== 'variants')
}

function at(nodes: readonly Node[], [key, ...rest]: readonly string[], above: readonly string[], kindAt?: KindAt): readonly Node[] {
  if (key === undefined) return nodes
  const next = nodes.flatMap((n): Node[] => {
    if (n.is === 'group') return n.fields[key] ? [n.fields[key]] : []
    if (n.is === 'map') return [n.of]
    if (n.is === 'variants') {
      const known = n.of[kindAt?.(pathText([...above, n.by])) ?? '']
      return (known ? [known] : Object.values(n.of)).flatMap(g => (g.fields[key] ? [g.fields[key]] : []))
    }
    return []
  })
  return at(next, rest, [...above, key], kindAt)
}
