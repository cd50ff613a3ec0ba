import type { Figure } from './working/value.ts'

/** What is always in view, in this order; a pattern may match one figure for each goal or load case. */
const HEADLINE: readonly RegExp[] = [/^ledger\.kerb$/, /^load\.rear@/, /^load\.front@/, /^hill-start\.slope@/, /^cost\.parts$/]

/** The headline figures of an assessment, those that could be answered. */
export const headlineOf = (a: { readonly figures: ReadonlyMap<string, Figure> }): readonly Figure[] =>
  HEADLINE.flatMap(pattern => [...a.figures.values()].filter(f => pattern.test(f.id) && typeof f.value === 'number'))
