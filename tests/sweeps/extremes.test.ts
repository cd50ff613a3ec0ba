import { applyEdit, spellQuantity } from '@ampwright/conversion'
import { type Fact, type Kind, kindOf } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { CARS, textOf, typedFacts } from '../cars.ts'
import { Looking } from '../looking.ts'
import { sampled } from './sampled.ts'

/** What a slip of the hand makes of a number: a digit too many or too few, a wrong prefix, a sign, nothing at all. */
const SLIPS: Readonly<Record<string, (value: number) => number>> = {
  nothing: () => 0,
  'next to nothing': () => 1e-9,
  'its opposite': v => -v,
  'a thousandth': v => v / 1000,
  'a tenth': v => v / 10,
  'ten times': v => v * 10,
  'a thousand times': v => v * 1000,
}

/** Half a cell and a temperature below absolute zero have no spelling. */
const sayable = (value: number, kind: Kind): boolean =>
  kind === 'count' ? value >= 0 && Number.isInteger(Number(value.toPrecision(6))) : kind !== 'temperature' || value > 0

function slipped(looking: Looking, text: string, fact: Fact, to: number): string | undefined {
  const kind = fact.shows ?? kindOf(fact.unit)
  if (kind === undefined || !sayable(to, kind)) return undefined
  const edit = applyEdit(text, { path: fact.path, now: spellQuantity(Number(to.toPrecision(6)), kind) })
  return edit.ok && looking.usable(edit.text) ? edit.text : undefined
}

// What the schema refuses is refused with one message (conversion.test.ts); what it lets through has to be assessed to the end.
describe.each(CARS)('sweep “extremes” over %s', car => {
  const text = textOf(car),
    looking = new Looking(text)
  const numbers = typedFacts(looking.at(text).conversion).filter((f): f is Fact & { value: number } => typeof f.value === 'number')

  it.each(sampled(numbers, car).map(f => [f.path, f] as const))(
    '%s, wrong by a slip, never stops an assessment or makes it no number',
    (_, fact) => {
      for (const [name, slip] of Object.entries(SLIPS)) {
        const wrong = slipped(looking, text, fact, slip(fact.value))
        if (wrong === undefined) continue
        const { assessment } = looking.at(wrong)
        for (const f of assessment.figures.values())
          if (typeof f.value === 'number') {
            expect(f.value, `${f.id} with ${name}`).not.toBeNaN()
            expect(f.value, `${f.id} with ${name}`).not.toBe(-Infinity)
          }
      }
    },
  )
})
