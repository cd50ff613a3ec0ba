import { fieldKinds, type Part, partClasses } from '@ampwright/catalogue'
import { readQuantity } from '@ampwright/conversion'
import type { Kind } from '@ampwright/engine'

/** A figure of a part record in SI; undefined where the record does not state it. */
export function classFigure(part: Part, key: string): number | undefined {
  const text = part.fields[key]?.text,
    kind = fieldKinds[key]
  if (text === undefined || kind === undefined || kind === 'word') return undefined
  const read = readQuantity(text, kind as Kind)
  return read.ok ? read.quantity.value : undefined
}
/** Half-width of that figure, nought where none is stated. */
export function classHalf(part: Part, key: string): number {
  const text = part.fields[key]?.text,
    kind = fieldKinds[key]
  const read = text === undefined || kind === undefined || kind === 'word' ? undefined : readQuantity(text, kind as Kind)
  return read?.ok ? (read.quantity.half ?? 0) : 0
}

/** The parts of some classes, weakest first by a figure; those that do not state it are left out. */
export const inOrder = (by: string, ...classes: readonly string[]): readonly Part[] =>
  classes
    .flatMap(name => partClasses.find(c => c.class === name)?.parts ?? [])
    .filter(p => classFigure(p, by) !== undefined)
    .sort((a, b) => (classFigure(a, by) as number) - (classFigure(b, by) as number))

/** The first part, in that order, that gives at least so much; the strongest where none does. */
export const atLeast = (parts: readonly Part[], by: string, wanted: number): Part | undefined =>
  parts.find(p => (classFigure(p, by) as number) >= wanted) ?? parts.at(-1)
