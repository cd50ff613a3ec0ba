import { type Edit, pathKeys } from '@ampwright/conversion'
import { type ChangeView, changeViews } from '../change-views.ts'
import type { Desk } from '../desk/desk.ts'
import { type TableFault, testerTable } from './tester-table.ts'

/** What a tester's table would come to: the edits and what they change, or every fault. */
export type TableTrial = {
  readonly edits: readonly Edit[]
  readonly changes: readonly ChangeView[]
  readonly faults: readonly TableFault[]
  readonly more: number
  readonly rows: number
}

/** Tries a tester's table on a conversion without keeping it; a reading nothing on a bench can show is a fault as well. */
export function tableTrial(desk: Desk, bytes: Uint8Array): TableTrial {
  const { edits, faults, more, rows } = testerTable(bytes, desk.current().model)
  const tried = edits.length ? desk.tried(edits) : undefined
  if (!tried || tried.ok) return { edits, changes: changeViews(desk, edits), faults, more, rows }
  const impossible = tried.issues.map((i): TableFault => {
    const [, , name = '', key = ''] = pathKeys(i.path) ?? []
    return { column: `${key.replaceAll('-', ' ')} of ${serialOf(name, edits) ?? name}`, what: i.what, found: i.found, accepted: i.accepted }
  })
  return { edits: [], changes: [], faults: impossible, more: 0, rows }
}

const serialOf = (name: string, edits: readonly Edit[]): string | undefined => {
  const now = edits.find(e => e.path === `pack.salvage.${name}.serial`)?.now
  return typeof now === 'string' ? now : undefined
}
