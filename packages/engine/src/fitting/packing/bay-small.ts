import type { Whole } from './answer.ts'
import { type BayLattice, HAIR, type LatticeTurn } from './bay-lattice.ts'
import type { BayModule } from './bay-module.ts'
import { type Clashes, clash, type Spot } from './bay-part.ts'
import { FEW_CELLS, searchThrough } from './search-through.ts'

const STEPS = 8000

/**
 * A small bay searched through on its lattice, or undefined where it is not small. Proven only where sides, clearance and strip are whole steps: then every arrangement can be
 * rounded down to the lattice, all modules together, and stays one.
 */
export function searchBayThrough(
  { counts, turns, open, field, cut, step }: BayLattice,
  module: BayModule,
  table: Clashes,
): { readonly spots: readonly Spot[]; readonly proven: boolean; readonly steps: number } | undefined {
  const [nx, ny, nz] = counts
  if (nx * ny * nz > FEW_CELLS) return undefined
  const free = new Uint8Array(nx * ny * nz)
  for (let z = 0, i = 0; z < nz; z++)
    for (let y = 0; y < ny; y++)
      for (let x = 0; x < nx; x++, i++)
        free[i] = field.free[
          Math.floor(x / cut) + field.counts[0] * (Math.floor(y / cut) + field.counts[1] * Math.floor(z / cut))
        ] as number
  const spotOf = ({ way, at }: { readonly way: number; readonly at: Whole }): Spot => ({ turn: way, at })
  const found = searchThrough(
    counts,
    free,
    turns.map(({ body }) => ({ kind: 0, sides: body })),
    [free.length],
    (one, chosen) => {
      const [x, y, z] = one.at
      return open[one.way]?.[x + nx * (y + ny * z)] === 1 && chosen.every(o => !clash(table, spotOf(o), spotOf(one)))
    },
    module.clearance === 0 && !module.service,
    STEPS,
  )
  const lengths = [...module.size, module.clearance, module.service?.strip ?? 0]
  const whole = lengths.every(l => Math.abs(l / step - Math.round(l / step)) < HAIR)
  return { spots: found.chosen.map(spotOf), proven: found.proven && whole && turns.every(sameVolume(turns[0])), steps: found.steps }
}

/** On the lattice every turn must take as many cells, or filling most cells would not be placing most modules. */
const sameVolume =
  (first: LatticeTurn | undefined) =>
  ({ body }: LatticeTurn): boolean =>
    first !== undefined && body[0] * body[1] * body[2] === first.body[0] * first.body[1] * first.body[2]
