import { EDGES, type Vector } from '@ampwright/engine'
import type { NearestPair } from './nearest-pair.ts'
import { type Flat, pieceToPiece, placeToFace, throughFace } from './pieces.ts'

const ROUND = [0, 3, 6, 0] as const
const CORNER_PAIRS = EDGES.map(([i, j]) => [3 * i, 3 * j] as const)

/** The eight corners of a box about the origin, by half its sides. */
export const cornersOf = (half: Vector): Flat =>
  Float64Array.from({ length: 24 }, (_, i) => ((Math.floor(i / 3) >> (i % 3)) & 1 ? 1 : -1) * (half[i % 3] as number))

/**
 * Offers the nearest points of a triangle and a solid box about the origin, square to the axes; tells when they share a place.
 *
 * Apart they are nearest between a corner of the triangle and the box, between two edges, or between a corner of the box and the inside of the triangle. They
 * meet where a corner of the triangle lies in the box, one of its edges enters it, or an edge of the box goes through the triangle.
 */
export function triangleToBox(best: NearestPair, triangle: Flat, half: Vector, corners: Flat): void {
  if (apartAtLeast(triangle, half) >= best.squared) return
  for (let i = 0; i < 9; i += 3) placeToSolid(best, triangle[i] as number, triangle[i + 1] as number, triangle[i + 2] as number, half)
  for (let i = 0; i < 3 && !best.met; i++) entering(best, triangle, ROUND[i] as number, ROUND[i + 1] as number, half)
  if (best.met) return
  for (const [k, l] of CORNER_PAIRS) throughFace(best, corners, k, l, triangle, 0)
  if (best.met) return
  for (let i = 0; i < 3; i++)
    for (const [k, l] of CORNER_PAIRS) pieceToPiece(best, triangle, ROUND[i] as number, ROUND[i + 1] as number, corners, k, l)
  for (let k = 0; k < 24; k += 3)
    placeToFace(best, corners[k] as number, corners[k + 1] as number, corners[k + 2] as number, triangle, 0, true)
}

const held = (q: number, a: number): number => (q > a ? a : q < -a ? -a : q)

function placeToSolid(best: NearestPair, x: number, y: number, z: number, half: Vector): void {
  const [hx, hy, hz] = [held(x, half[0]), held(y, half[1]), held(z, half[2])]
  if (hx === x && hy === y && hz === z) best.meet(x, y, z)
  else best.offer(x, y, z, hx, hy, hz)
}

/** Where a piece enters the box, if it does: it is cut by the three pairs of faces in turn. */
function entering(best: NearestPair, a: Flat, i: number, j: number, half: Vector): void {
  let [from, to] = [0, 1]
  for (let axis = 0; axis < 3; axis++) {
    const p = a[i + axis] as number,
      d = (a[j + axis] as number) - p,
      reach = half[axis as 0 | 1 | 2]
    if (d === 0) {
      if (Math.abs(p) > reach) return
      continue
    }
    const [s, t] = [(-reach - p) / d, (reach - p) / d]
    from = Math.max(from, Math.min(s, t))
    to = Math.min(to, Math.max(s, t))
    if (from > to) return
  }
  const at = (axis: number): number => (a[i + axis] as number) + from * ((a[j + axis] as number) - (a[i + axis] as number))
  best.meet(at(0), at(1), at(2))
}

function apartAtLeast(triangle: Flat, half: Vector): number {
  let sum = 0
  for (let axis = 0; axis < 3; axis++) {
    const [p, q, r] = [triangle[axis], triangle[axis + 3], triangle[axis + 6]] as [number, number, number],
      reach = half[axis as 0 | 1 | 2]
    const gap = Math.max(0, Math.min(p, q, r) - reach, -reach - Math.max(p, q, r))
    sum += gap * gap
  }
  return sum
}
