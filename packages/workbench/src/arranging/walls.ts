import { type AlignedBox, cornersOf, isGap, type Space } from '@ampwright/engine'

/** Pieces along a space its slanted walls are cut into: few cuboids keep the search for free rooms quick. */
const PIECES = 6

type Corner = readonly [x: number, y: number]

/**
 * What lies behind the walls of a space that do not stand square, as cuboids as high as the space, with so much air before the walls; none where it has no outline, undefined where a corner or an
 * end is not known yet. Between two pieces the wall is taken where it comes in furthest: never less than there is, and less free room than there is at most by the slant of one piece.
 */
export function behindWalls(space: Space, air: number): readonly AlignedBox[] | undefined {
  const corners = cornersOf(space)
  if (corners.length < 3) return []
  const ring = corners.map(([, { x, y }]): Corner => [isGap(x) ? Number.NaN : x.value, isGap(y) ? Number.NaN : y.value]),
    [front, rear, left, right, bottom, top] = [space.front, space.rear, space.left, space.right, space.bottom, space.top].map(f =>
      isGap(f) ? Number.NaN : f.value,
    ) as [number, number, number, number, number, number]
  if ([...ring.flat(), front, rear, left, right, bottom, top].some(Number.isNaN)) return undefined
  // The last piece ends at the rear itself: a sum may lie a hair beyond it, where there are no walls.
  const cuts = [...Array.from({ length: PIECES }, (_, k) => front + ((rear - front) * k) / PIECES), rear]
  return cuts.slice(1).flatMap((to, k): readonly AlignedBox[] => {
    const from = cuts[k] as number,
      at = [from, to, ...ring.map(([x]) => x).filter(x => x > from && x < to)].map(x => insideAt(ring, x)),
      across = air * slantOf(ring),
      within = { low: Math.max(...at.map(i => i.low)) + across, high: Math.min(...at.map(i => i.high)) - across }
    // Where the walls leave nothing, nothing is left.
    if (within.low >= within.high) return [{ low: [from, left, bottom], high: [to, right, top] }]
    return [
      { low: [from, left, bottom] as const, high: [to, within.low, top] as const },
      { low: [from, within.high, bottom] as const, high: [to, right, top] as const },
    ].filter(b => b.high[1] > b.low[1])
  })
}

/** Air square to a slanted wall is so much more straight across the car; of a wall nearer to across than along, no more than twice. */
const slantOf = (ring: readonly Corner[]): number =>
  Math.max(
    ...ring.map(([x, y], i) => {
      const [u, v] = ring[(i + 1) % ring.length] as Corner
      return u === x ? 1 : Math.min(2, Math.hypot(1, (v - y) / (u - x)))
    }),
  )

/** The widest stretch across the car inside a ring of corners, at one place along it; an empty one where the ring does not reach. */
function insideAt(ring: readonly Corner[], x: number): { readonly low: number; readonly high: number } {
  const crossed = ring
    .flatMap((a, i): readonly number[] => {
      const b = ring[(i + 1) % ring.length] as Corner
      if (a[0] === b[0]) return a[0] === x ? [a[1], b[1]] : []
      const t = (x - a[0]) / (b[0] - a[0])
      return t < 0 || t > 1 ? [] : [a[1] + t * (b[1] - a[1])]
    })
    .sort((p, q) => p - q)
  let widest = { low: 0, high: 0 }
  for (const [i, low] of crossed.entries()) {
    const high = crossed[i + 1]
    if (high !== undefined && high - low > widest.high - widest.low) widest = { low, high }
  }
  return widest
}
