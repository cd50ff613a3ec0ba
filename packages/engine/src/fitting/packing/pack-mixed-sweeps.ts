import type { Random } from '../../numerics/random.ts'
import type { Vector } from '../vector.ts'
import { type BayLattice, bayLattice, type LatticeTurn } from './bay-lattice.ts'
import { type PlacedModule, stripOf, turnsOfModule } from './bay-module.ts'
import { BayPart, clashes, type Spot, type Sweep, SWEEPS } from './bay-part.ts'
import type { Interior } from './pack-interior.ts'
import type { Trial } from './pack-mixed-container.ts'
import type { PackModule } from './pack-types.ts'

/** Trials in a row that led no further before it is given up. */
const FRUITLESS = 150

/**
 * One form first, so many of it as are drawn, then the other into what is left, each from a side that is drawn: the large form first most of the time. For rooms of every shape, with room
 * before faces too. Ends when a good many trials have led no further.
 */
export function* inTurn(
  { field }: Interior,
  main: PackModule,
  other: PackModule,
  { most, chance }: { readonly most: { readonly main: number; readonly other: number }; readonly chance: Random },
): Generator<Trial, void> {
  const mains = turnsOfModule(main),
    lattice = bayLattice(field, main, [...mains, ...turnsOfModule(other)]),
    table = clashes(lattice.turns)
  const only = (others: boolean): BayPart => {
    const none = new Uint8Array(lattice.open[0]?.length ?? 0),
      open = lattice.open.map((o, t) => (t >= mains.length === others ? o : none))
    return new BayPart({ ...lattice, open }, table)
  }
  const parts = [only(false), only(true)] as const,
    limits = [most.main, most.other] as const,
    volume = (m: PackModule): number => m.size.reduce((a, b) => a * b, 1),
    large = volume(other) >= volume(main) ? 1 : 0
  const filled = (form: 0 | 1, sweep: Sweep, stay: readonly Spot[], wanted: number): { spots: readonly Spot[]; steps: number } => {
    const part = parts[form],
      before = part.steps
    part.open([0, 0, 0], lattice.counts, sweep, stay)
    return { spots: part.fillOnce(chance).slice(0, wanted), steps: part.steps - before }
  }
  const drawn = (): Sweep => SWEEPS[chance.below(SWEEPS.length)] as Sweep
  for (let idle = 0; idle < FRUITLESS; idle++) {
    const first = (chance.below(4) > 0 ? large : 1 - large) as 0 | 1,
      one = filled(first, drawn(), [], 1 + chance.below(Math.max(1, limits[first]))),
      two = filled((1 - first) as 0 | 1, drawn(), one.spots, limits[1 - first] as number)
    yield {
      modules: [...one.spots, ...two.spots].map(spot => standing(lattice, main, spot, spot.turn >= mains.length)),
      steps: Math.max(1, one.steps + two.steps),
      better: () => {
        idle = 0
      },
    }
  }
}

function standing(lattice: BayLattice, module: PackModule, { turn, at }: Spot, other: boolean): PlacedModule {
  const t = (lattice.turns[turn] as LatticeTurn).turn,
    low = at.map((c, i) => (lattice.field.low[i] as number) + c * lattice.step) as unknown as Vector,
    box = { low, high: low.map((c, i) => c + (t.sides[i] as number)) as unknown as Vector },
    strip = stripOf(box, t, module)
  return { box, down: t.down, ...(strip ? { strip } : {}), ...(other ? { other: true as const } : {}) }
}
