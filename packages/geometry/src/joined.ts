import type { TriangleMesh } from '@ampwright/engine'

const EMPTY = 0xffffffff

/**
 * A mesh whose corners at one and the same place are one corner: formats that share none (STL), or split them for colours, come out joined. Only exactly equal
 * places are joined: near ones may belong to two sheets.
 */
export function joined({ positions, triangles }: TriangleMesh): TriangleMesh {
  const corners = positions.length / 3,
    size = 2 ** Math.ceil(Math.log2(Math.max(16, 2 * corners))),
    table = new Uint32Array(size).fill(EMPTY),
    names = new Uint32Array(corners),
    bits = new Float64Array(3),
    words = new Uint32Array(bits.buffer)
  let kept = 0
  const first = new Uint32Array(corners)
  for (let n = 0; n < corners; n++) {
    // + 0 makes one of the two zeros.
    for (let axis = 0; axis < 3; axis++) bits[axis] = (positions[3 * n + axis] as number) + 0
    let hash = 0
    for (let i = 0; i < 6; i++) hash = Math.imul(hash ^ (words[i] as number), 0x9e3779b1) ^ (hash >>> 15)
    let at = (hash ^ (hash >>> 16)) & (size - 1)
    for (; table[at] !== EMPTY; at = (at + 1) & (size - 1)) {
      const other = first[table[at] as number] as number
      if (same(positions, n, other)) break
    }
    if (table[at] === EMPTY) {
      table[at] = kept
      first[kept++] = n
    }
    names[n] = table[at] as number
  }
  const out = new Float64Array(3 * kept)
  for (let k = 0; k < kept; k++)
    for (let axis = 0; axis < 3; axis++) out[3 * k + axis] = positions[3 * (first[k] as number) + axis] as number
  return { positions: out, triangles: triangles.map(t => names[t] as number) }
}

const same = (positions: Float64Array | Float32Array, a: number, b: number): boolean =>
  positions[3 * a] === positions[3 * b] && positions[3 * a + 1] === positions[3 * b + 1] && positions[3 * a + 2] === positions[3 * b + 2]
