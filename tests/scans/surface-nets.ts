import type { AlignedBox, TriangleMesh } from '@ampwright/engine'

/** Signed distance of a place from the skin of a body, m, or less in size: above 0 in the open. */
export type Skin = (x: number, y: number, z: number) => number

/** A list of numbers that grows. */
class List {
  values = new Float64Array(4096)
  length = 0
  push(...more: readonly number[]): void {
    if (this.length + more.length > this.values.length) {
      const wider = new Float64Array(2 * this.values.length)
      wider.set(this.values)
      this.values = wider
    }
    for (const value of more) this.values[this.length++] = value
  }
}

/**
 * The skin as a mesh whose triangles face the open, by naive surface nets: one corner in each cube the skin passes, at the middle of where it cuts its edges; two
 * triangles across each edge it cuts. Open where the skin leaves the limits.
 *
 * Source: S. F. F. Gibson, Constrained elastic surface nets, MICCAI 1998 (from memory).
 */
export function skinMesh(skin: Skin, { low, high }: AlignedBox, edge: number): TriangleMesh {
  const [nx, ny, nz] = [0, 1, 2].map(i => Math.floor(((high[i] as number) - (low[i] as number)) / edge) + 1) as [number, number, number]
  const layerOf = (k: number): Float64Array => {
    const out = new Float64Array(nx * ny)
    for (let j = 0; j < ny; j++)
      for (let i = 0; i < nx; ) {
        const d = skin(low[0] + i * edge, low[1] + j * edge, low[2] + k * edge)
        out[i++ + nx * j] = d
        // The distance is a promise: as many places further on have the same sign.
        for (let free = Math.floor(Math.abs(d) / edge) - 2; free > 0 && i < nx; free--) out[i++ + nx * j] = d
      }
    return out
  }
  const positions = new List(),
    triangles = new List(),
    corners = [0, 1, 2, 3, 4, 5, 6, 7]
  let below = layerOf(0),
    under = new Int32Array(nx * ny).fill(-1)
  for (let k = 0; k + 1 < nz; k++) {
    const above = layerOf(k + 1),
      here = new Int32Array(nx * ny).fill(-1)
    const value = (i: number, j: number, corner: number): number =>
      (corner & 4 ? above : below)[i + (corner & 1) + nx * (j + ((corner >> 1) & 1))] as number
    for (let j = 0; j + 1 < ny; j++)
      for (let i = 0; i + 1 < nx; i++) {
        const at = corners.map(c => value(i, j, c)),
          open = at.filter(d => d > 0).length
        if (open === 0 || open === 8) continue
        const sum = [0, 0, 0]
        let cuts = 0
        for (const c of corners)
          for (const bit of [1, 2, 4]) {
            if (c & bit) continue
            const [d, e] = [at[c] as number, at[c | bit] as number]
            if (d > 0 === e > 0) continue
            const t = d / (d - e)
            for (let axis = 0; axis < 3; axis++) sum[axis] = (sum[axis] as number) + ((c >> axis) & 1) + (bit === 1 << axis ? t : 0)
            cuts++
          }
        here[i + nx * j] = positions.length / 3
        positions.push(
          low[0] + (i + (sum[0] as number) / cuts) * edge,
          low[1] + (j + (sum[1] as number) / cuts) * edge,
          low[2] + (k + (sum[2] as number) / cuts) * edge,
        )
      }
    const across = (from: number, to: number, cells: readonly number[]): void => {
      if (from > 0 === to > 0 || cells.some(c => c < 0)) return
      const [a, b, c, d] = (from > 0 ? [...cells].reverse() : cells) as [number, number, number, number]
      triangles.push(a, b, c, a, c, d)
    }
    const cell = (layer: Int32Array, i: number, j: number): number => layer[i + nx * j] as number
    for (let j = 1; j + 1 < ny; j++)
      for (let i = 1; i + 1 < nx; i++) {
        const d = below[i + nx * j] as number
        across(d, below[i + 1 + nx * j] as number, [cell(under, i, j - 1), cell(under, i, j), cell(here, i, j), cell(here, i, j - 1)])
        across(d, below[i + nx * (j + 1)] as number, [cell(under, i - 1, j), cell(here, i - 1, j), cell(here, i, j), cell(under, i, j)])
        across(d, above[i + nx * j] as number, [cell(here, i - 1, j - 1), cell(here, i, j - 1), cell(here, i, j), cell(here, i - 1, j)])
      }
    below = above
    under = here
  }
  return {
    positions: positions.values.slice(0, positions.length),
    triangles: Uint32Array.from(triangles.values.subarray(0, triangles.length)),
  }
}
