import { type Fact, type Model, type Setting } from '@ampwright/engine'
import type { Issue } from './issue.ts'
import { isError } from './issue.ts'
import { spellQuantity } from './quantities/write.ts'
import { type LookUps, Resolver } from './schema/resolve.ts'
import type { ResolvedGroup } from './schema/resolved.ts'
import { SECTIONS } from './sections/sections.ts'
import { readText, type TextReading } from './text/read.ts'

export const SCHEMA = 1

export type Conversion = {
  readonly model: Model
  /** Every value the file, a part record or a class table states, in the order of the file. */
  readonly facts: readonly Fact<never>[]
  readonly issues: readonly Issue[]
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
  const text = readText(input, file, before)
  const resolver = new Resolver(text.tree, { strict, lookUps, ...(file === undefined ? {} : { file }) })
  const model = asModel(resolver.all(SECTIONS) as ResolvedGroup<typeof SECTIONS>)
  const issues = [...text.issues, ...resolver.issues, ...schemaIssues(text, file)].sort((a, b) => a.line - b.line || a.column - b.column)
  return { model, facts: resolver.facts, issues, text }
}

export const isUsable = (c: Conversion): boolean => !c.issues.some(isError)

function schemaIssues({ tree }: TextReading, file: string | undefined): readonly Issue[] {
  if (!tree || tree.entries.size === 0) return []
  const entry = tree.entries.get('schema'), place = { ...(file === undefined ? {} : { file }), line: entry?.node.at.line ?? 1, column: entry?.node.at.column ?? 1, path: 'schema' }
  const found = entry?.node.kind === 'value' ? entry.node.source : ''
  if (!entry) return [{ ...place, what: 'the file does not say which schema it follows', found: 'no line «schema»', accepted: `schema: ${SCHEMA}` }]
  if (!/^\d+$/.test(found)) return [{ ...place, what: 'schema version', found: `«${found}»`, accepted: `a whole number up to ${SCHEMA}` }]
  if (Number(found) > SCHEMA) return [{ ...place, what: `this file follows schema ${found}, which is newer than this Ampwright`, found, accepted: `up to ${SCHEMA}: use a newer Ampwright` }]
  return []
}

/** What a setting of a remedy says in the file: exact, in a unit of the trade. */
export const settingText = (to: Setting['to']): string | null => (to === null ? null : 'word' in to ? to.word : spellQuantity(to.value, to.kind))
