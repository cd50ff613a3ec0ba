import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../tests/counts.ts'
import { clipped } from './clip.ts'

const box = { left: 0, top: 0, right: 100, bottom: 50 }
const line = (...points: readonly (readonly [number, number])[]) => ({
  x: Float64Array.from(points, p => p[0]),
  y: Float64Array.from(points, p => p[1]),
})

describe('cutting a line to a box', () => {
  it('ends it where it crosses the edge and takes it up where it comes back', () =>
    expect(clipped(line([0, 25], [50, 75], [100, 25]), box)).toEqual([
      [
        [0, 25],
        [25, 50],
      ],
      [
        [75, 50],
        [100, 25],
      ],
    ]))
  it('keeps a line that passes with both ends outside', () =>
    expect(clipped(line([-50, 25], [150, 25]), box)).toEqual([
      [
        [0, 25],
        [100, 25],
      ],
    ]))
  it('drops what lies outside and breaks at what is no number', () => {
    expect(clipped(line([0, 80], [100, 90]), box)).toEqual([])
    expect(clipped(line([0, 1], [10, Number.NaN], [20, 2], [30, 3]), box)).toEqual([
      [
        [20, 2],
        [30, 3],
      ],
    ])
  })
  it('gives only points inside, whatever the line', () => {
    const number = fc.double({ min: -1e4, max: 1e4 })
    fc.assert(
      fc.property(fc.array(fc.tuple(number, number), { maxLength: 60 }), points => {
        for (const [x, y] of clipped(line(...points), box).flat()) {
          expect(x).toBeGreaterThanOrEqual(-1e-6)
          expect(x).toBeLessThanOrEqual(100 + 1e-6)
          expect(y).toBeGreaterThanOrEqual(-1e-6)
          expect(y).toBeLessThanOrEqual(50 + 1e-6)
        }
      }),
      { numRuns: runs(2000) },
    )
  })
})
