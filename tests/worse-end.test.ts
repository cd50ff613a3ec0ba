import { Answers, headlineOf, spread } from '@ampwright/engine'
import { assessModel } from '@ampwright/workbench'
import { describe, expect, it } from 'vitest'
import { CARS, conversionOf, textOf } from './cars.ts'
import { withFacts, withoutBands } from './with-facts.ts'

/** Where less is better: times, mass, cost. All else of the headline is better for being more. */
const LESS = /\.time@|^ledger\.kerb|^cost\./
/** Rounding of a simulation's last step, as a share. */
const ROUNDING = 1e-9

describe.each(CARS)('the worse end of each band of %s', car => {
  const { model } = conversionOf(textOf(car)),
    base = assessModel(model, true),
    headline = headlineOf(base).filter(f => (base.halves.get(f.id) ?? 0) > 0)
  it('has something to look at', () => expect(headline.length).toBeGreaterThan(3))
  it.each(headline.map(f => [f.id, f] as const))('is never better than the best value: %s', (id, f) => {
    const worse = LESS.test(id) ? 1 : -1,
      moves = spread(f)
    const bad = withFacts(model, fact => fact.value + worse * Math.sign(moves.get(fact.path) ?? 0) * fact.half)
    const got = withoutBands(new Answers(bad)).figures.get(id)?.value ?? Number.NaN
    expect(worse * (got - f.value), `${id}: ${f.value} at best, ${got} with every fact at its bad end`).toBeGreaterThanOrEqual(
      -ROUNDING * Math.abs(f.value),
    )
    // Nor is the band much wider than what all bad ends together make of it.
    expect(Math.abs(got - f.value), id).toBeGreaterThanOrEqual(0.6 * (base.halves.get(id) as number))
  })
})
