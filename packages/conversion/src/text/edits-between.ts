import { type Now } from './change.ts'
import { meaningOf, sameMeaning } from './expected.ts'
import { type Path, pathText } from './path.ts'
import type { SoundReading } from './read.ts'
import { type Standing, standingOf } from './standing.ts'
import { type Group, isEmptyValue, type TextNode } from './tree.ts'

/** An edit together with what whoever makes it saw at that place. */
export type SeenEdit = { readonly path: Path; readonly now: Now; readonly was: Now }
export type Difference = { readonly path: string; readonly now: Now; readonly was: Standing }

/**
 * The edits that turn what one text says into what another says, each with what stood there. Comments, layout and the order of keys are
 * no difference; a key with nothing behind it is nothing.
 */
export function editsBetween(before: SoundReading, after: SoundReading): readonly Difference[] {
  const out: Difference[] = []
  inGroups(before.text, before.tree, after.tree, [], out)
  return out
}

function inGroups(text: string, a: Group | undefined, b: Group, path: readonly string[], out: Difference[]): void {
  const keys = new Set([...(a?.entries.keys() ?? []), ...b.entries.keys()])
  for (const key of keys) atPlace(text, a?.entries.get(key)?.node, b.entries.get(key)?.node, [...path, key], out)
}

function atPlace(text: string, a: TextNode | undefined, given: TextNode | undefined, path: readonly string[], out: Difference[]): void {
  const b = given && isEmptyValue(given) ? undefined : given
  const isNothing = a === undefined || isEmptyValue(a)
  const say = (now: Now, was: Standing): void => void out.push({ path: pathText(path), now, was })
  if (b === undefined) {
    if (!isNothing) say(null, standingOf(text, a))
    return
  }
  if (a && sameMeaning(meaningOf(a), meaningOf(b)) && (a.kind === 'group') === (b.kind === 'group')) return
  if (b.kind === 'group' && b.entries.size > 0 && (isNothing || a.kind === 'group')) {
    const row = isNothing ? rowOf(b) : undefined
    if (row) {
      if (Object.keys(row).length) say(row, standingOf(text, a))
    } else inGroups(text, a?.kind === 'group' ? a : undefined, b, path, out)
    return
  }
  if (a !== undefined && (a.kind === 'group' || b.kind === 'group')) {
    say(null, standingOf(text, a))
    if (b.kind === 'group' && b.entries.size > 0) inGroups(text, undefined, b, path, out)
    else say(nowOf(b), null)
    return
  }
  say(nowOf(b), standingOf(text, a))
}

/** Named values in one line as one edit, so that they are written in one line again; a key with nothing behind it is nothing. */
function rowOf(group: Group): Readonly<Record<string, string>> | undefined {
  if (!group.flow) return undefined
  const row: [string, string][] = []
  for (const [key, { node }] of group.entries) {
    if (node.kind !== 'value') return undefined
    if (!isEmptyValue(node)) row.push([key, node.source])
  }
  return Object.fromEntries(row)
}

function nowOf(node: TextNode): Now {
  if (node.kind === 'value') return node.source
  if (node.kind === 'note') return node.text
  return node.kind === 'list' ? node.items.map(item => item.source) : {}
}
