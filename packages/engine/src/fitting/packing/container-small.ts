import type { Whole } from './answer.ts'
import { type BlockBox, type BoxKind, type Support, waysRound } from './container-blocks.ts'
import { commonDivisor } from './raster.ts'
import { type Chosen, FEW_CELLS, searchThrough, type Way } from './search-through.ts'

/** More boxes than this are no small case. */
const FEW_BOXES = 40
const STEPS = 8000

/**
 * A small space searched through, or undefined where it is not small. All sides of boxes share a divisor: places are whole numbers of it, which loses nothing, for all
 * places of an arrangement can be rounded down to such together.
 */
export function searchContainerThrough(
  space: Whole,
  kinds: readonly BoxKind[],
  support: Support,
): { readonly placed: readonly BlockBox[]; readonly volume: number; readonly proven: boolean; readonly steps: number } | undefined {
  const used = kinds.filter(k => k.count > 0),
    unit = used.flatMap(k => k.sides).reduce(commonDivisor, 0)
  if (unit === 0) return { placed: [], volume: 0, proven: true, steps: 0 }
  const size = space.map(s => Math.floor(s / unit)) as unknown as Whole,
    cells = size[0] * size[1] * size[2]
  if (cells > FEW_CELLS || used.reduce((sum, k) => sum + k.count, 0) > FEW_BOXES) return undefined
  const ways: Way[] = kinds.flatMap((k, kind) =>
    k.count > 0 ? waysRound(k).map(w => ({ kind, sides: w.map(s => s / unit) as unknown as Whole })) : [],
  )
  ways.sort((a, b) => product(b.sides) - product(a.sides))
  const may = support === 'full' ? (one: Chosen, chosen: readonly Chosen[]) => stands(ways, one, chosen) : () => true
  const found = searchThrough(
    size,
    new Uint8Array(cells).fill(1),
    ways,
    kinds.map(k => k.count),
    may,
    true,
    STEPS,
  )
  const placed = found.chosen.map(({ way, at }): BlockBox => {
    const { kind, sides } = ways[way] as Way
    return { kind, at: scaled(at, unit), sides: scaled(sides, unit) }
  })
  return { placed, volume: Math.max(0, found.cells) * unit ** 3, proven: found.proven, steps: found.steps }
}

const product = (sides: Whole): number => sides[0] * sides[1] * sides[2]
const scaled = (a: Whole, by: number): Whole => [a[0] * by, a[1] * by, a[2] * by]

/** Whether a box stands with its whole floor on boxes that end at its height, or on the floor of the space. */
function stands(ways: readonly Way[], { way, at }: Chosen, chosen: readonly Chosen[]): boolean {
  if (at[2] === 0) return true
  const [a, b] = (ways[way] as Way).sides
  let carried = 0
  for (const below of chosen) {
    const [c, d, h] = (ways[below.way] as Way).sides
    if (below.at[2] + h !== at[2]) continue
    const along = Math.min(at[0] + a, below.at[0] + c) - Math.max(at[0], below.at[0]),
      across = Math.min(at[1] + b, below.at[1] + d) - Math.max(at[1], below.at[1])
    if (along > 0 && across > 0) carried += along * across
  }
  return carried === a * b
}
