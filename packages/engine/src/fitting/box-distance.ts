import { corners, EDGES, type OrientedBox } from './box.ts'
import { nearestInBox } from './point-to-box.ts'
import { segmentToSegment } from './segments.ts'
import { separation } from './separating-axes.ts'
import { between, type Vector } from './vector.ts'

export type Nearest = { readonly distance: number; readonly onFirst: Vector; readonly onSecond: Vector }

/**
 * Exact distance of two turned boxes, m, with the nearest pair of points. Undefined where they overlap or touch: then the depth of `separation` tells more.
 *
 * Two boxes apart come nearest at a corner of one against the other, or at an edge of each: the least over all of these is the distance.
 */
export function boxDistance(a: OrientedBox, b: OrientedBox): Nearest | undefined {
  if (separation(a, b).overlap) return undefined
  const cornersA = corners(a),
    cornersB = corners(b)
  let best: Nearest = { distance: Infinity, onFirst: a.centre, onSecond: b.centre }
  const take = (onFirst: Vector, onSecond: Vector): void => {
    const distance = between(onFirst, onSecond)
    if (distance < best.distance) best = { distance, onFirst, onSecond }
  }
  for (const p of cornersA) take(p, nearestInBox(b, p))
  for (const p of cornersB) take(nearestInBox(a, p), p)
  for (const [i, j] of EDGES)
    for (const [k, l] of EDGES) {
      const found = segmentToSegment(cornersA[i] as Vector, cornersA[j] as Vector, cornersB[k] as Vector, cornersB[l] as Vector)
      if (found.distance < best.distance) best = { distance: found.distance, onFirst: found.onFirst, onSecond: found.onSecond }
    }
  return best
}
