import { entryAt, type Fields, type Node, pathText, SECTIONS, type TextNode, type TextTree } from '@ampwright/conversion'
import { headed } from '../shown.ts'
import { type FieldView, fieldView, type Known } from './field-view.ts'

/** A part of the file as a screen lays it out. */
export type SheetNode = SheetField | SheetGroup | SheetMap
export type SheetField = { readonly is: 'field'; readonly field: FieldView }
export type SheetGroup = {
  readonly is: 'group'
  readonly path: string
  readonly key: string
  readonly label: string
  readonly says?: string
  readonly children: readonly SheetNode[]
  /** Of several kinds: the key that names the kind, and the kinds there are. */
  readonly by?: string
  readonly kinds?: readonly string[]
}
export type SheetMap = {
  readonly is: 'map'
  readonly path: string
  readonly key: string
  readonly label: string
  readonly says?: string
  /** What one entry is called. */
  readonly entry: string
  readonly rows: readonly SheetNode[]
  /** What an entry is made of: one value, or named ones; the keys of a new one. */
  readonly kinds?: readonly string[]
  readonly by?: string
  readonly single: boolean
}

/** A section of the file with every field the schema knows, typed or not. */
export const sheet = (section: keyof typeof SECTIONS, tree: TextTree | undefined, k: Known): SheetNode =>
  laidOut(SECTIONS[section], [section], tree === undefined ? undefined : entryAt(tree, [section])?.node, k)

const below = (node: TextNode | undefined, key: string): TextNode | undefined =>
  node?.kind === 'group' ? node.entries.get(key)?.node : undefined

function laidOut(node: Node, path: readonly string[], text: TextNode | undefined, k: Known): SheetNode {
  const about = { path: pathText(path), key: path.at(-1) as string, label: headed('label' in node ? node.label : '') }
  if (node.is === 'group') return { is: 'group', ...about, ...says(node), children: fields(node.fields, path, text, k) }
  if (node.is === 'variants') {
    const kinds = Object.keys(node.of),
      kind = below(text, node.by),
      chosen = kind?.kind === 'value' ? node.of[kind.source] : undefined
    return {
      is: 'group',
      ...about,
      by: node.by,
      kinds,
      children: [kindField(node.by, kinds, path, text, k), ...(chosen ? fields(chosen.fields, path, text, k) : [])],
    }
  }
  if (node.is === 'map') {
    const keys = text?.kind === 'group' ? [...text.entries.keys()].filter(key => key !== 'note') : [],
      of = node.of
    return {
      is: 'map',
      ...about,
      ...says(node),
      entry: node.entry,
      rows: keys.map(key => laidOut(of, [...path, key], below(text, key), k)),
      single: of.is !== 'group' && of.is !== 'variants' && of.is !== 'map',
      ...(of.is === 'variants' ? { kinds: Object.keys(of.of), by: of.by } : {}),
    }
  }
  return { is: 'field', field: fieldView(node, path, text, k) }
}
const says = (node: { readonly says?: string }): { says?: string } => (node.says === undefined ? {} : { says: node.says })

const fields = (of: Fields, path: readonly string[], text: TextNode | undefined, k: Known): readonly SheetNode[] =>
  Object.entries(of).map(([key, n]) => laidOut(n, [...path, key], below(text, key), k))

const kindField = (by: string, kinds: readonly string[], path: readonly string[], text: TextNode | undefined, k: Known): SheetNode => ({
  is: 'field',
  field: fieldView({ is: 'choice', label: 'kind', oneOf: kinds }, [...path, by], below(text, by), k),
})

/** Every field of a sheet, in its order. */
export const fieldsOf = (node: SheetNode): readonly FieldView[] =>
  node.is === 'field' ? [node.field] : (node.is === 'group' ? node.children : node.rows).flatMap(fieldsOf)
