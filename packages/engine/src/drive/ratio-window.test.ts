import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { run } from './full-throttle.ts'
import { ratioForTime, ratioForTimeNear } from './ratio-window.ts'
import { ratioForPull, ratioForSpeed } from './speeds.ts'

const infinity = Number.POSITIVE_INFINITY
const roadster = {
  mass: 1205,
  front: 562,
  rear: 643,
  height: 0.47,
  wheelbase: 2.31,
  f0: 171,
  f1: 0,
  f2: 0.38,
  headWind: 0,
  grip: 0.8,
  radius: 0.28,
  wheelsInertia: 3,
  torque: [250],
  power: [100e3],
  efficiency: [0.95],
  topSpeed: [942],
  inertia: [0.038],
  ratios: [3.92],
  gears: [1],
  frontShare: [0],
  centre: 'open' as const,
  shiftTime: [],
  ratedTorque: [110],
  ratedPower: [44e3],
  windingTime: [119],
  start: 0,
  from: 0,
  to: 100 / 3.6,
  within: 9.5,
  which: 0,
}
const time = (i: number, x = roadster): number => run({ ...x, ratios: [i], distance: infinity }).time

describe('the window of ratios that keep a time', () => {
  it('ends where the run takes exactly that time', () => {
    fc.assert(
      fc.property(fc.double({ min: 7.8, max: 14, noNaN: true }), within => {
        const { low, high, best } = ratioForTime({ ...roadster, within })
        expect(time(low)).toBeCloseTo(within, 5)
        expect(time(low - 0.05)).toBeGreaterThan(within)
        if (high < (942 * 0.28) / (100 / 3.6) - 1e-6) expect(time(high)).toBeCloseTo(within, 5)
        expect(time(best)).toBeLessThanOrEqual(time(low) + 1e-9)
        expect(best).toBeGreaterThanOrEqual(low)
        expect(best).toBeLessThanOrEqual(high)
      }),
      { numRuns: runs(200) },
    )
  })
  it('is empty where no ratio is quick enough', () => {
    const none = ratioForTime({ ...roadster, within: 4 })
    expect([none.low, none.high]).toEqual([infinity, 0])
  })
  it('has no quicker ratio than its best, tried one by one', () => {
    const { best } = ratioForTime(roadster)
    for (let i = 1; i < 9.4; i += 0.1) expect(time(i)).toBeGreaterThanOrEqual(time(best) - 2e-4)
  })
  it('moves with its inputs as the neighbourhood says, which the bands rest on', () => {
    const near = ratioForTimeNear(ratioForTime(roadster), { ...roadster })
    for (const change of [{ mass: 1225 }, { f2: 0.42 }, { torque: [252] }, { within: 9.7 }]) {
      const truth = ratioForTime({ ...roadster, ...change }),
        first = near({ ...roadster, ...change })
      expect(Math.abs(first.low - truth.low)).toBeLessThan(0.05 * Math.abs(truth.low - ratioForTime(roadster).low) + 1e-4)
    }
  })
})

describe('the window of a one-speed car worked by hand', () => {
  // 0.305 m, 9000 rpm, 140 km/h; 1350 kg on 30 %, rolling 0.013, 220 N·m, 0.95: from 5.79 to 7.39.
  it('is limited by the hill below and by motor speed above', () => {
    expect(ratioForPull({ force: 3969, others: 0, radius: 0.305, torque: 220, efficiency: 0.95 })).toBeCloseTo(5.792, 3)
    expect(ratioForSpeed({ speed: 300 * Math.PI, radius: 0.305, roadSpeed: 140 / 3.6 })).toBeCloseTo(7.392, 3)
  })
})
