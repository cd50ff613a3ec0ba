import type { FieldView, SheetGroup, SheetMap, SheetNode } from '@ampwright/workbench'

/** A map of named things at a path of a sheet. */
export function mapAt(node: SheetNode | undefined, path: string): SheetMap | undefined {
  if (node === undefined || node.is === 'field') return undefined
  if (node.is === 'map' && node.path === path) return node
  for (const child of node.is === 'group' ? node.children : node.rows) {
    const found = mapAt(child, path)
    if (found) return found
  }
  return undefined
}

/** The named groups of a map. */
export const groupsOf = (map: SheetMap | undefined): readonly SheetGroup[] => (map?.rows ?? []).filter(r => r.is === 'group')

/** The field of a group by its key. */
export function fieldIn(group: SheetGroup, key: string): FieldView | undefined {
  for (const c of group.children) if (c.is === 'field' && c.field.key === key) return c.field
  return undefined
}
