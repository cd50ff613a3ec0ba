import { part, partClasses } from '@ampwright/catalogue'
import type { SheetNode } from '../desk/sheet.ts'

/** A place in a conversion that takes a part of the catalogue. */
export type PartPlace = {
  /** Path of the field that names the part. */
  readonly path: string
  /** What the place is, and whose: `Motor`, `main`. */
  readonly label: string
  readonly of: string
  /** What stands there now; `known` is how the catalogue describes it, absent where it has none of that name. */
  readonly now?: { readonly id: string; readonly known?: string }
  /** How many records fit, and the class that is shown first. */
  readonly fitting: number
  readonly first?: string
}

/** Every place of a section that takes a part, with what stands there, in the order of the file. */
export const placesIn = (sheet: SheetNode): readonly PartPlace[] => walk(sheet, 'label' in sheet ? sheet.label : '', '')

function walk(node: SheetNode, label: string, of: string): readonly PartPlace[] {
  if (node.is === 'field') {
    const { field } = node
    if (field.is !== 'part') return []
    // A part that fills only what it is named for says so in its own label.
    const own = field.label.split(': ')[1],
      known = field.text === undefined ? undefined : part(field.text)?.label
    const now = field.text === undefined ? {} : { now: { id: field.text, ...(known === undefined ? {} : { known }) } },
      first = part(field.text ?? '')?.class ?? part(field.oneOf?.[0] ?? '')?.class
    return [
      {
        path: field.path,
        label: own === undefined ? label : headed(own),
        of,
        fitting: field.oneOf?.length ?? 0,
        ...now,
        ...(first === undefined ? {} : { first }),
      },
    ]
  }
  if (node.is === 'group') return node.children.flatMap(c => walk(c, c.is === 'field' ? label : c.label || label, of))
  return node.rows.flatMap(r =>
    r.is === 'field' ? walk(r, node.label, of) : walk(r, headed(node.entry), of === '' ? r.key : `${of}, ${r.key}`),
  )
}
const headed = (text: string): string => text.replace(/^\p{Ll}/u, c => c.toUpperCase())

/** What a class of parts is called. */
export const classLabel = (name: string): string => partClasses.find(c => c.class === name)?.label ?? name
