import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { allowedGrip } from './allowed-grip.ts'
import { leastBraking } from './corridor.ts'
import { firstLock } from './first-lock.ts'
import { leastAboveLine, leastLead } from './over-range.ts'
import { caseCar } from './symbols.ts'
import { type Braked, frontLocks, idealRear, NO_VALVE, rearForce, rearLocks, utilisation } from './utilisation-curve.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const stance = fc.record({ rearShare: real(0.4, 0.65), height: real(0.4, 0.75), wheelbase: real(2.1, 3.2) })
const brakes = fc.record({ below: real(0.45, 0.9), share: real(0, 1), knee: real(0.1, 1), motors: real(0, 0.4), motorsFront: real(0, 1) })
const car = fc.tuple(stance, brakes).map(([s, { share, ...b }]): Braked => ({ ...s, ...b, above: b.below + share * (1 - b.below) }))
const plain = (rearShare: number, front: number): Braked => ({
  ...caseCar,
  rearShare,
  below: front,
  above: front,
  knee: NO_VALVE.value,
  motors: 0,
  motorsFront: 0,
})

describe('the lead of the front axle over the whole range', () => {
  it('is kept at the three points that decide exactly where it is kept at a thousand', () =>
    fc.assert(
      fc.property(car, x => {
        const { lead } = leastLead(x)
        let least = Number.POSITIVE_INFINITY
        for (let i = 0; i <= 1000; i++) {
          const from = Math.max(0.15, x.motors),
            z = from + ((Math.max(from, 0.8) - from) * i) / 1000,
            { front, rear } = utilisation(x, z)
          least = Math.min(least, front - rear)
        }
        // A zero of the lead may fall between two of the thousand.
        if (Math.abs(lead) > 1e-3) expect(Math.sign(least)).toBe(Math.sign(lead))
      }),
      { numRuns: runs(2000) },
    ))
  it('grows with motors in front and shrinks with motors behind', () => {
    const base = plain(caseCar.rearShare, 0.72),
      with_ = (motorsFront: number) => leastLead({ ...base, motors: 0.1, motorsFront }).lead
    expect(with_(1)).toBeGreaterThan(leastLead(base).lead)
    expect(with_(0)).toBeLessThan(leastLead(base).lead)
  })
})

describe('the line of least braking over the whole range', () => {
  it('is the line of the regulation turned round at twenty brakings', () => {
    for (let i = 0; i < 20; i++) {
      const z = 0.1 + (0.42 * i) / 19
      expect(leastBraking({ grip: allowedGrip(z) })).toBeCloseTo(z, 12)
    }
  })
  it('is as far below the car as its first lock at every grip says, worked out from grip instead of from braking', () =>
    fc.assert(
      fc.property(real(0.4, 0.6), real(0.55, 0.9), (rearShare, front) => {
        const x = plain(rearShare, front)
        let least = Number.POSITIVE_INFINITY
        for (let k = 0.2; k <= 0.8; k += 0.002)
          least = Math.min(least, firstLock({ grip: k, front, ...caseCar, rearShare }).first - leastBraking({ grip: k }))
        expect(Math.abs(leastAboveLine(x).room - least)).toBeLessThan(0.006)
      }),
      { numRuns: runs(500) },
    ))
  it('is missed by a car whose front brakes do nearly everything', () => {
    expect(leastAboveLine(plain(0.6, 0.98)).room).toBeLessThan(0)
  })
})

describe('the picture of brake forces', () => {
  it('has its axles lock together on the ideal parabola, on any grip', () =>
    fc.assert(
      fc.property(stance, real(0.1, 1), (s, grip) => {
        const front = grip * (1 - s.rearShare + (grip * s.height) / s.wheelbase)
        expect(frontLocks(s, grip, front)).toBeCloseTo(idealRear(s, front), 9)
        expect(rearLocks(s, grip, front)).toBeCloseTo(idealRear(s, front), 9)
      }),
      { numRuns: runs(1000) },
    ))
  it('draws the installed line through the same forces that use the grip', () =>
    fc.assert(
      fc.property(car, real(0.45, 0.8), (x, z) => {
        const { front, rear } = utilisation(x, z),
          moved = (z * x.height) / x.wheelbase,
          force = front * (1 - x.rearShare + moved)
        if (x.rearShare - moved > 0.01) expect(rearForce(x, force)).toBeCloseTo(rear * (x.rearShare - moved), 6)
      }),
      { numRuns: runs(1000) },
    ))
})
