import { describe, expect, it } from 'vitest'
import { fileOf } from '../../../tests/cars.ts'
import { run } from './program.ts'
import { widthOf } from './terminal.ts'

async function chart(trace: string, ...more: string[]): Promise<{ out: string; err: string }> {
  const out: string[] = [],
    err: string[] = []
  await run(['chart', fileOf('lapwing'), trace, ...more], { width: 70, colour: false, out: l => out.push(l), err: l => err.push(l) })
  return { out: out.join('\n'), err: err.join('\n') }
}
const drawn = (out: string): string[] => [...out.matchAll(/^[a-z]  (.*)$/gm)].map(m => m[1] as string)

describe('chart', () => {
  it('draws the gear the car is in and the road load, names the rest, and shows a letter on each line', async () => {
    const { out } = await chart('tractive.pull@main')
    expect(drawn(out)).toEqual(['fourth, for a while', 'fourth, continuously', 'road load on the level'])
    expect(out).toMatch(/Not drawn: first peak, .*old\s+fifth/s)
    for (const letter of 'abc') expect(out.split('\n').some(l => /│/.test(l) && l.includes(letter))).toBe(true)
    expect(out.split('\n').filter(l => widthOf(l) > 70)).toEqual([])
  })
  it('draws the series asked for, by name or pattern', async () => {
    expect(drawn((await chart('tractive.pull@main', '--series', 'third,*continuous')).out)).toEqual([
      'first, continuously',
      'second, continuously',
      'third, for a while',
      'third, continuously',
      'fourth, continuously',
      'fifth, continuously',
    ])
    expect((await chart('tractive.pull@main', '--series', 'sixth')).err).toContain('first peak')
    expect((await chart('charge.course@overnight', '--series', 'charge,power')).err).toContain('different units')
  })
  it('marks its axes in the units a reader uses', async () => {
    const { out } = await chart('charge.course@overnight')
    expect(out).toMatch(/^Course of the charge, overnight  %$/m)
    expect(out).toMatch(/ h$/m)
  })
})
