import { random } from '../../numerics/random.ts'
import { arrangementsOf } from './pack-arrange.ts'
import { checkMix, inBothForms, type PackMixedTask, withOneForm } from './pack-mixed.ts'
import { mixedSearch } from './pack-mixed-search.ts'
import { type Filling, type SpaceSearch, spaceSearch } from './pack-fillings.ts'
import type { PackAnswer, PackTask } from './pack-types.ts'

/** Most spaces taken together: all subsets of them are looked at. */
const MOST_SPACES = 8
/** Steps in each space before the arrangements are made anew: few at first, then more. */
const FIRST_ROUND = 200
const GROWS = 1.5

/**
 * Arrangements of one battery in the spaces of a car: which modules stand in which battery box, in whole strings. Several different ones, none worse than another in
 * energy, mass, worst axle margin, height, number of boxes and cable at once; ever better, until every space is proven full. First it tells of the spaces one by one.
 *
 * A battery of S in series and P strings is S groups of P modules in parallel; a group stands in one box, unless groups may be split. `bound` adds up what the spaces can hold at most and
 * rounds it down to whole strings. The same task and seed give the same answers after the same steps, in whatever order the spaces are named.
 *
 * With a second form of module see `mixedSearch`. Throws RangeError on more than 8 spaces, on two of one name, on series or strings that are none, and on a wheelbase or mass that is none.
 */
export function* packSearch(asked: PackTask, { seed }: { readonly seed: number }): Generator<PackAnswer, void> {
  checkTask(asked)
  checkMix(asked)
  const one = withOneForm(asked)
  if (one) yield* oneFormSearch(ofThoseThere(one), seed, asked)
  else yield* mixedSearch(asked as PackMixedTask, { seed })
}

/** No more strings than there are modules for. */
const ofThoseThere = (task: PackTask): PackTask => ({
  ...task,
  strings: { ...task.strings, most: Math.min(task.strings.most, Math.floor((task.have ?? Infinity) / task.series)) },
})

function* oneFormSearch(task: PackTask, seed: number, asked: PackTask): Generator<PackAnswer, void> {
  const spaces = [...task.spaces].sort((a, b) => (a.name < b.name ? -1 : 1)),
    chance = random(seed),
    searches: SpaceSearch[] = []
  for (const space of spaces) {
    if (searches.length > 0) yield { ...soFar(searches), arrangements: [], bound: Infinity, gap: Infinity, seed }
    searches.push(spaceSearch(space, task.module, task.box, chance.below(2 ** 31)))
  }
  const bound = boundOf(
    task,
    searches.map(s => s.bound),
  )
  let fillings = searches.map(s => s.fillings()),
    arrangements = arrangementsOf(task, spaces, fillings),
    more = true
  for (let round = FIRST_ROUND; ; round *= GROWS) {
    const most = arrangements.reduce((n, a) => Math.max(n, a.modules), 0)
    yield { ...soFar(searches), arrangements: arrangements.map(a => inBothForms(asked, a)), bound, gap: bound - most, seed }
    if (!more) return
    more = searches.map(s => s.goOn(Math.ceil(round))).some(m => m)
    const now = searches.map(s => s.fillings())
    if (now.every((f, i) => f.every((one, k) => one.modules === fillings[i]?.[k]?.modules))) continue
    fillings = now
    arrangements = arrangementsOf(task, spaces, fillings)
  }
}

const soFar = (searches: readonly SpaceSearch[]): Pick<PackAnswer, 'spaces' | 'steps'> => ({
  spaces: searches.map(s => ({ name: s.space.name, found: fullest(s.fillings()), bound: s.bound })),
  steps: searches.reduce((sum, s) => sum + s.steps(), 0),
})

/** The last answer of a search that has come to its end, or has looked at every space and done so many steps. */
export function packWithin(search: Generator<PackAnswer, void>, steps: number): PackAnswer {
  let last: PackAnswer | undefined
  for (const answer of search) {
    last = answer
    if (Number.isFinite(answer.bound) && answer.steps >= steps) break
  }
  if (!last) throw new RangeError('packing: the search gave no answer')
  return last
}

const fullest = (fillings: readonly Filling[]): number => Math.max(0, ...fillings.map(f => f.modules.length))

/** Most modules in whole strings that spaces of such bounds can take. */
export function boundOf({ series, strings, splitGroups }: PackTask, bounds: readonly number[]): number {
  const all = bounds.reduce((a, b) => a + b, 0)
  for (let p = Math.min(strings.most, Math.floor(all / series)); p >= Math.max(1, strings.least); p--)
    if (splitGroups || bounds.reduce((sum, b) => sum + Math.floor(b / p), 0) >= series) return p * series
  return 0
}

function checkTask({ spaces, series, strings, wheelbase, module }: PackTask): void {
  if (spaces.length > MOST_SPACES)
    throw new RangeError(`packing: at most ${MOST_SPACES} spaces are filled together, found ${spaces.length}`)
  const twice = spaces.find((s, i) => spaces.findIndex(o => o.name === s.name) !== i)
  if (twice) throw new RangeError(`packing: two spaces are called ${twice.name}`)
  const whole = (name: string, n: number): void => {
    if (!Number.isInteger(n) || n < 1) throw new RangeError(`packing: ${name} must be a whole number of at least 1, found ${n}`)
  }
  whole('modules in series', series)
  whole('fewest strings', strings.least)
  whole('most strings', strings.most)
  if (!(wheelbase > 0)) throw new RangeError(`packing: the wheelbase must be a length in metres, found ${wheelbase}`)
  if (!(module.mass > 0)) throw new RangeError(`packing: the mass of a module must be above 0, found ${module.mass}`)
}
