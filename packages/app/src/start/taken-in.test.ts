import type { ApiConversionLine, ApiImported } from '@ampwright/server'
import { describe, expect, it } from 'vitest'
import { bareName, inOneLine, isBundle, namedText, takenIn, textOf } from './taken-in.ts'

const line = (id: string, variant: ApiConversionLine['variant'] = null): ApiConversionLine => ({
  id,
  name: 'Wren',
  variant,
  revision: 4,
  made: '',
  at: '',
  deletedUntil: null,
})
const answer = (some: Partial<ApiImported>): ApiImported => ({
  as: 'new',
  id: 'a',
  revision: 4,
  text: '',
  clashes: [],
  layoutLeftOut: false,
  ...some,
})

describe('what became of a file', () => {
  it('is told by what was done with it, with the car it went to', () => {
    expect(takenIn(answer({ as: 'new' }), [line('a')]).says).toContain('New: Wren')
    expect(takenIn(answer({ as: 'merged' }), [line('a')]).says).toMatch(/Merged: .* Wren now, as revision 4/)
    expect(takenIn(answer({ as: 'unchanged' }), [line('a')]).says).toContain('Unchanged: Wren')
  })
  it('names both values where both changed the same', () => {
    const clash = { path: 'brief.luggage', yours: '50 kg', theirs: '60 kg', was: '40 kg' },
      told = takenIn(answer({ as: 'variant', id: 'b', clashes: [clash] }), [
        line('a'),
        line('b', { of: 'a', named: 'imported', revision: 2 }),
      ])
    expect(told.says).toContain('variant of Wren, because both changed the same')
    expect(told.open).toBe('Open the variant imported')
    expect(told.clashes).toEqual([{ path: 'brief.luggage', file: '50 kg', here: '60 kg' }])
  })
  it('gives no reason of a clash where there was none', () => {
    const told = takenIn(answer({ as: 'variant', id: 'b' }), [line('a'), line('b', { of: 'a', named: 'imported', revision: 2 })])
    expect(told.says).not.toContain('because')
  })
  it('says when comments were left out', () => {
    expect(takenIn(answer({ as: 'merged', layoutLeftOut: true }), [line('a')]).more).toContain('left out')
    expect(takenIn(answer({ as: 'merged' }), [line('a')]).more).toBeUndefined()
  })
  it('shows rows and groups in one line, and what is gone as nothing', () => {
    expect(inOneLine(null)).toBe('nothing')
    expect(inOneLine(['1', '2'])).toBe('1, 2')
    expect(inOneLine({ mass: '4 kg', x: '1 m' })).toBe('mass: 4 kg, x: 1 m')
  })
  it('is called after the file, and started under that name with nothing filled in', () => {
    expect(['lapwing.conversion.yaml', 'my car.yml', 'x.zip', '.yaml'].map(bareName)).toEqual(['lapwing', 'my car', 'x', 'taken in'])
    expect(namedText('a "b": c')).toBe('schema: 1\ncar: "a \\"b\\": c"\n')
  })
  it('knows a bundle by its first bytes and a text by its letters', () => {
    expect(isBundle(new Uint8Array([0x50, 0x4b, 3, 4, 9]))).toBe(true)
    expect(isBundle(new TextEncoder().encode('schema: 1'))).toBe(false)
    expect(textOf(new TextEncoder().encode('wheel: 1 µm'))).toBe('wheel: 1 µm')
    expect(textOf(new Uint8Array([0xff, 0xfe, 0x00]))).toBeUndefined()
  })
})
