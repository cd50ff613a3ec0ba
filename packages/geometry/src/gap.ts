import { inBox, lengthOf, minus, type OrientedBox, outOfBox, plus, SQUARE, times, type Tube, type Vector } from '@ampwright/engine'
import { Box3 } from 'three'
import { cornersOf, triangleToBox } from './near/box.ts'
import { NearestPair } from './near/nearest-pair.ts'
import { pieceToTriangle, triangleToTriangle } from './near/triangles.ts'
import type { PreparedMesh } from './prepare.ts'
import { boxApart, pieceApart, posed, search } from './search.ts'
import { insideOf } from './winding.ts'

/** How near two things come. */
export type Gap = {
  /** m; 0 where they overlap or touch. */
  readonly gap: number
  readonly overlap: boolean
  /** The nearest pair of points; where they overlap, twice one place they share. */
  readonly onFirst: Vector
  readonly onSecond: Vector
}

/** `upTo`: gaps wider than this are not wanted, which is quicker; without one within it there is no answer. */
export type GapOptions = { readonly upTo?: number }

/** Smallest gap between a mesh and a solid box, exact over all triangles. A box inside a solid mesh overlaps it. */
export function gapToBox(mesh: PreparedMesh, box: OrientedBox, { upTo = Infinity }: GapOptions = {}): Gap | undefined {
  if (mesh.solid && insideOf(mesh.mesh, box.centre)) return shared(box.centre)
  const best = new NearestPair(upTo),
    triangle = new Float64Array(9),
    corners = cornersOf(box.half)
  search(mesh, best, boxApart(box), at => {
    mesh.triangle(at, triangle)
    toBox(triangle, box)
    triangleToBox(best, triangle, box.half, corners)
  })
  const found = told(best, upTo)
  return found && { ...found, onFirst: outOfBox(box, found.onFirst), onSecond: outOfBox(box, found.onSecond) }
}

/** Where a mesh stands when it is not moved itself: its origin, and the directions its axes have there. A part that is dragged keeps its tree. */
export type Pose = Pick<OrientedBox, 'centre' | 'axes'>
const STILL: Pose = { centre: [0, 0, 0], axes: SQUARE }

/** Smallest gap between two meshes, the second where `pose` puts it, exact over all triangles. One that lies inside a solid other overlaps it. */
export function gapBetween(
  a: PreparedMesh,
  b: PreparedMesh,
  { upTo = Infinity, pose = STILL }: GapOptions & { readonly pose?: Pose } = {},
): Gap | undefined {
  const frame: OrientedBox = { ...pose, half: [0, 0, 0] },
    onB = outOfBox(frame, anyCorner(b))
  if (a.solid && insideOf(a.mesh, onB)) return shared(onB)
  if (b.solid && insideOf(b.mesh, inBox(frame, anyCorner(a)))) return shared(anyCorner(a))
  // Leaf by leaf of the larger mesh, for most of it is further off than the smaller one as a whole; reckoned in the axes of the smaller.
  const aLarger = extent(a) >= extent(b),
    best = new NearestPair(upTo)
  if (aLarger) leafByLeaf(a, b, turnedRound(frame), best)
  else leafByLeaf(b, a, frame, best)
  const found = told(best, upTo)
  if (!found) return undefined
  return aLarger
    ? { ...found, onFirst: outOfBox(frame, found.onFirst), onSecond: outOfBox(frame, found.onSecond) }
    : { ...found, onFirst: found.onSecond, onSecond: found.onFirst }
}

/** Offers the nearest points of two meshes, in the axes of the inner one, into which `frame` brings the outer. What is further from a leaf's box than the best pair is left out whole. */
function leafByLeaf(outer: PreparedMesh, inner: PreparedMesh, frame: OrientedBox, best: NearestPair): void {
  const whole = inner.tree.getBoundingBox(new Box3()),
    triangle = new Float64Array(9)
  outer.tree.shapecast({
    boundsTraverseOrder: box => boxApart(posed(box, frame))(whole),
    intersectsBounds: (_box, _leaf, score) => !best.met && (score ?? 0) < best.squared,
    intersectsRange: (offset, count, _contained, _depth, _node, leaf) => {
      const list = Array.from({ length: count }, (_, i) => {
        outer.triangle(offset + i, triangle)
        return fromBox(triangle, frame)
      })
      search(inner, best, boxApart(posed(leaf, frame)), at => {
        inner.triangle(at, triangle)
        for (const one of list) if (!best.met) triangleToTriangle(best, one, triangle)
      })
      return best.met
    },
  })
}

