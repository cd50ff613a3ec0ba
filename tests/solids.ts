import type { TriangleMesh } from '@ampwright/engine'

/** A body whose volume and area are known without any mesh. */
export type Solid = { readonly mesh: TriangleMesh; readonly volume: number; readonly area: number }

const meshOf = (positions: readonly number[], triangles: readonly number[]): TriangleMesh => ({
  positions: Float64Array.from(positions),
  triangles: Uint32Array.from(triangles),
})

/** A box square to the axes from its lowest corner on, twelve triangles that share eight corners. */
export function boxSolid([a, b, c]: readonly [number, number, number], [x, y, z]: readonly [number, number, number] = [0, 0, 0]): Solid {
  const corners = Array.from({ length: 8 }, (_, n) => [x + (n & 1 ? a : 0), y + (n & 2 ? b : 0), z + (n & 4 ? c : 0)]).flat()
  const sides = [0, 2, 3, 1, 4, 5, 7, 6, 0, 1, 5, 4, 2, 6, 7, 3, 0, 4, 6, 2, 1, 3, 7, 5]
  const triangles = [0, 4, 8, 12, 16, 20].flatMap(s => [0, 1, 2, 0, 2, 3].map(k => sides[s + k] as number))
  return { mesh: meshOf(corners, triangles), volume: a * b * c, area: 2 * (a * b + b * c + c * a) }
}

/** Four corners: the origin and one on each axis. */
export const cornerSolid = (a: number, b: number, c: number): Solid => ({
  mesh: meshOf([0, 0, 0, a, 0, 0, 0, b, 0, 0, 0, c], [0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3]),
  volume: (a * b * c) / 6,
  area: (a * b + b * c + c * a + Math.hypot(a * b, b * c, c * a)) / 2,
})

/** A ring of rounds × sides patches. Volume and area are those of the smooth ring, which the mesh nears from inside. */
export function ringSolid(reach: number, thick: number, rounds: number, sides: number): Solid {
  const positions: number[] = [],
    triangles: number[] = []
  for (let i = 0; i < rounds; i++)
    for (let j = 0; j < sides; j++) {
      const [u, v] = [(2 * Math.PI * i) / rounds, (2 * Math.PI * j) / sides],
        out = reach + thick * Math.cos(v)
      positions.push(out * Math.cos(u), out * Math.sin(u), thick * Math.sin(v))
      const [i2, j2] = [(i + 1) % rounds, (j + 1) % sides],
        [a, b, c, d] = [i * sides + j, i2 * sides + j, i2 * sides + j2, i * sides + j2] as [number, number, number, number]
      triangles.push(a, b, c, a, c, d)
    }
  return { mesh: meshOf(positions, triangles), volume: 2 * Math.PI ** 2 * reach * thick ** 2, area: 4 * Math.PI ** 2 * reach * thick }
}

/** A ball about the origin: an octahedron, each triangle cut into four `times` over and pushed out. Volume and area are those of the smooth ball. */
export function ballSolid(radius: number, times: number): Solid {
  let corners: number[][] = [
      [1, 0, 0],
      [-1, 0, 0],
      [0, 1, 0],
      [0, -1, 0],
      [0, 0, 1],
      [0, 0, -1],
    ],
    faces: number[][] = [
      [0, 2, 4],
      [2, 1, 4],
      [1, 3, 4],
      [3, 0, 4],
      [2, 0, 5],
      [1, 2, 5],
      [3, 1, 5],
      [0, 3, 5],
    ]
  for (let n = 0; n < times; n++) {
    const middles = new Map<string, number>(),
      all = [...corners]
    const middle = (a: number, b: number): number => {
      const key = a < b ? `${a} ${b}` : `${b} ${a}`
      let at = middles.get(key)
      if (at === undefined) {
        const sum = [0, 1, 2].map(i => ((corners[a] as number[])[i] as number) + ((corners[b] as number[])[i] as number)),
          size = Math.hypot(...sum)
        at = all.push(sum.map(x => x / size)) - 1
        middles.set(key, at)
      }
      return at
    }
    faces = faces.flatMap(([a, b, c]) => {
      const [p, q, r] = [middle(a as number, b as number), middle(b as number, c as number), middle(c as number, a as number)]
      return [
        [a, p, r],
        [p, b, q],
        [r, q, c],
        [p, q, r],
      ] as number[][]
    })
    corners = all
  }
  return {
    mesh: meshOf(
      corners.flat().map(x => radius * x),
      faces.flat(),
    ),
    volume: (4 / 3) * Math.PI * radius ** 3,
    area: 4 * Math.PI * radius ** 2,
  }
}

/** Volume and area of a mesh added up triangle by triangle, written apart from what it checks. */
export function addedUp({ positions, triangles }: TriangleMesh): { readonly volume: number; readonly area: number } {
  let volume = 0,
    area = 0
  for (let k = 0; k < triangles.length; k += 3) {
    const [a, b, c] = [0, 1, 2].map(i => [0, 1, 2].map(axis => positions[3 * (triangles[k + i] as number) + axis] as number)) as [
      number[],
      number[],
      number[],
    ]
    const [ax, ay, az] = a as [number, number, number],
      [bx, by, bz] = b as [number, number, number],
      [cx, cy, cz] = c as [number, number, number]
    volume += (ax * (by * cz - bz * cy) - ay * (bx * cz - bz * cx) + az * (bx * cy - by * cx)) / 6
    const sides = [Math.hypot(bx - ax, by - ay, bz - az), Math.hypot(cx - bx, cy - by, cz - bz), Math.hypot(ax - cx, ay - cy, az - cz)] as [
        number,
        number,
        number,
      ],
      half = (sides[0] + sides[1] + sides[2]) / 2
    area += Math.sqrt(Math.max(0, half * (half - sides[0]) * (half - sides[1]) * (half - sides[2])))
  }
  return { volume, area }
}
