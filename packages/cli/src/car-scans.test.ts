import { copyFileSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { applyEdits, type Edit } from '@ampwright/conversion'
import { RULES, type Rule } from '@ampwright/engine'
import { afterAll, describe, expect, it } from 'vitest'
import { run } from './program.ts'

const samples = new URL('../../../samples/', import.meta.url).pathname,
  folder = mkdtempSync(join(tmpdir(), 'ampwright-car-scans-'))
mkdirSync(join(folder, 'attachments'))
for (const name of ['lapwing-bay.stl', 'lapwing-motor.stl'])
  copyFileSync(join(samples, 'attachments', name), join(folder, 'attachments', name))
writeFileSync(join(folder, 'attachments/broken.stl'), readFileSync(join(samples, 'attachments/lapwing-bay.stl')).subarray(0, 900))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const scanned: readonly Edit[] = (RULES.find(r => r.id === 'clear-of-what-was-scanned') as Rule).spoil.edits.filter(e =>
    e.path.startsWith('fit.scans'),
  ),
  space: readonly Edit[] = [
    { path: 'fit.scans.bay.resolution', now: '30 mm' },
    { path: 'fit.scans.bay.space', now: 'engine-bay' },
    { path: 'fit.scans.bay.inside.x', now: '-300 mm' },
    { path: 'fit.scans.bay.inside.y', now: '300 mm' },
    { path: 'fit.scans.bay.inside.z', now: '600 mm' },
  ]
let count = 0
function car(edits: readonly Edit[]): string {
  const done = applyEdits(readFileSync(join(samples, 'lapwing.conversion.yaml'), 'utf8'), edits),
    path = join(folder, `${count++}.conversion.yaml`)
  if (!done.ok) throw new Error(done.problem.what)
  writeFileSync(path, done.text)
  return path
}
async function command(...args: readonly string[]): Promise<{ code: number; out: string; err: string }> {
  const out: string[] = [],
    err: string[] = []
  const code = await run(['scan', ...args], { width: 100, colour: false, out: l => out.push(l), err: l => err.push(l) })
  return { code, out: out.join('\n'), err: err.join('\n') }
}

describe('scan of a conversion', () => {
  it('measures the scans it names: how they lie, what they leave free, how near the parts come', async () => {
    const { code, out, err } = await command(car([...scanned, ...space]))
    expect(err).toBe('')
    expect(code).toBe(0)
    for (const said of [
      /^bay: attachments\/lapwing-bay.stl\n/,
      /Lies +by 3 points, 0\s\S+ left over/,
      /Free space +5\d\d\sl, in cubes of 30\smm/,
      /Reaches the limits +.*top \d+ %/,
      /front-box +[\d.]+\smm, nearest at /,
      /Parts stand clear of what was scanned\n/,
      /sound +.*: From .* to the scan bay there is .*; leave 8\smm/,
      /inverter, way in +69[.\d]*\smm, tightest 7\d[.\d]*\smm before it is in its place, at 4[78]\d\smm/,
      /Each part can be brought in the way it is meant to\n/,
      /sound +inverter past bay: Coming from above it passes the scan bay with 69[.\d]*\smm of air/,
      /s, at most \d+ MB of memory/,
    ])
      expect(out).toMatch(said)
    expect(out).not.toContain('booster')
    // What stays in the car is judged elsewhere.
    expect(out).not.toMatch(/passes (front-crush|heater-drain)/)
  })
  it('ends with 1 where a part runs into one, and says the same as JSON', async () => {
    const file = car([...scanned, { path: 'fit.bodies.front-box.width', now: '1000 mm' }]),
      { code, out } = await command(file)
    expect(code).toBe(1)
    expect(out).toMatch(/front-box +▲ runs into the scan at/)
    const told = JSON.parse((await command(file, '--json')).out) as {
      scans: { bay: { residual: number; gaps: Record<string, { apart: number }> } }
      findings: { item: string; outcome: string; found: number }[]
    }
    expect(told.scans.bay.gaps['front-box']?.apart).toBe(0)
    expect(told.findings.find(f => f.item === 'front-box and bay')).toMatchObject({ outcome: 'failing', found: 0 })
  })
  it('tells where a part runs into a scan on its way in, though it stands clear of it once it is there', async () => {
    const file = car([...scanned, { path: 'fit.bodies.motor.way-in', now: 'from behind' }]),
      { code, out } = await command(file)
    expect(code).toBe(1)
    expect(out).toMatch(/motor +104[.\d]*\smm, nearest at/)
    expect(out).toMatch(/motor, way in +▲ runs into the scan \d+\smm before it is in its place, at 4[78]\d[.\d]*\smm/)
    expect(out).toMatch(/failing +motor past bay: Coming from behind it runs into the scan bay \d+\smm before it is in its\s+place/)
    const told = JSON.parse((await command(file, '--json')).out) as {
      scans: { bay: { ways: Record<string, { apart: number; out: number; at: number[] }> } }
      findings: { rule: string; item: string; outcome: string }[]
    }
    const { apart, out: travel, at } = told.scans.bay.ways.motor as { apart: number; out: number; at: number[] }
    expect(apart).toBe(0)
    // The motor's front end has the rear wall, at 480 mm, before it.
    expect(at[0]).toBeGreaterThan(0.47)
    expect(travel).toBeGreaterThan(0.3)
    expect(told.findings.find(f => f.item === 'motor past bay')).toMatchObject({ rule: 'can-be-brought-in', outcome: 'failing' })
  })
  it('measures parts by their meshes, without any scan as well', async () => {
    const meshed: readonly Edit[] = [
        { path: 'fit.bodies.motor.mesh', now: 'attachments/lapwing-motor.stl' },
        { path: 'drive.units.main.inverter.x', now: '150 mm' },
        { path: 'drive.units.main.inverter.z', now: '655 mm' },
      ],
      { code, out } = await command(car(meshed))
    expect(code).toBe(0)
    for (const said of [
      /motor: attachments\/lapwing-motor.stl\nTriangles +384\nSkin +closed\nExtent +320\smm × 270\smm × 270\smm\nStands for it +the mesh/,
      /inverter and motor +15\smm, nearest at 30\smm, 0\smm, 600\smm/,
      /sound +motor: Its mesh is off its sides by 0\smm/,
      /sound +inverter and motor: Between inverter and motor there is 15\smm of air/,
    ])
      expect(out).toMatch(said)
    expect(out).not.toContain('what was scanned')
    const told = JSON.parse((await command(car([...meshed, ...scanned]), '--json')).out) as {
      meshes: { shapes: Record<string, { sides: number[] }>; pairs: Record<string, { apart: number }> }
      scans: { bay: { gaps: Record<string, { apart: number }> } }
    }
    expect(told.meshes.pairs['inverter and motor']?.apart).toBeCloseTo(0.015, 6)
    // Its flange is round: further off the floor than its box by what a chord of it sinks.
    expect(told.scans.bay.gaps.motor?.apart).toBeGreaterThan(0.1044)
  })
  it('says which mesh is not that of its part, and which cannot be read', async () => {
    const off = await command(
      car([
        { path: 'fit.bodies.motor.mesh', now: 'attachments/lapwing-motor.stl' },
        { path: 'fit.bodies.motor.length', now: '330 mm' },
      ]),
    )
    expect(off.code).toBe(1)
    expect(off.out).toMatch(/Stands for it +its box: the mesh is not as large as its sides say/)
    expect(off.out).toMatch(/failing +motor: Its mesh is off its sides by 10\smm, at most 2\smm is that of the same part/)
    const broken = await command(car([{ path: 'fit.bodies.motor.mesh', now: 'attachments/broken.stl' }]))
    expect(broken.out).toMatch(/Not read +byte 900: the file is cut off.*; its box stands for it/s)
    expect(broken.out).toMatch(/unanswered +motor: Its mesh cannot be read: byte 900/)
  })
  it('packs the free space it stands for', async () => {
    const file = car([...scanned, ...space]),
      { code, out } = await command(file, '--pack', file, '--steps', '50')
    expect(code).toBe(0)
    expect(out).toMatch(/Placed +\d+ of at most \d+, by /)
    expect(out).toMatch(/every triangle of the scan: none touches it/)
  })
  it('says why nothing can be measured', async () => {
    const broken = await command(car([...scanned, { path: 'fit.scans.bay.file', now: 'attachments/broken.stl' }]))
    expect(broken.out).toMatch(/Not measured +byte 900: the file is cut off/)
    expect(broken.out).toMatch(/unanswered +bay: Nothing can be measured on the scan bay: byte 900/)
    const inches = await command(car([...scanned, { path: 'fit.scans.bay.unit', now: 'in' }]))
    expect(inches.out).toMatch(/Not measured +the distances between the points do not fit a scan in in/)
    const two = await command(car([...scanned, { path: 'fit.scans.bay.points.rear', now: null }]))
    expect(two.out).toMatch(/unanswered +bay: Where the scan lies in the car is not known yet/)
    const none = await command(join(samples, 'lapwing.conversion.yaml'))
    expect(none).toMatchObject({
      code: 2,
      err: expect.stringContaining('found no scan in it; accepted a conversion with fit.scans or the mesh of a part, or a mesh'),
    })
    const lost = await command(car([...scanned, { path: 'fit.scans.bay.file', now: 'attachments/lost.stl' }]))
    expect(lost.code).toBe(2)
    expect(lost.err).toContain('«attachments/lost.stl», which is not beside the conversion')
  })
})
