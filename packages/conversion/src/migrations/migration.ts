import type { Change } from '../text/edit.ts'
import type { TextTree } from '../text/tree.ts'

/**
 * One step from a schema version to the next: the edits that turn a file of the old one into the new, worked out from what the file
 * holds. The line `schema:` itself is not among them. `says` tells the user what the step did.
 */
export type Migration = {
  readonly from: number
  readonly to: number
  readonly says: string
  readonly edits: (tree: TextTree) => readonly Change[]
}

/** What is wrong with a list of migrations: each must lead one version on, each start where the last one ended, the last at `current`. */
export function migrationFault(migrations: readonly Migration[], current: number): string | undefined {
  const wide = migrations.find(({ from, to }) => to !== from + 1)
  if (wide) return `the migration from ${wide.from} must lead to ${wide.from + 1}, not to ${wide.to}`
  const gap = migrations.findIndex(({ from }, i) => i > 0 && from !== migrations[i - 1]?.to)
  if (gap >= 0) return `no migration starts at ${migrations[gap - 1]?.to}: the next one starts at ${migrations[gap]?.from}`
  const last = migrations.at(-1)
  return last === undefined || last.to === current
    ? undefined
    : `the last migration leads to ${last.to}, but the current schema is ${current}`
}
