import { applyEdits, type Edit } from '@ampwright/conversion'
import { Answers, type Finding, findings, RULES, STUDIES } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { CARS, type Car, conversionOf, textOf } from './cars.ts'

function car(name: Car, edits: readonly Edit[] = []) {
  const done = applyEdits(textOf(name), edits)
  if (!done.ok) throw new Error(`${done.problem.path}: ${done.problem.what}`)
  const answers = new Answers(conversionOf(done.text).model),
    of = (study: string) => answers.of(STUDIES.find(s => s.id === study) as (typeof STUDIES)[number])
  return {
    value: (id: string) => of(id.slice(0, id.indexOf('.')))?.figures.find(f => f.id === id)?.value as number,
    traces: of('trip')?.traces ?? [],
    rule: (id: string) => findings(RULES.find(r => r.id === id) as (typeof RULES)[number], answers)[0] as Finding,
  }
}

describe('what recovery puts into the battery', () => {
  it.each(CARS)('%s: on no trip is it more than the study says', name => {
    const c = car(name),
      most = c.value('recovery.at-battery')
    expect(most).toBeGreaterThan(0)
    expect(c.traces.length).toBeGreaterThan(0)
    for (const t of c.traces) {
      const powers = t.series.find(s => s.name === 'power')?.values ?? []
      // The trip counts power out of the battery as above zero.
      expect(Math.min(...powers), t.id).toBeGreaterThanOrEqual(-most * 1.0001)
    }
  })
  it('is what the motors give where recovery is set to more, and that is judged against the cells', () => {
    const edits = [
      { path: 'drive.regeneration.power', now: '80 kW' },
      { path: 'drive.regeneration.torque-share', now: '10 %' },
    ]
    const gentle = car('lapwing', edits)
    // 25 Nm at 9000 rpm are 23.6 kW at the shaft.
    expect(gentle.value('recovery.at-battery')).toBeLessThan(23_600)
    expect(gentle.value('recovery.at-battery')).toBeGreaterThan(18_000)
    expect(gentle.rule('recovery-within-cells')).toMatchObject({ outcome: 'sound', found: { id: 'recovery.at-battery' } })
    expect(car('lapwing', edits.slice(0, 1)).rule('recovery-within-cells').outcome).toBe('failing')
  })
  it('counts as what it is set to while the motors’ figures are missing', () => {
    const finding = car('lapwing', [{ path: 'drive.units.main.motor.peak-time', now: null }]).rule('recovery-within-cells')
    expect(finding.found).toMatchObject({ path: 'drive.regeneration.power' })
  })
})
