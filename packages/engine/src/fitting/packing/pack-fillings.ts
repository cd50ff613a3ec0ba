import type { AlignedBox } from '../box.ts'
import type { Vector } from '../vector.ts'
import { answerWithin } from './answer.ts'
import { packBay } from './bay.ts'
import { type PlacedModule, turnsOfModule } from './bay-module.ts'
import { type Interior, interiorOf } from './pack-interior.ts'
import { type BoxBuild, type PackModule, type PackSpace, type BoxSide, BOX_SIDES } from './pack-types.ts'
import { packRectangle } from './rectangle.ts'
import { squareBound } from './square-bound.ts'

/** A space filled with as many modules as were found, with its busbars along one side. */
export type Filling = { readonly busbars: BoxSide; readonly modules: readonly PlacedModule[] }

/** The search in one space: for each side the busbars may run along, a search of its own. */
export type SpaceSearch = {
  readonly space: PackSpace
  readonly fillings: () => readonly Filling[]
  readonly bound: number
  readonly steps: () => number
  /** Goes on for so many steps; false when nothing is left to look for. */
  readonly goOn: (steps: number) => boolean
}

/** Steps for each layer of boxes. */
const LAYER_STEPS = 2000
/** Whole units of the search in a layer [m]. */
const MILLIMETRE = 1e-3

/** Makes the searches of a space. Without room for busbars to keep, one side stands for all. */
export function spaceSearch(space: PackSpace, module: PackModule, box: BoxBuild, seed: number): SpaceSearch {
  const sides = box.busbar > 0 ? BOX_SIDES : BOX_SIDES.slice(0, 1)
  const ways = turnsOfModule(module).length
  const searches = sides.flatMap(busbars => {
    const interior = interiorOf(space, box, busbars, ways)
    return interior ? [sideSearch(interior, busbars, module, seed)] : []
  })
  return {
    space,
    fillings: () => searches.map(s => s.filling()),
    bound: Math.max(0, ...searches.map(s => s.bound)),
    steps: () => searches.reduce((sum, s) => sum + s.steps(), 0),
    goOn: steps => searches.map(s => s.goOn(steps)).some(more => more),
  }
}

/** The search in the room for modules of one box, with its busbars along one side. */
export function sideSearch(interior: Interior, busbars: BoxSide, module: PackModule, seed: number) {
  const { low, high } = interior,
    search = packBay(interior.field, module, { seed }),
    now = { best: layers(interior, module), steps: 0, bound: 0, open: true }
  const next = (): void => {
    const { value, done } = search.next()
    if (done) now.open = false
    else {
      now.steps = value.steps
      now.bound = value.bound
      if (value.placed.length > now.best.length) now.best = value.placed
    }
  }
  next()
  const bound = low && high ? squareBound(high.map((c, i) => c - (low[i] as number)) as unknown as Vector, module) : now.bound,
    unfinished = (): boolean => now.open && now.best.length < bound
  return {
    filling: (): Filling => ({ busbars, modules: now.best }),
    bound,
    steps: () => now.steps,
    goOn: (steps: number): boolean => {
      for (const until = now.steps + steps; unfinished() && now.steps < until; ) next()
      return unfinished()
    },
  }
}

/** Modules in level layers, all of one height, each layer laid out to the millimetre. Only in a square interior, and where no room before a face must stay free. */
function layers({ low, high }: Interior, module: PackModule): readonly PlacedModule[] {
  if (!low || !high || (module.service && module.service.strip > 0)) return []
  const turns = turnsOfModule(module),
    { clearance } = module
  let best: readonly PlacedModule[] = []
  for (const { sides } of turns) {
    const across = turns.find(t => t.sides[0] === sides[1] && t.sides[1] === sides[0] && t.sides[2] === sides[2])
    if (!across || sides[0] < sides[1]) continue
    const levels = Math.floor((high[2] - low[2] + clearance + 1e-9) / (sides[2] + clearance))
    const units = (length: number, round: (x: number) => number): number =>
      round((length + clearance) / MILLIMETRE + (round === Math.floor ? 1e-6 : -1e-6))
    const space = { length: units(high[0] - low[0], Math.floor), width: units(high[1] - low[1], Math.floor) },
      one = { length: units(sides[0], Math.ceil), width: units(sides[1], Math.ceil) }
    if (levels < 1 || space.length < 1 || space.width < 1) continue
    const { placed } = answerWithin(packRectangle(space, one, 1), LAYER_STEPS)
    if (placed.length * levels <= best.length) continue
    best = Array.from({ length: levels }, (_, k) =>
      placed.map(({ x, y, length }): PlacedModule => {
        const turn = length === one.length ? sides : across.sides,
          corner: Vector = [low[0] + x * MILLIMETRE, low[1] + y * MILLIMETRE, low[2] + k * (sides[2] + clearance)],
          down = turns.find(t => t.sides.every((s, i) => s === turn[i]))?.down ?? 'bottom'
        return { box: boxAt(corner, turn), down }
      }),
    ).flat()
  }
  return best
}

const boxAt = (low: Vector, sides: Vector): AlignedBox => ({ low, high: low.map((c, i) => c + (sides[i] as number)) as unknown as Vector })
