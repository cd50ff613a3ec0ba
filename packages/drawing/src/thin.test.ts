import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../tests/counts.ts'
import { extentOf } from './axis.ts'
import { between, readAt, thin } from './thin.ts'

/** A line over rising places, some of its values missing. */
const lines = fc
  .array(fc.tuple(fc.double({ min: 1e-3, max: 50, noNaN: true }), fc.double({ min: -1e6, max: 1e6 })), { minLength: 1, maxLength: 3000 })
  .map(steps => {
    const x = new Float64Array(steps.length),
      y = new Float64Array(steps.length)
    let at = 0
    steps.forEach(([step, v], i) => {
      x[i] = at += step
      y[i] = v
    })
    return { x, y }
  })
const columns = fc.integer({ min: 1, max: 200 })

describe('thinning a line to what the columns of a picture can show', () => {
  const always = (what: string, holds: (l: { x: Float64Array; y: Float64Array }, n: number) => void): void =>
    it(what, () =>
      fc.assert(
        fc.property(lines, columns, (l, n) => {
          holds(l, n)
        }),
        { numRuns: runs(2000) },
      ),
    )

  always('keeps the first and the last point', ({ x, y }, n) => {
    const t = thin(x, y, n)
    expect([t.x[0], t.y[0], t.x.at(-1), t.y.at(-1)]).toEqual([x[0], y[0], x.at(-1), y.at(-1)])
  })
  always('keeps lowest and highest', ({ x, y }, n) => expect(extentOf([thin(x, y, n).y])).toEqual(extentOf([y])))
  always('takes at most five points a column, and none that was not there, in their order', ({ x, y }, n) => {
    const t = thin(x, y, n),
      known = new Map([...x].map((v, i) => [v, y[i]]))
    expect(t.x.length).toBeLessThanOrEqual(Math.max(5 * n, 4 * n))
    t.x.forEach((v, i) => {
      expect(Object.is(known.get(v), t.y[i])).toBe(true)
      if (i > 0) expect(v).toBeGreaterThan(t.x[i - 1] as number)
    })
  })
  always('keeps lowest and highest of every column', ({ x, y }, n) => {
    const t = thin(x, y, n),
      low = x[0] as number,
      width = ((x.at(-1) as number) - low) / n || 1
    const column = (list: Float64Array, values: Float64Array, c: number): number[] =>
      [...values].filter((_, i) => Math.min(n - 1, Math.floor(((list[i] as number) - low) / width)) === c)
    for (let c = 0; c < n; c += Math.ceil(n / 7)) expect(extentOf([column(t.x, t.y, c)])).toEqual(extentOf([column(x, y, c)]))
  })
  always('stays broken where the line is broken', ({ x, y }, n) =>
    expect(thin(x, y, n).y.some(v => !Number.isFinite(v))).toBe(y.some(v => !Number.isFinite(v))),
  )
  it('leaves a line alone that is short enough', () => expect([...thin([0, 1, 2], [5, 6, 7], 1).y]).toEqual([5, 6, 7]))
})

describe('reading a line', () => {
  it('goes straight between points and holds the ends', () => {
    expect(readAt([0, 10, 20], [0, 100, 100], 2.5)).toBe(25)
    expect(readAt([0, 10, 20], [0, 100, 100], -3)).toBe(0)
    expect(readAt([0, 10, 20], [0, 100, 90], 30)).toBe(90)
  })
  it('says nothing where the line is broken, and at a point beside the break what stands there', () => {
    expect(readAt([0, 1, 2], [5, Number.NaN, 7], 0.5)).toBeUndefined()
    expect(readAt([0, 1, 2], [5, Number.NaN, 7], 0)).toBe(5)
    expect(readAt([0, 1, 2], [5, Number.NaN, 7], 2)).toBe(7)
  })
  it('gives points back exactly', () =>
    fc.assert(
      fc.property(lines, ({ x, y }) => {
        x.forEach((v, i) => expect(readAt(x, y, v)).toBe(Number.isFinite(y[i]) ? y[i] : undefined))
      }),
      { numRuns: runs(300) },
    ))
  it('says nothing of a line without points', () => expect(readAt([], [], 1)).toBeUndefined())
  it('keeps one point beyond each edge of a stretch, so that the line reaches the edges', () =>
    expect([...between([0, 1, 2, 3, 4, 5], [0, 1, 2, 3, 4, 5], 1.5, 3.5).x]).toEqual([1, 2, 3, 4]))
})
