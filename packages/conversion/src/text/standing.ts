import { isList, type Now } from './change.ts'
import { isRow, type Meaning, meaningOf, sameMeaning } from './expected.ts'
import { type Path, pathKeys } from './path.ts'
import type { SoundReading } from './read.ts'
import { withoutLastLineEnds } from './spell.ts'
import { entryAt, type TextNode } from './tree.ts'

/** What stands at a place of a file: a value, a row, the text of a whole group as it is written there, or null for nothing. */
export type Standing = string | readonly string[] | null

/** What stands at a path. Reads back as `was` in `stands`. A path that cannot be read leads to nothing. */
export const standingAt = (reading: SoundReading, path: Path): Standing => standingOf(reading.text, nodeAt(reading, path))

/** The same for a node of the tree. */
export function standingOf(text: string, node: TextNode | undefined): Standing {
  if (node === undefined) return null
  if (node.kind === 'value') return node.source
  if (node.kind === 'note') return node.text
  if (node.kind === 'list') return node.items.map(item => item.source)
  return node.entries.size === 0 ? '' : text.slice(node.at.offset, node.at.end)
}

/**
 * Whether at a path stands what somebody saw there: nothing, a value, a row, a group as flat named values or by its own text. An empty
 * value or group is nothing given yet, and so the same as nothing.
 */
export function stands(reading: SoundReading, path: Path, was: Now): boolean {
  const node = nodeAt(reading, path)
  const now = standingOf(reading.text, node)
  if (was === null || was === '') return now === null || now === ''
  if (now === null || node === undefined) return false
  if (typeof was === 'string') return typeof now === 'string' && withoutLastLineEnds(now) === withoutLastLineEnds(was)
  if (isList(was)) return sameMeaning(meaningOf(node), was)
  return sameEntries(meaningOf(node), was)
}

/** Whether at a path already stands what an edit wants there. */
export function holdsAlready(reading: SoundReading, path: Path, now: Now): boolean {
  const node = nodeAt(reading, path)
  if (now === null || node === undefined) return now === null && node === undefined
  const meaning = meaningOf(node)
  if (typeof now === 'string') return node.kind !== 'group' && sameMeaning(meaning, now)
  return isList(now) ? sameMeaning(meaning, now) : node.kind === 'group' && sameEntries(meaning, now)
}

const nodeAt = ({ tree }: SoundReading, path: Path): TextNode | undefined => {
  const keys = pathKeys(path)
  return keys === undefined ? undefined : entryAt(tree, keys)?.node
}

function sameEntries(meaning: Meaning, row: Readonly<Record<string, string>>): boolean {
  const wanted = Object.entries(row)
  if (typeof meaning === 'string' || isRow(meaning)) return meaning === '' && wanted.length === 0
  return meaning.size === wanted.length && wanted.every(([key, value]) => meaning.get(key) === value)
}
