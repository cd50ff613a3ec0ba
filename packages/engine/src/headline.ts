import type { Finding } from './rules/rule.ts'
import type { Figure, Value } from './working/value.ts'

/** Runs every car is timed over, whatever its brief asks; a goal of the brief goes before them. */
const USUAL = /@(0-50|0-100|80-120|quarter mile)$/
/** What is always in view, in this order; a pattern may match one figure for each goal or load case. */
const HEADLINE: readonly RegExp[] = [
  /^range\.range@/,
  /^acceleration\.time@/,
  /^top-speed\.speed@/,
  /^climb\.slope@/,
  /^hill-start\.slope@/,
  /^charge\.time@/,
  /^ledger\.kerb$/,
  /^room\.to@.* axle$/,
  /^room\.payload$/,
  /^cost\.parts$/,
]

type Answered = { readonly figures: ReadonlyMap<string, Figure> }

/** The headline figures of an assessment, those that could be answered: for runs the goals of the brief, for axles the one with least room. */
export function headlineOf(a: Answered): readonly Figure[] {
  const numbers = [...a.figures.values()].filter(f => typeof f.value === 'number')
  return HEADLINE.flatMap(pattern => {
    const found = numbers.filter(f => pattern.test(f.id))
    if (pattern.source.includes('room'))
      return found.length && pattern.source.includes('axle') ? [found.reduce((a, b) => (b.value < a.value ? b : a))] : found
    const goals = found.filter(f => !USUAL.test(f.id))
    return goals.length ? goals : found.filter(f => f.id.endsWith('@0-100') || !USUAL.test(f.id))
  })
}

/** A headline figure with what is wanted of it, where a finding compares it with a limit. */
export function wantedOf(
  figure: Figure,
  findings: readonly Finding[],
): { readonly side: 'at most' | 'at least'; readonly limit: Value; readonly outcome: Finding['outcome'] } | undefined {
  const f = findings.find(x => x.found && 'id' in x.found && x.found.id === figure.id && x.required)
  return f?.required && { ...f.required, outcome: f.outcome }
}
