import type { AlignedBox, Vector } from '@ampwright/engine'

/** Cubes that fill limits from their lowest corner on; a strip narrower than a cube may stay over at the high ends. */
export type Cubes = { readonly low: Vector; readonly edge: number; readonly counts: readonly [number, number, number] }

/** More cubes than this take too much room. */
export const MOST_CUBES = 64_000_000

/** The cubes of this edge that fit into limits. A strip that lacks a billionth of a cube counts as a cube: it is rounding. */
export function cubesIn({ low, high }: AlignedBox, edge: number): Cubes {
  const along = (axis: 0 | 1 | 2): number => Math.max(0, Math.floor((high[axis] - low[axis]) / edge + 1e-9))
  return { low, edge, counts: [along(0), along(1), along(2)] }
}

/** Which cube a place lies in, or undefined where it lies in none. */
export function cubeAt({ low, edge, counts }: Cubes, place: Vector): readonly [number, number, number] | undefined {
  const [x, y, z] = [0, 1, 2].map(i => Math.floor(((place[i] as number) - (low[i] as number)) / edge)) as [number, number, number]
  return x >= 0 && y >= 0 && z >= 0 && x < counts[0] && y < counts[1] && z < counts[2] ? [x, y, z] : undefined
}

export const middleOf = ({ low, edge }: Cubes, x: number, y: number, z: number): Vector => [
  low[0] + (x + 0.5) * edge,
  low[1] + (y + 0.5) * edge,
  low[2] + (z + 0.5) * edge,
]
