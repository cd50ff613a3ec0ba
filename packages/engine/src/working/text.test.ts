import { describe, expect, it } from 'vitest'
import { dimensionFaults, dimensionOf } from './dimension.ts'
import { evaluateText } from './evaluate.ts'
import { formula } from './formula.ts'
import { readText } from './text.ts'

const none = { curve: () => 0, grid: () => 0 }
const make = (text: string, unit = 'm') =>
  formula(
    {
      id: 't',
      label: 't',
      gives: { symbol: 'y', unit },
      takes: {
        a: { symbol: 'a', unit: 'm' },
        b: { symbol: 'b', unit: 'm' },
        list: { symbol: 'x_i', unit: 'm', many: true },
        T: { symbol: 'T', unit: 'K' },
      },
      text,
      source: { work: 'definition', place: '' },
      proof: { none: 'test' },
    },
    () => 0,
  )
const value = (text: string) => evaluateText(make(text), { a: 3, b: 4, list: [1, 2, 3], T: 293 }, none)

describe('the reader of formula text', () => {
  it.each([
    ['y = a + b · 2', 11],
    ['y = √(a² + b²)', 5],
    ['y = −a ^ 2', -9],
    ['y = a − b − 1', -2],
    ['y = a / b / 2', 0.375],
    ['y = Σ x_i · a / Σ x_i', 3],
    ['y = Σ (x_i − 1)', 3],
    ['y = max(x_i)', 3],
    ['y = { a if a < b; b otherwise }', 3],
    ['y = { a if a ≥ b; b if a > 1 and b > 1; 0 otherwise }', 4],
    ['y = { ∞ if a > 1; 0 otherwise }', Infinity],
    ['y = |a − b|', 1],
    ['y = ½ · a', 1.5],
    ['k = a · 2\ny = k + b', 10],
  ])('reads %s', (text, result) => expect(value(text)).toBeCloseTo(result, 12))

  it.each(['y = a +', 'y a', 'y = (a', 'y = a ? b', 'y = { a if b }', 'y = Σ'])('names the place of a fault in %s', text =>
    expect(() => readText(text)).toThrow(/formula text/),
  )
})

describe('a text read in units', () => {
  it('finds a bare number taken from kelvins', () =>
    expect(dimensionFaults(make('y = a · (T − 20) / T'))).toEqual(['a sum joins K^1 and 1']))
  it('finds a result of another unit', () => expect(dimensionFaults(make('y = a · b'))).toEqual(['y comes out in m^2, the card says m']))
  it('finds a symbol nobody defined', () => expect(dimensionFaults(make('y = c'))[0]).toContain('c is not defined'))
  it('lets a zero stand beside any unit', () => expect(dimensionFaults(make('y = max(0, a)'))).toEqual([]))
  it('lets «without limit» stand beside any unit', () => expect(dimensionFaults(make('y = { ∞ if a > b; a otherwise }'))).toEqual([]))
  it('knows that a newton metre is a joule', () => expect(dimensionOf('N·m')).toEqual(dimensionOf('J')))
  it('refuses a unit that is not coherent', () => expect(() => dimensionOf('km/h')).toThrow(/km/))
})
