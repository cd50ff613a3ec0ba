import type { PartFilled } from './pack-table.ts'
import { CRITERIA, type Criterion, type PackArrangement } from './pack-types.ts'

/** An arrangement by its figures alone. */
export type Judged = Pick<PackArrangement, 'strings' | 'energy' | 'mass' | 'frontMargin' | 'rearMargin' | 'height' | 'cable'> & {
  readonly parts: readonly (PartFilled | undefined)[]
  /** The criteria as numbers, less is better. */
  readonly at: readonly number[]
}

/** Arrangements kept. */
const KEPT = 16

/**
 * The best arrangements: those that another is better than, or as good as, in every respect are dropped; of the others the best in each respect stay, and then those that
 * differ most from what stays.
 */
export function bestOf(all: readonly Judged[]): readonly (Judged & { readonly bestIn: readonly Criterion[] })[] {
  const front: Judged[] = []
  for (const one of all) {
    if (front.some(o => noWorse(o, one))) continue
    for (let i = front.length - 1; i >= 0; i--) if (noWorse(one, front[i] as Judged)) front.splice(i, 1)
    front.push(one)
  }
  const least = CRITERIA.map((_, c) => Math.min(...front.map(f => f.at[c] as number))),
    named = front.map(f => ({ ...f, bestIn: CRITERIA.filter((_, c) => f.at[c] === least[c]) }))
  return different(named.sort(byRank)).sort(byRank)
}

/** Most energy first, then the widest margin, then the least mass, then what is left. */
const RANK = [0, 2, 1, 4, 3, 5] as const
function byRank(a: Judged, b: Judged): number {
  for (const c of RANK) {
    const d = (a.at[c] as number) - (b.at[c] as number)
    if (d !== 0) return d
  }
  return 0
}

const noWorse = (a: Judged, b: Judged): boolean => a.at.every((v, c) => v <= (b.at[c] as number))

/** At most so many: the first that is best in each respect, then always the one furthest from all chosen. */
function different<J extends Judged & { readonly bestIn: readonly Criterion[] }>(front: readonly J[]): J[] {
  if (front.length <= KEPT) return [...front]
  const span = CRITERIA.map((_, c) => {
    const values = front.map(f => f.at[c] as number)
    return Math.max(1e-9, Math.max(...values) - Math.min(...values))
  })
  const away = (a: J, b: J): number => Math.hypot(...a.at.map((v, c) => (v - (b.at[c] as number)) / (span[c] as number)))
  const chosen = new Set<J>(CRITERIA.map(c => front.find(f => f.bestIn.includes(c)) as J))
  const nearest = new Map(front.map(f => [f, Math.min(...[...chosen].map(o => away(f, o)))]))
  while (chosen.size < KEPT) {
    let next: J | undefined
    for (const f of front) if (!chosen.has(f) && (!next || (nearest.get(f) as number) > (nearest.get(next) as number))) next = f
    if (!next) break
    const found = next
    chosen.add(found)
    for (const f of front) nearest.set(f, Math.min(nearest.get(f) as number, away(f, found)))
  }
  return [...chosen]
}
