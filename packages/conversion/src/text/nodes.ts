import { isAlias, isMap, isScalar, isSeq, type ParsedNode, Scalar, type YAMLMap, type YAMLSeq } from 'yaml'
import { asFound } from '../issue.ts'
import { colonOf, type Item, reportMissingColon, reportTightComma } from './braces.ts'
import { FORBIDDEN_KEYS, HIDDEN } from './limits.ts'
import type { Source } from './source.ts'
import type { Entry, Group, List, Note, Position, TextNode, Value } from './tree.ts'

/**
 * A group of the tree from the library's map. What does not belong to the small YAML is reported and left out, so that the rest can be
 * checked in the same run; a key given twice keeps its first value, a value split by a comma none.
 */
export function groupOf(source: Source, map: YAMLMap.Parsed, path: readonly string[]): Group {
  const flow = map.flow === true
  const [from, to] = map.range
  if (flow) needOneLine(source, from, to, path)
  const entries = new Map<string, Entry>()
  const items: readonly Item[] = map.items
  let end = from
  let whole: Item | undefined
  let bare: Item | undefined
  for (const [i, item] of items.entries()) {
    const colon = colonOf(item)
    if (colon === undefined) {
      bare ??= item
      if (i + 1 < items.length && colonOf(items[i + 1]) === undefined) continue
      const split = reportMissingColon(source, whole, bare, item, path)
      if (split !== undefined) entries.delete(split)
      bare = undefined
      continue
    }
    whole = item
    const entry = entryOf(source, item, colon, path)
    if (entry === undefined) continue
    end = Math.max(end, entry.node.at.end)
    const twin = entries.get(entry.key)
    if (twin === undefined) entries.set(entry.key, entry)
    else source.say(entry.keyAt.offset, [...path, entry.key], { ...TWICE, found: asFound(entry.key), twin: twin.keyAt })
  }
  return { kind: 'group', entries, at: source.position(from, flow ? to : end), flow }
}

export const TWICE = { what: 'a key is given twice in one group', accepted: 'each key once' }

function entryOf(source: Source, item: Item, colon: number, path: readonly string[]): Entry | undefined {
  const { key } = item
  const [from, to] = key.range
  if (!isScalar(key) || from === to) {
    const found = asFound(source.text.slice(from, colon + 1))
    source.say(from, path, { what: 'a colon without a plain key in front of it', found, accepted: '`key: value`' })
    return undefined
  }
  const name = String(key.value)
  const node = nodeOf(source, item.value, colon, [...path, name])
  if (name === '<<') {
    source.say(from, path, { what: 'merge keys are not read', found: asFound(name), accepted: 'each value where it belongs' })
  } else if (FORBIDDEN_KEYS.has(name) || name === '' || HIDDEN.test(name)) {
    source.say(from, path, { what: 'this word cannot be a key', found: asFound(name), accepted: 'another name' })
  } else if (node !== undefined) {
    return { key: name, keyAt: source.position(from, to), node }
  }
  return undefined
}

function nodeOf(source: Source, node: ParsedNode | null, colon: number, path: readonly string[]): TextNode | undefined {
  if (isMap(node)) return groupOf(source, node as YAMLMap.Parsed, path)
  if (isSeq(node)) return listOf(source, node as YAMLSeq.Parsed, path)
  if (!isScalar(node)) return undefined
  const scalar = node as Scalar.Parsed
  const isBlock = scalar.type === Scalar.BLOCK_LITERAL || scalar.type === Scalar.BLOCK_FOLDED
  return isBlock ? noteOf(source, scalar, path) : valueOf(source, scalar, path, source.position(colon + 1, colon + 1))
}

/** `empty` is the place of a value that is not there. */
function valueOf(source: Source, scalar: Scalar.Parsed, path: readonly string[], empty: Position): Value | undefined {
  const [from, to] = scalar.range
  if (from === to) return { kind: 'value', source: '', quoted: false, at: empty }
  const quoted = scalar.type === Scalar.QUOTE_DOUBLE || scalar.type === Scalar.QUOTE_SINGLE
  const text = String(scalar.value)
  if (!source.isOneLine(from, to)) {
    const said = {
      what: 'a value runs on into the next line',
      found: asFound(text),
      accepted: 'one line; longer text under `note: |`',
      echo: true,
    }
    source.say(from, path, said)
    return undefined
  }
  if (quoted && HIDDEN.test(text)) {
    const what = 'an escape stands for a character a value may not hold'
    source.say(from, path, { what, found: asFound(text), accepted: 'printable characters' })
    return undefined
  }
  return { kind: 'value', source: text, quoted, at: source.position(from, to) }
}

function noteOf(source: Source, scalar: Scalar.Parsed, path: readonly string[]): Note | undefined {
  const [from, to] = scalar.range
  const written = source.text.slice(from, to)
  const newline = written.indexOf('\n')
  const header = (newline < 0 ? written : written.slice(0, newline)).trimEnd()
  if (path.at(-1) !== 'note') {
    const what = 'text over several lines may stand only under the key `note`'
    source.say(from, path, { what, found: asFound(header), accepted: 'a value in one line' })
    return undefined
  }
  if (!/^\|[-+]?(?:[ \t]+#.*)?$/.test(header)) {
    const accepted = '`note: |`, with the text in the lines below'
    source.say(from, path, { what: 'a note is started by a single bar', found: asFound(header), accepted })
    return undefined
  }
  return { kind: 'note', text: String(scalar.value).trimEnd(), at: source.position(from, from + written.trimEnd().length) }
}

function listOf(source: Source, seq: YAMLSeq.Parsed, path: readonly string[]): List | undefined {
  const [from, to] = seq.range
  if (seq.flow !== true) return undefined
  needOneLine(source, from, to, path)
  const items: Value[] = []
  for (const item of seq.items) {
    if (isScalar(item)) {
      const scalar = item as Scalar.Parsed
      const value = valueOf(source, scalar, path, source.position(scalar.range[0], scalar.range[0]))
      if (value) items.push(value)
    } else if (!isAlias(item)) {
      const found = asFound(source.text.slice(item.range[0], item.range[1]))
      source.say(item.range[0], path, { what: 'a row holds only plain values', found, accepted: '`[a, b]`' })
    }
  }
  reportTightComma(source, items, path)
  return { kind: 'list', items, at: source.position(from, to) }
}

function needOneLine(source: Source, from: number, to: number, path: readonly string[]): void {
  if (source.isOneLine(from, to)) return
  source.say(from, path, { what: 'a bracket is not closed on its line', found: 'several lines', accepted: 'one line', echo: true })
}
