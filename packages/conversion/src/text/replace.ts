import { isList } from './change.ts'
import { afterDeeperComments, indentBefore, lineEndNear, nextLineAt, restOfLine } from './lines.ts'
import { CANNOT_BE_WRITTEN, type Refusal } from './refusal.ts'
import { spelledNoteLines, withoutLastLineEnds } from './spell.ts'
import { type Given, isNote, spelledBehindKey, spelledInline } from './spell-entry.ts'
import { type Splice, spliceOf } from './splice.ts'
import { type Entry, type Group, isEmptyValue, type Note } from './tree.ts'

/** Puts something else behind the colon of an entry that is not a group. Comments on its line stay. */
export function replacement(text: string, group: Group, entry: Entry, now: Given): Splice | Refusal {
  const { node } = entry
  if (node.kind === 'group')
    return { what: 'a group stands here', found: isList(now) ? 'a row' : 'a single value', accepted: 'an edit of one of its keys' }
  const [from, to] = [node.at.offset, node.at.end]
  if (node.kind === 'value' && node.source === now)
    return isEmptyValue(node) ? spliceOf(text, from, from, ' ""') : spliceOf(text, from, from, '')
  if (node.kind === 'note') return rewrittenNote(text, entry, node, now)
  const spelled = hasRoomForNote(text, group.flow, entry)
    ? spelledBehindKey(entry.key, now, indentBefore(text, entry.keyAt.offset), lineEndNear(text, from))
    : spelledInline(now, group.flow)
  if (spelled === undefined) return CANNOT_BE_WRITTEN
  return spliceOf(text, from, to, isEmptyValue(node) ? ` ${spelled}` : spelled)
}

/** A note takes the lines below its key, so nothing may stand behind the value, and no comment below that the note would swallow. */
function hasRoomForNote(text: string, flow: boolean, entry: Entry): boolean {
  if (flow || restOfLine(text, entry.node.at.end) !== '') return false
  const below = nextLineAt(text, entry.node.at.end)
  return afterDeeperComments(text, below, indentBefore(text, entry.keyAt.offset).length) === below
}

/** Keeps the line with the bar, and a comment on it, and changes only the lines of the note where the new text can be such lines. */
function rewrittenNote(text: string, entry: Entry, note: Note, now: Given): Splice | Refusal {
  const { offset, end } = note.at
  const header = restOfLine(text, offset)
  const lineEnd = lineEndNear(text, offset)
  const headerEnd = offset + header.length
  if (typeof now === 'string' && withoutLastLineEnds(now) === note.text && note.text !== '') return spliceOf(text, offset, offset, '')
  const body =
    typeof now === 'string' && (isNote(entry.key, now) || end > headerEnd) ? linesLike(text, entry, note, now, lineEnd) : undefined
  if (body !== undefined && end > headerEnd) return spliceOf(text, nextLineAt(text, offset), end, body)
  if (body !== undefined && hasRoomForNote(text, false, entry)) {
    return spliceOf(text, headerEnd, headerEnd, lineEnd + body)
  }
  const spelled = spelledInline(now, false)
  return spelled === undefined
    ? CANNOT_BE_WRITTEN
    : spliceOf(text, offset, Math.max(end, headerEnd), spelled + header.replace(/^\|[-+]?/, ''))
}

/** New lines for a note, as far in as its old first line. */
function linesLike(text: string, entry: Entry, note: Note, now: string, lineEnd: string): string | undefined {
  const old = /\n( +)\S/.exec(text.slice(note.at.offset, note.at.end))?.[1]
  return spelledNoteLines(now, old ?? `${indentBefore(text, entry.keyAt.offset)}  `, lineEnd)
}
