import { type Issue, isError } from '../issue.ts'
import type { Change } from './change.ts'
import { expectedMeaning, meaningOf, sameMeaning } from './expected.ts'
import { pathKeys, pathText } from './path.ts'
import { isSound, readText, type SoundReading, type TextReading } from './read.ts'
import { applySplice, invertSplice, type Splice } from './splice.ts'
import { entryAt } from './tree.ts'

export type Applied =
  | { readonly ok: true; readonly text: string; readonly splice: Splice; readonly inverse: Splice; readonly reading: TextReading }
  | { readonly ok: false; readonly problem: Issue }

/**
 * Applies a splice and reads the text again: accepted only where the text stays readable and exactly what the change names is different.
 * This is what makes every edit safe, however its splice was found.
 */
export function tried(before: SoundReading, change: Change, splice: Splice): Applied {
  const text = applySplice(before.text, splice)
  if (text === undefined) throw new Error(`A splice must fit the text it was made for: ${JSON.stringify(splice)}`)
  const reading = readText(text, undefined, before)
  if (!isSound(reading)) return { ok: false, problem: firstError(reading, 'this edit would leave the file unreadable') }
  if (sameMeaning(meaningOf(reading.tree), expectedMeaning(meaningOf(before.tree), change))) {
    return { ok: true, text, splice, inverse: invertSplice(splice), reading }
  }
  const path = pathKeys(change.path) ?? []
  const { line, column } = entryAt(before.tree, path)?.keyAt ?? before.tree.at
  const what = 'this edit would change more than it names, or not what it names'
  return { ok: false, problem: { line, column, path: pathText(path), what, found: '', accepted: '' } }
}

/** The first error of a reading, led in by what it prevents. */
export function firstError(reading: TextReading, what: string): Issue {
  const issue = reading.issues.find(isError)
  return issue === undefined
    ? { line: 1, column: 1, path: '', what, found: '', accepted: '' }
    : { ...issue, what: `${what}: ${issue.what}` }
}
