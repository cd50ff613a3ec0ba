import { copyFileSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { applyEdits, formatIssue } from '@ampwright/conversion'
import { describe, expect, it } from 'vitest'
import { fileOf } from '../../../tests/cars.ts'
import { stripped } from '../../../tests/stripped.ts'
import { run } from './program.ts'
import { sideBySide } from './side-by-side.ts'
import { widthOf } from './terminal.ts'

async function said(args: readonly string[], width = 100): Promise<{ code: number; out: string; err: string }> {
  const out: string[] = [],
    err: string[] = []
  const code = await run(args, { width, colour: false, out: l => out.push(l), err: l => err.push(l) })
  return { code, out: out.join('\n'), err: err.join('\n') }
}
const copy = (): string => {
  const file = join(mkdtempSync(join(tmpdir(), 'concepts-')), 'wren.conversion.yaml')
  copyFileSync(fileOf('wren'), file)
  return file
}

describe('concepts on the command line', () => {
  it.each([40, 80, 140])('fit a terminal of %i characters', async width => {
    const { code, out } = await said(['concepts', fileOf('wren')], width)
    expect(code).toBe(0)
    for (const line of out.split('\n')) expect(widthOf(line), line).toBeLessThanOrEqual(width)
    expect(out).toContain('drive-unit')
    expect(out).toMatch(/motor\s+on\s+the\s+kept\s+gearbox,\s+held\s+in\s+one\s+gear[\s\S]*weighed\s+as\s+one/)
  })

  it('are taken as edits: tried first, written only when asked', async () => {
    const file = copy(),
      before = readFileSync(file, 'utf8')
    const tried = await said(['concepts', file, '--take', 'drive-unit'])
    expect(tried.out).toContain('Tried only')
    expect(readFileSync(file, 'utf8')).toBe(before)
    const written = await said(['concepts', file, '--take', 'drive-unit', '--write'])
    expect(written.out).toContain('Written.')
    expect(readFileSync(file, 'utf8')).toMatch(/part: drive-unit-pm-front-\d+kw@1/)
  })

  it('print documented JSON, whose edits make the concept', async () => {
    const { out } = await said(['concepts', fileOf('wren'), '--json'])
    const all = JSON.parse(out) as {
      verdict: { worth: string }
      trials: number
      concepts: { id: string; edits: { path: string; now: string | null }[]; headline: { id?: string }[] }[]
    }
    expect(Object.keys(all).sort()).toEqual(['asked', 'assessments', 'concepts', 'skipped', 'trials', 'verdict'])
    expect(all.concepts.map(c => c.id)).toEqual(['drive-unit'])
    expect(all.concepts[0]?.headline.map(h => h.id)).toContain('ledger.kerb')
    const done = applyEdits(readFileSync(fileOf('wren'), 'utf8'), all.concepts[0]?.edits ?? [])
    if (!done.ok) throw new Error(formatIssue(done.problem))
    expect(done.text).toContain('through: drive unit')
  })

  it('refuse an unknown concept, a write without one, and a file with errors', async () => {
    expect(await said(['concepts', fileOf('wren'), '--take', 'drive-unti'])).toMatchObject({
      code: 2,
      err: expect.stringContaining('did you mean drive-unit?') as string,
    })
    expect(await said(['concepts', fileOf('wren'), '--write'])).toMatchObject({ code: 2 })
    const file = copy()
    writeFileSync(file, 'schema: 1\ndonor:\n  wheelbase: 2300\n')
    expect(await said(['concepts', file])).toMatchObject({ code: 2, err: expect.stringContaining('donor.wheelbase') as string })
  })

  it('end with 1 where it is not worth converting', async () => {
    const file = copy(),
      done = applyEdits(stripped('lapwing'), [
        { path: 'brief.goals', now: null },
        { path: 'brief.budget', now: '1500 €' },
      ])
    if (!done.ok) throw new Error(formatIssue(done.problem))
    writeFileSync(file, done.text)
    const { code, out } = await said(['concepts', file])
    expect(code).toBe(1)
    expect(out).toMatch(/^Not worth converting for this brief/)
    expect(out).toMatch(/▲ single\s+reduction\s+onto\s+the\s+propshaft,\s+too\s+dear:[\s\S]*?at most\s+1.500.€/)
  })
})

describe('things side by side', () => {
  it('stand below each other where there is no room beside each other', () => {
    const rows = [{ label: 'Kerb mass', cells: ['1 000 kg', '1 100 kg'] }]
    expect(sideBySide(['one', 'two'], rows, 80)).toHaveLength(2)
    expect(sideBySide(['one', 'two'], rows, 40)).toEqual(['one', 'Kerb mass: 1 000 kg', '', 'two', 'Kerb mass: 1 100 kg'])
  })
})
