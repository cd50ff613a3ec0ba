import type { Model } from '../model/model.ts'
import type { Answers } from '../studies/answers.ts'
import type { Ask, Study } from '../studies/study.ts'
import type { SpreadMemo } from '../working/spread.ts'
import { findings } from './find.ts'
import type { Finding, Rule } from './rule.ts'

type Part = NonNullable<Model[keyof Model]>
type Kept = {
  readonly findings: readonly Finding[]
  readonly banded: boolean
  /** Parts of the car and answers the rule looked at, as they were then. */
  readonly parts: ReadonlyMap<string, unknown>
  readonly asked: ReadonlyMap<Study<unknown>, unknown>
}
const kept = new WeakMap<Answers, Map<Rule, Kept>>()

/**
 * As `findings`, kept between edits: a rule is judged again only when a part of the car or an answer it looked at is no longer the same. Parts are looked at as deep as
 * one goal or one unit stands, no deeper: most rules look at all of one thing.
 */
export function keptFindings(rule: Rule, answers: Answers, memo?: SpreadMemo): readonly Finding[] {
  const model = answers.current(),
    banded = memo !== undefined
  let all = kept.get(answers)
  if (!all) {
    all = new Map()
    kept.set(answers, all)
  }
  const before = all.get(rule)
  if (before && before.banded === banded && unchanged(before, model, answers)) return before.findings
  const parts = new Map<string, unknown>(),
    asked = new Map<Study<unknown>, unknown>()
  const ask: Ask = study => {
    const answer = answers.ask(study)
    asked.set(study as Study<unknown>, answer)
    return answer
  }
  const found = findings(rule, { current: () => watched(model, parts), ask }, memo)
  all.set(rule, { findings: found, banded, parts, asked })
  return found
}

function unchanged({ parts, asked }: Kept, model: Model, answers: Answers): boolean {
  for (const [path, part] of parts) if (at(model, path) !== part) return false
  for (const [study, answer] of asked) if (answers.ask(study) !== answer) return false
  return true
}
function at(model: Model, path: string): unknown {
  const dot = path.indexOf('.')
  if (dot < 0) return model[path as keyof Model]
  return (model[path.slice(0, dot) as keyof Model] as unknown as Record<string, unknown>)[path.slice(dot + 1)]
}

/** The car, noting which of its parts are looked at; a section of many parts is noted part by part. */
function watched(model: Model, parts: Map<string, unknown>): Model {
  const view = {} as Record<string, unknown>
  for (const key of Object.keys(model) as (keyof Model)[])
    Object.defineProperty(view, key, {
      enumerable: true,
      get: () => (key === 'brief' ? section(key, model[key] as Part, parts) : noted(key, model[key] as Part, parts)),
    })
  return view as Model
}
const noted = (path: string, part: Part, parts: Map<string, unknown>): Part => {
  parts.set(path, part)
  return part
}
function section(name: string, whole: Part, parts: Map<string, unknown>): Part {
  const view = {} as Record<string, unknown>
  for (const key of Object.keys(whole))
    Object.defineProperty(view, key, {
      enumerable: true,
      get: () => noted(`${name}.${key}`, (whole as unknown as Record<string, Part>)[key] as Part, parts),
    })
  return view as Part
}
