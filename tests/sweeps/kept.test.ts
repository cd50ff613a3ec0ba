import { applyEdit, isUsable, readConversion } from '@ampwright/conversion'
import { Answers, type Finding } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { CARS, conversionOf, lookUps, said, textOf, typedFacts } from '../cars.ts'
import { withoutBands } from '../with-facts.ts'
import { sampled } from './sampled.ts'

/** All a finding says, but for objects behind its values. */
const told = (f: Finding) => ({
  ...f,
  slots: Object.fromEntries(Object.entries(f.slots).map(([k, v]) => [k, v?.value])),
  found: f.found?.value,
  required: f.required && { side: f.required.side, limit: f.required.limit.value },
})

describe.each(CARS)('what is kept between edits of %s', car => {
  it('is what a first look at the edited file gives, whichever line goes and comes back', () => {
    const text = textOf(car),
      first = conversionOf(text),
      answers = new Answers(first.model)
    let reading = first.text
    const whole = withoutBands(answers)
    const look = (now: string, what: string): void => {
      const next = readConversion(now, { lookUps, before: reading })
      if (!isUsable(next)) return
      reading = next.text
      answers.next(next.model)
      const kept = withoutBands(answers),
        fresh = now === text ? whole : withoutBands(new Answers(conversionOf(now).model))
      expect(kept.findings.map(told), what).toEqual(fresh.findings.map(told))
      expect(kept.gaps, what).toEqual(fresh.gaps)
      expect([...said(kept)], what).toEqual([...said(fresh)])
    }
    for (const { path } of sampled(typedFacts(first), `kept ${car}`)) {
      const gone = applyEdit(text, { path, now: null })
      if (!gone.ok) continue
      look(gone.text, `${path} taken away`)
      look(text, `${path} back again`)
    }
  }, 1_800_000)
})
