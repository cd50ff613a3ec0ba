import { applyEdits } from '@ampwright/conversion'
import { describe, expect, it } from 'vitest'
import { Answers } from '../../packages/engine/src/studies/answers.ts'
import { type CoastDown, coastDown } from '../../packages/engine/src/studies/donor/coast-down.ts'
import { roadLoad } from '../../packages/engine/src/studies/donor/road-load.ts'
import { isGaps } from '../../packages/engine/src/studies/study.ts'
import { halfWidth } from '../../packages/engine/src/working/spread.ts'
import { outcomes } from '../asked.ts'
import { conversionOf, textOf } from '../cars.ts'

const of = (edits: readonly { path: string; now: string | null }[] = []) => {
  const done = applyEdits(textOf('lapwing'), edits)
  if (!done.ok) throw new Error(done.problem.what)
  return new Answers(conversionOf(done.text).model)
}
const answered = (edits?: readonly { path: string; now: string | null }[]): CoastDown => {
  const a = of(edits).ask(coastDown)
  if (isGaps(a)) throw new Error(a.gaps.map(g => g.path).join(', '))
  return a
}
const force = (c: Pick<CoastDown, 'f0' | 'f1' | 'f2'>, v: number): number => c.f0.value + c.f1.value * v + c.f2.value * v * v

describe('the coast-down of the Lapwing', () => {
  it('finds the car its runs were made from: drag area 0.63 m² and rolling resistance 0.0142, within 1 %', () => {
    const c = answered(),
      density = 100e3 / (287.05287 * 293.15)
    for (const kmh of [30, 50, 70, 90, 110]) {
      const v = kmh / 3.6,
        made = 0.0142 * 1036 * 9.80665 + 0.5 * density * 0.63 * v * v
      expect(Math.abs(force(c, v) / made - 1)).toBeLessThan(0.01)
    }
  })
  it('holds its own coefficients within their bands, and says how well the runs agree', () => {
    const c = answered(),
      density = 100e3 / (287.05287 * 293.15)
    expect(Math.abs(c.f2.value - 0.5 * density * 0.63)).toBeLessThan(halfWidth(c.f2))
    expect(Math.abs(c.f0.value - 0.0142 * 1036 * 9.80665)).toBeLessThan(halfWidth(c.f0))
    expect(Object.keys(c.accuracy)).toHaveLength(9)
    for (const p of Object.values(c.accuracy)) expect(p.value).toBeLessThan(0.03)
  })
  it('governs over the drag area, and says how far the two lie apart', () => {
    const r = of().ask(roadLoad)
    if (isGaps(r) || !r.force || !r.difference) throw new Error('no road load')
    expect(r.governs).toBe('coast-down')
    expect(Math.abs(r.difference.value)).toBeLessThan(halfWidth(r.difference))
    const without = of([{ path: 'donor.coast-down', now: null }]).ask(roadLoad)
    expect(isGaps(without) || without.governs).toBe('drag area')
  })
  it('asks for the other half of a pair, and for a second pair', () => {
    const lone = of([{ path: 'donor.coast-down.steps.75-to-65.back-3', now: null }]).ask(coastDown)
    expect(isGaps(lone) && lone.gaps.map(g => g.path)).toEqual(['donor.coast-down.steps.75-to-65.back-3'])
    const pairs = [2, 3].flatMap(i => [
      { path: `donor.coast-down.steps.75-to-65.out-${i}`, now: null },
      { path: `donor.coast-down.steps.75-to-65.back-${i}`, now: null },
    ])
    const single = of(pairs).ask(coastDown)
    expect(isGaps(single) && single.gaps.map(g => g.path)).toEqual([
      'donor.coast-down.steps.75-to-65.out-2',
      'donor.coast-down.steps.75-to-65.back-2',
    ])
  })
  it('takes coefficients somebody published at the air of the test procedure, as assumed, where they say nothing of it', () => {
    const c = answered([
      { path: 'donor.coast-down', now: null },
      { path: 'donor.coast-down.mass', now: '1100 kg' },
      { path: 'donor.coast-down.f0', now: '25.89 lbf' },
      { path: 'donor.coast-down.f1', now: '0.3449 lbf/mph' },
      { path: 'donor.coast-down.f2', now: '0.01945 lbf/mph2' },
    ])
    expect(c.by).toBe('coefficients')
    expect([c.f0.value, c.f1.value, c.f2.value].map(v => Number(v.toPrecision(5)))).toEqual([115.16, 3.4319, 0.43293])
    expect(c.temperature.value).toBe(293.15)
    expect(c.density.value).toBeCloseTo(100e3 / (287.05287 * 293.15), 12)
    expect('origin' in c.temperature && c.temperature.origin?.how).toBe('assumed')
  })
})

describe('a coast-down that is not complete', () => {
  const mass = { 'donor.coast-down.mass': null }
  it('asks for the mass by name, and still tells how well the runs agree and how fast the car slowed', () => {
    expect(outcomes('lapwing', mass, 'road-load-measured')).toEqual(['coast-down unanswered', 'sound'])
    expect(outcomes('lapwing', mass, 'coast-down-repeats')).toEqual(outcomes('lapwing', {}, 'coast-down-repeats'))
    const reason = outcomes('lapwing', mass, 'coast-down-in-reason')
    expect(reason[0]).toBe('coefficients unanswered')
    expect(reason.slice(1).every(o => o.endsWith(' sound'))).toBe(true)
    expect(reason).toHaveLength(10)
  })
  it('leaves open only the step that lacks a run', () => {
    const repeats = outcomes('lapwing', { 'donor.coast-down.steps.75-to-65.back-3': null }, 'coast-down-repeats')
    expect(repeats.filter(o => o.endsWith('unanswered'))).toEqual(['75-to-65 unanswered'])
    expect(repeats).toHaveLength(9)
  })
  it('finds two times written the wrong way round although the mass is missing', () =>
    expect(
      outcomes(
        'lapwing',
        { ...mass, 'donor.coast-down.steps.75-to-65.from': '65 km/h', 'donor.coast-down.steps.75-to-65.to': '75 km/h' },
        'coast-down-in-reason',
      ),
    ).toContain('75-to-65 failing'))
})
