import { applyEdits } from '@ampwright/conversion'
import { Answers, findings } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { usualPartsListed } from '../../packages/engine/src/rules/donor/usual-parts.ts'
import { CARS, type Car, conversionOf, textOf } from '../cars.ts'

const outcomes = (car: Car, edits: readonly { path: string; now: string | null }[] = []): Record<string, string> => {
  const done = applyEdits(textOf(car), edits)
  if (!done.ok) throw new Error(done.problem.what)
  return Object.fromEntries(findings(usualPartsListed, new Answers(conversionOf(done.text).model)).map(f => [f.item, f.outcome]))
}

describe('usual parts of a conversion', () => {
  it.each(CARS)('%s: each is listed, weighed with another, or still there', car => {
    expect(new Set(Object.values(outcomes(car)))).toEqual(new Set(['sound']))
  })
  it('asks for all of them where nothing is listed, the old 12 V battery apart', () => {
    const none = outcomes('wren', [
      { path: 'donor.added', now: null },
      { path: 'fit.bodies', now: null },
      { path: 'donor.not-listed', now: null },
    ])
    expect(none).toMatchObject({ 'DC-DC': 'unanswered', BMS: 'unanswered', 'charge inlet': 'unanswered', '12 V battery': 'sound' })
  })
  it('counts the inlet that is chosen where it charges', () =>
    expect(
      outcomes('lapwing', [
        { path: 'donor.added.charge-inlet', now: null },
        { path: 'charging.inlet.part', now: 'charge-inlet-type2-32a-1ph@1' },
      ])['charge inlet'],
    ).toBe('sound'))
  it('does not take the management of the battery for the battery', () => {
    const swapped = [
      { path: 'donor.added.starter-battery-small', now: null },
      { path: 'fit.bodies.battery-12v', now: null },
      { path: 'donor.added.bms', now: null },
      { path: 'donor.added.battery-management.mass', now: '2 kg' },
    ]
    expect(outcomes('lapwing', swapped)).toMatchObject({ BMS: 'sound', '12 V battery': 'unanswered' })
  })
  it('lets a car do without cabin heat, with a second thought, but not without a DC-DC', () => {
    const without = (key: string, part: string) =>
      outcomes('lapwing', [
        { path: `donor.added.${part}`, now: null },
        { path: 'fit.handles', now: null },
        { path: 'fit.bodies', now: null },
        { path: `donor.not-listed.${key}`, now: 'not fitted' },
      ])
    expect(without('cabin-heater', 'cabin-heater')['cabin heater']).toBe('marginal')
    expect(without('dc-dc', 'dc-dc')['DC-DC']).toBe('failing')
  })
})
