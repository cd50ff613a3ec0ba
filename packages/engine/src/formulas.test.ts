import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { proven } from '../../../tests/proof.ts'
import { CHAPTERS, FORMULAS } from './formulas.ts'
import { markOf, WORKS } from './sources.ts'
import { dimensionFaults } from './working/dimension.ts'
import { evaluateText } from './working/evaluate.ts'
import { type AnyFormula, isOne, type Take } from './working/formula.ts'
import type { Curve, Grid } from './working/value.ts'

const chapterOf = new Map(FORMULAS.map(({ chapter, formula }) => [formula.card.id as string, chapter]))
const here = new URL('.', import.meta.url).pathname
const lookUp = {
  curve: ({ x, y }: Curve, at: number): number => {
    const last = x.length - 1
    if (at <= (x[0] as number)) return y[0] as number
    if (at >= (x[last] as number)) return y[last] as number
    let i = 0
    while ((x[i + 1] as number) < at) i++
    const [x0, x1, y0, y1] = [x[i], x[i + 1], y[i], y[i + 1]] as [number, number, number, number]
    return y0 + ((y1 - y0) * (at - x0)) / (x1 - x0)
  },
  grid: ({ x, y, z }: Grid, a: number, b: number): number => {
    const column = (j: number): number => lookUp.curve({ x, y: Float64Array.from(x, (_, i) => z[i * y.length + j] as number) }, a)
    return lookUp.curve({ x: y, y: Float64Array.from(y, (_, j) => column(j)) }, b)
  },
}

/** Inputs drawn within the range a card states, or over a range that its examples span. */
function inputs(f: AnyFormula): fc.Arbitrary<Record<string, unknown>> {
  const examples = 'examples' in f.card.proof ? f.card.proof.examples : []
  const arbitrary = ([name, take]: [string, Take]): [string, fc.Arbitrary<unknown>] => {
    if ('oneOf' in take) return [name, fc.constantFrom(...take.oneOf)]
    if ('curve' in take)
      return [
        name,
        fc
          .tuple(fc.double({ min: 0.1, max: 5, noNaN: true }), fc.double({ min: 0.1, max: 5, noNaN: true }))
          .map(([a, b]) => ({ x: Float64Array.of(0, 0.5, 1), y: Float64Array.of(a, (a + b) / 2, b) })),
      ]
    if ('grid' in take)
      return [
        name,
        fc
          .double({ min: 0.1, max: 5, noNaN: true })
          .map(a => ({ x: Float64Array.of(0, 1), y: Float64Array.of(0, 1), z: Float64Array.of(a, a + 1, a + 2, a + 4) })),
      ]
    const seen = examples
      .flatMap((e: { takes: Record<string, unknown> }) => e.takes[name])
      .filter((v: unknown): v is number => typeof v === 'number')
    const [low, high] =
      take.holds ??
      (seen.length ? [Math.min(...seen.map(v => v - 0.2 * Math.abs(v))), Math.max(...seen.map(v => v + 0.2 * Math.abs(v)))] : [0.1, 10])
    const one = fc.double({ min: low, max: high > low ? high : low + 1, noNaN: true })
    return [name, 'many' in take ? fc.array(one, { minLength: 3, maxLength: 3 }) : one]
  }
  return fc.record(Object.fromEntries((Object.entries(f.card.takes) as [string, Take][]).map(arbitrary)))
}
const near = (a: number, b: number): boolean =>
  (Number.isNaN(a) && Number.isNaN(b)) || a === b || Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b), 1e-12)

describe('every card', () => {
  it.each(FORMULAS.map(({ formula }) => [formula.card.id, formula] as const))('%s: its published example comes out', (_, f) => {
    const { proof } = f.card
    if ('none' in proof) return expect(proof.none.length).toBeGreaterThan(3)
    expect(proof.examples.length).toBeGreaterThan(0)
    for (const e of proof.examples) {
      const got = f(e.takes),
        want = e.gives
      for (const [key, value] of typeof want === 'number' ? [['', want] as const] : (Object.entries(want) as [string, number][])) {
        const result = key === '' ? got : got[key]
        const { title } = WORKS[e.source.work as keyof typeof WORKS],
          mark = markOf(e.source)
        proven({
          domain: chapterOf.get(f.card.id) as string,
          check: `${f.card.id}${key ? `, ${key}` : ''}`,
          source: `${title}, ${e.source.place}`,
          mark: mark ?? (WORKS[e.source.work as keyof typeof WORKS].read === 'derived' ? 'derived' : 'published'),
          expected: value,
          obtained: result,
          tolerance: e.within,
        })
        expect(Math.abs(result - value), `${f.card.id} ${key}: expected ${value}, got ${result}`).toBeLessThanOrEqual(e.within)
      }
    }
  })

  const read = FORMULAS.filter(({ formula }) => !formula.card.words)
  it.each(read.map(({ formula }) => [formula.card.id, formula] as const))('%s: its text, read as arithmetic, is its function', (_, f) => {
    fc.assert(
      fc.property(inputs(f), x => {
        const function_ = f(x),
          text = evaluateText(f, x, lookUp)
        if (isOne(f.card.gives)) return near(function_, text as number)
        return Object.entries(text as Record<string, number>).every(([key, value]) => near(function_[key], value))
      }),
      { numRuns: 100 },
    )
  })
  it.each(read.map(({ formula }) => [formula.card.id, formula] as const))(
    '%s: its text, read in units, gives the unit it claims',
    (_, f) => {
      expect(dimensionFaults(f)).toEqual([])
    },
  )

  it('at most one in ten prints as words only', () => {
    const words = FORMULAS.filter(({ formula }) => formula.card.words)
    expect(words.length, words.map(w => w.formula.card.id).join(', ')).toBeLessThanOrEqual(FORMULAS.length / 10)
  })
  it('has an id of its own', () => {
    const ids = FORMULAS.map(({ formula }) => formula.card.id)
    expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([])
  })
})

it('no file with a card is missing from the handbook', async () => {
  const known = new Set(
    Object.values(CHAPTERS)
      .flat()
      .flatMap(file => Object.values(file)),
  )
  const missing: string[] = []
  for (const entry of readdirSync(here, { recursive: true, encoding: 'utf8' })) {
    if (
      !entry.endsWith('.ts') ||
      entry.endsWith('.test.ts') ||
      !/\bformula\(/.test(readFileSync(join(here, entry), 'utf8')) ||
      entry.startsWith('working/')
    )
      continue
    for (const [name, value] of Object.entries((await import(join(here, entry))) as object))
      if (typeof value === 'function' && 'card' in value && !known.has(value)) missing.push(`${entry} ${name}`)
  }
  expect(missing).toEqual([])
})
