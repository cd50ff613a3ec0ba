import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { solveOde } from '../numerics/ode.ts'
import { ladderCurrents, settlingTime, shareAfter, shareAtOnce, shareSettled } from './parallel-branches.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe('cells side by side', () => {
  it('on a bar fed at one end the nearest works hardest; fed diagonally they are symmetric', () => {
    const end = ladderCurrents(4, 0.5e-3, 50e-6, 400, 'one end'),
      cross = ladderCurrents(4, 0.5e-3, 50e-6, 400, 'opposite ends')
    for (const [k, i] of [130.488, 103.537, 86.939, 79.036].entries()) expect(end[k]).toBeCloseTo(i, 3)
    for (const [k, i] of [104.762, 95.238, 95.238, 104.762].entries()) expect(cross[k]).toBeCloseTo(i, 3)
  })
  it('always carry the whole load, and share it equally over links without resistance', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 12 }),
        real(1e-4, 1e-2),
        real(0, 1e-3),
        real(-500, 500),
        fc.constantFrom('one end', 'opposite ends'),
        (n, r, link, current, feed) => {
          const i = ladderCurrents(n, r, link, current, feed)
          expect(Math.abs(i.reduce((a, b) => a + b, 0) - current)).toBeLessThan(1e-9 * Math.max(1, Math.abs(current)))
          for (const x of ladderCurrents(n, r, 0, current, feed)) expect(x).toBeCloseTo(current / n, 6)
        },
      ),
    )
  })
  it('two unlike ones follow the closed form: a general solver of the two charges agrees', () => {
    const a1 = 0.7 / 216000,
      a2 = 0.7 / 194400,
      first = 0.9e-3,
      second = 1.1e-3,
      current = 120
    const one = (q1: number, q2: number): number => (current * second - a1 * q1 + a2 * q2) / (first + second)
    const solved = solveOde(
      (_, y, rate) => {
        const i = one(y[0]!, y[1]!)
        rate[0] = i
        rate[1] = current - i
      },
      0,
      [0, 0],
      1200,
      { relative: 1e-10, absolute: 1e-9 },
    )
    const once = shareAtOnce({ current, first, second, firstVoltage: 3.7, secondVoltage: 3.7 }),
      settled = shareSettled({ current, firstSlope: a1, secondSlope: a2 })
    const constant = settlingTime({ first, second, firstSlope: a1, secondSlope: a2 })
    for (const time of [1, 60, 300, 1200]) {
      const y = solved?.at(time) as Float64Array
      expect(shareAfter({ once, settled, time, constant }).current).toBeCloseTo(one(y[0]!, y[1]!), 6)
    }
  })
})
