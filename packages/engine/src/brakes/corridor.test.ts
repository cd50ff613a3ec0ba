import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { adhesionUtilisation, lockCrossing } from './adhesion-utilisation.ts'
import { leastBraking, lockOrder } from './corridor.ts'
import { firstLock } from './first-lock.ts'
import { idealBrakeForces } from './ideal-forces.ts'
import { blendedUtilisation } from './regeneration-limits.ts'
import { caseCar } from './symbols.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const car = fc.record({ rearShare: real(0.35, 0.65), height: real(0.4, 0.8), wheelbase: real(2, 3.2) })
const part = real(0.4, 0.95)

describe('the line of least braking', () => {
  it('is 0.1 + 0.7·(k − 0.2) at twenty grips from 0.2 to 0.8', () => {
    for (let i = 0; i < 20; i++) {
      // In 190ths, with no fraction that a computer rounds: 0.1 + 0.7·0.6·i/19.
      const thousandthsOf19 = 1900 + 420 * i
      expect(leastBraking({ grip: 0.2 + (0.6 * i) / 19 })).toBeCloseTo(thousandthsOf19 / 19000, 12)
    }
  })
  it('is cleared by the case car at every grip, and its rear axle stays behind up to the crossing', () => {
    for (let k = 0.2; k <= 0.8; k += 0.01)
      expect(firstLock({ grip: k, front: 0.72, ...caseCar }).first).toBeGreaterThan(leastBraking({ grip: k }))
    for (let z = 0.15; z <= 0.8; z += 0.01) {
      const used = adhesionUtilisation({ braking: z, front: 0.72, ...caseCar })
      expect(lockOrder({ braking: z, ...used }).curves).toBeGreaterThan(0)
    }
  })
  it('is just passed by 0.20 of motor braking at the front over 0.05 of friction', () => {
    const { braking, front } = blendedUtilisation({ friction: 0.05, motors: 0.2, motorsFront: 1, front: 0.72, ...caseCar })
    expect(braking - leastBraking({ grip: front })).toBeCloseTo(0.25 - 0.242, 3)
  })
})

describe('the order of locking', () => {
  it('turns where both axles use the same grip', () => {
    fc.assert(
      fc.property(car, part, real(0.05, 1.2), (stance, front, grip) => {
        const crossing = lockCrossing({ front, ...stance }),
          lock = firstLock({ grip, front, ...stance })
        if (Math.abs(lock.front - lock.rear) < 1e-9) return
        expect(lock.front < lock.rear).toBe(lock.first < crossing)
      }),
      { numRuns: runs(2000) },
    )
  })
  it('is broken by motors that brake the rear wheels on top of light braking, kept on top of hard braking', () => {
    const at = (friction: number) => {
      const used = blendedUtilisation({ friction, motors: 0.05, motorsFront: 0, front: 0.72, ...caseCar })
      return lockOrder(used).curves
    }
    expect(at(0.1)).toBeLessThan(0)
    expect(at(0.5)).toBeGreaterThan(0)
  })
})

describe('grip used', () => {
  it('by both axles is the braking itself where the brake forces are ideal', () => {
    fc.assert(
      fc.property(car, real(500, 3000), real(0.05, 0.75), (stance, mass, braking) => {
        const ideal = idealBrakeForces({ mass, braking, ...stance }),
          front = ideal.front / (ideal.front + ideal.rear),
          used = adhesionUtilisation({ braking, front, ...stance })
        expect(used.front).toBeCloseTo(braking, 9)
        expect(used.rear).toBeCloseTo(braking, 9)
      }),
      { numRuns: runs(2000) },
    )
  })
  it('at first lock is all the grip there is, on the axle that locks', () => {
    fc.assert(
      fc.property(car, part, real(0.1, 1), (stance, front, grip) => {
        const lock = firstLock({ grip, front, ...stance }),
          used = adhesionUtilisation({ braking: lock.first, front, ...stance })
        expect(Math.max(used.front, used.rear)).toBeCloseTo(grip, 9)
        expect(lock.efficiency).toBeLessThanOrEqual(1 + 1e-9)
      }),
      { numRuns: runs(2000) },
    )
  })
  it('with motors that split their braking like the brakes is that of brakes alone', () => {
    fc.assert(
      fc.property(car, part, real(0.02, 0.4), real(0, 0.3), (stance, front, friction, motors) => {
        const both = blendedUtilisation({ friction, motors, motorsFront: front, front, ...stance }),
          alone = adhesionUtilisation({ braking: friction + motors, front, ...stance })
        expect(both.front).toBeCloseTo(alone.front, 9)
        expect(both.rear).toBeCloseTo(alone.rear, 9)
      }),
      { numRuns: runs(1000) },
    )
  })
})
