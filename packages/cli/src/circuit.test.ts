import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { applyEdits } from '@ampwright/conversion'
import { describe, expect, it } from 'vitest'
import { fileOf, textOf } from '../../../tests/cars.ts'
import { run } from './program.ts'

async function said(args: readonly string[]): Promise<{ code: number; out: string; err: string }> {
  const out: string[] = [],
    err: string[] = []
  const code = await run(args, { width: 100, colour: false, out: l => out.push(l), err: l => err.push(l) })
  return { code, out: out.join('\n'), err: err.join('\n') }
}

function bare(): string {
  const made = applyEdits(textOf('wren'), [{ path: 'high-voltage', now: null }]),
    file = join(mkdtempSync(join(tmpdir(), 'circuit-')), 'wren.conversion.yaml')
  if (!made.ok) throw new Error(made.problem.what)
  writeFileSync(file, made.text)
  return file
}

describe('ampwright circuit', () => {
  it('tries a circuit on the car and keeps it when told', async () => {
    const file = bare(),
      before = readFileSync(file, 'utf8'),
      tried = await said(['circuit', file])
    expect(tried.code).toBe(0)
    expect(tried.out).toMatch(/Tried only/)
    expect(readFileSync(file, 'utf8')).toBe(before)
    const written = await said(['circuit', file, '--write', '--json']),
      told = JSON.parse(written.out) as { command: string; written: boolean; edits: readonly { path: string }[] }
    expect(told).toMatchObject({ command: 'circuit', written: true })
    expect(told.edits.map(e => e.path)).toContain('high-voltage.parts.main-minus')
    expect(readFileSync(file, 'utf8')).toContain('precharge-resistor: { kind: precharge resistor }')
  })
  it('says why there is none to lay out', async () => {
    expect(await said(['circuit', fileOf('wren')])).toMatchObject({
      code: 2,
      err: expect.stringContaining('describes a circuit already') as string,
    })
    expect(await said(['circuit', '-'])).toMatchObject({ code: 2 })
  })
})
