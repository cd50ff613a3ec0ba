import type { Random } from '../../numerics/random.ts'
import type { Placed, Whole } from './answer.ts'
import type { Fill, Filled } from './fill.ts'
import { raster } from './raster.ts'

type Candidate = Placed & { readonly end: Whole }
/** More points than this are many small boxes: filling from the bottom up serves them better. */
const POINTS = 64

/**
 * Search for as many boxes as a net has points, for spaces only a few boxes wide. The points lie closer than the shortest side, so each box holds at least one;
 * with as many boxes as points, each holds exactly one. Boxes about the first points of an axis stand at the start, those about the last at the end, the
 * others on sums of sides. The point with the fewest boxes left to it is served next.
 *
 * `look` finds one box for every point or says 'open', also where there is no such packing. Undefined where there are too many points.
 */
export function net(space: Whole, turns: readonly Whole[]): (Fill & { readonly boxes: number }) | undefined {
  const short = Math.min(...turns.flat())
  const counts = space.map(side => Math.floor(side / short)) as unknown as Whole
  const boxes = counts[0] * counts[1] * counts[2]
  if (boxes < 1 || boxes > POINTS) return undefined
  const points = ([0, 1, 2] as const).map(axis => raster(space[axis], [...new Set(turns.map(t => t[axis]))]).points)
  const at = (axis: 0 | 1 | 2, i: number): number => (space[axis] * (i + 1)) / (counts[axis] + 1)
  const starts = (axis: 0 | 1 | 2, i: number, side: number): readonly number[] => {
    const last = i === counts[axis] - 1
    const holds = (from: number): boolean =>
      from >= 0 &&
      from + side <= space[axis] &&
      from < at(axis, i) &&
      from + side > at(axis, i) &&
      (i === 0 || from >= at(axis, i - 1)) &&
      (last || from + side <= at(axis, i + 1))
    return (i === 0 ? [0] : last ? [space[axis] - side] : (points[axis] as readonly number[])).filter(holds)
  }
  const slots: Candidate[][] = []
  for (let k = 0; k < counts[2]; k++)
    for (let j = 0; j < counts[1]; j++)
      for (let i = 0; i < counts[0]; i++)
        slots.push(
          turns.flatMap(sides =>
            starts(0, i, sides[0]).flatMap(x =>
              starts(1, j, sides[1]).flatMap(y =>
                starts(2, k, sides[2]).map((z): Candidate => ({ at: [x, y, z], sides, end: [x + sides[0], y + sides[1], z + sides[2]] })),
              ),
            ),
          ),
        )
  let steps = 0
  const look = (wanted: number, budget: number, chance: Random): Filled => {
    const stop = steps + budget
    const go = (left: readonly (readonly Candidate[])[], placed: readonly Placed[]): readonly Placed[] | undefined => {
      if (++steps > stop) return undefined
      const next = left.reduce((best, slot) => (slot.length < best.length ? slot : best), left[0] as readonly Candidate[])
      if (left.length === 0) return placed
      const others = left.filter(slot => slot !== next)
      for (const one of inAnyOrder(next, chance)) {
        const kept: (readonly Candidate[])[] = []
        for (const slot of others) {
          const clear = slot.filter(c => !overlap(c, one))
          if (clear.length === 0) break
          kept.push(clear)
        }
        if (kept.length < others.length) continue
        const found = go(kept, [...placed, { at: one.at, sides: one.sides }])
        if (found || steps > stop) return found
      }
      return undefined
    }
    const found = wanted <= boxes ? go(slots, []) : undefined
    return found ? { placed: found } : 'open'
  }
  return { boxes, look, steps: () => steps }
}

const overlap = (a: Candidate, b: Candidate): boolean =>
  a.at[0] < b.end[0] && b.at[0] < a.end[0] && a.at[1] < b.end[1] && b.at[1] < a.end[1] && a.at[2] < b.end[2] && b.at[2] < a.end[2]

function inAnyOrder<T>(list: readonly T[], chance: Random): readonly T[] {
  const out = [...list]
  for (let i = out.length - 1; i > 0; i--) {
    const j = chance.below(i + 1)
    ;[out[i], out[j]] = [out[j] as T, out[i] as T]
  }
  return out
}
