import type { HeadlineRow } from '@ampwright/engine'
import { pathOf } from '../edits.ts'
import type { Concept } from './concept.ts'
import type { Concepts } from './concepts.ts'

/** The documented JSON of concepts side by side: see docs/json.md. */
export const conceptsJson = ({ concepts, skipped, asked, verdict, trials, assessments }: Concepts): object => ({
  verdict,
  concepts: concepts.map(conceptJson),
  skipped,
  asked: asked.map(({ path, label }) => ({ path, label })),
  trials,
  assessments,
})

function conceptJson(c: Concept): object {
  const { id, title, parts, cost, hours, alters, counts, failing, rules, leftOut, planned, unsearched, trials } = c
  return {
    id,
    title,
    parts,
    headline: c.headline.map(r => rowJson(r, c)),
    cost,
    hours,
    alters,
    counts,
    failing,
    rules,
    leftOut,
    planned,
    unsearched,
    ...(c.lighter ? { lighter: c.lighter } : {}),
    gaps: c.gaps.map(({ path, label, until }) => ({ path, label, until })),
    edits: c.edits.map(e => ({ path: pathOf(e.path), now: e.now })),
    trials,
  }
}
function rowJson({ label, figure: f, outcome, wanted, missing }: HeadlineRow, { assessment }: Concept): object {
  const half = f && assessment.halves.get(f.id)
  return {
    label,
    ...(f ? { id: f.id, value: Number.isFinite(f.value) ? f.value : String(f.value), unit: f.unit } : {}),
    ...(f && half !== undefined && Number.isFinite(f.value) ? { low: f.value - half, high: f.value + half } : {}),
    ...(outcome ? { outcome } : {}),
    ...(wanted ? { wanted: { side: wanted.side, value: wanted.limit.value, unit: wanted.limit.unit } } : {}),
    missing: missing.map(g => g.path),
  }
}
