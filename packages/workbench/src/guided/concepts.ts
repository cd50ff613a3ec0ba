import { type Edit, formatIssue, isUsable, type LookUps, readConversion } from '@ampwright/conversion'
import { Answers, type Assessment, assess, type Finding, type Gap, isGap } from '@ampwright/engine'
import { remedyEdits } from '../edits.ts'
import { Refusal } from '../refusal.ts'
import { type Base, baseOf } from './base.ts'
import { conceptEdits, type Design } from './compose.ts'
import { type Concept, conceptOf } from './concept.ts'
import { conceptKinds } from './layouts.ts'
import { weighedTogether } from './removed.ts'
import { lighter, type Step, search } from './search.ts'
import { type Count, edited } from './trial.ts'
import { type Verdict, verdict } from './verdict.ts'

export type Skipped = { readonly id: string; readonly title: string; readonly why: string }
/** Every concept of one donor car and brief, side by side. */
export type Concepts = {
  readonly concepts: readonly Concept[]
  readonly skipped: readonly Skipped[]
  /** What has to be answered before a concept can be made at all. */
  readonly asked: readonly Gap[]
  readonly verdict: Verdict
  /** Designs tried for single questions, and full assessments. */
  readonly trials: number
  readonly assessments: number
}

/** Rules that forbid a torque or a power: their limit is written into the concept, sealed. */
const LIMITED = new Set([
  'power-against-donor',
  'torque-against-donor',
  'gearbox-torque',
  'transfer-case-torque',
  'axle-torque',
  'coupler-torque',
])
const LIMIT_ROUNDS = 3

/**
 * Makes every concept that can be built into the layout of the donor car, worked out in full.
 *
 * A generator, so that it can run beside a screen and be stopped between two steps. The text is a conversion file; what it plans already (drive, pack, charger) is
 * put aside, donor, brief, trips and charging places count. Throws Refusal where the file has errors. Always the same for the same text.
 */
export function* concepts(text: string, attachments?: LookUps['attachments']): Generator<Step, Concepts> {
  const base = baseOf(text, attachments),
    kinds = conceptKinds(base.model.donor),
    count: Count = { trials: 0, full: 0 }
  const made: Concept[] = [],
    skipped: Skipped[] = []
  for (const kind of isGap(kinds) ? [] : kinds) {
    const together = weighedTogether(base.model, kind)
    if (together !== undefined) {
      skipped.push({
        id: kind.id,
        title: kind.title,
        why: `«${together}» was weighed as one: what stays of it has to be weighed by itself`,
      })
      continue
    }
    const before = count.trials,
      design = yield* search(base, kind, count)
    made.push(yield* inFull(base, design, count, before))
  }
  const asked = isGap(kinds) ? [kinds] : []
  return {
    concepts: made,
    skipped,
    asked,
    verdict: asked.length
      ? { worth: 'cannot be said', why: 'the layout of the donor car is not known', stops: [] }
      : made.length || skipped.length
        ? verdict(made, skipped)
        : { worth: 'cannot be said', why: 'no car is built with this engine position and these driven wheels', stops: [] },
    trials: count.trials,
    assessments: count.full,
  }
}

/** Runs it to its end. */
export function allConcepts(text: string, attachments?: LookUps['attachments']): Concepts {
  const steps = concepts(text, attachments)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

/** The full assessment; limits a rule asks for are taken over, for a concept without them would only be turned down. */
function* inFull(base: Base, searched: Design, count: Count, before: number): Generator<Step, Concept> {
  const at = (did: string): Step => ({ concept: searched.kind.id, did, trials: count.trials })
  let design = searched
  for (let round = 0; ; round++) {
    const text = edited(base.text, conceptEdits(base, design)),
      conversion = readConversion(text, { lookUps: base.lookUps })
    if (!isUsable(conversion)) throw new Refusal(`concepts: ${conversion.issues.map(formatIssue).join('\n')}`)
    count.full++
    const a = yield* stepped(assess(new Answers(conversion.model)), at('full assessment'))
    const limits = round < LIMIT_ROUNDS ? limitsAsked(a, design.limits) : []
    design = { ...design, limits: merged(design.limits, limits) }
    if (limits.length) continue
    const heavy = a.findings.some(f => f.rule === 'laden-masses' && f.outcome === 'failing'),
      less = heavy ? lighter(base, design, count) : undefined
    return conceptOf(base, design, {
      text,
      model: conversion.model,
      assessment: a,
      trials: count.trials - before,
      ...(less ? { lighter: less } : {}),
    })
  }
}
/** An assessment, a step of the caller's for each of its own. */
function* stepped(steps: Generator<unknown, Assessment>, step: Step): Generator<Step, Assessment> {
  for (;;) {
    const next = steps.next()
    if (next.done) return next.value
    yield step
  }
}
const limitsAsked = (a: Assessment, have: readonly Edit[]): readonly Edit[] => {
  const edits = a.findings.filter(f => f.outcome === 'failing' && LIMITED.has(f.rule)).flatMap(setOf)
  return edits.filter(e => !have.some(h => h.path === e.path && h.now === e.now))
}
const setOf = (f: Finding): readonly Edit[] => {
  const set = f.remedies.find(r => r.do === 'set')
  return set?.do === 'set' ? remedyEdits(set) : []
}
/** The later word on a path counts. */
const merged = (first: readonly Edit[], then: readonly Edit[]): readonly Edit[] => [
  ...new Map([...first, ...then].map(e => [String(e.path), e])).values(),
]
