import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { adhesionUtilisation } from './adhesion-utilisation.ts'
import { leastBraking } from './corridor.ts'
import { firstLock } from './first-lock.ts'
import { firstLockThroughValve } from './lock-through-valve.ts'
import { brakingThroughValve, pressureBehindValve } from './proportioning-valve.ts'
import { BAR, converted, donor } from './valve-takes.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const car = fc.record({
  mass: real(700, 2500),
  rearShare: real(0.35, 0.62),
  height: real(0.4, 0.7),
  wheelbase: real(2.1, 3),
  front: real(50 / BAR, 150 / BAR),
  rear: real(20 / BAR, 80 / BAR),
  knee: real(5 * BAR, 60 * BAR),
  slope: real(0.2, 0.6),
})

describe('a valve before the rear brakes', () => {
  it('never gives less for more line pressure, and never more than the line', () => {
    fc.assert(
      fc.property(real(0, 150 * BAR), real(0, 150 * BAR), real(1, 100 * BAR), real(0, 1), (a, b, knee, slope) => {
        const behind = (pressure: number): number => pressureBehindValve({ pressure, knee, slope })
        expect(behind(Math.max(a, b))).toBeGreaterThanOrEqual(behind(Math.min(a, b)) - 1e-6)
        expect(behind(a)).toBeLessThanOrEqual(a + 1e-6)
      }),
      { numRuns: runs(1000) },
    )
  })
  it('its first lock is the line pressure at which, squeezed harder and harder, an axle first uses all the grip', () => {
    fc.assert(
      fc.property(car, real(0.2, 0.9), (c, grip) => {
        const used = (pressure: number): number => {
          const { front, rear } = brakingThroughValve({ ...c, pressure })
          // Past the point where the rear axle leaves the road its grip is spent.
          return Math.max(front, rear < 0 ? Number.POSITIVE_INFINITY : rear)
        }
        let [low, high] = [0, 400 * BAR]
        if (used(high) < grip) return
        for (let i = 0; i < 80; i++) {
          const middle = (low + high) / 2
          if (used(middle) < grip) low = middle
          else high = middle
        }
        expect(firstLockThroughValve({ ...c, grip }).first).toBeCloseTo(brakingThroughValve({ ...c, pressure: low }).braking, 6)
      }),
      { numRuns: runs(2000) },
    )
  })
  it('behind which nearly all the braking is done at the rear lets the front axle never lock: the rear sets the limit', () => {
    const weak = firstLockThroughValve({ ...donor, front: 5 / BAR, slope: 0.6, knee: 30 * BAR, grip: 0.8 })
    expect(weak.front).toBe(Number.POSITIVE_INFINITY)
    expect(weak.first).toBe(weak.rear)
    expect(weak.first).toBeGreaterThan(0)
  })
  it('that lets everything through is none: a fixed share', () => {
    fc.assert(
      fc.property(car, real(0.2, 1), (c, grip) => {
        const valve = firstLockThroughValve({ ...c, slope: 1, grip }),
          fixed = firstLock({ ...c, front: c.front / (c.front + c.rear), grip })
        expect(valve.first).toBeCloseTo(fixed.first, 9)
        expect(valve.rear).toBeCloseTo(fixed.rear, 9)
      }),
      { numRuns: runs(1000) },
    )
  })
  it('left as it was under a heavier rear keeps the line, and taken out breaks the order below 0.8', () => {
    for (let grip = 0.2; grip <= 0.8; grip += 0.05)
      expect(firstLockThroughValve({ ...converted, knee: 30 * BAR, grip }).first).toBeGreaterThan(leastBraking({ grip }))
    const split = 92 / (92 + 52),
      used = adhesionUtilisation({ braking: 0.79, front: split, rearShare: 0.53, height: 0.545, wheelbase: 2.45 })
    expect(used.rear).toBeGreaterThan(used.front)
  })
  it('behind the case car holds 44 of 70 bar, and keeps the order there', () => {
    const at = { pressure: 70 * BAR, knee: 30 * BAR, slope: 0.35 },
      { front, rear, rearForce } = brakingThroughValve({ ...donor, ...at })
    expect(rearForce).toBeCloseTo(44 * 52, 6)
    expect(rear).toBeLessThan(front)
  })
})
