import type { System } from '@ampwright/conversion'
import { type AnyValue, type Figure, formulaById, isFigure } from '@ampwright/engine'
import { type FormulaWorked, figureTexts, workTyped } from '@ampwright/workbench'

export { cardView, handbookEntries } from '@ampwright/workbench'

/** A formula worked with texts as typed. */
export function worked(id: string, texts: Readonly<Record<string, string>>, system: System): FormulaWorked | undefined {
  const f = formulaById(id)
  return f && workTyped(f, texts, system)
}

/** What went into a figure, as texts to work its formula with; undefined where it is none of this formula. */
export function textsOf(
  v: AnyValue | undefined,
  formula: string,
  system: System,
): { readonly label: string; readonly texts: Readonly<Record<string, string>> } | undefined {
  return v && isFigure(v) && v.because.formula.card.id === formula ? { label: v.label, texts: figureTexts(v as Figure, system) } : undefined
}
