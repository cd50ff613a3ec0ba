import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../tests/counts.ts'
import { decimalsFor, fixedReading, reading, tickText, withUnit } from './reading.ts'

const THIN = '\u202f'
describe('numbers of a drawing', () => {
  it('have three digits that matter, four after a leading 1, and no zeros at the end', () => {
    expect([0.04567, 0.5, 9.5, 11.386, 163.04, 1234.5, 45678].map(reading)).toEqual([
      '0.0457',
      '0.5',
      '9.5',
      '11.39',
      '163',
      `1${THIN}235`,
      `45${THIN}678`,
    ])
  })
  it('have a true minus, and zero has none', () => {
    expect([-12.5, -0, -1e-12, -4000].map(reading)).toEqual(['−12.5', '0', '0', `−4${THIN}000`])
    expect(tickText(-0, 0.5)).toBe('0.0')
  })
  it('have at ticks the decimals the step needs', () => {
    expect([tickText(20, 20), tickText(2.5, 0.5), tickText(0.3, 0.05), tickText(12000, 2000)]).toEqual([
      '20',
      '2.5',
      '0.30',
      `12${THIN}000`,
    ])
  })
  it('have one precision in a list', () => {
    expect(decimalsFor(4.17)).toBe(2)
    expect(decimalsFor(187)).toBe(0)
    expect(decimalsFor(0)).toBe(0)
    expect(fixedReading(0.6, 2)).toBe('0.60')
  })
  it('stand one thin space before their unit', () => expect(withUnit('20', 'km/h')).toBe(`20${THIN}km/h`))
  it('are a dash where there is none', () => expect([reading(Number.NaN), fixedReading(Infinity, 1)]).toEqual(['–', '–']))
  it('lie within half a step of what they stand for', () =>
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e6, noNaN: true }), v => {
        const back = Number(reading(v).replaceAll(THIN, ''))
        expect(Math.abs(back - v) / v).toBeLessThan(0.0051)
      }),
      { numRuns: runs(2000) },
    ))
})
