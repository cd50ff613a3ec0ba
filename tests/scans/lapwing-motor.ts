import type { TriangleMesh } from '@ampwright/engine'

/** Half of length and diameter of the sample roadster's motor, and how thick its flange is [mm]. */
const [HALF, RADIUS, BODY, FLANGE] = [160, 135, 115, 20]
const ROUND = 48

/**
 * A small mesh of the sample roadster's motor, millimetres: a round body along its first axis with a flange of the full diameter at its rear. It stands in
 * samples/attachments/lapwing-motor.stl; a test holds the two together.
 */
export function lapwingMotor(): TriangleMesh {
  // Outline from the front end of the axis to its rear end, turned about it.
  const outline: readonly (readonly [x: number, r: number])[] = [
    [-HALF, BODY],
    [HALF - FLANGE, BODY],
    [HALF - FLANGE, RADIUS],
    [HALF, RADIUS],
  ]
  const positions = [-HALF, 0, 0],
    triangles: number[] = [],
    ring = (k: number, i: number): number => 1 + k * ROUND + (i % ROUND)
  for (const [x, r] of outline)
    for (let i = 0; i < ROUND; i++) positions.push(x, r * Math.cos((2 * Math.PI * i) / ROUND), r * Math.sin((2 * Math.PI * i) / ROUND))
  const end = positions.length / 3
  positions.push(HALF, 0, 0)
  for (let i = 0; i < ROUND; i++) {
    triangles.push(0, ring(0, i + 1), ring(0, i))
    for (let k = 0; k + 1 < outline.length; k++) {
      const [a, b, c, d] = [ring(k, i), ring(k, i + 1), ring(k + 1, i), ring(k + 1, i + 1)]
      triangles.push(a, b, d, a, d, c)
    }
    triangles.push(end, ring(outline.length - 1, i), ring(outline.length - 1, i + 1))
  }
  return { positions: Float64Array.from(positions), triangles: Uint32Array.from(triangles) }
}
