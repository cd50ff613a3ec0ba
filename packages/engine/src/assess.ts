import { headlineOf } from './headline.ts'
import type { Model } from './model/model.ts'
import { goals } from './rules/brief/goals.ts'
import { requirements } from './rules/brief/requirements.ts'
import { keptFindings } from './rules/kept-findings.ts'
import type { Finding } from './rules/rule.ts'
import { RULES } from './rules/rules.ts'
import { Answers } from './studies/answers.ts'
import { HEADLINE, STUDIES } from './studies/studies.ts'
import type { Table, Trace } from './studies/study.ts'
import { halfWidth, type SpreadMemo } from './working/spread.ts'
import type { Figure, Gap } from './working/value.ts'

/** A gap with what closing it unlocks: the questions that wait for it. */
export type OpenGap = Gap & { readonly unlocks: readonly string[] }

/** Half-width (±) of each figure by its id; none where bands were not asked for. */
export type Halves = Pick<ReadonlyMap<string, number>, 'get'>

export type Assessment = {
  readonly figures: ReadonlyMap<string, Figure>
  readonly halves: Halves
  readonly traces: ReadonlyMap<string, Trace>
  readonly tables: ReadonlyMap<string, Table>
  readonly findings: readonly Finding[]
  readonly gaps: readonly OpenGap[]
  readonly headline: readonly string[]
}
export type Progress = { readonly did: string; readonly of: 'study' | 'rules' | 'bands' }
/** `bands`: whether half-widths can be read. Each is worked out when somebody reads it: most readers look at few. */
export type AssessOptions = { readonly bands?: boolean }

const ORDER: Readonly<Record<Finding['outcome'], number>> = {
  failing: 0,
  unanswered: 1,
  marginal: 2,
  accepted: 3,
  sound: 4,
  'does not apply': 5,
}
const HARM = { S3: 0, S2: 1, S1: 2 } as const

/**
 * The one entry: answers every study, judges every rule, widens figures by their spread.
 *
 * A generator, headline first: the caller may stop it between any two steps when a newer edit arrives. Works on an empty car.
 */
export function* assess(answers: Answers, { bands = true }: AssessOptions = {}): Generator<Progress, Assessment> {
  for (const study of [...HEADLINE, ...STUDIES.filter(s => !HEADLINE.includes(s))]) {
    answers.ask(study)
    yield { did: study.id, of: 'study' }
  }
  const figures = new Map<string, Figure>(),
    traces = new Map<string, Trace>(),
    tables = new Map<string, Table>(),
    gaps = new Map<string, Gap & { readonly unlocks: Set<string> }>()
  const opened = (g: Gap, unlocks: string): void => {
    const before = gaps.get(g.path)?.unlocks
    gaps.set(g.path, { ...g, unlocks: (before ?? new Set<string>()).add(unlocks) })
  }
  for (const study of STUDIES) {
    const kept = answers.of(study)
    for (const f of kept?.figures ?? []) figures.set(f.id, f)
    for (const t of kept?.traces ?? []) traces.set(t.id, t)
    for (const t of kept?.tables ?? []) tables.set(t.id, t)
    for (const g of kept?.missing ?? []) opened(g, study.asks)
  }
  for (const t of requirements(answers.current())) tables.set(t.id, t)
  const memo: SpreadMemo | undefined = bands ? new Map() : undefined
  if (memo)
    for (const f of headlined(answers)) {
      halfWidth(f, memo)
      if (f.because.result) yield { did: f.id, of: 'bands' }
    }
  const found: Finding[] = []
  for (const rule of RULES) {
    found.push(...keptFindings(rule, answers, memo))
    yield { did: rule.id, of: 'rules' }
  }
  for (const t of goals(answers.current(), found)) tables.set(t.id, t)
  for (const f of found) for (const g of f.gaps) opened(g, f.title)
  const sorted = [...found].sort((a, b) => ORDER[a.outcome] - ORDER[b.outcome] || HARM[a.harm] - HARM[b.harm])
  return {
    figures,
    halves: memo ? asRead(figures, memo) : NONE,
    traces,
    tables,
    findings: sorted,
    gaps: [...gaps.values()].map(g => ({ ...g, unlocks: [...g.unlocks] })),
    headline: headlineOf({ figures }).map(f => f.id),
  }
}

/** Figures of the headline and what it rests on: rules judge them, and they take longest. */
const headlined = (answers: Answers): readonly Figure[] => HEADLINE.flatMap(study => answers.of(study)?.figures ?? [])
const NONE: Halves = new Map()
const asRead = (figures: ReadonlyMap<string, Figure>, memo: SpreadMemo): Halves => ({
  get: id => {
    const f = figures.get(id)
    return f && typeof f.value === 'number' ? halfWidth(f, memo) : undefined
  },
})

/** Runs the generator to its end. */
export function assessed(model: Model, options: AssessOptions = {}): Assessment {
  const steps = assess(new Answers(model), options)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}
