import { applyEdits, type Edit, formatIssue, isUsable, pathText, readConversion, type TextReading } from '@ampwright/conversion'
import { Answers, type Finding, findings, type Model, RULES, STUDIES } from '@ampwright/engine'
import { Refusal } from '../refusal.ts'
import type { Base } from './base.ts'
import { conceptEdits, type Design } from './compose.ts'

/** A design built into the file, to be asked about single questions: nothing is worked out that nobody asks. */
export type Trial = {
  readonly model: Model
  readonly text: string
  /** Findings of some rules, best values only. */
  readonly judged: (...rules: readonly string[]) => readonly Finding[]
  /** Figures of one study by id. */
  readonly figures: (study: string) => ReadonlyMap<string, number>
}
/** How many trials a search has made. */
export type Count = { trials: number; full: number }

const keyOf = ({ path }: Edit): string => (typeof path === 'string' ? path : pathText(path))

/** What turns one design into another: the edits that differ, and what the other did not have taken away. */
function turned(from: readonly Edit[], to: readonly Edit[]): readonly Edit[] {
  // What was put aside at the start is written again further down: the last word on a path counts.
  const ends = (edits: readonly Edit[]): readonly Edit[] => [...new Map(edits.map(e => [keyOf(e), e])).values()].filter(e => e.now !== null)
  const before = new Map(ends(from).map(e => [keyOf(e), e])),
    after = ends(to),
    stays = new Set(after.map(keyOf))
  return [
    ...[...before].flatMap(([key, e]) => (stays.has(key) ? [] : [{ path: e.path, now: null }])),
    ...after.filter(e => JSON.stringify(before.get(keyOf(e))?.now) !== JSON.stringify(e.now)),
  ]
}

const ruleNamed = (id: string): (typeof RULES)[number] => {
  const rule = RULES.find(r => r.id === id)
  if (!rule) throw new RangeError(`no rule ${id}`)
  return rule
}

/** Tries designs one after another; what two of them share is neither written nor worked out twice. Throws Refusal where an edit cannot be made. */
export function trials(base: Base, count: Count): (design: Design) => Trial {
  let last: { readonly edits: readonly Edit[]; readonly text: string; readonly reading: TextReading | undefined } = {
    edits: [],
    text: base.text,
    reading: base.conversion.text,
  }
  const answers = new Answers(base.model)
  return design => {
    count.trials++
    const edits = conceptEdits(base, design),
      text = edited(last.text, last.edits.length ? turned(last.edits, edits) : edits),
      conversion = readConversion(text, { lookUps: base.lookUps, ...(last.reading ? { before: last.reading } : {}) })
    if (!isUsable(conversion)) throw new Refusal(`concepts: ${conversion.issues.map(formatIssue).join('\n')}`)
    last = { edits, text, reading: conversion.text }
    answers.next(conversion.model)
    return {
      model: conversion.model,
      text,
      judged: (...rules) => rules.flatMap(id => findings(ruleNamed(id), answers)),
      figures: id => {
        const study = STUDIES.find(s => s.id === id)
        return new Map((study ? (answers.of(study)?.figures ?? []) : []).map(f => [f.id, f.value]))
      },
    }
  }
}

/** A text with edits made; a fault here is a fault of the concept, not of the person. */
export function edited(text: string, edits: readonly Edit[]): string {
  const done = applyEdits(text, edits)
  if (!done.ok) throw new Refusal(`concepts: ${formatIssue(done.problem)}`)
  return done.text
}
