import { asFound, type Issue } from '../issue.ts'
import { type Change, isRename, type Rename } from './change.ts'
import { insertion } from './insert.ts'
import { pathKeys, pathText } from './path.ts'
import { isRefusal, type Refusal } from './refusal.ts'
import { removal } from './remove.ts'
import { replacement } from './replace.ts'
import { isKey } from './spell.ts'
import { type Splice, spliceOf } from './splice.ts'
import { type Entry, type Group, isEmptyValue, type TextTree } from './tree.ts'

export type Compiled = { readonly ok: true; readonly splice: Splice } | { readonly ok: false; readonly problem: Issue }

/** How far a path leads: the innermost group reached, the entry it belongs to, the entry at the path's end or the keys that are missing. */
type Reached = {
  readonly group: Group
  readonly owner: Entry | undefined
  readonly entry: Entry | undefined
  readonly missing: readonly string[]
}

/** The splice a change of a text comes to, not yet tried. */
export function compiled(text: string, tree: TextTree, change: Change): Compiled {
  const keys = pathKeys(change.path)
  if (keys === undefined) {
    const said = { what: 'this is not a path', found: asFound(String(change.path)), accepted: 'keys joined by dots' }
    return { ok: false, problem: { line: 1, column: 1, path: '', ...said } }
  }
  const reached = walked(tree, keys)
  const outcome = outcomeOf(text, reached, change)
  if (!isRefusal(outcome)) return { ok: true, splice: outcome }
  const { line, column } = (reached.entry ?? reached.owner)?.keyAt ?? tree.at
  return { ok: false, problem: { line, column, path: pathText(keys), ...outcome } }
}

function walked(tree: TextTree, keys: readonly string[]): Reached {
  let group: Group = tree
  let owner: Entry | undefined
  for (const [i, key] of keys.entries()) {
    const entry = group.entries.get(key)
    if (entry === undefined) return { group, owner, entry, missing: keys.slice(i) }
    if (i === keys.length - 1) return { group, owner, entry, missing: [] }
    owner = entry
    if (entry.node.kind !== 'group') return { group, owner, entry: undefined, missing: keys.slice(i + 1) }
    group = entry.node
  }
  return { group, owner, entry: undefined, missing: [] }
}

function outcomeOf(text: string, { group, owner, entry, missing }: Reached, change: Change): Splice | Refusal {
  if (entry === undefined) {
    if (isRename(change) || change.now === null) return { what: 'there is nothing of this name', found: '', accepted: '' }
    if (owner !== undefined && owner.node.kind !== 'group' && !isEmptyValue(owner.node)) {
      return { what: 'a single value stands where a group is needed', found: asFound(owner.key), accepted: 'a group' }
    }
    return insertion(text, group, owner, missing, change.now)
  }
  if (!isRename(change)) return change.now === null ? removal(text, group, entry) : replacement(text, group, entry, change.now)
  return renaming(text, group, entry, change)
}

function renaming(text: string, group: Group, entry: Entry, change: Rename): Splice | Refusal {
  if (change.key !== entry.key && group.entries.has(change.key)) {
    return { what: 'this name is taken', found: asFound(change.key), accepted: 'a name not yet used in this group' }
  }
  if (!isKey(change.key))
    return { what: 'this cannot be a key', found: asFound(change.key), accepted: 'letters, figures, dashes, points, spaces inside' }
  if (entry.node.kind === 'note' && change.key !== 'note') {
    return { what: 'text over several lines may stand only under the key `note`', found: asFound(change.key), accepted: '`note`' }
  }
  return spliceOf(text, entry.keyAt.offset, entry.keyAt.end, change.key)
}
