import { applyEdits } from '@ampwright/conversion'
import { describe, expect, it } from 'vitest'
import { Answers } from '../../packages/engine/src/studies/answers.ts'
import { loadCases } from '../../packages/engine/src/studies/donor/load-cases.ts'
import { trainBraking } from '../../packages/engine/src/studies/donor/train-braking.ts'
import { isGaps } from '../../packages/engine/src/studies/study.ts'
import { type Car, conversionOf, textOf } from '../cars.ts'

const G = 9.80665
const braking = (car: Car, edits: readonly { path: string; now: string | null }[] = []) => {
  const done = applyEdits(textOf(car), edits)
  if (!done.ok) throw new Error(done.problem.what)
  const answers = new Answers(conversionOf(done.text).model),
    [train, load] = [answers.ask(trainBraking), answers.ask(loadCases)]
  if (isGaps(train) || isGaps(load)) throw new Error('no answer')
  const t = train.cases['towing']!,
    l = load.cases['towing']!
  if (isGaps(l)) throw new Error('no load case')
  return { ...t, laden: l }
}
const value = (x: unknown): number => (x as { value: number }).value

describe('braking with a trailer', () => {
  it.each(['badger', 'otter'] as const)('%s: both axles together carry the car and what presses on the coupling', car => {
    const b = braking(car)
    expect(value(b.front) + value(b.rear)).toBeCloseTo((b.laden.mass.value - 75) * G + value(b.nose), 6)
    expect(b.deceleration).toBeNull()
  })
  it('presses harder on the coupling than standing, and the more so the higher the trailer’s load', () => {
    const low = braking('otter'),
      high = braking('otter', [{ path: 'trips.trailers.caravan.centre-height', now: '1200 mm' }])
    expect(value(low.nose)).toBeGreaterThan(75 * G)
    expect(value(high.nose)).toBeGreaterThan(value(low.nose))
  })
  it('stops worse by the share of the mass that brakes', () => {
    const b = braking('otter', [
      { path: 'trips.trailers.caravan.braked', now: 'no' },
      { path: 'donor.brakes.deceleration', now: '8 m/s2' },
    ])
    const car = b.laden.mass.value - 75
    expect(value(b.deceleration)).toBeCloseTo((8 * car) / (car + 1200), 9)
  })
  it('tells the stop without knowing how the trailer leans', () => {
    const b = braking('otter', [
      { path: 'trips.trailers.caravan.braked', now: 'no' },
      { path: 'trips.trailers.caravan.centre-height', now: null },
      { path: 'donor.brakes.deceleration', now: '8 m/s2' },
    ])
    expect(isGaps(b.nose) ? b.nose.gaps.map(g => g.path) : []).toEqual(['trips.trailers.caravan.centre-height'])
    expect(value(b.deceleration)).toBeGreaterThan(0)
  })
})
