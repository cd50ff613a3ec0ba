import { applyEdits, readConversion } from '@ampwright/conversion'
import type { Space } from '@ampwright/engine'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { behindWalls } from './walls.ts'

/** A bay one metre long unless it is said from where to where, so wide in front and behind [m]. */
function bay(front: number, rear: number, { corners = 4, from = 0, to = 1 } = {}): Space {
  const all = [
    [from, -front / 2],
    [to, -rear / 2],
    [to, rear / 2],
    [from, front / 2],
  ].slice(0, corners)
  const widest = Math.max(front, rear) / 2,
    ends = { front: from, rear: to, left: -widest, right: widest, bottom: 0.2, top: 0.8 }
  const done = applyEdits('schema: 1\n', [
    ...Object.entries(ends).map(([k, v]) => ({ path: `fit.spaces.bay.${k}`, now: `${v} m` })),
    ...all.flatMap(([x, y], i) => [
      { path: `fit.spaces.bay.outline.c${i + 1}.x`, now: `${x} m` },
      { path: `fit.spaces.bay.outline.c${i + 1}.y`, now: `${y} m` },
    ]),
  ])
  if (!done.ok) throw new Error(done.problem.what)
  return readConversion(done.text).model.fit.spaces['bay'] as Space
}

describe('what lies behind the walls of a space', () => {
  const wide = fc.double({ min: 0.3, max: 1.5, noNaN: true }).map(w => Number(w.toFixed(3)))
  it('is nothing of a space without an outline, and not known while an end of it is missing', () => {
    expect(behindWalls(bay(0.8, 1, { corners: 0 }), 0.008)).toEqual([])
    expect(behindWalls({ ...bay(0.8, 1), top: { gap: true, path: '', label: '', until: 'any time' } }, 0.008)).toBeUndefined()
  })
  it('leaves the whole length of the middle free where sums of its ends are not exact', () => {
    // Such as the bay of the Wren: −0.48 + (0.33 + 0.48) is a hair more than 0.33.
    expect(-0.48 + (0.33 + 0.48)).toBeGreaterThan(0.33)
    const taken = behindWalls(bay(0.8, 0.94, { from: -0.48, to: 0.33 }), 0.008) ?? []
    expect(taken.filter(({ low, high }) => low[1] <= 0 && high[1] >= 0)).toEqual([])
    expect(Math.max(...taken.map(b => b.high[0]))).toBe(0.33)
  })
  it('holds every place nearer to a slanted wall than the air wanted, and leaves the middle free', () => {
    fc.assert(
      fc.property(
        wide,
        wide,
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: -1, max: 1, noNaN: true }),
        (front, rear, x, s) => {
          const air = 0.008,
            taken = behindWalls(bay(front, rear), air) ?? [],
            half = (front + (rear - front) * x) / 2,
            y = (s * Math.max(front, rear)) / 2,
            // Square to the wall, whose slant is that of the half width.
            depth = (half - Math.abs(y)) / Math.hypot(1, (rear - front) / 2)
          const isTaken = taken.some(({ low, high }) => x >= low[0] && x <= high[0] && y >= low[1] && y <= high[1])
          if (depth < air - 1e-9) expect(isTaken).toBe(true)
          // Nothing beyond the slant of one piece of six, and the air, is given away.
          if (depth > 2 * air + Math.abs(rear - front) / 12 + 1e-9) expect(isTaken).toBe(false)
        },
      ),
      { numRuns: runs(4000) },
    )
  })
})
