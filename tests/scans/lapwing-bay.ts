import type { TriangleMesh, Vector } from '@ampwright/engine'
import { random } from '../../packages/engine/src/numerics/random.ts'

/** Walls of the engine bay of the sample roadster, inside to the bay: a corner and two sides along which it is divided [mm]. */
const WALLS: readonly (readonly [from: Vector, along: Vector, across: Vector])[] = [
  [
    [-560, -460, 230],
    [1040, 0, 0],
    [0, 920, 0],
  ],
  [
    [-560, -460, 230],
    [0, 0, 570],
    [1040, 0, 0],
  ],
  [
    [-560, 460, 230],
    [1040, 0, 0],
    [0, 0, 570],
  ],
  [
    [480, -460, 230],
    [0, 0, 570],
    [0, 920, 0],
  ],
]
const STEP = 115

/**
 * A small scan of the sample roadster's engine bay, open ahead and above: millimetres, in the axes of the car, its skin rough by a millimetre. It stands in
 * samples/attachments/lapwing-bay.stl; a test holds the two together.
 */
export function lapwingBay(): TriangleMesh {
  const chance = random(11),
    positions: number[] = [],
    triangles: number[] = []
  for (const [from, along, across] of WALLS) {
    const [n, m] = [along, across].map(v => Math.round(Math.hypot(...v) / STEP)) as [number, number],
      first = positions.length / 3
    for (let i = 0; i <= n; i++)
      for (let j = 0; j <= m; j++)
        for (let k = 0; k < 3; k++)
          positions.push((from[k] as number) + ((along[k] as number) * i) / n + ((across[k] as number) * j) / m + chance.normal())
    for (let i = 0; i < n; i++)
      for (let j = 0; j < m; j++) {
        const a = first + i * (m + 1) + j,
          b = a + m + 1
        triangles.push(a, b, a + 1, b, b + 1, a + 1)
      }
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) }
}
