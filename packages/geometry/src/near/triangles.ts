import type { NearestPair } from './nearest-pair.ts'
import { type Flat, pieceToPiece, placeToFace, throughFace } from './pieces.ts'

/** Where each corner of a triangle begins among its nine numbers, in a round. */
const ROUND = [0, 3, 6, 0] as const

/**
 * Offers the nearest points of two triangles, nine numbers each; tells when they meet.
 *
 * Apart they are nearest between two edges, or between a corner and the inside of the other; they cross where an edge goes through the other's inside. Of two
 * in one plane that overlap, edges cross or a corner lies in the other, at distance 0.
 */
export function triangleToTriangle(best: NearestPair, a: Flat, b: Flat): void {
  if (apartAtLeast(a, 9, b, 9) >= best.squared) return
  for (let i = 0; i < 3; i++) for (let j = 0; j < 3; j++) edges(best, a, i, b, j)
  for (let i = 0; i < 9; i += 3) {
    placeToFace(best, a[i] as number, a[i + 1] as number, a[i + 2] as number, b, 0, false)
    placeToFace(best, b[i] as number, b[i + 1] as number, b[i + 2] as number, a, 0, true)
  }
  if (best.met || apartAtLeast(a, 9, b, 9) > 0) return
  for (let i = 0; i < 3 && !best.met; i++) {
    throughFace(best, a, ROUND[i] as number, ROUND[i + 1] as number, b, 0)
    throughFace(best, b, ROUND[i] as number, ROUND[i + 1] as number, a, 0)
  }
}

function edges(best: NearestPair, a: Flat, i: number, b: Flat, j: number): void {
  pieceToPiece(best, a, ROUND[i] as number, ROUND[i + 1] as number, b, ROUND[j] as number, ROUND[j + 1] as number)
}

/** Offers the nearest points of a straight piece (six numbers, which may be one place) and a triangle; tells when it goes through. */
export function pieceToTriangle(best: NearestPair, piece: Flat, triangle: Flat): void {
  if (apartAtLeast(piece, 6, triangle, 9) >= best.squared) return
  for (let j = 0; j < 3; j++) pieceToPiece(best, piece, 0, 3, triangle, ROUND[j] as number, ROUND[j + 1] as number)
  for (let i = 0; i < 6; i += 3) placeToFace(best, piece[i] as number, piece[i + 1] as number, piece[i + 2] as number, triangle, 0, false)
  if (!best.met) throughFace(best, piece, 0, 3, triangle, 0)
}

/** Squared distance of the boxes round two lists of places: they are at least that far apart. */
function apartAtLeast(a: Flat, countA: number, b: Flat, countB: number): number {
  let sum = 0
  for (let axis = 0; axis < 3; axis++) {
    let [lowA, highA, lowB, highB] = [Infinity, -Infinity, Infinity, -Infinity]
    for (let i = axis; i < countA; i += 3) {
      const x = a[i] as number
      if (x < lowA) lowA = x
      if (x > highA) highA = x
    }
    for (let i = axis; i < countB; i += 3) {
      const x = b[i] as number
      if (x < lowB) lowB = x
      if (x > highB) highB = x
    }
    const gap = Math.max(0, lowB - highA, lowA - highB)
    sum += gap * gap
  }
  return sum
}
