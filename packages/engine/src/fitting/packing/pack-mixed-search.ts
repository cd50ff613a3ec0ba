import { random } from '../../numerics/random.ts'
import type { PackMixedTask } from './pack-mixed.ts'
import { mixedArrangements } from './pack-mixed-arrange.ts'
import { groupsIn, mixedBound } from './pack-mixed-bound.ts'
import { type MixedSpace, mixedSpace, othersOf } from './pack-mixed-fillings.ts'
import type { PackAnswer } from './pack-types.ts'

/** Steps in each space before the arrangements are made anew: few at first, then more. */
const FIRST_ROUND = 200
const GROWS = 1.5

/**
 * As `packSearch`, with two forms of module in one string: in each space how many of one form go in beside each number of the other, then every way to make a string of both that there are
 * modules for. Bound and gap are counted in cell groups. It ends when every way to look has come to its end.
 */
export function* mixedSearch(task: PackMixedTask, { seed }: { readonly seed: number }): Generator<PackAnswer, void> {
  const spaces = [...task.spaces].sort((a, b) => (a.name < b.name ? -1 : 1)),
    chance = random(seed),
    searches: MixedSpace[] = [],
    { groups } = task.mix
  const soFar = (): Pick<PackAnswer, 'spaces' | 'steps' | 'counts'> => ({
    counts: 'cell groups',
    spaces: searches.map(s => ({
      name: s.space.name,
      found: Math.max(
        0,
        ...s.fillings().map(({ modules }) => {
          const others = othersOf(modules)
          return (modules.length - others) * groups.main + others * groups.other
        }),
      ),
      bound: Math.max(0, ...s.regions.map(r => groupsIn(r, groups))),
    })),
    steps: searches.reduce((sum, s) => sum + s.steps(), 0),
  })
  for (const space of spaces) {
    if (searches.length > 0) yield { ...soFar(), arrangements: [], bound: Infinity, gap: Infinity, seed }
    searches.push(mixedSpace(space, task, chance.below(2 ** 31)))
  }
  const bound = mixedBound(
    task,
    searches.map(s => s.regions),
  )
  let fillings = searches.map(s => s.fillings()),
    arrangements = mixedArrangements(task, spaces, fillings),
    more = true
  for (let round = FIRST_ROUND; ; round *= GROWS) {
    const most = arrangements.reduce((n, a) => Math.max(n, a.strings * groups.string), 0)
    yield { ...soFar(), arrangements, bound, gap: bound - most, seed }
    if (!more) return
    more = searches.map(s => s.goOn(Math.ceil(round))).some(m => m)
    const now = searches.map(s => s.fillings())
    if (now.every((f, i) => f.length === fillings[i]?.length && f.every((one, k) => one.modules === fillings[i]?.[k]?.modules))) continue
    fillings = now
    arrangements = mixedArrangements(task, spaces, fillings)
  }
}
