import { copyFileSync, cpSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { fileOf } from '../../../tests/cars.ts'
import { run } from './program.ts'
import { widthOf } from './terminal.ts'

async function said(args: readonly string[], width = 100): Promise<{ code: number; out: string; err: string }> {
  const out: string[] = [],
    err: string[] = []
  const code = await run(args, { width, colour: false, out: l => out.push(l), err: l => err.push(l) })
  return { code, out: out.join('\n'), err: err.join('\n') }
}
const copy = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'arrange-')),
    file = join(folder, 'badger.conversion.yaml')
  copyFileSync(fileOf('badger'), file)
  cpSync(join(dirname(fileOf('badger')), 'attachments'), join(folder, 'attachments'), { recursive: true })
  return file
}
const arrange = ['arrange', fileOf('badger'), '--steps', '1']

describe('arrangements on the command line', () => {
  it('stand side by side, in any width, with what none can pass', async () => {
    const wide = await said(arrange, 100)
    expect(wide.code).toBe(0)
    expect(wide.out).toMatch(/energy +mass +axle, least left/)
    expect(wide.out).toMatch(/never hold\s+more than 12: none is\s+fuller/)
    const narrow = await said(arrange, 40)
    expect(narrow.out).toContain('Arrangement 1')
    for (const line of `${wide.out}\n`.split('\n')) expect(widthOf(line), line).toBeLessThanOrEqual(100)
    for (const line of narrow.out.split('\n')) expect(widthOf(line), line).toBeLessThanOrEqual(40)
  }, 120_000)
  it('are taken by number: tried first, written only when asked', async () => {
    const file = copy(),
      before = readFileSync(file, 'utf8')
    const tried = await said(['arrange', file, '--steps', '1', '--take', '1'])
    expect(tried.out).toContain('Tried only')
    expect(readFileSync(file, 'utf8')).toBe(before)
    const written = await said(['arrange', file, '--steps', '1', '--take', '1', '--write', '--json']),
      told = JSON.parse(written.out) as { command: string; written: boolean; findings: object[] }
    expect(told).toMatchObject({ command: 'arrange', written: true })
    expect(readFileSync(file, 'utf8')).toMatch(/overhead: ["'].*assumed, sheet of the box/)
  }, 300_000)
  it('print documented JSON, the same for the same seed and steps', async () => {
    const { out } = await said([...arrange, '--json']),
      all = JSON.parse(out) as { arrangements: { number: number }[] }
    expect(Object.keys(all).sort()).toEqual(['arrangements', 'bound', 'gap', 'rooms', 'seed', 'spaces', 'steps', 'unplaced'])
    expect(all.arrangements[0]?.number).toBe(1)
    expect((await said([...arrange, '--json'])).out).toBe(out)
  }, 120_000)
  it('show modules of two forms by form', async () => {
    const { code, out } = await said(['arrange', fileOf('otter'), '--steps', '1'])
    expect(code).toBe(0)
    expect(out).toMatch(/\d+ \+ \d other/)
    expect(out).toMatch(/There are 22 modules and 4 of the other form to\s+use/)
    const all = JSON.parse((await said(['arrange', fileOf('otter'), '--steps', '1', '--json'])).out) as { counts: string }
    expect(all.counts).toBe('cell groups')
  }, 120_000)
  it('refuse wrong use, and a file that says too little, by name', async () => {
    expect(await said([...arrange, '--write'])).toMatchObject({ code: 2, err: expect.stringContaining('--take') as string })
    expect(await said([...arrange, '--take', '99'])).toMatchObject({ code: 2, err: expect.stringContaining('no arrangement 99') as string })
    expect(await said([...arrange, '--strings', '3-2'])).toMatchObject({ code: 2, err: expect.stringContaining('1-3') as string })
    expect(await said([...arrange, '--seconds', 'x'])).toMatchObject({ code: 2 })
    const file = copy()
    writeFileSync(file, 'schema: 1\ncar: Nothing known\n')
    expect(await said(['arrange', file])).toMatchObject({ code: 2, err: expect.stringContaining('pack.module.mass') as string })
  }, 120_000)
})
