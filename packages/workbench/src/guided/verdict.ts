import { type Finding, type Kind, kindOf, type Side } from '@ampwright/engine'
import { filled } from '../shown.ts'
import type { Concept } from './concept.ts'

/** A number that rules a concept out, and the limit it breaks; `limit` is in words where a rule forbids outright. */
export type Stop = {
  readonly concept: string
  readonly why: 'too heavy' | 'too dear' | 'forbidden'
  readonly title: string
  readonly item?: string
  readonly found?: number
  readonly side?: Side
  readonly limit?: number
  readonly unit?: string
  readonly kind?: Kind
  /** What was found against what, where it is no number. */
  readonly says?: string
}
/** Whether converting this car for this brief is worth going on with. */
export type Verdict =
  | { readonly worth: 'not worth converting'; readonly stops: readonly Stop[] }
  | { readonly worth: 'go on'; readonly concepts: readonly string[]; readonly stops: readonly Stop[] }
  | { readonly worth: 'cannot be said'; readonly why: string; readonly stops: readonly Stop[] }

const TOO_HEAVY = new Set(['laden-masses', 'laden-masses-by-law'])
/** Rules on the donor car itself: no plan of the conversion changes them. */
const FORBIDS = new Set([
  'donor-age',
  'donor-built',
  'donor-category',
  'donor-gross-mass',
  'donor-registered',
  'donor-not-excluded',
  'single-car',
])

/** What rules a concept out, by its numbers. Nothing is held against it that is not answered, or that rests on a mass still too high. */
export function stops({ id, assessment: { findings }, cost, leftOut }: Concept): readonly Stop[] {
  const engineIn = leftOut.some(l => l.what.startsWith('engine,'))
  const broken = findings.flatMap((f): readonly Stop[] => {
    if (f.outcome !== 'failing') return []
    if (TOO_HEAVY.has(f.rule)) return engineIn ? [] : [stopOf(id, 'too heavy', f)]
    const law = f.requirement !== undefined && !f.requirement.fellBack
    return law && (FORBIDS.has(f.rule) || f.remedies.length === 0) ? [stopOf(id, 'forbidden', f)] : []
  })
  const dear: readonly Stop[] =
    cost.budget !== undefined && cost.low > cost.budget
      ? [
          {
            concept: id,
            why: 'too dear',
            title: 'The parts cost more than the budget even at the low end of every price',
            found: cost.low,
            side: 'at most',
            limit: cost.budget,
            unit: '€',
            kind: 'money',
          },
        ]
      : []
  return [...broken, ...dear]
}
function stopOf(concept: string, why: Stop['why'], f: Finding): Stop {
  const { title, item, found, required } = f
  const named = { concept, why, title, ...(item === undefined ? {} : { item }) }
  if (!found || !required || typeof found.value !== 'number') return { ...named, says: filled(f.says, f, 'metric') }
  const kind = found.shows ?? kindOf(found.unit)
  return { ...named, found: found.value, side: required.side, limit: required.limit.value, unit: found.unit, ...(kind ? { kind } : {}) }
}

/** Not worth converting only where every concept is ruled out by a number; what is open never counts against the car. */
export function verdict(concepts: readonly Concept[], skipped: readonly { readonly id: string; readonly why: string }[]): Verdict {
  const all = concepts.map(c => ({ c, stops: stops(c) })),
    list = all.flatMap(a => a.stops),
    open = all.filter(a => a.stops.length === 0)
  if (open.length) return { worth: 'go on', concepts: open.map(a => a.c.id), stops: list }
  if (concepts.length === 0) return { worth: 'cannot be said', why: 'no concept could be worked out', stops: list }
  if (skipped.length)
    return {
      worth: 'cannot be said',
      why: `not every concept could be worked out: ${skipped.map(s => `${s.id}: ${s.why}`).join('; ')}`,
      stops: list,
    }
  return { worth: 'not worth converting', stops: list }
}
