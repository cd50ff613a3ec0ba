import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { proven } from '../../../../tests/proof.ts'
import { type ContactorLimits, carryTime, crossing, crossingBand, gaps, whoClears } from './fuse-coordination.ts'
import { fuseCurve } from './fuse-curve.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
/** Fuse made up for the purpose; contactor as the data sheet of one of 250 A has it. */
const fuse = fuseCurve([
  [800, 1000],
  [1000, 100],
  [1400, 10],
  [2400, 1],
  [4000, 0.1],
  [6500, 0.01],
])
const contactor: ContactorLimits = {
  continuous: 250,
  points: [
    [300, 420],
    [600, 60],
    [6000, 0.025],
  ],
  breaks: 2000,
}
const PRINTED = { tolerance: 0, reading: 'line' } as const
const near = (check: string, expected: number, obtained: number, tolerance: number, unit: string): void => {
  expect(
    proven({
      domain: 'high-voltage',
      check,
      source: 'Curves of a fuse and a contactor, crossed; recomputed',
      mark: 'derived',
      expected,
      obtained,
      tolerance,
      unit,
    }),
    `${check}: expected ${expected}, got ${obtained}`,
  ).toBe(true)
}

describe('fuse and contactor', () => {
  it('clear what the table says they clear', () => {
    for (const [current, melts, carries, verdict] of [
      [1000, 100, 10.67, 'opening'],
      [1400, 10, 3.422, 'opening'],
      [2000, 2.179, 1.025, 'opening'],
      [2029, 2.049, 0.9763, 'gap'],
      [3000, 0.3657, 0.2603, 'gap'],
      [4000, 0.1, 0.09844, 'gap'],
      [4100, 0.08895, 0.09056, 'fuse first'],
      [5000, 0.0347, 0.0463, 'fuse first'],
      [6000, 0.01462, 0.025, 'fuse first'],
    ] as const) {
      const got = whoClears(fuse, contactor, current, PRINTED)
      near(`fuse melts at ${current} A`, melts, got.melts as number, 6e-4 * melts, 's')
      near(`contactor carries ${current} A`, carries, got.carries, 6e-4 * carries, 's')
      expect(got.verdict, `${current} A`).toBe(verdict)
    }
  })
  it('leave a gap whose end is a band, not a number', () => {
    const band = crossingBand(fuse, contactor, 0.1)
    near('crossing, as printed', 4046.5, band.printed as number, 0.05, 'A')
    near('crossing, fuse late by a tenth', 5639, band.late as number, 0.5, 'A')
    near('crossing, contactor by its last point', 4934, band.lastPoint as number, 0.5, 'A')
    near('crossing, both', 5818, band.both as number, 0.5, 'A')
    expect([band.from, band.to]).toEqual([band.printed, band.both])
  })
  it('fail for the pack whose faults reach into the gap', () => {
    const [gap, ...more] = gaps(fuse, contactor, 2029, 8294, PRINTED)
    expect(more).toEqual([])
    expect(gap?.from).toBe(2029)
    expect(gap?.to).toBeCloseTo(4046.5, 1)
    expect(gaps(fuse, contactor, 500, 8294, PRINTED)[0]?.from).toBe(2000)
    expect(gaps(fuse, contactor, 4047, 8294, PRINTED)).toEqual([])
    // At 4100 A the fuse is first by 2 % only: not with its tolerance.
    expect(gaps(fuse, contactor, 4047, 8294, { tolerance: 0.1, reading: 'last point' })[0]?.to).toBeCloseTo(5818, -1)
  })
  it('find the gaps that a look at each current in turn finds', () => {
    const point = fc.tuple(real(1.1, 2.5), real(0.05, 0.8))
    const line = (first: [number, number], steps: readonly [number, number][]) => {
      let [i, t] = first
      return [first, ...steps.map(([up, down]) => [(i *= up), (t *= down)] as [number, number])]
    }
    fc.assert(
      fc.property(
        fc.array(point, { minLength: 1, maxLength: 5 }),
        fc.array(point, { minLength: 1, maxLength: 4 }),
        real(0.2, 30),
        real(0.2, 30),
        real(600, 3000),
        real(0, 0.2),
        fc.constantFrom('line' as const, 'last point' as const),
        (f, c, tf, tc, breaks, tolerance, reading) => {
          const some = fuseCurve(line([800, 100 * tf], f)),
            limits: ContactorLimits = { continuous: 250, points: line([500, 10 * tc], c), breaks },
            held = { tolerance, reading },
            found = gaps(some, limits, 700, 30e3, held)
          for (let k = 1; k < 300; k++) {
            const current = 700 * (30e3 / 700) ** (k / 300),
              { melts, carries, verdict } = whoClears(some, limits, current, held)
            if (melts !== undefined && Math.abs(Math.log(melts / carries)) < 1e-9) continue
            expect(
              found.some(b => current > b.from && current <= b.to),
              `at ${current}`,
            ).toBe(verdict === 'gap')
          }
        },
      ),
      { numRuns: runs(300) },
    )
  })
  it('have a gap no smaller with a later fuse or the stricter reading', () => {
    const width = (tolerance: number, reading: 'line' | 'last point') =>
      gaps(fuse, contactor, 500, 20e3, { tolerance, reading }).reduce((sum, b) => sum + b.to - b.from, 0)
    fc.assert(
      fc.property(real(0, 0.3), real(0, 0.1), (tolerance, more) => {
        expect(width(tolerance + more, 'line')).toBeGreaterThanOrEqual(width(tolerance, 'line') - 1e-6)
        expect(width(tolerance, 'last point')).toBeGreaterThanOrEqual(width(tolerance, 'line') - 1e-6)
      }),
      { numRuns: runs(200) },
    )
  })
  it('have no gap where the contactor breaks all there is, and no crossing where the fuse is never first', () => {
    expect(gaps(fuse, { ...contactor, breaks: 9000 }, 2029, 8294, PRINTED)).toEqual([])
    expect(crossing(fuse, { ...contactor, breaks: 6000 }, PRINTED)).toBe(6000)
    const weak: ContactorLimits = { ...contactor, points: [...contactor.points.slice(0, 2), [6000, 0.001]] }
    expect(crossing(fuse, weak, PRINTED)).toBeUndefined()
    expect(crossingBand(fuse, weak, 0.1).to).toBeUndefined()
    expect(() => gaps(fuse, contactor, 0, 100, PRINTED)).toThrow(RangeError)
  })
  it('read a contactor as without end up to its continuous current, and by its first point until there', () => {
    expect(carryTime(contactor, 250, 'line')).toBe(Number.POSITIVE_INFINITY)
    expect(carryTime(contactor, 280, 'line')).toBe(420)
    expect(carryTime(contactor, 600, 'last point')).toBeCloseTo(60, 9)
    expect(carryTime(contactor, 601, 'last point')).toBeCloseTo(0.9e6 / 601 ** 2, 9)
    expect(carryTime(contactor, 12e3, 'line')).toBeCloseTo(0.00625, 9)
    expect(() => carryTime({ ...contactor, points: [[300, 420]] }, 400, 'line')).toThrow(RangeError)
    // A line that falls more slowly than I²t = constant is the stricter of the two.
    const flat: ContactorLimits = {
      ...contactor,
      points: [
        [300, 10],
        [3000, 1],
      ],
    }
    fc.assert(
      fc.property(real(260, 20e3), current => {
        for (const c of [contactor, flat]) expect(carryTime(c, current, 'last point')).toBeLessThanOrEqual(carryTime(c, current, 'line'))
      }),
      { numRuns: runs(500) },
    )
  })
})
