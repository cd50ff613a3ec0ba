import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { at, curve } from '../numerics/curve.ts'
import { chargingForTime, powerForTime } from './pack-power.ts'

/** A flat curve with steep ends, as LFP has: where a slope taken at one point is furthest from what the charge taken does. */
const openCircuit = curve([0, 0.02, 0.1, 0.3, 0.6, 0.95, 0.99, 1], [250, 295, 325, 335, 338, 341, 345, 368])
const level = (y: number) => curve([0, 1000], [y, y])
const capacity = 100 * 3600
const base = { openCircuit, resistance: level(0.1), factor: 1, branch: 0, time: 20, cold: level(1), temperature: 298.15, capacity }
const charge = fc.double({ min: 0.001, max: 1, noNaN: true }),
  after = fc.double({ min: 1, max: 300, noNaN: true }),
  most = fc.double({ min: 5, max: 600, noNaN: true })

describe('power for a time', () => {
  it('is what halving finds that takes the charge away as it goes, step by step', () =>
    fc.assert(
      fc.property(charge, after, most, (z, t, limit) => {
        const x = { ...base, charge: z, after: t, floor: 260, most: limit }
        // A current drawn in a hundred pieces of the time, refused as soon as one piece ends below the floor, beyond the most power, or without charge.
        const holds = (i: number): boolean => {
          let left = z * capacity
          for (let k = 0; k < 100; k++) left -= (i * t) / 100
          const open = at(openCircuit, Math.max(0, left / capacity))
          return left >= -1e-6 && open - 0.1 * i >= 260 && open >= 0.2 * i
        }
        let low = 0,
          high = limit
        if (holds(high)) low = high
        else
          for (let k = 0; k < 60; k++) {
            const middle = (low + high) / 2
            if (holds(middle)) low = middle
            else high = middle
          }
        expect(Math.abs(powerForTime(x).current - low)).toBeLessThanOrEqual(1e-6 * limit + 1e-6)
      }),
      { numRuns: runs(4000) },
    ))
  it('never takes more charge than there is, nor more current than is allowed, nor is greater from an emptier pack', () =>
    fc.assert(
      fc.property(charge, charge, after, most, (a, b, t, limit) => {
        const of = (z: number) => powerForTime({ ...base, charge: z, after: t, floor: 260, most: limit })
        const less = of(Math.min(a, b)),
          more = of(Math.max(a, b))
        expect(less.current * t).toBeLessThanOrEqual(Math.min(a, b) * capacity * (1 + 1e-12))
        expect(more.current).toBeLessThanOrEqual(limit)
        expect(less.power).toBeLessThanOrEqual(more.power * (1 + 1e-9) + 1e-6)
      }),
      { numRuns: runs(4000) },
    ))
  it('into the pack stays below the ceiling with the charge it brings', () =>
    fc.assert(
      fc.property(charge, after, most, (z, t, limit) => {
        const { current } = chargingForTime({ ...base, charge: z, after: t, ceiling: 370, most: limit, share: level(1) })
        // What halving finds that puts the charge in and looks at the ceiling.
        const holds = (i: number): boolean => at(openCircuit, Math.min(1, z + (i * t) / capacity)) + 0.1 * i <= 370
        let low = 0,
          high = limit
        if (holds(high)) low = high
        else
          for (let k = 0; k < 60; k++) {
            const middle = (low + high) / 2
            if (holds(middle)) low = middle
            else high = middle
          }
        expect(Math.abs(current - low)).toBeLessThanOrEqual(1e-6 * limit + 1e-6)
        const end = at(openCircuit, Math.min(1, z + (current * t) / capacity)) + 0.1 * current
        expect(end).toBeLessThanOrEqual(370 * (1 + 1e-9))
      }),
      { numRuns: runs(4000) },
    ))
})
