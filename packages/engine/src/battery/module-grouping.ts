/** Which modules go into which group, by their place in the list that was handed in, and the sum of the weakest group. */
export type Grouping = {
  readonly groups: readonly (readonly number[])[]
  readonly weakest: number
  /** No grouping can do better than this: the mean of the groups. */
  readonly bound: number
}

/**
 * Sorts modules into `groups` groups of equal size so that the smallest sum of a group is as large as can be found.
 *
 * One each: the best are chosen. Two each: largest with smallest, which is optimal (exchange argument). Three and more is a hard problem: largest first
 * into the emptiest open group, then pairwise swaps while the sorted list of sums improves; the better of that start and a serpentine deal. Threes and
 * fours are then dealt again, the weakest group with every two others, in every way there is, as long as that helps: three groups are therefore the optimum.
 * Never like with like. Deterministic: equal values keep their order. Where `values` are more than needed, the largest are used.
 * Throws RangeError when there are fewer than groups × size, or a count is not a whole number above zero.
 */
export function moduleGrouping(values: readonly number[], groups: number, size: number): Grouping {
  if (!Number.isInteger(groups) || !Number.isInteger(size) || groups < 1 || size < 1)
    throw new RangeError(`moduleGrouping: groups and size must be whole numbers above zero, found ${groups} and ${size}`)
  if (values.length < groups * size)
    throw new RangeError(`moduleGrouping: ${groups} groups of ${size} need ${groups * size} modules, found ${values.length}`)
  const chosen = values
    .map((value, place) => ({ value, place }))
    .sort((a, b) => b.value - a.value || a.place - b.place)
    .slice(0, groups * size)
  const bound = chosen.reduce((sum, c) => sum + c.value, 0) / groups
  const starts = size <= 2 ? [folded(chosen, groups, size)] : [emptiestFirst(chosen, groups, size), folded(chosen, groups, size)]
  const tried = starts.map(start => (size <= 2 ? start : swapped(start)))
  const swappedBest = tried.reduce((a, b) => (better(sums(b), sums(a)) ? b : a)),
    best = size === 3 || size === 4 ? dealtAgain(swappedBest) : swappedBest
  return { groups: best.map(g => g.map(m => m.place)), weakest: Math.min(...sums(best)), bound }
}

type Module = { readonly value: number; readonly place: number }
const sums = (groups: readonly (readonly Module[])[]): number[] => groups.map(g => g.reduce((s, m) => s + m.value, 0))
/** Is the sorted list of sums, weakest first, the better one? */
function better(a: readonly number[], b: readonly number[]): boolean {
  const x = [...a].sort((p, q) => p - q),
    y = [...b].sort((p, q) => p - q)
  for (let i = 0; i < x.length; i++) if (x[i] !== y[i]) return (x[i] as number) > (y[i] as number)
  return false
}

/** Serpentine deal: there and back. For two each it is largest with smallest. */
function folded(modules: readonly Module[], groups: number, size: number): Module[][] {
  const out: Module[][] = Array.from({ length: groups }, () => [])
  for (let row = 0; row < size; row++)
    for (let g = 0; g < groups; g++) (out[row % 2 ? groups - 1 - g : g] as Module[]).push(modules[row * groups + g] as Module)
  return out
}

function emptiestFirst(modules: readonly Module[], groups: number, size: number): Module[][] {
  const out: Module[][] = Array.from({ length: groups }, () => []),
    filled = new Float64Array(groups)
  for (const m of modules) {
    let to = -1
    for (let g = 0; g < groups; g++) if ((out[g] as Module[]).length < size && (to < 0 || filled[g]! < filled[to]!)) to = g
    ;(out[to] as Module[]).push(m)
    filled[to]! += m.value
  }
  return out
}

/** Exchanges two modules of two groups as long as that makes the weaker of the two better. Ends: the sorted list of sums only ever improves. */
function swapped(groups: Module[][]): Module[][] {
  const total = sums(groups)
  for (let again = true; again; ) {
    again = false
    for (let a = 0; a < groups.length; a++) {
      for (let b = a + 1; b < groups.length; b++) {
        const one = groups[a] as Module[],
          other = groups[b] as Module[]
        for (let i = 0; i < one.length; i++) {
          for (let j = 0; j < other.length; j++) {
            const gain = (other[j] as Module).value - (one[i] as Module).value
            const before = Math.min(total[a] as number, total[b] as number),
              after = Math.min((total[a] as number) + gain, (total[b] as number) - gain)
            if (after <= before + 1e-12 * Math.abs(before)) continue
            const kept = one[i] as Module
            one[i] = other[j] as Module
            other[j] = kept
            total[a]! += gain
            total[b]! -= gain
            again = true
          }
        }
      }
    }
  }
  return groups
}

/** Deals the modules of the weakest group and of every two others again, in every way there is, as long as the weakest of them gets better. */
function dealtAgain(groups: readonly Module[][]): Module[][] {
  const out = [...groups]
  for (let again = true; again; ) {
    again = false
    const total = sums(out),
      weakest = total.indexOf(Math.min(...total)),
      others = out.map((_, g) => g).filter(g => g !== weakest)
    for (let i = 0; i < others.length && !again; i++) {
      for (let j = Math.min(i + 1, others.length - 1); j < others.length && !again; j++) {
        const places = [...new Set([weakest, others[i] as number, others[j] as number])],
          now = places.map(g => out[g] as Module[]),
          best = bestDeal(now.flat(), now.length)
        if (!better(sums(best), sums(now))) continue
        places.forEach((g, k) => {
          out[g] = best[k] as Module[]
        })
        again = true
      }
    }
  }
  return out
}

/** The deal into `groups` groups of equal size whose sorted list of sums is the best of all. */
function bestDeal(modules: readonly Module[], groups: number): Module[][] {
  if (groups === 1) return [[...modules]]
  const size = modules.length / groups,
    [first, ...others] = modules as [Module, ...Module[]]
  let best: Module[][] | undefined
  const choose = (from: number, taken: readonly Module[]): void => {
    if (taken.length === size) {
      const now = [
        [...taken],
        ...bestDeal(
          others.filter(m => !taken.includes(m)),
          groups - 1,
        ),
      ]
      if (!best || better(sums(now), sums(best))) best = now
      return
    }
    for (let k = from; k < others.length; k++) choose(k + 1, [...taken, others[k] as Module])
  }
  choose(0, [first])
  return best as Module[][]
}

/**
 * Sorts modules into strings that are joined only at their ends. A string is as good as its weakest module, so like goes with like: largest first, string
 * by string. That makes the sum of the weakest as large as it can be (exchange argument).
 *
 * Throws RangeError as `moduleGrouping` does.
 */
export function stringSorting(
  values: readonly number[],
  strings: number,
  size: number,
): { readonly strings: readonly (readonly number[])[]; readonly together: number } {
  if (!Number.isInteger(strings) || !Number.isInteger(size) || strings < 1 || size < 1)
    throw new RangeError(`stringSorting: strings and size must be whole numbers above zero, found ${strings} and ${size}`)
  if (values.length < strings * size)
    throw new RangeError(`stringSorting: ${strings} strings of ${size} need ${strings * size} modules, found ${values.length}`)
  const chosen = values.map((value, place) => ({ value, place })).sort((a, b) => b.value - a.value || a.place - b.place)
  const sorted = Array.from({ length: strings }, (_, s) => chosen.slice(s * size, (s + 1) * size))
  return { strings: sorted.map(s => s.map(m => m.place)), together: sorted.reduce((sum, s) => sum + (s[size - 1] as Module).value, 0) }
}
