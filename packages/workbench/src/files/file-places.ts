import { type Edit, entryAt, type Node, pathKeys, pathText, SECTIONS, type TextNode, type TextTree } from '@ampwright/conversion'
import { SCAN } from '../file-datum.ts'
import { headed } from '../shown.ts'

/** A place in the file that names a file beside the conversion. */
export type FilePlace = {
  readonly path: string
  /** Where that is, said in words: `drive › unit main › motor: drag when unpowered`. */
  readonly label: string
  readonly formats: readonly string[]
  /** The file named there now. */
  readonly now?: string
  /** Another word beside it that says the same in another way: it goes when the file is named. */
  readonly instead?: string
}

/** Every place of a conversion that takes a file: those of the schema, for each entry the file has. */
export function filePlaces(tree: TextTree | undefined): readonly FilePlace[] {
  const out = new Map<string, FilePlace>()
  const walk = (node: Node, path: readonly string[], trail: readonly string[], text: TextNode | undefined): void => {
    if (node.is === 'group') for (const [key, n] of Object.entries(node.fields)) walk(n, [...path, key], crumb(trail, n), below(text, key))
    else if (node.is === 'map') {
      const keys = text?.kind === 'group' ? [...text.entries.keys()].filter(k => k !== 'note') : []
      for (const key of keys) walk(node.of, [...path, key], [...trail.slice(0, -1), `${node.entry} ${key}`], below(text, key))
    } else if (node.is === 'variants') {
      const kind = below(text, node.by),
        chosen = kind?.kind === 'value' ? node.of[kind.source] : undefined
      if (chosen) for (const [key, n] of Object.entries(chosen.fields)) walk(n, [...path, key], crumb(trail, n), below(text, key))
    } else if (node.is === 'file') keep(node, path, trail)
  }
  const keep = (node: Extract<Node, { is: 'file' }>, path: readonly string[], trail: readonly string[]): void => {
    const beside = node.named?.in === 'attachments',
      at = beside ? [...path.slice(0, -1), node.named!.by] : path,
      key = pathText(at),
      before = out.get(key),
      now = tree && entryAt(tree, at)?.node
    const other = node.named && !beside ? pathText([...path.slice(0, -1), node.named.by]) : undefined
    out.set(key, {
      path: key,
      label: `${trail.slice(0, -1).join(' › ')}: ${beside ? node.named!.by : node.label}`,
      formats: [...(before?.formats ?? []), node.format],
      ...(now?.kind === 'value' && now.source !== '' ? { now: now.source } : {}),
      ...(other && tree && entryAt(tree, pathKeys(other) ?? []) ? { instead: other } : {}),
    })
  }
  for (const [key, node] of Object.entries(SECTIONS))
    walk(node, [key], [headed('label' in node ? node.label : key)], tree && entryAt(tree, [key])?.node)
  return [...out.values()]
}
const below = (node: TextNode | undefined, key: string): TextNode | undefined =>
  node?.kind === 'group' ? node.entries.get(key)?.node : undefined
/** A variant of a thing is told by the thing alone. */
const crumb = (trail: readonly string[], n: Node): readonly string[] => [...trail, 'label' in n ? n.label : '']

/** The edits that put a file to use at a place. */
export const placeEdits = (place: FilePlace, name: string): readonly Edit[] => [
  { path: place.path, now: name },
  ...(place.instead === undefined ? [] : [{ path: place.instead, now: null }]),
]

/** The edits of a new scan of the car; nothing for a file that is no mesh. */
export const scanEdits = (scan: string, name: string, formats: readonly string[]): readonly Edit[] =>
  formats.includes(SCAN) ? [{ path: pathText(['fit', 'scans', scan, 'file']), now: name }] : []

/** The edits of a new trip along a track, or by a speed trace; nothing for a file that is neither. */
export function tripEdits(trip: string, name: string, formats: readonly string[]): readonly Edit[] {
  const path = pathText(['trips', 'named', trip])
  if (formats.includes('GPX profile')) return [{ path, now: { kind: 'route', track: name } }]
  return formats.includes('speed trace CSV') ? [{ path, now: { kind: 'cycle', trace: name } }] : []
}
