import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { type Band, bandsAbove } from './log-lines.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const inside = (bands: readonly Band[], x: number): boolean => bands.some(b => x > b.from && x < b.to)

describe('bands where a line lies above zero', () => {
  it('are exact between corners', () => {
    const v = (current: number) => Math.abs(Math.log(current / 100)) - Math.log(2)
    expect(bandsAbove(10, 1000, [100], v).flatMap(b => [b.from, b.to].map(x => Math.round(x * 1e6) / 1e6))).toEqual([10, 50, 200, 1000])
    expect(bandsAbove(60, 150, [100], v)).toEqual([])
    expect(bandsAbove(300, 400, [100], v)).toEqual([{ from: 300, to: 400 }])
    expect(bandsAbove(1, 100, [10], () => Number.POSITIVE_INFINITY)).toEqual([{ from: 1, to: 100 }])
    expect(() => bandsAbove(0, 1, [], v)).toThrow(RangeError)
    expect(() => bandsAbove(2, 1, [], v)).toThrow(RangeError)
  })
  it('hold what a look at each current in turn finds', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(real(1.05, 3), real(-2, 2)), { minLength: 1, maxLength: 6 }), real(-2, 2), (steps, first) => {
        let x = 100
        const points = [[x, first] as [number, number], ...steps.map(([ratio, y]) => [(x *= ratio), y] as [number, number])]
        const line = (c: number): number => {
          const i = Math.max(
              0,
              points.findLastIndex(([at]) => at <= c),
            ),
            [[a, ya], [b, yb]] = [points[Math.min(i, points.length - 2)], points[Math.min(i + 1, points.length - 1)]] as [
              [number, number],
              [number, number],
            ]
          return ya + ((yb - ya) * Math.log(c / a)) / Math.log(b / a)
        }
        const bands = bandsAbove(
          100,
          x,
          points.map(p => p[0]),
          line,
        )
        for (let k = 1; k < 400; k++) {
          const c = 100 * (x / 100) ** (k / 400)
          if (Math.abs(line(c)) > 1e-9) expect(inside(bands, c), `at ${c}`).toBe(line(c) > 0)
        }
      }),
      { numRuns: runs(200) },
    )
  })
})
