import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../tests/counts.ts'
import { editDistance, nearest, sharingWords } from './nearest.ts'

const KEYS = ['wheelbase', 'mass', 'track', 'tyre', 'drag-area', 'front', 'rear']
const UNITS = ['kg', 'g', 'm', 'mm', 'kW', 'W', 'mW', 'MW', 'km/h', 'N·m']

describe('the nearest word', () => {
  it('is found for a dropped, doubled, wrong or swapped letter', () => {
    expect(nearest('wheelbse', KEYS)).toBe('wheelbase')
    expect(nearest('masss', KEYS)).toBe('mass')
    expect(nearest('tire', KEYS)).toBe('tyre')
    expect(nearest('frotn', KEYS)).toBe('front')
    expect(nearest('drag area', KEYS)).toBe('drag-area')
  })

  it('is found for a wrong case, the closer case first', () => {
    expect(nearest('KG', UNITS)).toBe('kg')
    expect(nearest('kw', UNITS)).toBe('kW')
    expect(nearest('w', UNITS)).toBe('W')
    expect(nearest('mw', UNITS)).toBe('mW')
    expect(nearest('KM/H', UNITS)).toBe('km/h')
  })

  it('is not guessed where everything is equally far', () => {
    expect(nearest('lb', UNITS)).toBeUndefined()
    expect(nearest('colour', KEYS)).toBeUndefined()
    expect(nearest('', KEYS)).toBeUndefined()
    expect(nearest('m'.repeat(100_000), KEYS)).toBeUndefined()
  })
})

describe('the name that shares most words', () => {
  const PARTS = ['module-flat-can-65ah@1', 'module-tray-long-24s@1', 'motor-pm-100kw@1', 'motor-pm-150kw@1']
  it('is found where too much is misspelt for single letters', () => {
    expect(sharingWords('modul-tray-355', PARTS)).toBe('module-tray-long-24s@1')
    expect(sharingWords('pm motor 150kw', PARTS)).toBe('motor-pm-150kw@1')
  })
  it('is not guessed where none is shared', () => expect(sharingWords('nonsense@1', PARTS)).toBeUndefined())
})

describe('the distance between words', () => {
  it('is that of published pairs', () => {
    // kitten/sitting and Saturday/Sunday are the usual textbook pairs (from memory); ca/abc is 3 in the restricted form.
    expect(editDistance('kitten', 'sitting')).toBe(3)
    expect(editDistance('saturday', 'sunday')).toBe(3)
    expect(editDistance('ca', 'abc')).toBe(3)
    expect(editDistance('ab', 'ba')).toBe(1)
  })

  it('is the same both ways, nothing only for equal words, and never more than the longer word', () => {
    const words = fc.stringMatching(/^[abc]{0,8}$/)
    fc.assert(
      fc.property(words, words, (a, b) => {
        const distance = editDistance(a, b)
        expect(distance).toBe(editDistance(b, a))
        expect(distance === 0).toBe(a === b)
        expect(distance).toBeLessThanOrEqual(Math.max(a.length, b.length))
      }),
      { numRuns: runs(2000) },
    )
  })
})
