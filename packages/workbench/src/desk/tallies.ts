import type { Stage } from '@ampwright/engine'
import type { FindingView } from './finding-view.ts'

/** Counts of what stands in the way, by stage. */
export function tallies(
  findings: readonly FindingView[],
): ReadonlyMap<Stage, { readonly failing: number; readonly unanswered: number; readonly marginal: number }> {
  const out = new Map<Stage, { failing: number; unanswered: number; marginal: number }>()
  for (const f of findings) {
    const t = out.get(f.stage) ?? { failing: 0, unanswered: 0, marginal: 0 }
    out.set(f.stage, t)
    if (f.outcome === 'failing' || f.outcome === 'unanswered' || f.outcome === 'marginal') t[f.outcome] += 1
  }
  return out
}
