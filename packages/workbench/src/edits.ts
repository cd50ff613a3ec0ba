import {
  type Edit,
  isSound,
  type Now,
  pathKeys,
  pathText,
  readText,
  type SeenEdit,
  settingText,
  standingAt,
  type TextGroup,
  type TextNode,
} from '@ampwright/conversion'
import type { Remedy } from '@ampwright/engine'

/** The edits a remedy stands for. */
export const remedyEdits = (r: Remedy & { do: 'set' }): readonly Edit[] => r.sets.map(s => ({ path: s.path, now: settingText(s.to) }))

/** A path as one word. */
export const pathOf = (path: Edit['path']): string => (typeof path === 'string' ? path : pathText(path))

/** What stood there before, key by key where a whole group was given; what an edit made on its way goes with it. */
export function undo(text: string, edits: readonly Edit[]): readonly { readonly path: string; readonly now: string | null }[] {
  const { tree } = readText(text)
  const back = edits.flatMap(({ path, now }) => {
    const keys = pathKeys(path) ?? []
    let node: TextNode | undefined = tree
    for (const [depth, key] of keys.entries()) {
      const group: TextGroup | undefined = node?.kind === 'group' ? node : undefined
      // A group that was not there is taken away whole: without its entries an empty key would stay.
      if (group && !group.entries.has(key)) return [{ path: pathText(keys.slice(0, depth + 1)), now: null }]
      node = group?.entries.get(key)?.node
      // A key with nothing behind it is given back as that.
      if (node?.kind === 'value' && depth < keys.length - 1) return [{ path: pathText(keys.slice(0, depth + 2)), now: null }]
    }
    const was = (n: TextNode | undefined): string | null => (n?.kind === 'value' ? n.source : null)
    if (node?.kind !== 'group') return [{ path: pathOf(path), now: was(node) }]
    const { entries } = node
    return [...new Set([...entries.keys(), ...keysOf(now)])].map(key => ({
      path: pathText([...keys, key]),
      now: was(entries.get(key)?.node),
    }))
  })
  return [...new Map(back.map(e => [e.path, e])).values()]
}
const keysOf = (now: Now): readonly string[] => (now === null || typeof now === 'string' || Array.isArray(now) ? [] : Object.keys(now))

/**
 * Edits with what stands in a text at each place: what the store wants to know to join them with what others change. Taking a batch back is
 * `seenIn(after, undo(before, edits))`.
 */
export function seenIn(text: string, edits: readonly Edit[]): readonly SeenEdit[] {
  const reading = readText(text)
  return edits.map(({ path, now }) => ({ path, now, was: isSound(reading) ? standingAt(reading, path) : null }))
}
