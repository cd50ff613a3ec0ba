import { type AlignedBox, type TriangleMesh, triangleCount, type Vector } from '@ampwright/engine'
import { type Closedness, closedness } from './closedness.ts'

export type MeshMeasures = Closedness & {
  readonly triangles: number
  readonly bounds: AlignedBox
  readonly area: number
  /** Only of a closed mesh. Below zero its triangles show their inside. */
  readonly volume?: number
  readonly centre?: Vector
}

/** Lowest and highest corner of all that triangles use. */
export function boundsOf({ positions, triangles }: TriangleMesh): AlignedBox {
  const low: [number, number, number] = [Infinity, Infinity, Infinity],
    high: [number, number, number] = [-Infinity, -Infinity, -Infinity]
  for (const corner of triangles)
    for (let axis = 0; axis < 3; axis++) {
      const x = positions[3 * corner + axis] as number
      if (x < (low[axis] as number)) low[axis] = x
      if (x > (high[axis] as number)) high[axis] = x
    }
  return { low, high }
}

/**
 * Area, extent, and of a closed mesh volume and centre of volume, in the unit of the mesh.
 *
 * Volume by the divergence theorem: each triangle spans a pyramid with one fixed place, here the middle of the extent, so that far from the origin no digits
 * are lost.
 */
export function measures(mesh: TriangleMesh): MeshMeasures {
  const { positions, triangles } = mesh,
    bounds = boundsOf(mesh),
    middle = [0, 1, 2].map(i => ((bounds.low[i] as number) + (bounds.high[i] as number)) / 2) as [number, number, number],
    sum = new Float64Array(5),
    at = new Float64Array(9)
  for (let k = 0; k < triangles.length; k += 3) {
    for (let i = 0; i < 9; i++)
      at[i] = (positions[3 * (triangles[k + Math.floor(i / 3)] as number) + (i % 3)] as number) - (middle[i % 3] as number)
    addTriangle(sum, at)
  }
  const [area, sixfold, mx, my, mz] = sum as unknown as readonly [number, number, number, number, number],
    edges = closedness(mesh),
    base = { triangles: triangleCount(mesh), bounds, area, ...edges }
  if (!edges.closed || sixfold === 0) return base
  const centre: Vector = [middle[0] + mx / sixfold / 4, middle[1] + my / sixfold / 4, middle[2] + mz / sixfold / 4]
  return { ...base, volume: sixfold / 6, centre }
}

/** Adds area, six times the volume, and its moments, of one triangle's pyramid. */
function addTriangle(sum: Float64Array, t: Float64Array): void {
  const [ax, ay, az, bx, by, bz, cx, cy, cz] = t as unknown as readonly [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ]
  const [ux, uy, uz, vx, vy, vz] = [bx - ax, by - ay, bz - az, cx - ax, cy - ay, cz - az]
  const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx],
    sixfold = ax * nx + ay * ny + az * nz
  sum[0] = (sum[0] as number) + Math.hypot(nx, ny, nz) / 2
  sum[1] = (sum[1] as number) + sixfold
  sum[2] = (sum[2] as number) + sixfold * (ax + bx + cx)
  sum[3] = (sum[3] as number) + sixfold * (ay + by + cy)
  sum[4] = (sum[4] as number) + sixfold * (az + bz + cz)
}
