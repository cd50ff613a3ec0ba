import { fieldKinds } from './field-kinds.ts'
import type { Part } from './part.ts'
import { partClasses } from './part-classes.ts'

/** Every part, class by class. */
export const parts: readonly Part[] = partClasses.flatMap(({ parts }) => parts)

const byId: ReadonlyMap<string, Part> = new Map(parts.map(part => [part.id, part]))

/** The part of this id and revision; undefined where the catalogue has none. */
export const part = (id: string): Part | undefined => byId.get(id)

const defined: ReadonlyMap<string, readonly string[]> = new Map(partClasses.map(({ class: name, defines = [] }) => [name, defines]))
/** Fields of a part that hold by what its class is. */
export const definedBy = (part: Part): readonly string[] => defined.get(part.class) ?? []

const wordsIn = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .split(/[^\p{L}\d.±]+/u)
    .filter(Boolean)
const classLabel: ReadonlyMap<string, string> = new Map(partClasses.map(({ class: name, label }) => [name, label]))
const searched: readonly (readonly [Part, readonly string[]])[] = parts.map(part => {
  const said = Object.entries(part.fields).flatMap(([key, { text }]) => (fieldKinds[key] === 'word' ? [text] : []))
  return [part, wordsIn([part.id, part.label, classLabel.get(part.class), ...said].join(' '))]
})

/** The parts that have all of these words, or words that begin so, in id, label, class or a field that holds a word. No words find nothing. */
export function findParts(words: string): readonly Part[] {
  const wanted = wordsIn(words)
  const has = (known: readonly string[]) => wanted.every(word => known.some(one => one.startsWith(word)))
  return wanted.length === 0 ? [] : searched.filter(([, known]) => has(known)).map(([part]) => part)
}
