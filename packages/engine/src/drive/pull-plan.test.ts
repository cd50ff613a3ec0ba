import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { gripped, type PullPlan } from './pull-plan.ts'

const G = 9.80665
const LB = 0.45359237,
  LBF = LB * G,
  INCH = 0.0254
const plan = (p: Partial<PullPlan>): PullPlan =>
  ({ mass: 1200, front: 560, rear: 640, height: 0.5, wheelbase: 2.4, grip: 0.7, centre: 'open', ...p }) as PullPlan
const held = (p: PullPlan, front: number, rear: number, linked = false, road = 0, share = 1): readonly [number, number] => {
  const out = new Float64Array(2)
  gripped(p, front, rear, linked, road, share, out)
  return [out[0] as number, out[1] as number]
}

describe('what the tyres carry', () => {
  // Mannering and Washburn, example 2.3 (from memory): 2500 lb, wheelbase 120 in, centre 22 in high, 40 in behind the front axle, grip 0.6, rolling 0.01.
  const car = plan({
    mass: 2500 * LB,
    front: 2500 * LB * (80 / 120),
    rear: 2500 * LB * (40 / 120),
    height: 22 * INCH,
    wheelbase: 120 * INCH,
    grip: 0.6,
  })
  it('is the textbook’s pull with front and with rear drive', () => {
    expect(held(car, 1e6, 0, false, 25 * LBF)[0] / LBF).toBeCloseTo(903.38, 1)
    expect(held(car, 0, 1e6, false, 25 * LBF)[1] / LBF).toBeCloseTo(558.71, 1)
  })
  it('is the whole weight where both axles have all they can hold, locked or not', () => {
    const p = plan({})
    expect(held(p, 1e6, 1e6)[0] + held(p, 1e6, 1e6)[1]).toBeCloseTo(0.7 * 1200 * G, 6)
    const locked = held(plan({ centre: 'locked' }), 1e6, 1e6)
    expect(locked[0] + locked[1]).toBeCloseTo(0.7 * 1200 * G, 6)
  })
  it('with one shaft to both axles is set by the axle that slips first', () => {
    const p = plan({ front: 1200 * (1 - 1.15 / 2.45), rear: (1200 * 1.15) / 2.45, height: 0.54, wheelbase: 2.45, grip: 0.8 })
    const [f, r] = held(p, 0.4e6, 0.6e6, true)
    // Worked by hand: 0.7365 of the weight with 40 % front, the front axle limiting.
    expect((f + r) / (1200 * G)).toBeCloseTo(0.7365, 4)
    expect(f / (f + r)).toBeCloseTo(0.4, 12)
  })
  it('never exceeds what is offered, nor grip times load on an axle, and wastes nothing', () => {
    const number = (low: number, high: number): fc.Arbitrary<number> => fc.double({ min: low, max: high, noNaN: true })
    fc.assert(
      fc.property(
        number(0, 12000),
        number(0, 12000),
        number(0.05, 1.1),
        number(0, 2000),
        number(0.3, 0.7),
        number(0.85, 1),
        (front, rear, grip, road, at, share) => {
          const p = plan({ grip, front: 1200 * (1 - at), rear: 1200 * at }),
            [f, r] = held(p, front, rear, false, road, share)
          const moved = ((share * p.height) / p.wheelbase) * (f + r - road),
            onFront = grip * Math.max(0, p.front * G - moved),
            onRear = grip * Math.max(0, p.rear * G + moved)
          expect(f).toBeLessThanOrEqual(front + 1e-6)
          expect(r).toBeLessThanOrEqual(rear + 1e-6)
          expect(f).toBeLessThanOrEqual(onFront + 1e-6)
          expect(r).toBeLessThanOrEqual(onRear + 1e-6)
          // Whatever is short of its offer stands at its grip.
          if (f < front - 1e-6) expect(f).toBeCloseTo(onFront, 4)
          if (r < rear - 1e-6) expect(r).toBeCloseTo(onRear, 4)
        },
      ),
      { numRuns: runs(4000) },
    )
  })
})
