import type { System } from '@ampwright/conversion'
import type { CardView, FormulaWorked, HandbookEntry } from '@ampwright/workbench'
import type { Engine } from '../worker/engine.ts'

export type Texts = Readonly<Record<string, string>>
/** What the handbook asks of the engine, with a conversion behind it or without. */
export type Handbook = {
  readonly entries: () => Promise<readonly HandbookEntry[]>
  readonly card: (id: string, system: System) => Promise<CardView | undefined>
  readonly work: (id: string, texts: Texts, system: System) => Promise<FormulaWorked | undefined>
  /** What went into a figure of the conversion, as texts. */
  readonly figure: (name: string, formula: string, system: System) => Promise<{ readonly label: string; readonly texts: Texts } | undefined>
}
export const handbookOf = (engine: Engine): Handbook => ({
  entries: () => engine.handbook(),
  card: (id, system) => engine.card(id, system),
  work: (id, texts, system) => engine.workFormula(id, texts, system),
  figure: (name, formula, system) => engine.figureTexts(name, formula, system),
})
