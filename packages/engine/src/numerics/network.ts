import { solveLinear } from './linear.ts'

/** A branch between two nodes: a resistance [Ω, above zero] in series with a source that lifts the potential from `from` to `to` [V], or a source of current [A]. */
export type Branch =
  | { readonly from: number; readonly to: number; readonly resistance: number; readonly lifts?: number }
  | { readonly from: number; readonly to: number; readonly current: number }

/**
 * Potentials of the nodes and currents of the branches of a linear network, by nodal analysis.
 *
 * Each part of the network that hangs together has its first node at zero volts. Currents flow from `from` to `to` inside the branch. Undefined where
 * a source of current finds no way round.
 * Source: Kirchhoff’s laws; nodal analysis as in Ho, Ruehli and Brennan, IEEE Trans. Circuits and Systems 22 (1975) 504 (from memory), dense.
 */
export function solveNetwork(
  nodes: number,
  branches: readonly Branch[],
): { readonly potentials: Float64Array; readonly currents: Float64Array } | undefined {
  const roots = rootsOf(nodes, branches),
    place = new Int32Array(nodes).fill(-1)
  let n = 0
  for (let i = 0; i < nodes; i++) if (roots[i] !== i) place[i] = n++
  const a = new Float64Array(n * n),
    b = new Float64Array(n)
  const inject = (node: number, current: number): void => {
    if (place[node]! >= 0) b[place[node]!]! += current
  }
  for (const branch of branches) {
    const { from, to } = branch
    if ('current' in branch) {
      // No way for it to come back: the potentials would have no bound.
      if (roots[from] !== roots[to] && branch.current !== 0) return undefined
      inject(from, -branch.current)
      inject(to, branch.current)
      continue
    }
    const g = 1 / branch.resistance,
      [p, q] = [place[from]!, place[to]!]
    if (p >= 0) a[p * n + p]! += g
    if (q >= 0) a[q * n + q]! += g
    if (p >= 0 && q >= 0) {
      a[p * n + q]! -= g
      a[q * n + p]! -= g
    }
    inject(from, -g * (branch.lifts ?? 0))
    inject(to, g * (branch.lifts ?? 0))
  }
  const x = n === 0 ? new Float64Array(0) : solveLinear(a, b)
  if (!x) return undefined
  const potentials = Float64Array.from({ length: nodes }, (_, i) => (place[i]! < 0 ? 0 : x[place[i]!]!))
  return {
    potentials,
    currents: Float64Array.from(branches, branch =>
      'current' in branch ? branch.current : (potentials[branch.from]! - potentials[branch.to]! + (branch.lifts ?? 0)) / branch.resistance,
    ),
  }
}

/** For each node the first one it hangs together with through resistances. */
function rootsOf(nodes: number, branches: readonly Branch[]): Int32Array {
  const root = Int32Array.from({ length: nodes }, (_, i) => i)
  const top = (i: number): number => {
    let at = i
    while (root[at] !== at) at = root[at]!
    return at
  }
  for (const branch of branches) {
    if ('current' in branch) continue
    const [p, q] = [top(branch.from), top(branch.to)]
    root[Math.max(p, q)] = Math.min(p, q)
  }
  return Int32Array.from({ length: nodes }, (_, i) => top(i))
}
