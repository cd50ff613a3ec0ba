import { Answers, HEADLINE, headlineOf, isGap, isGaps, ledger, type Model } from '@ampwright/engine'
import { assessModel } from '@ampwright/workbench'
import { describe, expect, it } from 'vitest'
import { CARS, conversionOf, textOf } from './cars.ts'
import { runs } from './counts.ts'
import { runsAgain } from './runs-again.ts'
import { seed } from './sweeps/sampled.ts'
import { withFacts } from './with-facts.ts'

/** The model with every fact that has a spread drawn anew. What the ledger said of a car the day it was weighed is what it says of the car that was drawn. */
function drawn(model: Model, normal: () => number): Model {
  const car = withFacts(model, f => likely(f, normal)),
    { weighed } = car.fit,
    { reckonedFront, reckonedRear } = weighed
  if (isGap(reckonedFront) || isGap(reckonedRear)) return car
  const by = new Answers(car).ask(ledger)
  if (isGaps(by)) return car
  const { front, rear } = by.byParts
  return {
    ...car,
    fit: {
      ...car.fit,
      weighed: {
        ...weighed,
        reckonedFront: { ...reckonedFront, value: front.value },
        reckonedRear: { ...reckonedRear, value: rear.value },
      },
    },
  }
}
/** A value from the spread of a fact; what is greater than nothing stays so, as a mass or a conductance does. */
function likely({ value, half }: { readonly value: number; readonly half: number }, normal: () => number): number {
  for (;;) {
    const now = value + (normal() * half) / 2
    if (!(value > 0) || now > 0) return now
  }
}
function normals(start: number): () => number {
  let s = start >>> 0
  const uniform = (): number => {
    s = (s + 0x9e3779b9) >>> 0
    let t = s ^ (s >>> 16)
    t = Math.imul(t, 0x21f0aaad)
    t ^= t >>> 15
    t = Math.imul(t, 0x735a2d97)
    return (((t ^ (t >>> 15)) >>> 0) + 0.5) / 4294967296
  }
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform())
}
/** Values of the studies the headline is read from; the others would take five times as long. */
const figuresOf = (answers: Answers): ReadonlyMap<string, number> =>
  new Map(HEADLINE.flatMap(study => (answers.of(study)?.figures ?? []).map(f => [f.id, f.value] as const)))
describe.each(CARS)('the bands of %s', car => {
  it('hold 90 to 98 of 100 cars drawn from the same spreads', () => {
    const { model } = conversionOf(textOf(car)),
      base = assessModel(model, true),
      count = runs(4000),
      normal = normals(seed ^ car.length)
    const headline = headlineOf(base).filter(f => (base.halves.get(f.id) ?? 0) > 0),
      inside = new Map(headline.map(f => [f.id, 0]))
    for (let i = 0; i < count; i++) {
      const figures = figuresOf(new Answers(runsAgain(drawn(model, normal), base, normal)))
      for (const f of headline) {
        const got = figures.get(f.id) ?? Number.NaN
        if (Math.abs(got - f.value) <= (base.halves.get(f.id) as number)) inside.set(f.id, (inside.get(f.id) as number) + 1)
      }
    }
    // Short runs allow for chance: three standard deviations of a binomial about 95 %.
    const chance = 3 * Math.sqrt((0.95 * 0.05) / count)
    for (const [id, n] of inside) {
      expect(n / count, `${id}: ${n} of ${count} inside`).toBeGreaterThan(0.9 - (count < 4000 ? chance : 0))
      expect(n / count, `${id}: ${n} of ${count} inside`).toBeLessThanOrEqual(0.98 + (count < 4000 ? chance : 0))
    }
    expect(headline.length).toBeGreaterThan(0)
  }, 3_600_000)
})
