import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import { at, curve } from '../numerics/curve.ts'
import { formula } from './formula.ts'
import { judge } from './judge.ts'
import { assumptions, leaves } from './leaves.ts'
import { halfWidth, halfWidthOfDifference, spread, widest } from './spread.ts'
import type { Curve, Fact, Figure } from './value.ts'
import { derive, work, workAll } from './work.ts'

const DEFINITION = { work: 'definition', place: 'test' } as const
const none = { none: 'a test' }
const fact = (path: string, value: number, half?: number, how: 'measured' | 'assumed' = 'measured'): Fact => ({
  path,
  label: path,
  symbol: path,
  unit: 'm',
  value,
  origin: { how },
  ...(half === undefined ? {} : { half }),
})
const m = (symbol: string) => ({ symbol, unit: 'm' }) as const
const sum = formula(
  { id: 'sum', label: 'sum', gives: m('y'), takes: { a: m('a'), b: m('b') }, text: 'y = a + b', source: DEFINITION, proof: none },
  ({ a, b }) => a + b,
)
const less = formula(
  { id: 'less', label: 'less', gives: m('y'), takes: { a: m('a'), b: m('b') }, text: 'y = a − b', source: DEFINITION, proof: none },
  ({ a, b }) => a - b,
)
const product = formula(
  {
    id: 'product',
    label: 'product',
    gives: { symbol: 'y', unit: 'm²' },
    takes: { a: m('a'), b: m('b') },
    text: 'y = a · b',
    source: DEFINITION,
    proof: none,
  },
  ({ a, b }) => a * b,
)
const total = formula(
  {
    id: 'total',
    label: 'total',
    gives: m('y'),
    takes: { list: { ...m('x_i'), many: true } },
    text: 'y = Σ x_i',
    source: DEFINITION,
    proof: none,
  },
  ({ list }) => list.reduce((s, x) => s + x, 0),
)
const both = formula(
  {
    id: 'both',
    label: 'both',
    gives: { more: m('p'), fewer: m('q') },
    takes: { a: m('a'), b: m('b') },
    text: 'p = a + b\nq = a − b',
    source: DEFINITION,
    proof: none,
  },
  ({ a, b }) => ({ more: a + b, fewer: a - b }),
)

describe('spread', () => {
  it('of a product of two lengths follows the rectangle example of first-order propagation', () => {
    // 2 ± 0.1 by 3 ± 0.2: (3·0.1)² + (2·0.2)² under the root (GUM 5.1.2).
    expect(halfWidth(work(product, { a: fact('a', 2, 0.1), b: fact('b', 3, 0.2) }, { id: 'x' }))).toBeCloseTo(Math.hypot(0.3, 0.4), 12)
  })
  it('counts a fact used twice once: a length less itself has none', () => {
    const a = fact('a', 5, 1),
      twice = work(sum, { a, b: a }, { id: 'twice' })
    expect(halfWidth(twice)).toBeCloseTo(2, 12)
    expect(halfWidth(work(less, { a: twice, b: twice }, { id: 'nothing' }))).toBe(0)
    expect(halfWidthOfDifference(twice, a)).toBeCloseTo(1, 12)
  })
  it('adds independent facts in a list as squares', () => {
    const list = Array.from({ length: 4 }, (_, i) => fact(`x${i}`, i, 0.5))
    expect(halfWidth(work(total, { list }, { id: 'y' }))).toBeCloseTo(1, 12)
  })
  it('runs a formula of several results once for all of them', () => {
    let calls = 0
    const counted = Object.assign((x: Parameters<typeof both>[0]) => (calls++, both(x)), { card: both.card })
    const { figures } = workAll(counted, { a: fact('a', 2, 0.2), b: fact('b', 1, 0.1) }, { id: 's' })
    expect(halfWidth(figures.more)).toBeCloseTo(Math.hypot(0.2, 0.1), 12)
    expect(halfWidth(figures.fewer)).toBeCloseTo(Math.hypot(0.2, 0.1), 12)
    expect(calls).toBe(1 + 4)
    expect(figures.more.id).toBe('s.more')
  })
  it('ranks what widens a value most', () => {
    const y = work(sum, { a: fact('narrow', 1, 0.1), b: fact('wide', 1, 0.9) }, { id: 'y' })
    expect(widest(y).map(w => w.path)).toEqual(['wide', 'narrow'])
  })
  it('covers what a straight formula really does: 95 of 100 draws lie inside', () => {
    fc.assert(
      fc.property(
        fc.integer(),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        fc.double({ min: 0.01, max: 1, noNaN: true }),
        (seed, ha, hb) => {
          const half = halfWidth(work(sum, { a: fact('a', 1, ha), b: fact('b', 2, hb) }, { id: 'y' }))
          let s = seed >>> 0,
            inside = 0
          const draw = (): number => {
            s = (Math.imul(s, 1664525) + 1013904223) >>> 0
            return (s + 0.5) / 2 ** 32
          }
          const normal = (): number => Math.sqrt(-2 * Math.log(draw())) * Math.cos(2 * Math.PI * draw())
          for (let i = 0; i < 2000; i++) if (Math.abs((normal() * ha) / 2 + (normal() * hb) / 2) <= half) inside++
          return inside / 2000 > 0.93 && inside / 2000 < 0.98
        },
      ),
      { numRuns: runs(200) },
    )
  })
})

