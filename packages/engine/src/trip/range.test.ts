import { describe, expect, it } from 'vitest'
import { cycleTrace, roadster } from '../../../../tests/trip-plans.ts'
import { curve, integral } from '../numerics/index.ts'
import type { TripPlan } from './plan.ts'
import { rangeToEmpty } from './range.ts'

const COLD = curve([253.15, 273.15, 298.15], [0.72, 0.87, 1])
const cycle = roadster(cycleTrace('wltc-3b'), 1),
  steady = roadster(curve([0, 1800], [25, 25]), 1)
const withCapacity = (plan: TripPlan, capacity: number): TripPlan => ({ ...plan, pack: { ...plan.pack, capacity } })

describe('range to the reserve', () => {
  it('uses exactly the energy between full and the reserve, losses included', () => {
    const plan = { ...steady, startCharge: 1 },
      r = rangeToEmpty(plan, 0.1, curve([200, 400], [1, 1])),
      { openCircuit, capacity } = plan.pack
    const usable = 0.9 * capacity * integral(openCircuit, 0, 1)
    // What is missing was lost in the battery: some 2 % at this load.
    expect(r.energy / usable).toBeGreaterThan(0.96)
    expect(r.energy / usable).toBeLessThan(0.995)
    expect(r.consumption * r.range).toBeCloseTo(r.energy, 3)
  })
  it.each([
    ['a cycle', cycle],
    ['a steady speed', steady],
  ] as const)('is smooth in the size of the battery on %s: no jump where a lap or a step is gained', (_, plan) => {
    const range = (k: number): number => rangeToEmpty(withCapacity(plan, 300e3 + 1500 * k), 0.1, COLD).range
    const values = Array.from({ length: 40 }, (_, k) => range(k)),
      rises = values.slice(1).map((v, k) => v - values[k]!)
    const mean = rises.reduce((a, b) => a + b, 0) / rises.length
    for (const rise of rises) {
      expect(rise).toBeGreaterThan(0.9 * mean)
      expect(rise).toBeLessThan(1.1 * mean)
    }
  })
  it('falls with the reserve, the cold, the cabin and the wind', () => {
    const range = (change: Partial<TripPlan>, reserve = 0.1): number => rangeToEmpty({ ...cycle, ...change }, reserve, COLD).range,
      here = range({})
    expect(range({}, 0.2)).toBeLessThan(here)
    expect(range({ cabinPower: 3000 })).toBeLessThan(here)
    expect(range({ road: { ...cycle.road, headWind: 5 } })).toBeLessThan(here)
    expect(range({ nodes: cycle.nodes.map((n, i) => (i === 0 || i === 2 ? { ...n, start: 263.15 } : n)) })).toBeLessThan(here)
  })
  it('is nothing below the reserve, and endless where the road drives the car', () => {
    expect(rangeToEmpty({ ...cycle, startCharge: 0.05 }, 0.1, COLD).range).toBe(0)
    const down = {
      ...steady,
      slope: curve([0, 1], [-0.08, -0.08]),
      cabinPower: 0,
      otherPower: 0,
      startCharge: 0.5,
      nodes: steady.nodes.map((n, i) => (i === 2 ? { ...n, start: 298 } : n)),
    }
    expect(rangeToEmpty(down, 0.1, COLD).range).toBe(Number.POSITIVE_INFINITY)
  })
  it.each([14, 22, 28, 33])('at a steady %s m/s is the same in steps of 10 s as in steps of 0.1 s, to a thousandth', speed => {
    const range = (step: number): number => rangeToEmpty(roadster(curve([0, 3600], [speed, speed]), step), 0.1, COLD).range
    expect(Math.abs(range(10) / range(0.1) - 1)).toBeLessThan(0.001)
  })
  it('at 1 Hz is within 0.5 % of that at 10 Hz', () => {
    for (const id of ['wltc-3b', 'udds', 'us06'] as const) {
      const coarse = rangeToEmpty(roadster(cycleTrace(id), 1), 0.1, COLD).range,
        fine = rangeToEmpty(roadster(cycleTrace(id), 0.1), 0.1, COLD).range
      expect(Math.abs(coarse / fine - 1), id).toBeLessThan(0.005)
    }
  })
  it('on a steady drive is reached at once: laps of one lap or of three give the same', () => {
    const a = rangeToEmpty(steady, 0.1, COLD).range,
      b = rangeToEmpty(roadster(curve([0, 600], [25, 25]), 1), 0.1, COLD).range
    expect(Math.abs(a / b - 1)).toBeLessThan(1e-6)
  })
})
