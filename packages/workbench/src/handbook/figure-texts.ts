import type { System } from '@ampwright/conversion'
import { type AnyFormula, type Figure, numbers } from '@ampwright/engine'
import { takesOf } from './inputs.ts'
import { typedText } from './typed-text.ts'

/** What a figure was made from, as texts to work its formula with again. A value no text says is left empty. */
export const figureTexts = ({ because }: Figure, system: System): Readonly<Record<string, string>> =>
  textsOf(because.formula, numbers(because.inputs), system)

/** Numbers, lists, curves and words in SI as somebody would type them. */
export const textsOf = (f: AnyFormula, x: Readonly<Record<string, unknown>>, system: System): Readonly<Record<string, string>> =>
  Object.fromEntries(takesOf(f).map(([name, take]) => [name, typedText(take, x[name], system)]))