describe('workings', () => {
  it('name every fact once, however often it is used', () => {
    const a = fact('a', 1),
      b = fact('b', 2, undefined, 'assumed'),
      y = work(product, { a: work(sum, { a, b }, { id: 's' }), b: a } as never, { id: 'y' }) as Figure
    expect(
      leaves(y)
        .map(f => f.path)
        .sort(),
    ).toEqual(['a', 'b'])
    expect(assumptions(y).map(f => f.path)).toEqual(['b'])
  })
  it('note inputs outside the range in which the formula holds', () => {
    const f = formula(
      { id: 'f', label: 'f', gives: m('y'), takes: { a: { ...m('a'), holds: [0, 1] } }, text: 'y = a', source: DEFINITION, proof: none },
      ({ a }) => a,
    )
    expect(work(f, { a: fact('a', 2) }, { id: 'y' }).because.beyond).toEqual(['a'])
    expect(work(f, { a: fact('a', 1) }, { id: 'y' }).because.beyond).toEqual([])
  })
  it('refuse a result that is not a number', () => {
    const f = formula(
      { id: 'f', label: 'f', gives: m('y'), takes: { a: m('a') }, text: 'y = a', source: DEFINITION, proof: none },
      () => Number.NaN,
    )
    expect(() => work(f, { a: fact('a', 2) }, { id: 'study.y' })).toThrow(/study\.y.*not a number/)
  })
  it('refuse a card in which one symbol stands for two inputs', () => {
    expect(() =>
      formula(
        { id: 'f', label: 'f', gives: m('y'), takes: { a: m('a'), b: m('a') }, text: 'y = a', source: DEFINITION, proof: none },
        ({ a }) => a,
      ),
    ).toThrow(/symbol a stands for two/)
  })
  it('spread of a figure without uncertain facts is none', () =>
    expect(spread(work(sum, { a: fact('a', 1), b: fact('b', 2) }, { id: 'y' })).size).toBe(0))
})

describe('the judge', () => {
  it('fails what breaks the limit, marks what its band reaches, passes the rest', () => {
    expect(judge(733, 'at most', 710, 5)).toBe('failing')
    expect(judge(707, 'at most', 710, 5)).toBe('marginal')
    expect(judge(700, 'at most', 710, 5)).toBe('sound')
    expect(judge(9, 'at least', 10, 0.5)).toBe('failing')
    expect(judge(10.2, 'at least', 10, 0.5)).toBe('marginal')
  })
  it('lets a value stand on the limit itself, rounding apart', () => {
    expect(judge(0.1 + 0.2, 'at most', 0.3, 0)).toBe('sound')
    expect(judge(710, 'at most', 710, 0)).toBe('sound')
  })
  it('fails what never comes to an end, whatever the limit', () => {
    expect(judge(Number.POSITIVE_INFINITY, 'at most', 3600, 0)).toBe('failing')
    expect(judge(Number.NEGATIVE_INFINITY, 'at least', 0, 0)).toBe('failing')
    expect(judge(3600, 'at most', Number.POSITIVE_INFINITY, 0)).toBe('sound')
  })
  it('is never kinder for a wider band', () => {
    const rank = { failing: 0, marginal: 1, sound: 2 }
    fc.assert(
      fc.property(
        fc.double({ min: -1e3, max: 1e3, noNaN: true }),
        fc.double({ min: -1e3, max: 1e3, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        fc.double({ min: 0, max: 10, noNaN: true }),
        (f, l, h, more) => rank[judge(f, 'at most', l, h + more)] <= rank[judge(f, 'at most', l, h)],
      ),
    )
  })
})

describe('spread through a curve', () => {
  const scaled = formula(
    {
      id: 'scaled',
      label: 'scaled',
      gives: m('y'),
      takes: { each: m('k'), at: m('t') },
      text: 'y = k · t',
      source: DEFINITION,
      proof: none,
    },
    ({ each, at }) => each * at,
  )
  const read = formula(
    {
      id: 'read',
      label: 'read',
      gives: m('y'),
      takes: { over: { symbol: 'c', unit: ['m', 'm'], curve: true }, at: m('t'), less: m('l') },
      text: 'y = c(t) − l',
      source: DEFINITION,
      proof: none,
    },
    ({ over, at: t, less: l }) => at(over, t) - l,
  )
  const ramp = (k: number) => curve([0, 10], [0, 10 * k])
  const over = (k: Fact, again: boolean) =>
    derive(scaled, { each: k }, { id: 'over' }, ramp(k.value), 'm', again ? x => ramp(x['each'] as number) : undefined)

  it('is that of the number it was made from, by the slope it has where it is read', () => {
    const k = fact('k', 2, 0.3),
      y = work(read, { over: over(k, true), at: fact('t', 4), less: fact('l', 0) }, { id: 'y' })
    expect(halfWidth(y)).toBeCloseTo(4 * 0.3, 12)
    expect([...spread(y).keys()]).toEqual(['k'])
  })
  it('counts a number once that also stands beside the curve', () => {
    const k = fact('k', 2, 0.3)
    expect(halfWidth(work(read, { over: over(k, true), at: fact('t', 1), less: k }, { id: 'y' }))).toBeCloseTo(0, 12)
  })
  it('is none where the curve cannot be made anew', () => {
    const k = fact('k', 2, 0.3)
    expect(halfWidth(work(read, { over: over(k, false), at: fact('t', 4), less: fact('l', 0) }, { id: 'y' }))).toBe(0)
  })
  it('goes on through a curve made from a curve', () => {
    const k = fact('k', 2, 0.3),
      first = over(k, true)
    const twice = (x: Curve) =>
      curve(
        x.x,
        x.y.map(v => 2 * v),
      )
    const second = derive(scaled, { first }, { id: 'second' }, twice(first.value), 'm', x => twice(x['first'] as Curve))
    expect(halfWidth(work(read, { over: second, at: fact('t', 4), less: fact('l', 0) }, { id: 'y' }))).toBeCloseTo(2 * 4 * 0.3, 12)
  })
})
