import { random } from '../../numerics/random.ts'
import type { Vector } from '../vector.ts'
import type { VoxelField } from '../voxel-field.ts'
import { type BayBound, bayBound } from './bay-bound.ts'
import { bayFaults } from './bay-faults.ts'
import { type BayLattice, bayLattice, type LatticeTurn } from './bay-lattice.ts'
import { type BayModule, MODULE_FACES, type PlacedModule, stripOf, turnsOfModule } from './bay-module.ts'
import { arrangements } from './bay-search.ts'
import { searchBayThrough } from './bay-small.ts'
import { clashes, type Spot } from './bay-part.ts'

/** One answer of a search in a bay: each has at least as many modules as the one before. */
export type BayAnswer = {
  readonly placed: readonly PlacedModule[]
  /** No arrangement square to the axes of the field holds more, and which count says so. */
  readonly bound: number
  readonly boundBy: BayBound['by']
  /** Modules between what is placed and the bound. At 0 the answer is proven best. */
  readonly gap: number
  /** Low corners stand on whole steps of this from the low corner of the field [m]. */
  readonly step: number
  readonly seed: number
  /** Modules put in on trial so far: the same seed and the same steps give the same answer, anywhere. */
  readonly steps: number
}

/** Most modules that are laid out in one bay. */
export const MOST_MODULES = 2000

/**
 * Modules of one kind in an irregular field of free cubes: ever better answers, until the bound is reached. Small fields are searched through. Others are filled in one sweep
 * from each of 48 sides, and the best of these is made better: a few modules near each other are taken out and their place filled anew, as well or better, from another side.
 *
 * Every answer is held against the field once more by its coordinates alone. Modules stand square to the field; the two may be turned against the car together.
 * Throws RangeError on a size, clearance or strip that is none, on no face to lie on, and where there are too many cubes or modules.
 */
export function* packBay(field: VoxelField, module: BayModule, { seed }: { readonly seed: number }): Generator<BayAnswer, void> {
  checkModule(module)
  const chance = random(seed),
    lattice = bayLattice(field, module, turnsOfModule(module)),
    table = clashes(lattice.turns),
    small = searchBayThrough(lattice, module, table)
  let bound = bayBound(lattice, module),
    best: readonly Spot[] = small?.spots ?? []
  if (bound.most > MOST_MODULES)
    throw new RangeError(`packing: at most ${MOST_MODULES} modules are laid out, the bay may hold ${bound.most}`)
  if (small?.proven && best.length < bound.most) bound = { most: best.length, by: 'searched through' }
  let placed = checked(lattice, module, best)
  const answer = (steps: number): BayAnswer => ({
    placed,
    bound: bound.most,
    boundBy: bound.by,
    gap: bound.most - placed.length,
    step: lattice.step,
    seed,
    steps: steps + (small?.steps ?? 0),
  })
  if (small || bound.most === 0) yield answer(0)
  if (best.length === bound.most) return
  for (const { spots, steps } of arrangements(lattice, table, chance, bound.most)) {
    if (spots.length > best.length) {
      best = spots
      placed = checked(lattice, module, best)
    }
    yield answer(steps)
    if (best.length === bound.most) return
  }
}

/** The last answer of a search that has proven its best, or has done so many steps. */
export function bayWithin(search: Generator<BayAnswer, void>, steps: number): BayAnswer {
  let last: BayAnswer | undefined
  for (const answer of search) {
    last = answer
    if (answer.steps >= steps) break
  }
  if (!last) throw new RangeError('packing: the search gave no answer')
  return last
}

function checkModule({ size, clearance, down, service }: BayModule): void {
  const length = (name: string, value: number, least: number): void => {
    if (!(value >= least && value < 100)) throw new RangeError(`packing: ${name} must be a length in metres, found ${value}`)
  }
  size.forEach((s, i) => {
    length(`${['length', 'width', 'height'][i] as string} of the module`, s, 1e-3)
  })
  length('clearance between modules', clearance, 0)
  if (service) length('room before the service face', service.strip, 0)
  if (!down.some(face => MODULE_FACES.includes(face))) throw new RangeError('packing: the module needs a face it may lie on')
}

/** Modules by their coordinates, held against the field once more; a fault is a mistake of this program. */
function checked(lattice: BayLattice, module: BayModule, spots: readonly Spot[]): readonly PlacedModule[] {
  const placed = spots.map(spot => standing(lattice, module, spot)),
    [fault] = bayFaults(lattice.field, module, placed)
  if (fault) throw new Error(`packing: ${fault}`)
  return placed
}

function standing(lattice: BayLattice, module: BayModule, { turn, at }: Spot): PlacedModule {
  const t = (lattice.turns[turn] as LatticeTurn).turn,
    low = at.map((c, i) => (lattice.field.low[i] as number) + c * lattice.step) as unknown as Vector,
    box = { low, high: low.map((c, i) => c + (t.sides[i] as number)) as unknown as Vector },
    strip = stripOf(box, t, module)
  return { box, down: t.down, ...(strip ? { strip } : {}) }
}
