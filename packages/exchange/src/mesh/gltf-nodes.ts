import type { JsonPart } from './json-parts.ts'
import { refuse } from './mesh-file.ts'

/** Three rows of four: how a place turns into another, (x, y, z, 1) ↦ three sums. */
export type Transform = readonly number[]
export type Placed = { readonly mesh: JsonPart; readonly transform: Transform }

const STILL: Transform = [1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0]
const MOST_NODES = 100_000

/** Every mesh of the scene with the way from its own axes to those of the scene. Throws MeshRefusal. */
export function placedMeshes(document: JsonPart): readonly Placed[] {
  const nodes = document.at('nodes').list(),
    meshes = document.at('meshes').list(),
    met = new Set<JsonPart>(),
    out: Placed[] = []
  if (nodes.length > MOST_NODES) refuse('nodes', 'the document has too many nodes', `${nodes.length}`, `at most ${MOST_NODES}`)
  if (nodes.length === 0) return meshes.map(mesh => ({ mesh, transform: STILL }))
  const left = roots(document, nodes).map(node => ({ node, above: STILL }))
  for (let next = left.pop(); next; next = left.pop()) {
    const { node, above } = next
    if (met.has(node)) refuse(node.where, 'a node hangs in two places, or in itself', 'a second way to it', 'a tree of nodes')
    met.add(node)
    const transform = after(above, own(node))
    if (node.has('mesh')) out.push({ mesh: node.at('mesh').of(meshes, 'mesh'), transform })
    for (const child of node.at('children').list()) left.push({ node: child.of(nodes, 'node'), above: transform })
  }
  return out
}

/** The topmost nodes of the scene shown first; of the only one; or, without scenes, all that hang nowhere. */
function roots(document: JsonPart, nodes: readonly JsonPart[]): readonly JsonPart[] {
  const scenes = document.at('scenes').list()
  if (scenes.length > 0) {
    const scene = document.has('scene') ? document.at('scene').of(scenes, 'scene') : (scenes[0] as JsonPart)
    return scene
      .at('nodes')
      .list()
      .map(n => n.of(nodes, 'node'))
  }
  const below = new Set(
    nodes.flatMap(node =>
      node
        .at('children')
        .list()
        .map(child => child.whole()),
    ),
  )
  return nodes.filter((_, i) => !below.has(i))
}

function own(node: JsonPart): Transform {
  const m = node.at('matrix').numbers(16)
  // A matrix stands column by column.
  if (m) return [0, 1, 2].flatMap(row => [m[row], m[row + 4], m[row + 8], m[row + 12]] as number[])
  const [tx, ty, tz] = (node.at('translation').numbers(3) ?? [0, 0, 0]) as [number, number, number],
    [sx, sy, sz] = (node.at('scale').numbers(3) ?? [1, 1, 1]) as [number, number, number],
    turn = (node.at('rotation').numbers(4) ?? [0, 0, 0, 1]) as [number, number, number, number],
    size = Math.hypot(...turn) || 1,
    [x, y, z, w] = turn.map(q => q / size) as [number, number, number, number]
  return [
    (1 - 2 * (y * y + z * z)) * sx,
    2 * (x * y - z * w) * sy,
    2 * (x * z + y * w) * sz,
    tx,
    2 * (x * y + z * w) * sx,
    (1 - 2 * (x * x + z * z)) * sy,
    2 * (y * z - x * w) * sz,
    ty,
    2 * (x * z - y * w) * sx,
    2 * (y * z + x * w) * sy,
    (1 - 2 * (x * x + y * y)) * sz,
    tz,
  ]
}

/** First `b`, then `a`. */
const after = (a: Transform, b: Transform): Transform =>
  [0, 4, 8].flatMap(row =>
    [0, 1, 2, 3].map(
      column =>
        (a[row] as number) * (b[column] as number) +
        (a[row + 1] as number) * (b[column + 4] as number) +
        (a[row + 2] as number) * (b[column + 8] as number) +
        (column === 3 ? (a[row + 3] as number) : 0),
    ),
  )

/** Below zero where a transform mirrors: then triangles turn their other side out. */
export const turningSense = (t: Transform): number => {
  const [a, b, c, , d, e, f, , g, h, i] = t as unknown as readonly [
    number,
    number,
    number,
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
  return a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g)
}
