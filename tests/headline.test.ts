import { applyEdits } from '@ampwright/conversion'
import { HEADLINE, headlineRows } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { assessText, CARS, type Car, conversionOf, textOf } from './cars.ts'

const rowsOf = (car: Car, edits: Readonly<Record<string, string | null>> = {}) => {
  const done = applyEdits(
    textOf(car),
    Object.entries(edits).map(([path, now]) => ({ path, now })),
  )
  if (!done.ok) throw new Error(done.problem.what)
  return headlineRows(assessText(done.text).assessment)
}

describe('the headline', () => {
  it.each(CARS)('has a line with mark and requirement for every goal of %s', car => {
    const goals = Object.keys(conversionOf(textOf(car)).model.brief.goals),
      marked = rowsOf(car).filter(r => r.wanted && r.outcome)
    expect(marked.length).toBeGreaterThanOrEqual(goals.length)
  })
  it('shows the distance put back where that is what is wanted, and the time where time is', () => {
    expect(rowsOf('lapwing').find(r => r.label.startsWith('Distance put back'))).toMatchObject({
      outcome: 'sound',
      wanted: { side: 'at least' },
    })
    expect(rowsOf('otter').find(r => r.figure?.id === 'charge.time@stop')).toMatchObject({ outcome: 'sound', wanted: { side: 'at most' } })
  })
  it('keeps a goal that cannot be answered yet, and says what is missing', () => {
    const row = rowsOf('lapwing', { 'charging.places.garage.cable': null }).find(r => r.label === 'Charging, overnight')
    expect(row).toMatchObject({ outcome: 'unanswered' })
    expect(row?.figure).toBeUndefined()
    expect(row?.missing.map(g => g.path)).toContain('charging.places.garage.cable')
  })
  it('says of mass and cost which usual parts nobody has listed', () => {
    const of = (id: string, edits: Readonly<Record<string, string | null>>) =>
      rowsOf('lapwing', edits).find(r => r.figure?.id === id)?.without ?? []
    const unlisted = { 'donor.added.dc-dc': null, 'fit.bodies.dc-dc': null, 'donor.added.cooling': null }
    for (const id of ['ledger.kerb', 'cost.parts']) {
      expect(of(id, {})).toEqual([])
      expect(of(id, unlisted)).toEqual(['DC-DC', 'cooling of motor and electronics'])
    }
    expect(of('range.range@mixed', unlisted)).toEqual([])
  })
  it('gives two goals of one trip a line each', () => {
    const rows = rowsOf('lapwing', {
      'brief.goals.long.kind': 'range',
      'brief.goals.long.trip': 'mixed',
      'brief.goals.long.distance': '300 km',
    }).filter(r => r.figure?.id === 'range.range@mixed')
    expect(rows.map(r => r.outcome).sort()).toEqual(['failing', 'sound'])
  })
  it('shows a run that neither of two motors makes in time', () =>
    expect(rowsOf('otter', { 'brief.goals.sprint.within': '4 s' }).find(r => r.figure?.id === 'acceleration.time@sprint')?.outcome).toBe(
      'failing',
    ))
  it('does not call a range sound that a car too weak for its trip gets by driving slower', () => {
    const weak = rowsOf('lapwing', {
      'drive.units.main.motor.continuous-torque': '35 Nm',
      'drive.units.main.motor.continuous-power': '12 kW',
      'drive.units.main.power-limit': '15 kW',
    })
    for (const label of ['Range, mixed', 'Distance put back'])
      expect(weak.find(r => r.label.startsWith(label))?.outcome, label).toBe('marginal')
    expect(rowsOf('lapwing').find(r => r.label === 'Range, mixed')?.outcome).toBe('sound')
  })
  it.each(CARS)('of %s comes whole from the studies that are answered first', car => {
    const first = new Set(HEADLINE.map(s => s.id))
    for (const { figure } of rowsOf(car)) if (figure) expect(first, figure.id).toContain(figure.id.slice(0, figure.id.indexOf('.')))
  })
})
