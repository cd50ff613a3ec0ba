import { random } from '../../numerics/random.ts'
import { type PlacedModule, turnsOfModule } from './bay-module.ts'
import { type Filling, sideSearch } from './pack-fillings.ts'
import { type Interior, interiorOf } from './pack-interior.ts'
import type { PackMixedTask } from './pack-mixed.ts'
import { othersBeside, type Region, regionOf } from './pack-mixed-bound.ts'
import { inContainer } from './pack-mixed-container.ts'
import { mixedFaults } from './pack-mixed-faults.ts'
import { inTurn } from './pack-mixed-sweeps.ts'
import { BOX_SIDES, type BoxSide, type PackSpace } from './pack-types.ts'

/** The search in one space with two forms of module: for each side the busbars may run along, one of its own. */
export type MixedSpace = {
  readonly space: PackSpace
  readonly fillings: () => readonly Filling[]
  readonly regions: readonly Region[]
  readonly steps: () => number
  /** Goes on for so many steps; false when nothing is left to look for. */
  readonly goOn: (steps: number) => boolean
}

export function mixedSpace(space: PackSpace, task: PackMixedTask, seed: number): MixedSpace {
  const sides = task.box.busbar > 0 ? BOX_SIDES : BOX_SIDES.slice(0, 1)
  const ways = turnsOfModule(task.module).length + turnsOfModule(task.mix.other).length
  const searches = sides.flatMap(busbars => {
    const interior = interiorOf(space, task.box, busbars, ways)
    return interior ? [mixedSide(interior, busbars, task, seed)] : []
  })
  return {
    space,
    fillings: () => searches.flatMap(s => s.fillings()),
    regions: searches.map(s => s.region),
    steps: () => searches.reduce((sum, s) => sum + s.steps(), 0),
    goOn: steps => searches.map(s => s.goOn(steps)).some(more => more),
  }
}

export const othersOf = (modules: readonly PlacedModule[]): number => modules.filter(m => m.other).length

/** Fillings none of which another passes in both forms. */
class Archive {
  private kept: (Filling & { readonly main: number; readonly other: number })[] = []
  /** Whether a filling has so many of each form. */
  has(main: number, other: number): boolean {
    return this.kept.some(k => k.main >= main && k.other >= other)
  }
  /** Keeps a filling unless another has as many of each form; whether it was kept. */
  add(filling: Filling): boolean {
    const other = othersOf(filling.modules),
      main = filling.modules.length - other
    if (this.has(main, other)) return false
    this.kept = [...this.kept.filter(k => k.main > main || k.other > other), { ...filling, main, other }]
    return true
  }
  all(): readonly Filling[] {
    return [...this.kept].sort((a, b) => b.main - a.main)
  }
}

/** Each form by itself as where it is the only one, and both together: how many of the other form beside each number of the main one. */
function mixedSide(interior: Interior, busbars: BoxSide, task: PackMixedTask, seed: number) {
  const { module, mix, have = Infinity } = task,
    main = sideSearch(interior, busbars, module, seed),
    other = sideSearch(interior, busbars, mix.other, seed),
    region = regionOf(interior, module, mix.other, { main: main.bound, other: other.bound }),
    most = { main: Math.min(region.main, have), other: Math.min(region.other, mix.have) },
    kept = new Archive()
  const marked = (modules: readonly PlacedModule[]): Filling => ({ busbars, modules: modules.map(m => ({ ...m, other: true as const })) })
  const add = (modules: readonly PlacedModule[]): boolean => {
    const others = othersOf(modules)
    if (kept.has(modules.length - others, others)) return false
    const [fault] = mixedFaults(interior, module, mix.other, modules)
    if (fault) throw new Error(`packing: ${fault}`)
    return kept.add({ busbars, modules })
  }
  const alone = (): void => {
    kept.add(main.filling())
    kept.add(marked(other.filling().modules))
  }
  alone()
  const may = (mains: number, others: number): boolean =>
    mains <= most.main && others <= most.other && othersBeside(region, mains) >= others
  const both = most.main > 0 && most.other > 0,
    container = both ? inContainer(interior, module, mix.other, { most, may, has: (m, o) => kept.has(m, o) }) : undefined,
    sweeps = both ? inTurn(interior, module, mix.other, { most, chance: random(seed) }) : undefined
  const now = { steps: 0, open: both }
  /** One trial of each way to look; without end only where something is still found. */
  const next = (): void => {
    let found = false
    for (const way of [container, sweeps]) {
      const { value, done } = way?.next() ?? { done: true, value: undefined }
      if (done || value === undefined) continue
      found = true
      now.steps += value.steps
      if (add(value.modules)) value.better()
    }
    now.open = found
  }
  if (now.open) next()
  return {
    region,
    fillings: () => kept.all(),
    steps: () => now.steps + main.steps() + other.steps(),
    goOn: (more: number): boolean => {
      for (const until = now.steps + more; now.open && now.steps < until; ) next()
      const left = [main.goOn(more), other.goOn(more)].some(m => m)
      alone()
      return now.open || left
    },
  }
}
