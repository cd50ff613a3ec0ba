import { asFound, type Issue, isError } from '../issue.ts'
import { applyEdits } from '../text/edit.ts'
import { isSound, readText, type TextReading } from '../text/read.ts'
import { type Entry, isEmptyValue, type TextTree } from '../text/tree.ts'
import { CURRENT_SCHEMA, MIGRATIONS } from './list.ts'
import { type Migration, migrationFault } from './migration.ts'

export type Migrated =
  | {
      readonly ok: true
      readonly text: string
      readonly reading: TextReading
      /** What was done, step by step; empty where the file was up to date. */
      readonly applied: readonly string[]
      readonly notes: readonly Issue[]
    }
  | { readonly ok: false; readonly problem: Issue }

type Ways = { readonly current: number; readonly migrations: readonly Migration[] }

const WAYS: Ways = { current: CURRENT_SCHEMA, migrations: MIGRATIONS }

/**
 * Brings the text of a file to the current schema, one step after the other, by edits: comments and spacing stay as they are. A file
 * with nothing in it counts as current. Problems the reading found are not repeated here; only a file that needs a step must be free of
 * them. Throws if the list of migrations has gaps.
 */
export function migrate(text: string, { current, migrations }: Ways = WAYS, before?: TextReading): Migrated {
  const fault = migrationFault(migrations, current)
  if (fault !== undefined) throw new Error(`Migrations must have no gaps: ${fault}`)
  let reading = before?.text === text ? before : readText(text, undefined, before)
  if (reading.tree === undefined) return { ok: false, problem: firstError(reading) ?? missingSchema(current) }
  if (reading.tree.entries.size === 0 && isSound(reading)) {
    return { ok: true, text, reading, applied: [], notes: [{ ...missingSchema(current), harm: 'note' }] }
  }
  const found = schemaOf(reading.tree)
  if (found === undefined) return { ok: false, problem: firstError(reading) ?? missingSchema(current) }
  if (found.version === undefined) return { ok: false, problem: unreadableSchema(found.entry, current) }
  if (found.version > current) return { ok: false, problem: newerSchema(found.entry, found.version, current) }

  const steps = migrations.filter(step => step.from >= (found.version ?? current))
  if (found.version < current && steps[0]?.from !== found.version) {
    return { ok: false, problem: tooOldSchema(found.entry, found.version, migrations[0]?.from ?? current) }
  }
  if (steps.length > 0 && !isSound(reading)) return { ok: false, problem: firstError(reading) ?? missingSchema(current) }
  for (const step of steps) {
    if (reading.tree === undefined) break
    const changes = [...step.edits(reading.tree), { path: ['schema'], now: String(step.to) }]
    const applied = applyEdits(reading.text ?? text, changes, reading)
    if (!applied.ok) {
      const what = `the step from schema ${step.from} to ${step.to} (${step.says}) cannot be made: ${applied.problem.what}`
      return { ok: false, problem: { ...applied.problem, what } }
    }
    reading = applied.reading
  }
  return { ok: true, text: reading.text ?? text, reading, applied: steps.map(step => step.says), notes: [] }
}

/** The schema line of a file, and the version it names where that can be read. */
function schemaOf(tree: TextTree): { readonly entry: Entry; readonly version: number | undefined } | undefined {
  const entry = tree.entries.get('schema')
  if (entry === undefined) return undefined
  const { node } = entry
  return { entry, version: node.kind === 'value' && /^\d{1,6}$/.test(node.source) ? Number(node.source) : undefined }
}

const firstError = (reading: TextReading): Issue | undefined => reading.issues.find(isError)

const missingSchema = (current: number): Issue => ({
  line: 1,
  column: 1,
  path: 'schema',
  what: 'the file does not say which schema it is written in',
  found: '',
  accepted: `a first line \`schema: ${current}\``,
})

function unreadableSchema({ key, node }: Entry, current: number): Issue {
  const found = node.kind === 'value' ? (isEmptyValue(node) ? 'nothing' : asFound(node.source)) : `a ${node.kind}`
  const { line, column } = node.at
  return { line, column, path: key, what: 'the schema is a whole number', found, accepted: `\`schema: ${current}\`` }
}

function newerSchema({ key, node }: Entry, version: number, current: number): Issue {
  const what = `this file is schema ${version}; this Ampwright reads up to ${current}: update Ampwright`
  return { line: node.at.line, column: node.at.column, path: key, what, found: '', accepted: '' }
}

function tooOldSchema({ key, node }: Entry, version: number, oldest: number): Issue {
  const what = `this file is schema ${version}; the oldest this Ampwright can bring up to date is ${oldest}`
  return { line: node.at.line, column: node.at.column, path: key, what, found: '', accepted: '' }
}
