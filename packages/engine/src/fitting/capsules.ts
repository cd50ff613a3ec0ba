import { segmentToSegment } from './segments.ts'
import type { Vector } from './vector.ts'

/** A round thing about a line of straight pieces: hose, shaft, cable. One point is a ball. */
export type Tube = { readonly points: readonly Vector[]; readonly radius: number }
export type Near = {
  /** Clearance, m; below zero they run into each other. */
  readonly clearance: number
  /** Which piece of each comes nearest, counted from 0. */
  readonly pieceA: number
  readonly pieceB: number
}

/** Clearance of two tubes, the least over all pairs of pieces. Throws RangeError when one has no point. */
export function tubeClearance(a: Tube, b: Tube): Near {
  let best: Near = { clearance: Infinity, pieceA: 0, pieceB: 0 }
  const piecesA = pieces(a),
    piecesB = pieces(b)
  piecesA.forEach(([p1, q1], pieceA) => {
    piecesB.forEach(([p2, q2], pieceB) => {
      const clearance = segmentToSegment(p1, q1, p2, q2).distance - a.radius - b.radius
      if (clearance < best.clearance) best = { clearance, pieceA, pieceB }
    })
  })
  return best
}

function pieces({ points }: Tube): readonly (readonly [Vector, Vector])[] {
  const [first] = points
  if (!first) throw new RangeError('tube: needs at least one point, found none')
  return points.length === 1 ? [[first, first]] : points.slice(1).map((q, i) => [points[i] as Vector, q] as const)
}
