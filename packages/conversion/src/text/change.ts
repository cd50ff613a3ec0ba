import type { Path } from './path.ts'

/** A new value: one value, a row in one line, named values in one line, or null to remove what is there. */
export type Now = string | readonly string[] | Readonly<Record<string, string>> | null

/** What an edit is: the place and what shall stand there. Plain data. Groups on the way to a new place are made. */
export type Edit = { readonly path: Path; readonly now: Now }

/** A new name for the key at the path. References to it elsewhere are edits of their own. */
export type Rename = { readonly path: Path; readonly key: string }

export type Change = Edit | Rename

export const isRename = (change: Change): change is Rename => 'key' in change
export const isList = (now: Now): now is readonly string[] => Array.isArray(now)
