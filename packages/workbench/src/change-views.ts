import { type Edit, fieldAt, pathText } from '@ampwright/conversion'
import type { Desk } from './desk/desk.ts'
import { pathOf } from './edits.ts'
import { headed } from './shown.ts'

/** One value that edits would change: what stands there and what would. */
export type ChangeView = {
  readonly path: string
  readonly label: string
  readonly was: string | null
  readonly now: string | null
}

/** Edits value by value, those of a group each by itself; what would stay as it is is left out. */
export const changeViews = (desk: Pick<Desk, 'at'>, edits: readonly Edit[]): readonly ChangeView[] =>
  edits
    .flatMap(({ path, now }) => flat(pathOf(path), now))
    .flatMap(({ path, now }) => {
      const was = desk.at(path)
      return was === now ? [] : [{ path, label: headed(fieldAt(path)?.label ?? path.slice(path.lastIndexOf('.') + 1)), was, now }]
    })

function flat(path: string, now: Edit['now']): readonly { readonly path: string; readonly now: string | null }[] {
  if (now === null || typeof now === 'string') return [{ path, now }]
  if (Array.isArray(now)) return [{ path, now: now.join(', ') }]
  return Object.entries(now).flatMap(([key, v]) => flat(`${path}.${pathText([key])}`, v as Edit['now']))
}
