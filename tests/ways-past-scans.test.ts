import { applyEdits, type Edit } from '@ampwright/conversion'
import { Answers, type Finding, findings, type Model, RULES, type Rule, type SurveyOfScan } from '@ampwright/engine'
import { describe, expect, test } from 'vitest'
import { conversionOf, textOf } from './cars.ts'

const rule = (id: string): Rule => RULES.find(r => r.id === id) as Rule
const scanned = rule('clear-of-what-was-scanned').spoil.edits.filter(e => e.path.startsWith('fit.scans'))

function modelOf(edits: readonly Edit[]): Model {
  const done = applyEdits(textOf('lapwing'), edits)
  if (!done.ok) throw new Error(done.problem.what)
  return conversionOf(done.text).model
}
const judged = (m: Model): readonly Finding[] => findings(rule('can-be-brought-in'), new Answers(m))
const pastBay = (m: Model): readonly Finding[] => judged(m).filter(f => f.item?.endsWith('past bay'))

describe('parts on their way in past a scan', () => {
  const measured = modelOf(scanned),
    survey = (measured.surveys as Record<string, SurveyOfScan>).bay as SurveyOfScan
  test('that was measured are judged as beside all else', () => {
    const [inverter, ...others] = pastBay(measured)
    expect(others).toEqual([])
    expect(inverter).toMatchObject({ item: 'inverter past bay', outcome: 'sound' })
    expect(inverter?.found?.value).toBeCloseTo(0.0699, 3)
    expect(inverter?.required?.limit.value).toBe(0.02)
    // The spread holds what the points left over and how far the search went.
    const { apart, atLeast } = survey.ways.inverter as SurveyOfScan['ways'][string]
    expect(apart - atLeast).toBeLessThanOrEqual(0.001)
  })
  test('are being measured until then, and again once they stand elsewhere or come another way', () => {
    const { surveys: _, ...without } = measured
    const [waits, ...others] = pastBay(without)
    expect(others).toEqual([])
    expect(waits).toMatchObject({ outcome: 'unanswered', gaps: [{ path: 'fit.scans.bay', why: 'being measured' }] })
    for (const edit of [
      { path: 'drive.units.main.inverter.z', now: '800 mm' },
      { path: 'fit.bodies.inverter.way-in', now: 'from ahead' },
    ]) {
      const moved = pastBay({ ...modelOf([...scanned, edit]), surveys: { bay: survey } })
      expect(moved.find(f => f.item === 'past bay')).toMatchObject({ outcome: 'unanswered', gaps: [{ why: 'being measured' }] })
      expect(moved.find(f => f.item === 'inverter past bay')).toBeUndefined()
    }
  })
  test('are not known where nothing can be measured on it or it does not lie yet', () => {
    const faulty = pastBay({ ...measured, surveys: { bay: { ...survey, fault: 'the points do not fit', gaps: {}, ways: {} } } })
    expect(faulty).toMatchObject([{ item: 'past bay', outcome: 'unanswered' }])
    const loose = pastBay(modelOf([...scanned, { path: 'fit.scans.bay.points.rear', now: null }]))
    expect(loose).toMatchObject([{ item: 'past bay', outcome: 'unanswered', gaps: [{ path: 'fit.scans.bay.points' }] }])
  })
  test('fail where one runs into it', () => {
    const [motor] = pastBay(modelOf([...scanned, { path: 'fit.bodies.motor.way-in', now: 'from behind' }])).filter(
      f => f.item === 'motor past bay',
    )
    expect(motor).toMatchObject({ outcome: 'failing', found: { value: 0 } })
    expect(motor?.slots.out?.value).toBeGreaterThan(0.3)
  })
  test('are no matter where nothing was scanned', () => {
    expect(pastBay(modelOf([]))).toEqual([])
  })
})
