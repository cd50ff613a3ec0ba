import { applyEdits, type Edit, formatIssue } from '@ampwright/conversion'
import { describe, expect, it } from 'vitest'
import { lookUps } from '../../../../tests/cars.ts'
import { stripped } from '../../../../tests/stripped.ts'
import { allConcepts, type Concepts } from './concepts.ts'

const lapwingWith = (...edits: readonly Edit[]): Concepts => {
  const done = applyEdits(stripped('lapwing'), edits)
  if (!done.ok) throw new Error(formatIssue(done.problem))
  return allConcepts(done.text, lookUps.attachments)
}
/** The same car with nothing asked of it: quicker where the goals do not matter. */
const withoutGoals: readonly Edit[] = [{ path: 'brief.goals', now: null }]
/** Every stop has a number that breaks its limit. */
const broken = ({ verdict, concepts }: Concepts, why: string): void => {
  expect(verdict.worth).toBe('not worth converting')
  for (const c of concepts) {
    const stops = verdict.stops.filter(s => s.concept === c.id && s.why === why)
    expect(stops.length, c.id).toBeGreaterThan(0)
    for (const { found, limit = 0, side, says } of stops)
      if (found === undefined) expect(says, c.id).toMatch(/\d/)
      else expect(side === 'at least' ? limit - found : found - limit, c.id).toBeGreaterThan(0)
  }
}

describe('it is not worth converting', () => {
  it('where the permitted masses are too small for the pack the range needs', () => {
    const all = lapwingWith({ path: 'donor.ratings', now: { 'front-axle': '480 kg', 'rear-axle': '480 kg', total: '950 kg' } })
    broken(all, 'too heavy')
    for (const c of all.concepts) expect(c.lighter, c.id).toEqual({ ranges: [] })
  })

  it('and says what range the permitted masses would leave', () => {
    const all = lapwingWith({ path: 'donor.ratings', now: { 'front-axle': '690 kg', 'rear-axle': '710 kg', total: '1265 kg' } })
    broken(all, 'too heavy')
    for (const c of all.concepts) {
      expect(c.lighter?.pack, c.id).toBeDefined()
      expect(c.lighter?.ranges[0]?.value).toBeGreaterThan(30_000)
      expect(c.lighter?.ranges[0]?.value).toBeLessThan(160_000)
    }
  })

  it('where the parts cost more than the budget at the low end of every price', () => {
    broken(lapwingWith(...withoutGoals, { path: 'brief.budget', now: '1500 €' }), 'too dear')
  })

  it('where the rule set shuts out the donor car, whatever is built into it', () => {
    broken(lapwingWith(...withoutGoals, { path: 'brief.rules', now: 'in' }, { path: 'donor.built', now: '1989-05' }), 'forbidden')
  })
})

describe('it is not said to be not worth converting', () => {
  it('of what is not answered: ratings nobody read, a budget nobody named', () => {
    const all = lapwingWith(...withoutGoals, { path: 'donor.ratings', now: null }, { path: 'brief.budget', now: null })
    expect(all.verdict).toMatchObject({ worth: 'go on', stops: [] })
  })

  it('by a rule that was only quoted by others', () => {
    const all = lapwingWith(...withoutGoals, { path: 'brief.rules', now: 'fr' }, { path: 'donor.first-registered', now: '2024-06-01' })
    expect(all.verdict.worth).toBe('go on')
    for (const c of all.concepts) expect(c.rules.find(r => r.key === 'donor.age.min')?.outcome).toBe('marginal')
  })

  it('of a mass the engine is still in', () => {
    const all = lapwingWith(
      ...withoutGoals,
      { path: 'donor.ratings', now: { 'front-axle': '480 kg', 'rear-axle': '480 kg', total: '950 kg' } },
      { path: 'donor.removed.engine', now: null },
    )
    expect(all.verdict.worth).not.toBe('not worth converting')
  })

  it('while one way to convert it could not be worked out', () => {
    const done = applyEdits(stripped('wren'), [{ path: 'brief.budget', now: '1500 €' }])
    if (!done.ok) throw new Error(formatIssue(done.problem))
    const { verdict, skipped } = allConcepts(done.text, lookUps.attachments)
    expect(skipped.map(s => s.id)).toEqual(['gearbox-one-gear', 'gearbox-shifting'])
    expect(verdict).toMatchObject({ worth: 'cannot be said' })
    expect(verdict.stops).toMatchObject([{ concept: 'drive-unit', why: 'too dear' }])
  })
})