function extent({ tree }: PreparedMesh): number {
  const { min, max } = tree.getBoundingBox(new Box3())
  return Math.max(max.x - min.x, max.y - min.y, max.z - min.z)
}

/** The frame that brings back what a frame took away. */
function turnedRound({ centre, axes: [u, v, w], half }: OrientedBox): OrientedBox {
  const back = inBox({ centre: [0, 0, 0], axes: [u, v, w], half }, centre)
  return {
    half,
    centre: times(back, -1),
    axes: [
      [u[0], v[0], w[0]],
      [u[1], v[1], w[1]],
      [u[2], v[2], w[2]],
    ],
  }
}

/** Smallest gap between a mesh and a round thing about straight pieces: hose, shaft, cable; one point is a ball. Throws RangeError when it has no point. */
export function gapToTube(mesh: PreparedMesh, { points, radius }: Tube, { upTo = Infinity }: GapOptions = {}): Gap | undefined {
  const [first] = points
  if (!first) throw new RangeError('gapToTube: the tube must have at least one point, found none')
  if (mesh.solid && insideOf(mesh.mesh, first)) return shared(first)
  const best = new NearestPair(upTo + radius),
    piece = new Float64Array(6),
    triangle = new Float64Array(9)
  for (let i = 0; i < Math.max(1, points.length - 1) && !best.met; i++) {
    piece.set([...(points[i] as Vector), ...(points[i + 1] ?? first)])
    search(mesh, best, pieceApart(piece), at => {
      mesh.triangle(at, triangle)
      pieceToTriangle(best, piece, triangle)
    })
  }
  const found = told(best, upTo + radius)
  if (!found) return undefined
  // The line comes first in the pair; its point is moved out to the skin, towards the mesh.
  if (found.gap <= radius) return { ...shared(found.onSecond), onFirst: found.onSecond }
  const out = minus(found.onSecond, found.onFirst)
  return {
    gap: found.gap - radius,
    overlap: false,
    onFirst: found.onSecond,
    onSecond: plus(found.onFirst, times(out, radius / lengthOf(out))),
  }
}

const shared = (place: Vector): Gap => ({ gap: 0, overlap: true, onFirst: place, onSecond: place })

function told(best: NearestPair, upTo: number): Gap | undefined {
  if (best.met) return shared(best.first)
  if (!(best.squared < upTo * upTo)) return undefined
  return { gap: Math.sqrt(best.squared), overlap: false, onFirst: best.first, onSecond: best.second }
}

/** A triangle in the axes of a box, from its centre. */
function toBox(triangle: Float64Array, { centre: [cx, cy, cz], axes: [u, v, w] }: OrientedBox): void {
  for (let i = 0; i < 9; i += 3) {
    const x = (triangle[i] as number) - cx,
      y = (triangle[i + 1] as number) - cy,
      z = (triangle[i + 2] as number) - cz
    triangle[i] = u[0] * x + u[1] * y + u[2] * z
    triangle[i + 1] = v[0] * x + v[1] * y + v[2] * z
    triangle[i + 2] = w[0] * x + w[1] * y + w[2] * z
  }
}

/** A triangle of a posed mesh in the car. */
function fromBox(triangle: Float64Array, { centre, axes: [u, v, w] }: OrientedBox): Float64Array {
  const out = new Float64Array(9)
  for (let i = 0; i < 9; i += 3) {
    const [x, y, z] = [triangle[i], triangle[i + 1], triangle[i + 2]] as [number, number, number]
    for (const axis of [0, 1, 2] as const) out[i + axis] = centre[axis] + u[axis] * x + v[axis] * y + w[axis] * z
  }
  return out
}

/** Any place of a mesh. */
function anyCorner({ mesh: { positions, triangles } }: PreparedMesh): Vector {
  const at = 3 * (triangles[0] as number)
  return [positions[at] as number, positions[at + 1] as number, positions[at + 2] as number]
}
