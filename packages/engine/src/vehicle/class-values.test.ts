import { describe, expect, it } from 'vitest'
import { classDragArea, classRollingResistance, classWheelInertia } from './class-values.ts'

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

/**
 * Load a dynamometer takes up at 80 km/h where nobody coasted the car down, by inertia: kg, N. The tyres' losses on the rollers come on top, so the road
 * asks for more. UN Regulation No. 83, Annex 4a, default loads; rows below 1080 kg from memory.
 */
const DYNAMOMETER = [
  [455, 171],
  [680, 212],
  [800, 230],
  [910, 252],
  [1020, 270],
  [1130, 284],
  [1250, 302],
  [1360, 315],
  [1470, 329],
  [1590, 338],
  [1700, 351],
  [1810, 365],
  [1930, 378],
  [2040, 387],
  [2150, 396],
  [2270, 405],
] as const
describe('road load by class', () => {
  it.each(BODIES)('is more than a dynamometer sets by default, and less than three times as much: %s', body => {
    for (const [mass, at80] of DYNAMOMETER) {
      const load = classRollingResistance(body)!.value * mass * 9.80665 + 0.5 * 1.2 * classDragArea(body)!.value * (80 / 3.6) ** 2
      expect(load).toBeGreaterThan(at80)
      expect(load).toBeLessThan(3 * at80)
    }
  })
})
