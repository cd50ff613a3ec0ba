import { applyEdits, applySplice, formatIssue, readConversion } from '@ampwright/conversion'
import { describe, expect, it } from 'vitest'
import { CARS, lookUps } from '../../../../tests/cars.ts'
import { stripped } from '../../../../tests/stripped.ts'
import { allConcepts, type Concepts, concepts } from './concepts.ts'
import { conceptsJson } from './concepts-json.ts'

const of = (text: string): Concepts => allConcepts(text, lookUps.attachments)

describe.each(CARS)('the concepts of %s, stripped of every plan', car => {
  const text = stripped(car),
    all = of(text)

  it('hold one that harms nobody by what is known, or say by numbers that it is not worth converting', () => {
    const harmless = all.concepts.filter(c => c.failing.every(f => f.harm !== 'S3'))
    if (harmless.length === 0) {
      expect(all.verdict.worth).toBe('not worth converting')
      for (const c of all.concepts) expect(all.verdict.stops.some(s => s.concept === c.id)).toBe(true)
    } else expect(harmless.length).toBeGreaterThan(0)
    expect(all.concepts.length).toBeGreaterThan(0)
  })

  it('answer mass, range and pull for each', () => {
    for (const c of all.concepts)
      for (const figure of [/^ledger\.kerb$/, /^range\.range@/, /^top-speed\.speed@/, /^room\.to@/, /^room\.payload$/])
        expect(
          [...c.assessment.figures.keys()].some(id => figure.test(id)),
          `${c.id} ${figure}`,
        ).toBe(true)
  })

  it('are files without an issue, reached by their edits, and left again byte for byte', () => {
    for (const c of all.concepts) {
      expect(readConversion(c.text, { lookUps }).issues.map(formatIssue)).toEqual([])
      const done = applyEdits(text, c.edits)
      if (!done.ok) throw new Error(formatIssue(done.problem))
      expect(done.text).toBe(c.text)
      expect(done.inverse.reduce((t, splice) => applySplice(t, splice) ?? 'moved', done.text)).toBe(text)
    }
  })

  it('tell a cost band, hours, what is altered, and what no price is known of', () => {
    for (const c of all.concepts) {
      expect(c.cost.low).toBeGreaterThan(0)
      expect(c.cost.high).toBeGreaterThan(c.cost.low)
      expect(c.cost.without.length).toBeGreaterThan(0)
      expect([c.hours.low, c.hours.high]).toEqual([379, 976])
      expect(c.alters.some(a => a.how === 'comes out')).toBe(true)
      expect(c.rules.length).toBeGreaterThan(0)
      expect(c.trials).toBeLessThanOrEqual(100)
    }
  })

  it('write what they plan with as assumed, never as measured', () => {
    for (const c of all.concepts) {
      expect(c.planned).toContain('pack.module.peak-current')
      for (const path of c.planned) {
        const fact = readConversion(c.text, { lookUps }).facts.find(f => f.path === path)
        if (fact) expect(fact.origin?.how, path).toBe('assumed')
      }
      expect(JSON.stringify(c.edits)).not.toMatch(/\((measured|datasheet)/)
    }
  })
})

describe('a limit of the rule set', () => {
  it('is written into the concept, sealed, and holds then', () => {
    const done = applyEdits(stripped('lapwing'), [{ path: 'brief.rules', now: 'be' }])
    if (!done.ok) throw new Error(formatIssue(done.problem))
    const limited = of(done.text).concepts.filter(c => c.edits.some(e => e.path === 'drive.units.main.power-limit'))
    expect(limited.length).toBeGreaterThan(0)
    for (const c of limited) {
      expect(c.text).toContain('limit-sealed: yes')
      expect(c.failing.map(f => f.id)).not.toContain('power-against-donor@upper end')
    }
  })
})

describe('a search', () => {
  it('finds the same again, in the same number of trials', () => {
    const text = stripped('wren')
    expect(JSON.stringify(conceptsJson(of(text)))).toBe(JSON.stringify(conceptsJson(of(text))))
  })

  it('says what it is at and may be stopped at any step', () => {
    const steps = concepts(stripped('wren')),
      first = steps.next()
    expect(first.done).toBe(false)
    expect(first.value).toMatchObject({ concept: 'drive-unit', did: 'pack' })
    steps.return(undefined as never)
    expect(steps.next().done).toBe(true)
  })

  it('puts an earlier plan aside: a concept leads to the same concepts again', () => {
    const first = of(stripped('wren')),
      again = of(first.concepts[0]?.text ?? '')
    expect(again.concepts.map(c => c.parts)).toEqual(first.concepts.map(c => c.parts))
  })

  it('refuses a file with errors, naming every problem', () => {
    expect(() => of('schema: 1\ndonor:\n  wheelbase: 2300\n  tyre: round\n')).toThrow(
      /donor\.wheelbase[\s\S]*donor\.tyre[\s\S]*2 problems; no concept was made/,
    )
  })
})
