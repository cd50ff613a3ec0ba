import { describe, expect, it } from 'vitest'
import { classWheelInertia } from './class-values.ts'

const BODIES = ['open two-seater', 'saloon', 'estate', 'hatchback', 'off-road', 'pickup', 'van']

describe('inertia of a wheel by class', () => {
  it.each(BODIES)('there is one for every body: %s', body => expect(classWheelInertia(body)?.value).toBeGreaterThan(0))
  it('is none where the body is not known', () => expect(classWheelInertia(undefined)).toBeUndefined())
  it('spans 18 kg at 0.33 m and 30 kg at 0.38 m for larger wheels', () => {
    const { value, half } = classWheelInertia('pickup')!
    expect(value - half).toBeCloseTo(0.7 * 18 * 0.33 ** 2, 1)
    expect(value + half).toBeCloseTo(0.7 * 30 * 0.38 ** 2, 1)
  })
})
