import { type Fact, isGap } from '@ampwright/engine'
import { type Issue, isError } from '../issue.ts'
import { migrate } from '../migrations/migrate.ts'
import type { LookUps } from '../schema/look-ups.ts'
import { Resolver } from '../schema/resolve.ts'
import type { ResolvedGroup } from '../schema/resolved.ts'
import { readText, type TextReading } from '../text/read.ts'
import { entryAt, type TextNode } from '../text/tree.ts'
import { shelfFaults } from './faults.ts'
import { pieceOf, type ShelfPiece } from './piece.ts'
import { WORKSHOP_SECTIONS } from './sections.ts'

/** The schema version of workshop files this program reads and writes. */
export const WORKSHOP_SCHEMA = 1
/** A workshop file with nothing in it yet. */
export const EMPTY_WORKSHOP = `schema: ${WORKSHOP_SCHEMA}\n`
const WAYS = { current: WORKSHOP_SCHEMA, migrations: [] }

/** A workshop file as it was understood: its name, what lies on its shelf, and every problem at once. */
export type Workshop = {
  readonly name?: string
  readonly shelf: readonly ShelfPiece[]
  readonly issues: readonly Issue[]
  readonly text: TextReading
}

/**
 * Reads a workshop file. With errors among the issues what could be read is there all the same; nothing is thrown. Records of parts are looked
 * up only to say which there are not: they fill nothing here, for a piece is what it is.
 */
export function readWorkshop(
  input: string | Uint8Array,
  { file, lookUps = {} }: { readonly file?: string; readonly lookUps?: Pick<LookUps, 'parts' | 'partNames'> } = {},
): Workshop {
  const typed = readText(input, file),
    moved = typed.text === undefined ? undefined : migrate(typed.text, WAYS, typed),
    text = moved?.ok ? moved.reading : typed
  const resolver = new Resolver(text.tree, { strict: true, lookUps: fillingNothing(lookUps), ...(file === undefined ? {} : { file }) }),
    read = resolver.all(WORKSHOP_SECTIONS, 'workshop file') as ResolvedGroup<typeof WORKSHOP_SECTIONS>,
    nodeOf = (key: string): TextNode | undefined => text.tree && entryAt(text.tree, ['shelf', key])?.node
  const shelf = Object.entries(read.shelf).map(([key, piece]) => pieceOf(key, piece, nodeOf(key), text.text ?? '')),
    { workshop } = read
  const done = { ...(isGap(workshop) ? {} : { name: (workshop as Fact<string>).value }), shelf, text },
    faults = text.tree ? shelfFaults(text.tree, shelf, file) : []
  if (moved && !moved.ok) {
    const problem: Issue = { ...(file === undefined ? {} : { file }), ...moved.problem }
    // Of a newer file nothing else can be said: what looks wrong may be right there.
    if (problem.what.startsWith('this file is schema')) return { ...done, issues: [problem] }
    if (!typed.issues.some(i => i.line === problem.line && i.what === problem.what))
      return { ...done, issues: sorted([...text.issues, ...resolver.issues, ...faults, problem]) }
  }
  return { ...done, issues: sorted([...text.issues, ...resolver.issues, ...faults]) }
}

export const isReadable = (w: Workshop): boolean => !w.issues.some(isError)

const sorted = (issues: readonly Issue[]): readonly Issue[] => [...issues].sort((a, b) => a.line - b.line || a.column - b.column)

const fillingNothing = ({ parts, partNames }: Pick<LookUps, 'parts' | 'partNames'>): LookUps => ({
  ...(partNames === undefined ? {} : { partNames }),
  ...(parts === undefined
    ? {}
    : {
        parts: id => {
          const found = parts(id)
          return found && { ...found, fields: {} }
        },
      }),
})
