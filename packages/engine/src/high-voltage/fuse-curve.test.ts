import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { fuseCurve, fuseMelting, late, meltingCurrent, meltingIntegral, meltingTime, STEP_SHARE } from './fuse-curve.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const fuse = fuseCurve([
  [800, 1000],
  [1000, 100],
  [1400, 10],
  [2400, 1],
  [4000, 0.1],
  [6500, 0.01],
])

describe('a melting curve', () => {
  it('passes through its points and is a power of the current between them', () => {
    for (const [current, time] of fuse.points) expect((meltingTime(fuse, current) as number) / time).toBeCloseTo(1, 12)
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 4 }), real(0, 1), (i, part) => {
        const [[i0, t0], [i1, t1]] = [fuse.points[i], fuse.points[i + 1]] as [[number, number], [number, number]],
          current = i0 * (i1 / i0) ** part
        expect((meltingTime(fuse, current) as number) / (t0 * (t1 / t0) ** part)).toBeCloseTo(1, 9)
      }),
      { numRuns: runs(500) },
    )
  })
  it('says nothing below its first point, and lets the same through above its last', () => {
    expect(meltingTime(fuse, 799.9)).toBeUndefined()
    const card = { line: fuse.line, startCurrent: 800, endCurrent: 6500, endTime: 0.01 }
    expect(fuseMelting({ ...card, current: 799.9 })).toBe(Number.POSITIVE_INFINITY)
    expect(fuseMelting({ ...card, current: 800 })).toBeCloseTo(1000, 6)
    expect(meltingCurrent(fuse, 1001)).toBeUndefined()
    for (const current of [6500, 8294, 20e3])
      expect(meltingIntegral({ current, time: meltingTime(fuse, current) as number })).toBeCloseTo(6500 ** 2 * 0.01, 3)
  })
  it('melts sooner at more current; from current to time and back', () => {
    fc.assert(
      fc.property(real(800, 20e3), real(1.0001, 2), (current, more) => {
        const time = meltingTime(fuse, current) as number
        expect(meltingTime(fuse, current * more) as number).toBeLessThan(time)
        expect((meltingCurrent(fuse, time) as number) / current).toBeCloseTo(1, 9)
      }),
      { numRuns: runs(500) },
    )
  })
  it('late by a tenth is the same curve a tenth to the right', () => {
    fc.assert(
      fc.property(real(800, 20e3), current => {
        expect((meltingTime(late(fuse, 0.1), 1.1 * current) as number) / (meltingTime(fuse, current) as number)).toBeCloseTo(1, 9)
      }),
      { numRuns: runs(200) },
    )
    expect(meltingTime(late(fuse, 0.1), 879)).toBeUndefined()
  })
  it('leaves load steps half of what melts it', () => {
    const half = (time: number) => STEP_SHARE.value * (meltingCurrent(fuse, time) as number)
    expect([half(10), half(100), half(490)].map(Math.round)).toEqual([700, 500, 429])
  })
  it('refuses points that are no melting curve', () => {
    for (const bad of [
      [[100, 1]],
      [
        [100, 1],
        [90, 0.5],
      ],
      [
        [100, 1],
        [200, 1],
      ],
      [
        [0, 1],
        [200, 0.5],
      ],
      [
        [100, 1],
        [200, Number.NaN],
      ],
    ] as [number, number][][])
      expect(() => fuseCurve(bad)).toThrow(RangeError)
  })
})
