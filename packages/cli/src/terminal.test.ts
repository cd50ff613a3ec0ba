import { describe, expect, it } from 'vitest'
import { CARS, fileOf } from '../../../tests/cars.ts'
import { run } from './program.ts'
import { columns, widthOf } from './terminal.ts'

describe('columns', () => {
  it('go on below where a cell is too long, in the order of its words', () => {
    const [first, second, ...more] = columns([['◐', 'Slope held continuously, caravan-climb', '16.94 %', 'at least 8 %']], 46, 4)
    expect(first).toMatch(/^◐  Slope held +16.94 %  at least 8 %$/)
    expect(`${second} ${more.join(' ')}`.replace(/\s+/g, ' ').trim()).toBe('continuously, caravan-climb')
  })
  it('break a word that is longer than its column, and lose no letter of it', () => {
    const lines = columns([['a', 'x'.repeat(50)]], 30, 2)
    expect(lines.map(l => l.replace(/[^x]/g, '')).join('')).toBe('x'.repeat(50))
    for (const line of lines) expect(widthOf(line)).toBeLessThanOrEqual(30)
  })
})

describe('the headline on a narrow terminal', () => {
  it.each(CARS)('loses nothing of %s and keeps within sixty columns', async car => {
    const of = async (width: number): Promise<string[]> => {
      const out: string[] = []
      await run(['assess', fileOf(car)], { width, colour: false, out: l => out.push(l), err: () => {} })
      const from = out.indexOf('')
      return out.slice(from + 1, out.indexOf('', from + 1))
    }
    const words = (lines: readonly string[]): readonly string[] => lines.join(' ').split(/ +/).filter(Boolean).sort()
    const narrow = await of(60)
    expect(words(narrow)).toEqual(words(await of(140)))
    for (const line of narrow) expect(widthOf(line), line).toBeLessThanOrEqual(60)
  })
})
