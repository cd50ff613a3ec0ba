import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { root } from '../../../tests/cars.ts'
import { run } from './program.ts'
import { widthOf } from './terminal.ts'

const SAMPLE = join(root, 'samples/ferry-lane.workshop.yaml'),
  folder = mkdtempSync(join(tmpdir(), 'ampwright-'))
const file = (text: string): string => {
  const path = join(folder, 'a.workshop.yaml')
  writeFileSync(path, text)
  return path
}
async function command(args: readonly string[], width = 100): Promise<{ code: number; out: string; err: string }> {
  const out: string[] = [],
    err: string[] = []
  const code = await run(['shelf', ...args], { width, colour: false, out: l => out.push(l), err: l => err.push(l) })
  return { code, out: out.join('\n'), err: err.join('\n') }
}
const keys = async (...args: string[]): Promise<readonly string[]> =>
  JSON.parse((await command([SAMPLE, '--json', ...args])).out).pieces.map((p: { key: string }) => p.key)

describe('the shelf of a workshop', () => {
  it('is listed with what each piece is, costs, where it lies and whom it is kept for', async () => {
    const { code, out } = await command([SAMPLE], 200)
    expect(code).toBe(0)
    expect(out).toMatch(
      /^Ferry Lane Electrics\n\nmotor-saloon \S.* motor-pm-100kw@1\n {2}serial EM-20417 · 1\u202f350\u202f€ paid 2026-05-22, breaker, one/,
    )
    expect(out).toContain('16 pieces · 380\u202f€ each paid 2026-05-29')
    expect(out).toContain('quoted 2026-09-02, parts dealer, holds until 2026-12-31')
    expect(out).toContain('reserved for Wren hatchback')
    expect(out).toMatch(/8 entries, 6 free\.$/)
  })
  it('fits a narrow terminal', async () => {
    const { out } = await command([SAMPLE], 50)
    expect(out.split('\n').filter(l => widthOf(l) > 50)).toEqual([])
  })
  it('is narrowed to a class and to what is free', async () => {
    expect(await keys('--class', 'charger')).toEqual(['charger-6600', 'charger-offer'])
    expect(await keys('--class', 'none')).toEqual(['coupler-blank'])
    expect(await keys('--free')).not.toContain('modules-saloon')
    expect((await command([SAMPLE, '--free'])).out).toMatch(/6 of 8 entries, 6 free\.$/)
    expect(await command([SAMPLE, '--class', 'chargers'])).toMatchObject({ code: 2, err: expect.stringContaining('did you mean charger?') })
  })
  it('that cannot be read ends in 2, with every problem by line and column', async () => {
    const at = file('schema: 1\nshelf:\n  a: { what: x, price: 3 }\n  b: { serial: 4 }\n'),
      { code, out, err } = await command([at])
    expect([code, out]).toEqual([2, ''])
    expect(err.split('\n')).toEqual([
      expect.stringMatching(/a\.workshop\.yaml:3:\d+ shelf\.a\.price: .*needs its unit/),
      expect.stringMatching(/a\.workshop\.yaml:4:3 shelf\.b: nothing says what this piece is/),
      `2 problems in ${at}; nothing was listed.`,
    ])
    expect((await command([join(folder, 'none.yaml')])).err).toContain('a workshop file such as samples/ferry-lane.workshop.yaml is wanted')
  })
  it('says what is odd and goes on', async () => {
    const { code, out } = await command([
      file('schema: 1\nshelf:\n  a: { part: no-such@1, serial: 1 }\n  b: { part: no-such@1, serial: 1 }\n'),
    ])
    expect(code).toBe(0)
    expect(out).toContain('the same serial number as «a»')
    expect(out).toContain('Note: a: no-such@1 is not in the catalogue')
    expect((await command([file('schema: 1\n')])).out).toBe('Nothing lies on this shelf yet.')
  })
})
