import type { Vector } from '../vector.ts'
import { type BayModule, MODULE_FACES, type PlacedModule, turnsOfModule } from './bay-module.ts'
import type { Whole } from './answer.ts'
import { containerWithin, packContainer } from './container.ts'
import type { BoxKind } from './container-blocks.ts'
import type { Interior } from './pack-interior.ts'
import type { PackModule } from './pack-types.ts'

/** One trial: what was found, its work, and how to tell that it led further. */
export type Trial = { readonly modules: readonly PlacedModule[]; readonly steps: number; readonly better: () => void }

/** Whole units of the search [m], and the longest side it takes. */
const MILLIMETRE = 1e-3
const LONGEST = 20_000
/** Steps for each pair of numbers in the first round; in each later round so many times more. */
const STEPS = 60
const GROWS = 4
const ROUNDS = 4

type Limits = {
  readonly most: { readonly main: number; readonly other: number }
  readonly may: (mains: number, others: number) => boolean
  readonly has: (mains: number, others: number) => boolean
}

/**
 * Both forms in a square room, as boxes of two kinds: from as many of the main form as there may be downwards, how many of the other form go in beside them, a pair of numbers at a
 * time. Pairs that no filling can pass or that are found already are not tried. Small rooms are searched through, others with more steps in each round. Undefined where the
 * room is not square or room before a face must stay free.
 */
export function inContainer(interior: Interior, main: PackModule, other: PackModule, limits: Limits): Generator<Trial, void> | undefined {
  const { low, high } = interior
  if (!low || !high || (main.service && main.service.strip > 0)) return undefined
  const units = (length: number, up: boolean): number => {
    const exact = (length + main.clearance) / MILLIMETRE
    return up ? Math.ceil(exact - 1e-6) : Math.floor(exact + 1e-6)
  }
  const space = high.map((c, i) => units(c - (low[i] as number), false)) as unknown as Whole
  if (space.some(s => s < 1 || s > LONGEST)) return undefined
  const kind = (module: PackModule, count: number): BoxKind => ({
    sides: module.size.map(s => units(s, true)) as unknown as Whole,
    upright: uprightSides(module),
    count,
  })
  return trials(space, low, main, other, kind, limits)
}

function* trials(
  space: Whole,
  low: Vector,
  main: PackModule,
  other: PackModule,
  kind: (module: PackModule, count: number) => BoxKind,
  { most, may, has }: Limits,
): Generator<Trial, void> {
  let budget = STEPS
  for (let round = 0; round < ROUNDS; round++, budget *= GROWS) {
    let [mains, others] = [most.main, 1]
    while (mains >= 1 && others <= most.other) {
      if (has(mains, others)) others++
      else if (!may(mains, others)) mains--
      else {
        const kinds = [kind(main, mains), kind(other, others)],
          { placed, steps } = containerWithin(packContainer(space, kinds, { seed: 1, support: 'none' }), budget)
        yield {
          modules: placed.map(({ kind: k, at, sides }) => standing(low, k === 0 ? main : other, kinds[k] as BoxKind, at, sides, k === 1)),
          // Making the blocks is work too.
          steps: steps + mains + others,
          better: () => {},
        }
        if (!has(mains, others)) mains--
      }
    }
  }
}

/** Which side of a module stands upright when it lies on the faces it may lie on. */
function uprightSides({ down }: BayModule): BoxKind['upright'] {
  const any = (...faces: (typeof MODULE_FACES)[number][]): boolean => faces.some(f => down.includes(f))
  return [any('front', 'back'), any('left', 'right'), any('bottom', 'top')]
}

/** A box of whole units as the module that stands in its low corner. */
function standing(low: Vector, module: PackModule, kind: BoxKind, at: Whole, sides: Whole, other: boolean): PlacedModule {
  const from = at.map((c, i) => (low[i] as number) + c * MILLIMETRE) as unknown as Vector
  const turn = turnsOfModule(module).find(t => t.sides.every((s, i) => unitsOf(s, module, kind) === sides[i]))
  if (!turn) throw new Error('packing: a box lies as its module may not')
  return {
    box: { low: from, high: from.map((c, i) => c + (turn.sides[i] as number)) as unknown as Vector },
    down: turn.down,
    ...(other ? { other: true as const } : {}),
  }
}
const unitsOf = (side: number, { size }: PackModule, { sides }: BoxKind): number => sides[size.indexOf(side)] as number
