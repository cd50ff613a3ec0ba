import fc from 'fast-check'
import { expect, it } from 'vitest'
import { runs } from '../../../tests/counts.ts'
import { laned } from './lanes.ts'

it('texts in rows never touch and stay between the edges where they fit', () => {
  const text = fc.record({ at: fc.double({ min: 0, max: 600, noNaN: true }), width: fc.double({ min: 4, max: 200, noNaN: true }) })
  fc.assert(
    fc.property(fc.array(text, { maxLength: 12 }), wanted => {
      const lanes = laned(wanted, 0, 600)
      lanes.forEach((a, i) => {
        const half = (wanted[i]?.width ?? 0) / 2
        expect(a.centre - half).toBeGreaterThanOrEqual(-1e-9)
        expect(a.centre + half).toBeLessThanOrEqual(600 + 1e-9)
        for (const [j, b] of lanes.slice(0, i).entries())
          if (a.lane === b.lane) expect(Math.abs(a.centre - b.centre)).toBeGreaterThanOrEqual(half + (wanted[j]?.width ?? 0) / 2 - 1e-9)
      })
    }),
    { numRuns: runs(2000) },
  )
})
it('texts far apart share one row', () =>
  expect(
    laned(
      [
        { at: 50, width: 40 },
        { at: 200, width: 40 },
      ],
      0,
      300,
    ).map(l => l.lane),
  ).toEqual([0, 0]))
