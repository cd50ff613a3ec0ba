import { type Change, isList, isRename } from './change.ts'
import { pathKeys } from './path.ts'
import { withoutLastLineEnds } from './spell.ts'
import type { TextNode } from './tree.ts'

/** What a text means, without its places: a value, a row, or named things. A group with nothing in it is an empty value. */
export type Meaning = string | readonly string[] | ReadonlyMap<string, Meaning>

export function meaningOf(node: TextNode): Meaning {
  if (node.kind === 'value') return node.source
  if (node.kind === 'note') return node.text
  if (node.kind === 'list') return node.items.map(item => item.source)
  return node.entries.size === 0 ? '' : new Map([...node.entries].map(([key, entry]) => [key, meaningOf(entry.node)]))
}

/** What a text must mean after a change, worked out on the meaning alone, without a look at the text. */
export function expectedMeaning(before: Meaning, change: Change): Meaning {
  return changed(before, pathKeys(change.path) ?? [], change)
}

function changed(before: Meaning | undefined, [key, ...rest]: readonly string[], change: Change): Meaning {
  if (key === undefined) return newMeaning(change)
  const entries = before instanceof Map ? [...before] : []
  const place = entries.findIndex(([name]) => name === key)
  const own = entries[place]?.[1]
  const isHere = rest.length === 0
  if (isHere && isRename(change)) entries.splice(place, 1, [change.key, own ?? ''])
  else if (isHere && !isRename(change) && change.now === null) entries.splice(place, 1)
  else if (place < 0) entries.push([key, changed(undefined, rest, change)])
  else entries[place] = [key, changed(own, rest, change)]
  return entries.length === 0 ? '' : new Map(entries)
}

function newMeaning(change: Change): Meaning {
  if (isRename(change) || change.now === null) return ''
  const { now } = change
  if (typeof now === 'string' || isList(now)) return now
  const entries = Object.entries(now)
  return entries.length === 0 ? '' : new Map(entries)
}

/** Whether two texts mean the same; entries in the same order, empty lines at the end of a value aside. */
export function sameMeaning(a: Meaning, b: Meaning): boolean {
  if (typeof a === 'string' || typeof b === 'string') {
    return typeof a === 'string' && typeof b === 'string' && withoutLastLineEnds(a) === withoutLastLineEnds(b)
  }
  if (isRow(a) || isRow(b)) return isRow(a) && isRow(b) && a.length === b.length && a.every((value, i) => value === b[i])
  const others = [...b]
  return a.size === b.size && [...a].every(([key, value], i) => others[i]?.[0] === key && sameMeaning(value, others[i]?.[1] ?? ''))
}

export const isRow = (meaning: Meaning): meaning is readonly string[] => Array.isArray(meaning)
