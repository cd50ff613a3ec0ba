import { type Assessment, FORMULAS } from '@ampwright/engine'
import { assessText, CARS, textOf } from '../../tests/cars.ts'
import { fileFormat } from './file-format.ts'
import { handbook } from './handbook.ts'
import { nomenclature } from './nomenclature.ts'
import { hazardsPage, rulesPage } from './rules.ts'
import { sourcesPage } from './sources.ts'

/** Formulas that made a figure on one of the samples. */
function usedFormulas(): ReadonlySet<string> {
  const of = (a: Assessment): readonly string[] => [...a.figures.values()].map(f => f.because.formula.card.id as string)
  const used = new Set(CARS.flatMap(car => of(assessText(textOf(car)).assessment)))
  return new Set(FORMULAS.map(f => f.formula.card.id as string).filter(id => used.has(id)))
}

/** Every generated page, by its file in docs/. */
export const pages = (): Readonly<Record<string, string>> => ({
  'file-format.md': fileFormat(),
  'handbook.md': handbook(usedFormulas()),
  'hazards.md': hazardsPage(),
  'nomenclature.md': nomenclature(),
  'rules.md': rulesPage(),
  'sources.md': sourcesPage(),
})
