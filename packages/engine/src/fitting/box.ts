import { dot, minus, plus, times, type Vector } from './vector.ts'

/** A box square to the axes, by its lowest and highest corner. */
export type AlignedBox = { readonly low: Vector; readonly high: Vector }

/** A box turned as it likes: its centre, half its three sides, and the directions of those sides, each of length one and square to the others. */
export type OrientedBox = { readonly centre: Vector; readonly half: Vector; readonly axes: readonly [Vector, Vector, Vector] }

export const SQUARE: OrientedBox['axes'] = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
]

/** Axes turned by an angle in radians about an axis of the car (0 x, 1 y, 2 z), right-handed. Turns follow one another. */
export function turned(about: 0 | 1 | 2, angle: number, axes: OrientedBox['axes'] = SQUARE): OrientedBox['axes'] {
  const c = Math.cos(angle),
    s = Math.sin(angle),
    i = (about + 1) % 3,
    j = (about + 2) % 3
  const turn = (v: Vector): Vector => {
    const out: [number, number, number] = [v[0], v[1], v[2]]
    const [a, b] = [v[i] as number, v[j] as number]
    out[i] = c * a - s * b
    out[j] = s * a + c * b
    return out
  }
  return [turn(axes[0]), turn(axes[1]), turn(axes[2])]
}

/** Where a place lies in the box's own axes, from its centre. */
export function inBox(box: OrientedBox, place: Vector): Vector {
  const d = minus(place, box.centre)
  return [dot(d, box.axes[0]), dot(d, box.axes[1]), dot(d, box.axes[2])]
}

/** The place of the box's own coordinates. */
export const outOfBox = ({ centre, axes }: OrientedBox, [u, v, w]: Vector): Vector =>
  plus(centre, plus(times(axes[0], u), plus(times(axes[1], v), times(axes[2], w))))

/** The eight corners; bit i of the position says which end of side i. */
export const corners = (box: OrientedBox): readonly Vector[] =>
  Array.from({ length: 8 }, (_, n) =>
    outOfBox(box, [n & 1 ? box.half[0] : -box.half[0], n & 2 ? box.half[1] : -box.half[1], n & 4 ? box.half[2] : -box.half[2]]),
  )

/** The twelve edges, as pairs of positions among the corners. */
export const EDGES: readonly (readonly [number, number])[] = Array.from({ length: 8 }, (_, n) => n).flatMap(n =>
  [1, 2, 4].filter(bit => !(n & bit)).map(bit => [n, n | bit] as const),
)
