import { applyEdits } from '@ampwright/conversion'
import { Answers, type Curve, type Figure, findings, RULES, STUDIES } from '@ampwright/engine'
import { type Car, conversionOf, textOf } from './cars.ts'

/** Figures of one study on a sample with some values changed. */
export function figuresOf(car: Car, study: string, edits: Readonly<Record<string, string | null>> = {}): ReadonlyMap<string, Figure> {
  const done = applyEdits(
    textOf(car),
    Object.entries(edits).map(([path, now]) => ({ path, now })),
  )
  if (!done.ok) throw new Error(`${done.problem.path}: ${done.problem.what}`)
  const found = STUDIES.find(s => s.id === study)
  if (!found) throw new RangeError(`no study ${study}`)
  return new Map(new Answers(conversionOf(done.text).model).of(found)?.figures.map(f => [f.id, f]))
}
export const value = (figures: ReadonlyMap<string, Figure>, id: string): number => {
  const f = figures.get(id)
  if (!f) throw new RangeError(`no figure ${id}`)
  return f.value
}
export const curveOf = (figures: ReadonlyMap<string, Figure>, id: string): Curve => (figures.get(id) as unknown as Figure<Curve>).value
/** Outcomes of one rule on a sample with some values changed, each with its item. */
export const outcomes = (car: Car, edits: Readonly<Record<string, string | null>>, rule: string): readonly string[] => {
  const done = applyEdits(
    textOf(car),
    Object.entries(edits).map(([path, now]) => ({ path, now })),
  )
  if (!done.ok) throw new Error(done.problem.what)
  const found = RULES.find(r => r.id === rule)
  if (!found) throw new RangeError(`no rule ${rule}`)
  return findings(found, new Answers(conversionOf(done.text).model)).map(f => `${f.item ?? ''} ${f.outcome}`.trim())
}
