import type { Vector } from './vector.ts'

/**
 * Free space cut into cubes: a cube is free (1) or not (0), x first, then y, then z. A cube only partly free is not free, so that what fits the field
 * fits the space as well as the cubes are small.
 */
export type VoxelField = {
  /** Lowest corner of the first cube [m]. */
  readonly low: Vector
  /** Edge of a cube [m]. */
  readonly edge: number
  /** Cubes along x, y and z. */
  readonly counts: readonly [number, number, number]
  readonly free: Uint8Array
}

/** Where a cube stands in the list. */
export const voxelAt = ({ counts: [nx, ny] }: VoxelField, x: number, y: number, z: number): number => x + nx * (y + ny * z)

/** Volume of the free cubes [m³]. */
export function freeVolume({ edge, free }: VoxelField): number {
  let count = 0
  for (const one of free) count += one
  return count * edge ** 3
}
