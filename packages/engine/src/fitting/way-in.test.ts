import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { boxOf, gapOf } from './placed-body.ts'
import { airPastBox, airPastTube, WAYS } from './way-in.ts'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const body = fc.record({
  place: fc.tuple(number(-1, 1), number(-1, 1), number(-1, 1)),
  sides: fc.tuple(number(0.05, 0.8), number(0.05, 0.8), number(0.05, 0.8)),
  turns: fc.tuple(number(-3, 3), number(-1.5, 1.5), number(-1.5, 1.5)),
})
const STEP = 0.01
const out = {
  'from above': [0, 0, 1],
  'from below': [0, 0, -1],
  'from ahead': [-1, 0, 0],
  'from behind': [1, 0, 0],
  'from the left': [0, -1, 0],
  'from the right': [0, 1, 0],
} as const

describe('air beside a part on its way in', () => {
  it('should never be more than at any step of the way, nor less than the finest steps find by more than a step', () => {
    fc.assert(
      fc.property(body, body, fc.constantFrom(...WAYS), (one, other, way) => {
        const box = boxOf(one),
          there = boxOf(other),
          air = airPastBox(box, there, way, 0.02),
          [dx, dy, dz] = out[way]
        let least = Infinity
        for (let t = 0.02; t < 4; t += STEP)
          least = Math.min(
            least,
            gapOf({ ...box, centre: [box.centre[0] + t * dx, box.centre[1] + t * dy, box.centre[2] + t * dz] }, there),
          )
        expect(air).toBeLessThanOrEqual(least + 1e-6)
        // No point of the box moves by more than a step between two looks.
        expect(air).toBeGreaterThanOrEqual(least - STEP)
      }),
      { numRuns: runs(400) },
    )
  })
  it('does not count what lies behind it: a shelf it stands on is out of the way at once', () => {
    const shelf = boxOf({ place: [0, 0, 0.1], sides: [1, 1, 0.1], turns: [0, 0, 0] }),
      part = boxOf({ place: [0, 0, 0.25], sides: [0.3, 0.3, 0.2], turns: [0, 0, 0] })
    expect(airPastBox(part, shelf, 'from above', 0.02)).toBeCloseTo(0.02, 6)
    expect(airPastBox(part, shelf, 'from below', 0.02)).toBeLessThan(0)
  })
  it('meets a shaft under it on the way from below, and passes it from above', () => {
    const part = boxOf({ place: [1, 0, 0.6], sides: [0.4, 0.3, 0.2], turns: [0, 0, 0] })
    expect(
      airPastTube(
        part,
        [
          [0, 0, 0.3],
          [2, 0, 0.3],
        ],
        0.06,
        'from below',
        0.02,
      ),
    ).toBeLessThan(0)
    expect(
      airPastTube(
        part,
        [
          [0, 0, 0.3],
          [2, 0, 0.3],
        ],
        0.06,
        'from above',
        0.02,
      ),
    ).toBeCloseTo(0.19, 6)
  })
})
