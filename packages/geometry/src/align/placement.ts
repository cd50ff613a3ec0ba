import type { TriangleMesh, Vector } from '@ampwright/engine'

/**
 * How places of a file become places in the car: first scaled to metres, then turned (and mirrored, where the scan is), then moved. Rows of `turn` are the axes
 * of the car in those of the file.
 */
export type Placement = { readonly scale: number; readonly turn: readonly [Vector, Vector, Vector]; readonly shift: Vector }

const along = ([a, b, c]: Vector, x: number, y: number, z: number): number => a * x + b * y + c * z

/** A place of the file in the car. */
export const inCar = ({ scale, turn, shift }: Placement, [x, y, z]: Vector): Vector => [
  scale * along(turn[0], x, y, z) + shift[0],
  scale * along(turn[1], x, y, z) + shift[1],
  scale * along(turn[2], x, y, z) + shift[2],
]

/** A place in the car in the file. */
export function inFile({ scale, turn, shift }: Placement, place: Vector): Vector {
  const [x, y, z] = [0, 1, 2].map(i => ((place[i] as number) - (shift[i] as number)) / scale) as [number, number, number]
  return [0, 1, 2].map(i => (turn[0][i] as number) * x + (turn[1][i] as number) * y + (turn[2][i] as number) * z) as [
    number,
    number,
    number,
  ]
}

/** Whether a placement mirrors: left becomes right. */
export const mirrors = ({ turn: [u, v, w] }: Placement): boolean =>
  u[0] * (v[1] * w[2] - v[2] * w[1]) + u[1] * (v[2] * w[0] - v[0] * w[2]) + u[2] * (v[0] * w[1] - v[1] * w[0]) < 0

/** A mesh of the file in the car, m. A mirrored one has its triangles turned over, so that their outside stays outside. */
export function placed({ positions, triangles }: TriangleMesh, placement: Placement): TriangleMesh {
  const out = new Float64Array(positions.length),
    { scale, turn, shift } = placement
  for (let i = 0; i < positions.length; i += 3) {
    const [x, y, z] = [positions[i], positions[i + 1], positions[i + 2]] as [number, number, number]
    for (let row = 0; row < 3; row++) out[i + row] = scale * along(turn[row as 0 | 1 | 2], x, y, z) + (shift[row] as number)
  }
  const order = triangles.slice()
  if (mirrors(placement))
    for (let k = 0; k < order.length; k += 3) {
      order[k + 1] = triangles[k + 2] as number
      order[k + 2] = triangles[k + 1] as number
    }
  return { positions: out, triangles: order }
}
