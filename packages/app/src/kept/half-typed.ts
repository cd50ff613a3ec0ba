import { keep, kept } from './window-store.ts'

/** What stands typed in a field and is not saved, and what stood in the file when it was typed. */
export type HalfTyped = { readonly text: string; readonly was: string }
type All = Readonly<Record<string, HalfTyped>>

const keyOf = (id: string): string => `typed.${id}`
const all = (id: string): All => kept<All>(keyOf(id)) ?? {}

/** What was typed at a path of a conversion in this window and never saved: readable or not. */
export const halfTyped = (id: string, path: string): HalfTyped | undefined => (Object.hasOwn(all(id), path) ? all(id)[path] : undefined)

export const keepTyped = (id: string, path: string, typed: HalfTyped): void => keep(keyOf(id), { ...all(id), [path]: typed })

/** Forgets what was typed at a path; with `saved`, only where that is what was saved. */
export function forgetTyped(id: string, path: string, saved?: string): void {
  const { [path]: typed, ...rest } = all(id)
  if (typed === undefined || (saved !== undefined && typed.text.trim() !== saved.trim())) return
  keep(keyOf(id), Object.keys(rest).length ? rest : undefined)
}
