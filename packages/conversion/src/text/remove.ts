import { afterDeeperComments, indentBefore, lineStartAt, nextLineAt } from './lines.ts'
import { type Splice, spliceOf } from './splice.ts'
import type { Entry, Group } from './tree.ts'

/**
 * Takes an entry away. Between braces: with the comma that set it apart. In lines: the whole lines, with the comments behind it and those
 * below it that are indented deeper; comments above it stay. A group that loses its last entry keeps its key, with nothing behind it.
 */
export function removal(text: string, group: Group, entry: Entry): Splice {
  if (group.flow) return fromBraces(text, group, entry)
  const indent = indentBefore(text, entry.keyAt.offset).length
  const from = entry.keyAt.offset - indent
  return spliceOf(text, Math.max(from, lineStartAt(text, from)), afterDeeperComments(text, nextLineAt(text, entry.node.at.end), indent), '')
}

function fromBraces(text: string, group: Group, entry: Entry): Splice {
  const entries = [...group.entries.values()]
  const place = entries.indexOf(entry)
  const next = entries[place + 1]
  const previous = entries[place - 1]
  if (next !== undefined) return spliceOf(text, entry.keyAt.offset, next.keyAt.offset, '')
  return spliceOf(text, previous?.node.at.end ?? entry.keyAt.offset, entry.node.at.end, '')
}
