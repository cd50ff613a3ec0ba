import type { Cubes } from './cubes.ts'

/** Cubes reached from one of them over shared faces, round those that are touched: 1 for each. */
export function flood({ counts: [nx, ny, nz] }: Cubes, touched: Uint8Array, [x, y, z]: readonly [number, number, number]): Uint8Array {
  const reached = new Uint8Array(touched.length),
    plane = nx * ny
  let left = new Uint32Array(1024),
    count = 0
  const visit = (at: number): void => {
    if (touched[at] || reached[at]) return
    reached[at] = 1
    if (count === left.length) {
      const wider = new Uint32Array(2 * count)
      wider.set(left)
      left = wider
    }
    left[count++] = at
  }
  visit(x + nx * (y + ny * z))
  while (count > 0) {
    const at = left[--count] as number,
      i = at % nx,
      j = Math.floor(at / nx) % ny,
      k = Math.floor(at / plane)
    if (i > 0) visit(at - 1)
    if (i < nx - 1) visit(at + 1)
    if (j > 0) visit(at - nx)
    if (j < ny - 1) visit(at + nx)
    if (k > 0) visit(at - plane)
    if (k < nz - 1) visit(at + plane)
  }
  return reached
}

export const SIDES = ['front', 'rear', 'left', 'right', 'bottom', 'top'] as const
/** How much of each side of the limits was reached, 0 to 1. */
export type Reached = Readonly<Record<(typeof SIDES)[number], number>>

/** How much of each side of the limits a flood reached: x runs rearwards, y to the right, z up. */
export function sidesReached({ counts }: Cubes, reached: Uint8Array): Reached {
  const [nx, ny] = counts
  const share = (axis: 0 | 1 | 2, high: boolean): number => {
    const [u, v] = [(axis + 1) % 3, (axis + 2) % 3] as [0 | 1 | 2, 0 | 1 | 2],
      at: [number, number, number] = [0, 0, 0]
    at[axis] = high ? counts[axis] - 1 : 0
    let sum = 0
    for (at[u] = 0; at[u] < counts[u]; at[u]++)
      for (at[v] = 0; at[v] < counts[v]; at[v]++) sum += reached[at[0] + nx * (at[1] + ny * at[2])] as number
    return sum / (counts[u] * counts[v])
  }
  return {
    front: share(0, false),
    rear: share(0, true),
    left: share(1, false),
    right: share(1, true),
    bottom: share(2, false),
    top: share(2, true),
  }
}
