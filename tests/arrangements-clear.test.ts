import { applyEdits } from '@ampwright/conversion'
import { Answers, findings, type PackAnswer, packSearch, packWithin, RULES, type Rule } from '@ampwright/engine'
import { arrangementEdits, arrangingPlan } from '@ampwright/workbench'
import { describe, expect, it } from 'vitest'
import { CARS, conversionOf, textOf } from './cars.ts'

/** Rules no arrangement may break for a box it places, as the file then rounds its sides and its place. */
const KEPT = [
  'inside-its-space',
  'parts-clear-of-each-other',
  'clear-of-what-guards-people',
  'clear-of-heat-water-and-motion',
  'clear-of-wheels',
  'box-behind-the-edge',
  'modules-fit-their-box',
  'power-cut-in-reach',
].map(id => RULES.find(r => r.id === id) as Rule)

describe.each(CARS)('the arrangements offered for the %s', car => {
  it('break no rule of air, space and wheels with a box they place', () => {
    const text = textOf(car),
      { model } = conversionOf(text),
      plan = arrangingPlan(model),
      answer: PackAnswer = packWithin(packSearch(plan.task, { seed: 1 }), 200)
    expect(answer.arrangements.length).toBeGreaterThan(0)
    expect(KEPT.every(r => r !== undefined)).toBe(true)
    for (const [n, one] of answer.arrangements.entries()) {
      const done = applyEdits(text, arrangementEdits(model, plan, one))
      if (!done.ok) throw new Error(done.problem.what)
      const car = conversionOf(done.text).model,
        boxes = Object.entries(car.fit.bodies).flatMap(([name, b]) => (b?.kind === 'battery box' ? [name] : [])),
        answers = new Answers(car)
      const broken = KEPT.flatMap(r => findings(r, answers))
        .filter(f => f.outcome === 'failing')
        // What the other parts do to each other is none of the arrangement's.
        .filter(f => boxes.some(b => JSON.stringify([f.item, f.slots]).includes(`"${b}`) || f.item?.includes(b)))
        .map(f => `${n + 1}: ${f.rule} ${f.item}: ${f.found?.value}`)
      expect(broken).toEqual([])
    }
  })
})
