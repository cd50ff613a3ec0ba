import { part, partClasses } from '@ampwright/catalogue'
import { fieldsOf, type SheetNode } from '../desk/sheet.ts'

/** A place in a conversion that takes a part of the catalogue. */
export type PartPlace = {
  /** Path of the field that names the part. */
  readonly path: string
  /** What the place is, and whose: `Motor`, `main`. */
  readonly label: string
  readonly of: string
  /** What stands there now; `known` is how the catalogue describes it, absent where it has none of that name. */
  readonly now?: { readonly id: string; readonly known?: string }
  /** How many values stand there typed. */
  readonly typed: number
  /** How many records fit, and the class that is shown first. */
  readonly fitting: number
  readonly first?: string
}

/** Every place of a section that takes a part, with what stands there, in the order of the file. */
export const placesIn = (sheet: SheetNode): readonly PartPlace[] => walk(sheet, 'label' in sheet ? sheet.label : '', '')

function walk(node: SheetNode, label: string, of: string, within: SheetNode = node): readonly PartPlace[] {
  if (node.is === 'field') {
    const { field } = node
    if (field.is !== 'part') return []
    // A part that fills only what it is named for says so in its own label.
    const own = field.label.split(': ')[1],
      known = field.text === undefined ? undefined : part(field.text)?.label
    const now = field.text === undefined ? {} : { now: { id: field.text, ...(known === undefined ? {} : { known }) } },
      first = part(field.text ?? '')?.class ?? nearestClass(of, field.oneOf ?? [])
    return [
      {
        path: field.path,
        label: own === undefined ? label : headed(own),
        of,
        typed: own === undefined ? fieldsOf(within).filter(f => f.text !== undefined && f.path !== field.path).length : 0,
        fitting: field.oneOf?.length ?? 0,
        ...now,
        ...(first === undefined ? {} : { first }),
      },
    ]
  }
  if (node.is === 'group') return node.children.flatMap(c => walk(c, c.is === 'field' ? label : c.label || label, of, node))
  return node.rows.flatMap(r =>
    r.is === 'field' ? walk(r, node.label, of) : walk(r, headed(node.entry), of === '' ? r.key : `${of}, ${r.key}`),
  )
}
const headed = (text: string): string => text.replace(/^\p{Ll}/u, c => c.toUpperCase())

/** The class that shares most words with the name of the thing (`cabin-heater` with `air-heater`), else the first that fits. */
function nearestClass(name: string, fitting: readonly string[]): string | undefined {
  const words = new Set(name.split(/[-,\s]+/)),
    shared = (c: string): number => c.split('-').filter(w => words.has(w)).length
  return [...new Set(fitting.flatMap(id => part(id)?.class ?? []))].reduce<string | undefined>(
    (best, c) => (best === undefined || shared(c) > shared(best) ? c : best),
    undefined,
  )
}

/** What a class of parts is called. */
export const classLabel = (name: string): string => partClasses.find(c => c.class === name)?.label ?? name
