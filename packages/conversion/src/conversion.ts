import { type Fact, type Model, type Setting } from '@ampwright/engine'
import type { Issue } from './issue.ts'
import { isError } from './issue.ts'
import { migrate } from './migrations/migrate.ts'
import { spellQuantity } from './quantities/write.ts'
import type { LookUps } from './schema/look-ups.ts'
import type { Naming } from './schema/references.ts'
import { Resolver } from './schema/resolve.ts'
import type { ResolvedGroup } from './schema/resolved.ts'
import { SECTIONS } from './sections/sections.ts'
import { readText, type TextReading } from './text/read.ts'

export { CURRENT_SCHEMA as SCHEMA } from './migrations/list.ts'

export type Conversion = {
  readonly model: Model
  /** Every value the file, a part record or a class table states, in the order of the file. */
  readonly facts: readonly Fact<never>[]
  readonly issues: readonly Issue[]
  /** Every value that names an entry elsewhere in the file, whether that is there or not. */
  readonly references: readonly Naming[]
  readonly text: TextReading
}
export type ReadOptions = { readonly file?: string; readonly strict?: boolean; readonly lookUps?: LookUps; readonly before?: TextReading }

/** The sections must resolve to what the engine's model says: this line fails to compile where they do not. */
const asModel = (resolved: ResolvedGroup<typeof SECTIONS>): Model => resolved

/**
 * Reads a conversion file and resolves it: SI facts, gaps where values are missing, and every problem at once.
 *
 * With errors among the issues the model is still whole, the faulty values being gaps; a caller that judges the car must not use it then.
 */
export function readConversion(input: string | Uint8Array, { file, strict = false, lookUps = {}, before }: ReadOptions = {}): Conversion {
  const typed = readText(input, file, before),
    moved = typed.text === undefined ? undefined : migrate(typed.text, undefined, typed)
  const text = moved?.ok ? moved.reading : typed
  const torn = new Set(text.issues.filter(isError).map(i => i.path.split('.', 1)[0] as string))
  const resolver = new Resolver(text.tree, { strict, lookUps, torn, ...(file === undefined ? {} : { file }) })
  const model = asModel(resolver.all(SECTIONS) as ResolvedGroup<typeof SECTIONS>),
    done = { model, facts: resolver.facts, references: resolver.references, text }
  if (moved && !moved.ok) {
    const problem: Issue = { ...(file === undefined ? {} : { file }), ...moved.problem }
    // Of a newer file nothing else can be said: what looks wrong may be right there.
    if (problem.path === 'schema' && problem.what.startsWith('this file is schema')) return { ...done, issues: [problem] }
    if (!typed.issues.some(i => i.line === problem.line && i.what === problem.what))
      return { ...done, issues: sorted([...text.issues, ...resolver.issues, problem]) }
  }
  return { ...done, issues: sorted([...text.issues, ...resolver.issues]) }
}
const sorted = (issues: readonly Issue[]): readonly Issue[] => [...issues].sort((a, b) => a.line - b.line || a.column - b.column)

export const isUsable = (c: Conversion): boolean => !c.issues.some(isError)

/** What a setting of a remedy says in the file: exact, in a unit of the trade. */
export const settingText = (to: Setting['to']): string | null =>
  to === null ? null : 'word' in to ? to.word : spellQuantity(to.value, to.kind)
