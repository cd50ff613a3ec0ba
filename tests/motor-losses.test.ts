import { applyEdits, type Edit, formatIssue, readConversion } from '@ampwright/conversion'
import { Answers, type Figure, type Finding, findings, halfWidth, type Model, RULES, STUDIES } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { type Car, conversionOf, lookUps, textOf } from './cars.ts'

const after = (name: Car, edits: readonly Edit[]): string => {
  const done = applyEdits(textOf(name), edits)
  if (!done.ok) throw new Error(`${done.problem.path}: ${done.problem.what}`)
  return done.text
}
function asked(model: Model): {
  figure: (id: string) => Figure
  has: (id: string) => boolean
  rule: (id: string, item?: string) => Finding | undefined
} {
  const answers = new Answers(model)
  const find = (id: string) =>
    answers.of(STUDIES.find(s => s.id === id.slice(0, id.indexOf('.'))) as (typeof STUDIES)[number])?.figures.find(f => f.id === id)
  return {
    figure: id => {
      const figure = find(id)
      if (!figure) throw new Error(`${id} is not among the figures`)
      return figure as Figure
    },
    has: id => find(id) !== undefined,
    rule: (id, item) => findings(RULES.find(r => r.id === id) as (typeof RULES)[number], answers).find(f => f.item === item),
  }
}
const car = (name: Car, edits: readonly Edit[] = []) => asked(conversionOf(after(name, edits)).model)

const WREN = 'drive.units.front.motor.efficiency-points'
const point = (name: string, torque: string, speed: string, efficiency: string): readonly Edit[] => [
  { path: `${WREN}.${name}.torque`, now: torque },
  { path: `${WREN}.${name}.speed`, now: speed },
  { path: `${WREN}.${name}.efficiency`, now: efficiency },
]
/** 200, 200 and 900 rad/s: solved exactly they give a windage below nothing. */
const TRAP = [
  ...point('low', '100 Nm', '1909.86 rpm', '90 %'),
  ...point('pull', '200 Nm', '1909.86 rpm', '87 %'),
  ...point('fast', '60 Nm', '8594.37 rpm', '93 %'),
]

describe('points of efficiency in a conversion', () => {
  it('give the pickup its law, which governs its losses', () => {
    const c = car('badger')
    expect(c.figure('unit.losses@main').label).toContain('by the law of its points')
    expect(c.figure('loss-law.copper@main').value).toBeCloseTo(0.317, 2)
    expect(c.rule('efficiency-points-agree', 'main')?.outcome).toBe('sound')
  })
  it('that would put windage below nothing have it held at zero, and the finding says so', () => {
    const c = car('wren', TRAP)
    expect(c.figure('loss-law.windage@front')).toMatchObject({ value: 0, label: expect.stringContaining('(held at zero)') })
    expect(c.figure('loss-law.copper@front').value).toBeCloseTo(0.13095, 4)
    const { outcome, says } = c.rule('efficiency-points-agree', 'front') as Finding
    expect(outcome).toBe('sound')
    expect(says).toContain('Held at zero, as the points alone would put it below nothing: windage.')
    expect(says).toContain('do not show a constant loss')
  })
  it('with their own ± and scatter widen the loss factor', () => {
    const half = (edits: readonly Edit[]) =>
      halfWidth(car('badger', [{ path: 'drive.units.main.motor.loss-factor', now: '1' }, ...edits]).figure('unit.loss-factor@main'))
    const asStated = half([])
    expect(asStated).toBeGreaterThan(0.01)
    expect(half([{ path: 'drive.units.main.motor.efficiency-points.road.efficiency', now: '87 ± 3 %' }])).toBeGreaterThan(asStated * 1.2)
    expect(half([{ path: 'drive.units.main.motor.efficiency-points.town.efficiency', now: '80 ± 0.5 %' }])).toBeGreaterThan(asStated * 2)
  })
  it.each([
    ['too few', TRAP.slice(0, 6), 'found two points; accepted: at least three points at two speeds'],
    [
      'at one speed',
      TRAP.map(e => (e.path === `${WREN}.fast.speed` ? { ...e, now: '1910 rpm' } : e)),
      'found points at one speed only; accepted: at least three points',
    ],
  ])('that are %s leave the class shape in place, and one finding names place, found and accepted', (_, edits, words) => {
    const c = car('wren', edits),
      finding = c.rule('efficiency-points-agree', 'front') as Finding
    expect(finding.outcome).toBe('unanswered')
    expect(finding.gaps).toEqual([expect.objectContaining({ path: WREN, label: expect.stringContaining(words) })])
    expect(c.figure('unit.losses@front').label).toContain('by the shape of its class')
    expect(c.has('loss-law.copper@front')).toBe(false)
  })
  it('without one of their figures are asked for it', () => {
    const finding = car('badger', [{ path: 'drive.units.main.motor.efficiency-points.road.speed', now: null }]).rule(
      'efficiency-points-agree',
      'main',
    )
    expect(finding?.outcome).toBe('unanswered')
    expect(finding?.gaps.map(g => g.path)).toEqual(['drive.units.main.motor.efficiency-points.road.speed'])
  })
  it('above one are refused where they stand', () => {
    const { issues } = readConversion(after('wren', [...TRAP, { path: `${WREN}.fast.efficiency`, now: '105 %' }]), { lookUps })
    expect(issues.map(formatIssue).join('\n')).toMatch(/efficiency-points\.fast\.efficiency[^]*«105 %», outside what is possible/)
  })
  it('that no law fits fail, and ask for the farthest to be looked up', () => {
    const finding = car(
      'wren',
      TRAP.map(e => (e.path === `${WREN}.low.efficiency` ? { ...e, now: '70 %' } : e)),
    ).rule('efficiency-points-agree', 'front')
    expect(finding?.outcome).toBe('failing')
    expect(finding?.remedies).toEqual([expect.objectContaining({ do: 'measure' })])
  })
  it('stand behind a map', () => {
    const { model } = conversionOf(textOf('badger')),
      main = model.drive.units['main'] as Model['drive']['units'][string]
    const map = {
      path: 'drive.units.main.motor.efficiency-map',
      label: 'map',
      symbol: '',
      unit: '1',
      value: { x: Float64Array.of(0, 1300), y: Float64Array.of(0, 150, 330), z: Float64Array.of(0, 0, 0, 0, 0.9, 0.88) },
    }
    const units = { ...model.drive.units, main: { ...main, motor: { ...main.motor, efficiencyMap: map } } }
    const c = asked({ ...model, drive: { ...model.drive, units } })
    expect(c.figure('unit.losses@main').label).toContain('by its map')
  })
})
