import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { beforeEach, describe, expect, it } from 'vitest'
import { textOf } from '../../../tests/cars.ts'
import { run } from './program.ts'

const folder = mkdtempSync(join(tmpdir(), 'ampwright-')),
  file = join(folder, 'car.conversion.yaml'),
  original = textOf('lapwing')
async function command(...args: string[]): Promise<{ code: number; out: string; err: string }> {
  const out: string[] = [],
    err: string[] = []
  const code = await run(args, { width: 100, colour: false, out: l => out.push(l), err: l => err.push(l) })
  return { code, out: out.join('\n'), err: err.join('\n') }
}
const now = (): string => readFileSync(file, 'utf8')
beforeEach(() => writeFileSync(file, original))

describe('modules', () => {
  const table = join(folder, 'tester.csv')
  it('fills salvaged modules from a tester’s table by their serial numbers, and adds new ones', async () => {
    writeFileSync(table, 'serial;capacity [Ah];r10s [mΩ];rest voltage [V]\nPM-40211;95,5;4,1;22,001\nNEW-1;;3,05;22,03\n')
    const { out } = await command('modules', file, table, '--write')
    expect(out).toContain('▲ failing S2 Every salvaged module has its record')
    expect(now()).toMatch(/m01: \{ serial: PM-40211, .*capacity: .95\.5 Ah \(measured, module tester\)/)
    expect(now()).toMatch(/serial: NEW-1/)
    expect(now()).not.toMatch(/NEW-1[^}]*capacity/)
  })
  it('takes over nothing where a heading, a unit or a row is wrong, and names each with its place', async () => {
    writeFileSync(table, 'serial,capasity [Ah],resistance [V]\nA,1,2\nA,3,4\n')
    const { code, err } = await command('modules', file, table, '--write')
    expect(code).toBe(2)
    expect(err).toContain('column capasity: a heading that is not known; found «capasity» (capacity?)')
    expect(err).toContain('column resistance: a unit that does not fit; found «V»')
    expect(err).toContain('module 2 of the table, column serial: a serial number that stands twice')
    expect(now()).toBe(original)
    writeFileSync(table, 'serial,capacity [Ah]\nA,many\n')
    expect((await command('modules', file, table)).err).toMatch(/tester\.csv:2:3 capacity: /)
  })
})

describe('set', () => {
  it('tries a value and leaves the file alone', async () => {
    const { out } = await command('set', file, 'drive.units.main.motor.peak-torque=90 Nm')
    expect(out).toMatch(/→ ▲ failing .*Pulls away on the steepest hill/)
    expect(out).toContain('Tried only')
    expect(now()).toBe(original)
  })
  it('keeps a value when told to, changing nothing else, and says how to undo it', async () => {
    const { out } = await command('set', file, 'drive.units.main.gear=third', '--write')
    expect(now()).toBe(original.replace('gear: fourth', 'gear: third'))
    expect(out).toContain("'drive.units.main.gear=fourth' --write")
    await command('set', file, 'drive.units.main.gear=fourth', '--write')
    expect(now()).toBe(original)
    expect(readdirSync(folder).filter(f => f.endsWith('.writing'))).toEqual([])
  })
  it('changes nothing at all when one of several values is wrong', async () => {
    const { code, err } = await command('set', file, 'drive.units.main.gear=third', 'donor.wheelbase=2 kg', '--write')
    expect(code).toBe(2)
    expect(err).toContain('donor.wheelbase')
    expect(now()).toBe(original)
  })
  it('refuses what is no edit', async () => {
    expect(await command('set', file, 'gear')).toMatchObject({ code: 2, err: expect.stringContaining('PATH=VALUE') })
    expect(await command('set', file, 'donor.wheelbse=2 m')).toMatchObject({ code: 2, err: expect.stringContaining('wheelbase') })
  })
})

describe('accept', () => {
  const words = [
    '--by',
    'Ines',
    '--reason',
    'used on level farm tracks only',
    '--scope',
    'until the motor is changed',
    '--date',
    '2026-11-25',
  ]
  const torque = (nm: number): Promise<unknown> => command('set', file, `drive.units.main.motor.peak-torque=${nm} Nm`, '--write')
  const outcome = async (): Promise<{ outcome: string; reason?: string; lapsed?: boolean } | undefined> =>
    (
      JSON.parse((await command('assess', file, '--json')).out) as {
        findings: { rule: string; item?: string; outcome: string; reason?: string; lapsed?: boolean }[]
      }
    ).findings.find(f => f.rule === 'hill-start' && f.item === 'pull-away')
  it('takes responsibility for a failing finding, until what it rests on changes', async () => {
    await torque(90)
    expect((await outcome())?.outcome).toBe('failing')
    await command('accept', file, 'hill-start@pull-away', ...words, '--write')
    expect(await outcome()).toMatchObject({ outcome: 'accepted', reason: expect.stringContaining('Ines') })
    await torque(88)
    expect(await outcome()).toMatchObject({ outcome: 'failing', lapsed: true })
  })
  it('does not accept what holds', async () =>
    expect(await command('accept', file, 'hill-start@pull-away', ...words)).toMatchObject({
      code: 2,
      err: expect.stringContaining('only what is failing or marginal'),
    }))
  it('needs a name, a reason, a scope and a day', async () => {
    expect((await command('accept', file, 'hill-start', '--by', 'x')).code).toBe(2)
    await torque(90)
    expect(await command('accept', file, 'hill-start', '--by', 'x', '--reason', 'y', '--scope', 'z', '--date', 'today')).toMatchObject({
      code: 2,
      err: expect.stringContaining('--date'),
    })
  })
})

it('names the finding that was meant', async () =>
  expect(await command('remedy', file, 'hil-start')).toMatchObject({ code: 2, err: expect.stringContaining('hill-start') }))
