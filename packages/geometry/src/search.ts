import { minus, type OrientedBox, outOfBox, plus } from '@ampwright/engine'
import type { Box3 } from 'three'
import type { NearestPair } from './near/nearest-pair.ts'
import type { PreparedMesh } from './prepare.ts'

/** Goes through the triangles that may come nearer than the best pair, nearest boxes first. `apart` is the squared distance of a box of the tree, or less. */
export function search(mesh: PreparedMesh, best: NearestPair, apart: (box: Box3) => number, look: (at: number) => void): void {
  mesh.tree.shapecast({
    boundsTraverseOrder: apart,
    intersectsBounds: (_box, _leaf, score) => !best.met && (score ?? 0) < best.squared,
    intersectsRange: (offset, count) => {
      for (let at = offset; at < offset + count && !best.met; at++) look(at)
      return best.met
    },
  })
}

/** Squared distance of a box of the tree from a turned box, or less: along the axes of the one and of the other. */
export function boxApart({ centre, half, axes }: OrientedBox): (box: Box3) => number {
  const reach = [0, 1, 2].map(
    i => half[0] * Math.abs(axes[0][i] as number) + half[1] * Math.abs(axes[1][i] as number) + half[2] * Math.abs(axes[2][i] as number),
  ) as [number, number, number]
  const [low, high] = [minus(centre, reach), plus(centre, reach)]
  return ({ min, max }) => {
    const gx = Math.max(0, min.x - high[0], low[0] - max.x),
      gy = Math.max(0, min.y - high[1], low[1] - max.y),
      gz = Math.max(0, min.z - high[2], low[2] - max.z)
    const dx = (min.x + max.x) / 2 - centre[0],
      dy = (min.y + max.y) / 2 - centre[1],
      dz = (min.z + max.z) / 2 - centre[2],
      ex = (max.x - min.x) / 2,
      ey = (max.y - min.y) / 2,
      ez = (max.z - min.z) / 2
    let own = 0
    for (let i = 0; i < 3; i++) {
      const [ux, uy, uz] = axes[i as 0 | 1 | 2],
        gap = Math.abs(dx * ux + dy * uy + dz * uz) - ex * Math.abs(ux) - ey * Math.abs(uy) - ez * Math.abs(uz) - half[i as 0 | 1 | 2]
      if (gap > 0) own += gap * gap
    }
    return Math.max(gx * gx + gy * gy + gz * gz, own)
  }
}

/** A box of the tree of a mesh that stands elsewhere, as the turned box it is there. */
export function posed({ min, max }: Box3, frame: OrientedBox): OrientedBox {
  const centre = outOfBox(frame, [(min.x + max.x) / 2, (min.y + max.y) / 2, (min.z + max.z) / 2])
  return { centre, axes: frame.axes, half: [(max.x - min.x) / 2, (max.y - min.y) / 2, (max.z - min.z) / 2] }
}

/** Squared distance of a box of the tree from the box round a straight piece. */
export function pieceApart(p: Float64Array): (box: Box3) => number {
  const low = [0, 1, 2].map(i => Math.min(p[i] as number, p[i + 3] as number)) as [number, number, number],
    high = [0, 1, 2].map(i => Math.max(p[i] as number, p[i + 3] as number)) as [number, number, number]
  return ({ min, max }) => {
    const gx = Math.max(0, min.x - high[0], low[0] - max.x),
      gy = Math.max(0, min.y - high[1], low[1] - max.y),
      gz = Math.max(0, min.z - high[2], low[2] - max.z)
    return gx * gx + gy * gy + gz * gz
  }
}
