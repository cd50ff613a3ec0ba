import type { Standing } from '@ampwright/conversion'
import { type Edit, entryAt, fieldAt, pathKeys, pathText } from '@ampwright/conversion'
import { type Desk, kindsIn } from './desk/desk.ts'
import { pathOf } from './edits.ts'
import { headed } from './shown.ts'

/** One value that edits would change: what stands there and what would. */
export type ChangeView = {
  readonly path: string
  readonly label: string
  readonly was: Standing
  readonly now: string | null
}

/** Edits value by value, those of a group each by itself, with what goes because the group is given anew; what would stay as it is is left out. */
export const changeViews = (desk: Pick<Desk, 'at' | 'current'>, edits: readonly Edit[]): readonly ChangeView[] =>
  edits
    .flatMap(({ path, now }) => flat(desk, pathOf(path), now))
    .flatMap(({ path, now }) => {
      const stands = desk.at(path),
        was = typeof stands === 'string' || stands === null ? stands : stands.join(', ')
      return was === now
        ? []
        : [
            {
              path,
              label: headed(fieldAt(path, kindsIn(desk.current().text.tree))?.label ?? path.slice(path.lastIndexOf('.') + 1)),
              was,
              now,
            },
          ]
    })

type Single = { readonly path: string; readonly now: string | null }
function flat(desk: Pick<Desk, 'current'>, path: string, now: Edit['now']): readonly Single[] {
  if (now === null || typeof now === 'string') return [{ path, now }]
  if (Array.isArray(now)) return [{ path, now: now.join(', ') }]
  const { tree } = desk.current().text,
    stands = tree === undefined ? undefined : entryAt(tree, pathKeys(path) ?? [])?.node,
    gone = stands?.kind === 'group' ? [...stands.entries.keys()].filter(key => !Object.hasOwn(now, key)) : []
  const below = (key: string): string => `${path}.${pathText([key])}`
  return [
    ...Object.entries(now).flatMap(([key, v]) => flat(desk, below(key), v as Edit['now'])),
    ...gone.map(key => ({ path: below(key), now: null })),
  ]
}
