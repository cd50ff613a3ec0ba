import { afterDeeperComments, indentBefore, lineEndNear, nextLineAt } from './lines.ts'
import { CANNOT_BE_WRITTEN, type Refusal } from './refusal.ts'
import { type Given, spelledFlowEntry, spelledLines } from './spell-entry.ts'
import { type Splice, spliceOf } from './splice.ts'
import { type Entry, type Group, isEmptyValue } from './tree.ts'

/**
 * Adds an entry (and the groups on the way to it) at the end of a group. `owner` is the entry the group belongs to; where that has
 * nothing behind its colon yet, `group` is the one it stands in.
 */
export function insertion(text: string, group: Group, owner: Entry | undefined, keys: readonly string[], now: Given): Splice | Refusal {
  if (owner !== undefined && isEmptyValue(owner.node))
    return group.flow ? openedBraces(text, owner, keys, now) : below(text, owner, keys, now)
  if (group.flow) return betweenBraces(text, group, keys, now)
  const last = [...group.entries.values()].at(-1)
  return last === undefined ? atEnd(text, keys, now) : after(text, last, keys, now)
}

function betweenBraces(text: string, group: Group, keys: readonly string[], now: Given): Splice | Refusal {
  const entry = spelledFlowEntry(keys, now)
  if (entry === undefined) return CANNOT_BE_WRITTEN
  const last = [...group.entries.values()].at(-1)
  if (last === undefined) return spliceOf(text, group.at.offset + 1, group.at.end - 1, ` ${entry} `)
  return spliceOf(text, last.node.at.end, last.node.at.end, `, ${entry}`)
}

function openedBraces(text: string, owner: Entry, keys: readonly string[], now: Given): Splice | Refusal {
  const entry = spelledFlowEntry(keys, now)
  return entry === undefined ? CANNOT_BE_WRITTEN : spliceOf(text, owner.node.at.offset, owner.node.at.offset, ` { ${entry} }`)
}

function below(text: string, owner: Entry, keys: readonly string[], now: Given): Splice | Refusal {
  const indent = indentBefore(text, owner.keyAt.offset)
  return newLines(text, owner.node.at.offset, indent.length, keys, now, `${indent}  `)
}

function after(text: string, last: Entry, keys: readonly string[], now: Given): Splice | Refusal {
  const indent = indentBefore(text, last.keyAt.offset)
  return newLines(text, last.node.at.end, indent.length, keys, now, indent)
}

const atEnd = (text: string, keys: readonly string[], now: Given): Splice | Refusal => newLines(text, text.length, 0, keys, now, '')

/** Whole new lines behind the line of `from` and the comments that belong to it. */
function newLines(text: string, from: number, deeperThan: number, keys: readonly string[], now: Given, indent: string): Splice | Refusal {
  const lineEnd = lineEndNear(text, from)
  const lines = spelledLines(keys, now, indent, lineEnd)
  if (lines === undefined) return CANNOT_BE_WRITTEN
  const at = from === text.length ? from : afterDeeperComments(text, nextLineAt(text, from), deeperThan)
  const isOnFreshLine = at === 0 || text[at - 1] === '\n' || text.charCodeAt(at - 1) === 0xfeff
  return spliceOf(text, at, at, `${isOnFreshLine ? '' : lineEnd}${lines}${lineEnd}`)
}
