/** Where something stands: line and column from 1, and the stretch `[offset, end)` of the text. */
export type Position = { readonly line: number; readonly column: number; readonly offset: number; readonly end: number }

export type Entry = { readonly key: string; readonly keyAt: Position; readonly node: TextNode }

/** Named things: in lines below their key, or (`flow`) in one line between braces. */
export type Group = { readonly kind: 'group'; readonly entries: ReadonlyMap<string, Entry>; readonly at: Position; readonly flow: boolean }

/** A single value as typed, without quotes and escapes; `key:` with nothing behind it is an unquoted empty value just after the colon. */
export type Value = { readonly kind: 'value'; readonly source: string; readonly quoted: boolean; readonly at: Position }

/** Free text under `note: |`; empty lines at its end carry no meaning and are left out. */
export type Note = { readonly kind: 'note'; readonly text: string; readonly at: Position }

/** A row of plain values in one line between brackets. */
export type List = { readonly kind: 'list'; readonly items: readonly Value[]; readonly at: Position }

export type TextNode = Group | Value | Note | List
export type TextTree = Group

export const isEmptyValue = (node: TextNode): boolean => node.kind === 'value' && node.source === '' && !node.quoted

/** The entry at a path, or undefined where the path leads nowhere. */
export function entryAt(tree: TextTree, path: readonly string[]): Entry | undefined {
  let entry: Entry | undefined
  let node: TextNode = tree
  for (const key of path) {
    if (node.kind !== 'group') return undefined
    entry = node.entries.get(key)
    if (entry === undefined) return undefined
    node = entry.node
  }
  return entry
}

/** Where each entry was last moved to: after most edits a section stands where it stood before. */
const lastMoved = new WeakMap<Entry, { readonly lines: number; readonly characters: number; readonly entry: Entry }>()

/** The same entry, standing `lines` and `characters` further down. */
export function movedEntry(entry: Entry, lines: number, characters: number): Entry {
  if (lines === 0 && characters === 0) return entry
  const last = lastMoved.get(entry)
  if (last?.lines === lines && last.characters === characters) return last.entry
  const moved = moving(entry, lines, characters)
  lastMoved.set(entry, { lines, characters, entry: moved })
  return moved
}

function moving(entry: Entry, lines: number, characters: number): Entry {
  const move = (at: Position): Position => ({
    line: at.line + lines,
    column: at.column,
    offset: at.offset + characters,
    end: at.end + characters,
  })
  const moveNode = (node: TextNode): TextNode => {
    if (node.kind === 'group')
      return { ...node, entries: new Map([...node.entries].map(([key, e]) => [key, moveEntry(e)])), at: move(node.at) }
    if (node.kind === 'list') return { ...node, items: node.items.map(item => ({ ...item, at: move(item.at) })), at: move(node.at) }
    return { ...node, at: move(node.at) }
  }
  const moveEntry = (e: Entry): Entry => ({ key: e.key, keyAt: move(e.keyAt), node: moveNode(e.node) })
  return moveEntry(entry)
}
