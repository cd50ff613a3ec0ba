import { airRoundArm, boxOf, inBox } from '@ampwright/engine'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assessText, type Car, CARS, textOf } from './cars.ts'
import { runs } from './counts.ts'

const RULE = 'power-cut-in-reach'
const findings = (text: string) => assessText(text).assessment.findings.filter(f => f.rule === RULE)
const one = (text: string, item: string) => findings(text).find(f => f.item === item)
/** The demo with one handle said otherwise. */
const with_ = (from: string | RegExp, to: string, car: Car = 'lapwing'): string => {
  const text = textOf(car),
    changed = text.replace(from, to)
  if (changed === text) throw new Error(`the sample ${car} does not say ${String(from)}`)
  return changed
}

describe('what cuts the power', () => {
  it.each(CARS)('is in reach of driver and rescuers in the sample %s', car => {
    const found = findings(textOf(car))
    expect(found.length).toBeGreaterThan(4)
    expect(found.filter(f => f.outcome !== 'sound').map(f => f.item)).toEqual([])
  })
  it('is as far from the shoulder as the tape says', () => {
    const far = assessText(textOf('lapwing')).assessment.figures.get('reach.from-shoulder@main-switch')?.value
    expect(far).toBeCloseTo(Math.hypot(0.43, 0.14, 0.34), 9)
  })
  it('fails where the arm is shorter than that', () => {
    const found = one(with_('arm: 620 mm', 'arm: 540 mm'), 'main-switch')
    expect(found).toMatchObject({ outcome: 'failing', harm: 'S3' })
    expect(found?.required?.limit.value).toBe(0.54)
  })
  it('is asked for by name as long as it stands nowhere', () => {
    const open = findings(with_(/\n {2}handles:(\n {4}.*){3}/, ''))
    expect(open.map(f => [f.item, f.outcome, f.gaps[0]?.label])).toEqual([
      ['main switch of the driver', 'unanswered', 'place of the main switch of the driver'],
      ['cut point for rescuers', 'unanswered', 'place of the cut point for rescuers'],
    ])
  })
  it('waits for the arm of the driver, for the space and for the label, each by its field', () => {
    const gaps = (text: string, item: string) => one(text, item)?.gaps.map(g => g.path)
    expect(gaps(with_(/ {2}driver: \{ x: .*\n/, ''), 'main-switch')).toEqual(['fit.driver.x', 'fit.driver.y', 'fit.driver.z'])
    expect(gaps(with_(', arm: 620 mm', ''), 'main-switch')).toEqual(['fit.driver.arm'])
    expect(gaps(with_('z: 780 mm, space: engine-bay, reached', 'z: 780 mm, reached'), 'cut-point')).toEqual(['fit.handles.cut-point.space'])
    expect(gaps(with_('reached: from above, label: yes', 'reached: from above'), 'cut-point, label')).toEqual([
      'fit.handles.cut-point.label',
    ])
  })
  it('is not reached from below, and not without a label', () => {
    const text = with_('reached: from above, label: yes', 'reached: from below, label: no')
    expect(one(text, 'cut-point, way')?.outcome).toBe('failing')
    expect(one(text, 'cut-point, label')?.outcome).toBe('failing')
  })
  it('lies no deeper than an arm, however it is reached', () => {
    const depth = (text: string) => assessText(text).assessment.figures.get('reach.depth@cut-point')?.value
    const reached = (way: string) => depth(with_('reached: from above', `reached: ${way}`))
    expect(depth(textOf('lapwing'))).toBeCloseTo(0.87 - 0.78, 9)
    expect(reached('from ahead')).toBeCloseTo(0.44 + 0.56, 9)
    expect(reached('from behind')).toBeCloseTo(0.48 - 0.44, 9)
    expect(reached('from the left')).toBeCloseTo(0.34 + 0.43, 9)
    expect(reached('from the right')).toBeCloseTo(0.43 - 0.34, 9)
    expect(reached('from below')).toBeCloseTo(0.78 - 0.23, 9)
    expect(one(with_('reached: from above', 'reached: from ahead'), 'cut-point, depth')?.outcome).toBe('failing')
  })
  it('is in its own way only where nobody says what it is part of', () => {
    expect(one(with_('part-of: junction-box, ', ''), 'service-plug, room')).toMatchObject({
      outcome: 'failing',
      slots: { what: { value: 'junction-box' } },
    })
  })
})

describe('an arm that reaches in', () => {
  const at = fc.double({ min: -1, max: 1, noNaN: true }),
    three = fc.tuple(at, at, at),
    side = fc.double({ min: 0.02, max: 0.8, noNaN: true })
  it('passes a box as near as the nearest of many points on its line', () => {
    fc.assert(
      fc.property(three, three, three, fc.tuple(side, side, side), three, (handle, opening, place, sides, turns) => {
        const told = airRoundArm({ handle, opening, place, sides, turns }),
          box = boxOf({ place, sides, turns }),
          pieces = 400
        let least = Infinity
        for (let i = 0; i <= pieces; i++) {
          const p = handle.map((h, k) => h + ((opening[k] as number) - h) * (i / pieces)) as unknown as typeof handle,
            out = inBox(box, p).map((v, k) => Math.max(0, Math.abs(v) - (box.half[k] as number)))
          least = Math.min(least, Math.hypot(...out))
        }
        const step = Math.hypot(...handle.map((h, k) => (opening[k] as number) - h)) / pieces
        expect(told).toBeLessThanOrEqual(least + 1e-9)
        expect(told).toBeGreaterThanOrEqual(least - step / 2 - 1e-9)
      }),
      { numRuns: runs(4000) },
    )
  })
})
