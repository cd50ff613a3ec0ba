import type { OrientedBox } from './box.ts'
import { cross, dot, lengthOf, minus, times, type Vector } from './vector.ts'

export type Separation = {
  /** The boxes share space, or touch. */
  readonly overlap: boolean
  /** Largest gap over all axes, m. Apart: the distance is at least this. Overlapping: minus the depth, the least push that frees them. */
  readonly gap: number
  /** Direction of that axis, length one, from the first box to the second. */
  readonly axis: Vector
  /** Gap along the three axes of the first box, and of the second, m. */
  readonly ofFirst: Vector
  readonly ofSecond: Vector
}

/** Crossed sides this close to parallel tell nothing new: the axes of the boxes stand for them. */
const PARALLEL = 1e-9

/**
 * Whether two turned boxes overlap, by the fifteen axes along which boxes can be apart: three of each, and nine square to a side of both.
 *
 * Source: Gottschalk, Lin and Manocha, OBBTree, SIGGRAPH 1996 (from memory); Ericson, Real-Time Collision Detection (2005), 4.4.1 (from memory).
 */
export function separation(a: OrientedBox, b: OrientedBox): Separation {
  const t = minus(b.centre, a.centre)
  const reach = (box: OrientedBox, l: Vector): number =>
    box.half[0] * Math.abs(dot(box.axes[0], l)) + box.half[1] * Math.abs(dot(box.axes[1], l)) + box.half[2] * Math.abs(dot(box.axes[2], l))
  const gapAlong = (l: Vector): number => Math.abs(dot(t, l)) - reach(a, l) - reach(b, l)
  let gap = -Infinity,
    axis: Vector = a.axes[0]
  const along = (l: Vector): number => {
    const g = gapAlong(l)
    if (g > gap) {
      gap = g
      axis = dot(t, l) < 0 ? times(l, -1) : l
    }
    return g
  }
  const ofFirst: Vector = [along(a.axes[0]), along(a.axes[1]), along(a.axes[2])]
  const ofSecond: Vector = [along(b.axes[0]), along(b.axes[1]), along(b.axes[2])]
  for (const u of a.axes)
    for (const v of b.axes) {
      const l = cross(u, v),
        size = lengthOf(l)
      if (size > PARALLEL) along(times(l, 1 / size))
    }
  return { overlap: gap <= 0, gap, axis, ofFirst, ofSecond }
}
