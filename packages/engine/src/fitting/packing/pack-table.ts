import type { AlignedBox } from '../box.ts'
import type { Vector } from '../vector.ts'
import type { PlacedModule } from './bay-module.ts'
import type { Filling } from './pack-fillings.ts'
import { marginsOf } from './pack-interior.ts'
import type { BoxBuild, PackModule, BoxSide } from './pack-types.ts'

/** In which order a space is filled when not all of it is needed: from below, from the front or from the rear of the car. */
export type FillOrder = 'low' | 'front' | 'rear'
export const FILL_ORDERS: readonly FillOrder[] = ['low', 'front', 'rear']

/** A space with so many modules in it. */
export type PartFilled = {
  readonly modules: readonly PlacedModule[]
  readonly busbars: BoxSide
  readonly outer: AlignedBox
  readonly mass: number
  /** Mass times place behind the front axle, and times height [kg·m]. */
  readonly along: number
  readonly up: number
  readonly centre: Vector
}

const middle = ({ low, high }: AlignedBox, i: 0 | 1 | 2): number => (low[i] + high[i]) / 2

/** How far a filled space goes in an order: less is further. */
export const farIn = (order: FillOrder, { up, along, mass }: PartFilled): number =>
  (order === 'low' ? up : order === 'front' ? along : -along) / mass

/** For each number of modules from none, the space filled with so many in an order: of all fillings the one that goes furthest that way. */
export function partFilled(
  fillings: readonly Filling[],
  order: FillOrder,
  module: PackModule,
  box: BoxBuild,
): readonly (PartFilled | undefined)[] {
  const most = Math.max(0, ...fillings.map(f => f.modules.length)),
    best: (PartFilled | undefined)[] = Array.from({ length: most + 1 }, () => undefined)
  for (const { busbars, modules } of fillings) {
    const sorted = inOrder(modules, order)
    for (let n = 1; n <= sorted.length; n++) {
      const one = filledWith(sorted.slice(0, n), busbars, module, box),
        before = best[n]
      if (!before || farIn(order, one) < farIn(order, before) - 1e-9) best[n] = one
    }
  }
  return best
}

/** Modules in an order, none before those it stands on. */
export function inOrder(modules: readonly PlacedModule[], order: FillOrder): readonly PlacedModule[] {
  const key = ({ box }: PlacedModule): number =>
    order === 'low' ? box.low[2] * 1e3 + middle(box, 0) : (order === 'front' ? 1 : -1) * middle(box, 0) * 1e3 + box.low[2]
  const waiting = modules.map(m => ({ m, key: key(m) })).sort((a, b) => a.key - b.key),
    out: PlacedModule[] = []
  while (waiting.length > 0) {
    const next = waiting.findIndex(({ m }) => !waiting.some(o => o.m !== m && standsOn(m, o.m)))
    out.push(...waiting.splice(Math.max(0, next), 1).map(w => w.m))
  }
  return out
}

/** Whether one module lies over another. */
export const standsOn = (upper: PlacedModule, lower: PlacedModule): boolean =>
  lower.box.high[2] <= upper.box.low[2] + 1e-9 &&
  ([0, 1] as const).every(i => lower.box.low[i] < upper.box.high[i] - 1e-9 && upper.box.low[i] < lower.box.high[i] - 1e-9)

/** A space with these modules in it; `other` is the module of the other form, where there are two. */
export function filledWith(
  modules: readonly PlacedModule[],
  busbars: BoxSide,
  { mass }: PackModule,
  box: BoxBuild,
  other?: PackModule,
): PartFilled {
  // The room before a service face is inside the box too.
  const { low, high } = marginsOf(box, busbars),
    taken = modules.flatMap(m => (m.strip ? [m.box, m.strip] : [m.box])),
    at = (i: 0 | 1 | 2, pick: 'low' | 'high'): number =>
      pick === 'low' ? Math.min(...taken.map(t => t.low[i])) - low[i] : Math.max(...taken.map(t => t.high[i])) + high[i]
  const outer: AlignedBox = { low: [at(0, 'low'), at(1, 'low'), at(2, 'low')], high: [at(0, 'high'), at(1, 'high'), at(2, 'high')] }
  const [l, w, h] = outer.high.map((c, i) => c - (outer.low[i] as number)) as unknown as Vector,
    shell = box.sheet * 2 * (l * w + l * h + w * h),
    centre: Vector = [middle(outer, 0), middle(outer, 1), middle(outer, 2)]
  const massOf = (m: PlacedModule): number => (m.other && other ? other.mass : mass),
    others = other ? modules.filter(m => m.other).length : 0
  const sum = (i: 0 | 2): number => modules.reduce((s, m) => s + massOf(m) * middle(m.box, i), shell * centre[i])
  const bare = (modules.length - others) * mass + others * (other?.mass ?? 0)
  return { modules, busbars, outer, mass: bare + shell, along: sum(0), up: sum(2), centre }
}
