import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
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
const valid = new Ajv2020({ allErrors: true, strict: false }).compile(
  JSON.parse(readFileSync(new URL('./change.schema.json', import.meta.url), 'utf8')) as object,
)
type Told = {
  written: boolean
  edits: { path: string }[]
  undo: { path: string; now: string | null }[]
  headline: { id: string; before?: number; after?: number }[]
  findings: { rule: string; after?: string }[]
  figures: { id: string; change?: number }[]
}
async function told(...args: string[]): Promise<Told> {
  const { out } = await command(...args, '--json'),
    json = JSON.parse(out) as Told
  valid(json)
  expect(valid.errors ?? []).toEqual([])
  return json
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
  it('is undone to the byte where it made the salvaged modules', async () => {
    const start = original.replace(/\n  salvage:\n(    .*\n)+/, '\n')
    writeFileSync(file, start)
    writeFileSync(table, 'serial,capacity [Ah]\nA,109\nB,108\n')
    const { undo } = await told('modules', file, table, '--write')
    expect(undo).toEqual([{ path: 'pack.salvage', now: null }])
    await command('set', file, 'pack.salvage=', '--write')
    expect(now()).toBe(start)
  })
  it('leaves a module alone, ± and all, where the table says what is measured already', async () => {
    writeFileSync(table, 'serial;capacity [Ah];place\nPM-40211;109,3;front 1\n')
    expect((await command('modules', file, table, '--write')).out).toContain('Everything in it stands in the file already')
    expect(now()).toBe(original)
  })
  it('tells what a table comes to as plain data', async () => {
    writeFileSync(table, 'serial,capacity [Ah]\nNEW-1,95\n')
    expect((await told('modules', file, table)).edits).toHaveLength(2)
  })
  it('names the table that is not there', async () =>
    expect((await command('modules', file, 'nope.csv')).err).toMatch(/^nope\.csv: .* a CSV table of a module tester is wanted/))
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
  it('takes a group in braces, as the file does, new or in place of one that stands there', async () => {
    await command('set', file, 'brief.goals.x={kind: hill start, slope: 25 %}', '--write')
    expect(now()).toContain('x: { kind: hill start, slope: 25 % }')
    await command('set', file, 'brief.goals.x={kind: hill start, slope: 20 %, load: two-up}', '--write')
    expect(now()).toContain('x: { kind: hill start, slope: 20 %, load: two-up }')
    await command('set', file, 'brief.goals.x=', '--write')
    expect(now()).toBe(original)
    expect(await command('set', file, 'brief.goals.x={kind: hill start')).toMatchObject({ code: 2, err: expect.stringContaining('set: ') })
  })
  it('lists the figures that move only when asked, each row once and none that reads the same before and after', async () => {
    const edit = ['set', file, 'drive.units.main.gear=third']
    expect((await command(...edit)).out).toMatch(/\d+ other figures move: --figures lists them/)
    const lines = (await command(...edit, '--figures')).out.split('\n')
    expect(lines).toContain('Figures')
    expect(lines.filter(l => /\de[-−]\d/.test(l))).toEqual([])
    const rows = lines
      .slice(lines.indexOf('Figures'))
      .join('\n')
      .split(/\n(?=\S)/)
    expect(new Set(rows).size).toBe(rows.length)
  })
  it('keeps every figure readable on a narrow terminal', async () => {
    const out: string[] = []
    await run(['set', file, 'drive.units.main.gear=third'], { width: 40, colour: false, out: l => out.push(l), err: () => {} })
    expect(out.join(' ')).toMatch(/Slope held continuously,\s+pass-climb\s+10\.39\s%\s+14\.95\s%/)
  })
  it('tells the same as plain data', async () => {
    const json = await told('set', file, 'drive.units.main.gear=third')
    expect(json).toMatchObject({ written: false, undo: [{ path: 'drive.units.main.gear', now: 'fourth' }] })
    expect(json.findings).toContainEqual(expect.objectContaining({ rule: 'acceleration', after: 'sound' }))
    expect(json.headline.map(h => h.id)).toContain('ledger.kerb')
    expect(json.figures.every(f => f.change !== 0)).toBe(true)
    expect(now()).toBe(original)
    const group = await told('set', file, 'brief.goals.pull-away={kind: hill start, slope: 20 %}', '--write')
    expect(group).toMatchObject({ written: true })
    await command('set', file, ...group.undo.map(u => `${u.path}=${u.now ?? ''}`), '--write')
    expect(now().replace(/\s/g, '')).toBe(original.replace(/\s/g, ''))
  })
  it('changes nothing at all when one of several values is wrong', async () => {
    const { code, err } = await command('set', file, 'drive.units.main.gear=third', 'donor.wheelbase=2 kg', '--write')
    expect(code).toBe(2)
    expect(err).toContain('donor.wheelbase')
    expect(now()).toBe(original)
  })
  it('refuses a part that is not in the catalogue, names the nearest, and writes nothing', async () => {
    const { code, err } = await command('set', file, 'drive.units.main.motor.part=motor-pm-100kv@1', '--write')
    expect(code).toBe(2)
    expect(err.split('\n')).toHaveLength(2)
    expect(err).toMatch(/motor\.part: not in the catalogue; found «motor-pm-100kv@1»; .*did you mean motor-pm-100kw@1\?/)
    expect(await command('set', file, 'pack.module.part=flat-can-module')).toMatchObject({
      code: 2,
      err: expect.stringMatching(/did you mean module-flat-can-/),
    })
    expect(await command('set', file, 'pack.module={part: no-such-thing}')).toMatchObject({ code: 2 })
    expect(now()).toBe(original)
  })
  it('takes away whole what it made, so that nothing empty is left behind', async () => {
    const without = original.replace(/\n  salvage:\n(    .*\n)+/, '\n')
    for (const start of [without, without.replace('\ntrips:', '  salvage:\n\ntrips:')]) {
      writeFileSync(file, start)
      const { undo } = await told('set', file, 'pack.salvage.m01.serial=A', 'pack.salvage.m01.capacity=109 Ah', '--write')
      expect(now()).not.toBe(start)
      await command('set', file, ...undo.map(u => `${u.path}=${u.now ?? ''}`), '--write')
      expect(now()).toBe(start)
    }
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
  it('tells what an acceptance comes to as plain data', async () => {
    await torque(90)
    expect(await told('accept', file, 'hill-start@pull-away', ...words)).toMatchObject({ finding: 'hill-start@pull-away', written: false })
  })
  it('says that a finding does not apply, counts it by itself, and takes it back', async () => {
    const said = ['--by', 'Ines', '--reason', 'never driven on a slope', '--date', '2026-11-25']
    await torque(90)
    const before = now()
    expect(await told('does-not-apply', file, 'hill-start@pull-away', ...said)).toMatchObject({ command: 'does-not-apply', written: false })
    await command('does-not-apply', file, 'hill-start@pull-away', ...said, '--write')
    expect(await outcome()).toMatchObject({ outcome: 'does not apply', byHand: { by: 'Ines', otherwise: 'failing' } })
    const { out } = await command('assess', file)
    expect(out).toMatch(/– 1 said not to apply/)
    expect(out.replace(/\s+/g, ' ')).toMatch(
      /What somebody says does not apply .* because never driven on a slope, said by Ines on 2026-11-25/,
    )
    await command('take-back', file, 'hill-start@pull-away', '--write')
    expect(now()).not.toContain('never driven on a slope')
    expect(now().startsWith(before.trimEnd())).toBe(true)
    expect((await outcome())?.outcome).toBe('failing')
    expect(await command('take-back', file, 'hill-start@pull-away')).toMatchObject({
      code: 2,
      err: expect.stringContaining('nothing was said'),
    })
  })
  it('needs a name, a reason, a scope and a day', async () => {
    expect((await command('accept', file, 'hill-start', '--by', 'x')).code).toBe(2)
    await torque(90)
    expect(await command('accept', file, 'hill-start', '--by', 'x', '--reason', ' ', '--scope', 'z', '--date', '2026-11-25')).toMatchObject(
      {
        code: 2,
        err: expect.stringContaining('accept: --reason is empty'),
      },
    )
    expect(await command('accept', file, 'hill-start', '--by', 'x', '--reason', 'y', '--scope', 'z', '--date', 'today')).toMatchObject({
      code: 2,
      err: expect.stringContaining('--date'),
    })
  })
})

it('names the finding that was meant, and the command that was used', async () => {
  expect(await command('remedy', file, 'hil-start')).toMatchObject({ code: 2, err: expect.stringMatching(/^remedy: .*hill-start/) })
})
it('tells what a remedy comes to as plain data', async () =>
  expect(await told('remedy', file, 'laden-masses')).toMatchObject({
    finding: expect.stringContaining('laden-masses@'),
    findings: expect.arrayContaining([expect.objectContaining({ rule: 'laden-masses', before: 'failing', after: 'sound' })]) as object,
  }))

describe('a part that a shape stands for', () => {
  it('is not taken out alone; what is said takes both out', async () => {
    const { code, err } = await command('set', file, 'donor.added.junction-box=', '--write')
    expect(code).toBe(2)
    expect(now()).toBe(original)
    const said = /To take it out with what stands for it: ampwright (set .*)$/m.exec(err)?.[1] ?? '',
      args = [...said.matchAll(/'([^']*)'/g)].map(m => m[1] as string)
    expect(args).toEqual(['fit.handles.service-plug.part-of=', 'fit.bodies.junction-box=', 'donor.added.junction-box='])
    await command('set', file, ...args, '--write')
    expect(now()).not.toContain('junction-box')
  })
})
