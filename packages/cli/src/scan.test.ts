import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { readMesh, writePly, writeStl } from '@ampwright/exchange'
import { boundsOf, measures } from '@ampwright/geometry'
import { afterAll, describe, expect, it } from 'vitest'
import { glb } from '../../../tests/mesh-files.ts'
import { engineBay } from '../../../tests/scans/engine-bay.ts'
import { boxSolid } from '../../../tests/solids.ts'
import { run } from './program.ts'
import { widthOf } from './terminal.ts'

const folder = mkdtempSync(join(tmpdir(), 'ampwright-scan-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
let count = 0
const file = (bytes: Uint8Array | string, end = 'stl'): string => {
  const path = join(folder, `${count++}.${end}`)
  writeFileSync(path, bytes)
  return path
}
async function command(args: readonly string[], width = 100): Promise<{ code: number; out: string; err: string }> {
  const out: string[] = [],
    err: string[] = []
  const code = await run(['scan', ...args], { width, colour: false, out: l => out.push(l), err: l => err.push(l) })
  return { code, out: out.join('\n'), err: err.join('\n') }
}
async function json(args: readonly string[]): Promise<Record<string, never>> {
  const { out, err } = await command([...args, '--json'])
  expect(err).toBe('')
  return JSON.parse(out) as Record<string, never>
}

const sample = new URL('../../../samples/lapwing.conversion.yaml', import.meta.url).pathname
const made = engineBay({ seed: 5, triangles: 30_000 }),
  bay = file(writeStl(made.scan)),
  text = (place: readonly number[], by = 1): string => place.map(x => (by * x).toFixed(2)).join(','),
  picks = made.picks.flatMap(p => ['--pick', `${text(p.onScan)} = ${text(p.inCar, 1000)} mm`]),
  within = ['--within', `${text(made.within.low)} .. ${text(made.within.high)} m`]

describe('scan', () => {
  it('says what a mesh is, and asks where it lies', async () => {
    const { code, out } = await command([bay])
    expect(code).toBe(0)
    expect(out).toMatch(/Format +STL\nTriangles +(28|29|30|31)\s?\d{3}\nSkin +open: \d+ open edges\nExtent +\d+/)
    expect(out).toMatch(/Unit +by its size mm/)
    expect(out).toContain('--pick')
    const closed = await command([file(writePly(boxSolid([1200, 800, 300]).mesh), 'ply')])
    expect(closed.out).toMatch(/Format +PLY\n.*\nSkin +closed\nExtent +1200 × 800 × 300, as the file counts/)
  })
  it('lays it into the car by points, measures the space and the gap of a box', async () => {
    const { code, out, err } = await command([
      bay,
      ...picks,
      '--from',
      '300,0,600 mm',
      ...within,
      '--box',
      '200 x 100 x 100 mm at 300,0,600 mm',
    ])
    expect(err).toBe('')
    expect(code).toBe(0)
    for (const said of [
      /Lies +by 4 points, [\d.]+\smm left over/,
      /Left over +1: [\d.]+\smm · 2: /,
      /Unit +mm, by the distances between the points/,
      /Along +−\d+\smm to \d+\smm behind the front axle/,
      /Volume +\d{3}\sl, in cubes of 20\smm/,
      /Reaches the limits +top \d+ %: open there/,
      /Box 1 +\d+(\.\d+)?\smm, from .* to /,
    ])
      expect(out).toMatch(said)
  })
  it('gives the same as JSON in metres, and ends with 1 where a box runs into the scan', async () => {
    const asked = [bay, ...picks, '--from', '0.3,0,0.6 m', ...within, '--resolution', '2.5 cm']
    const found = (await json(asked)) as unknown as {
      alignment: { unit: string; residual: number }
      free: { volume: number; edge: number; reached: object }
      inFile: object
    }
    expect(found.alignment.unit).toBe('mm')
    expect(found.alignment.residual).toBeLessThan(0.003)
    expect(found.free).toMatchObject({ edge: 0.025, reached: { bottom: 0, front: 0 } })
    expect(found.free.volume).toBeGreaterThan(0.4)
    const kept = (await json([...asked, '--keep', '30 mm'])) as unknown as typeof found
    expect(kept.free.volume).toBeLessThan(0.9 * found.free.volume)
    const hit = await command([
      bay,
      ...picks,
      '--box',
      '2 x 0.1 x 0.1 m at 0.3,0,0.6 m turned 0,0,10',
      '--box',
      '0.1 x 0.1 x 0.1 m at 0.3,0,0.6 m',
    ])
    expect(hit.code).toBe(1)
    expect(hit.out).toMatch(/Box 1 +▲ runs into the scan at/)
    expect(hit.out).toMatch(/Box 2 +[\d.]+\smm, from/)
  })
  it('takes unit and axes as said, and from glTF what the format fixes', async () => {
    const box = boxSolid([0.5, 0.2, 1.1]).mesh,
      said = (await json([file(glb(box), 'glb'), '--rear', 'z'])) as unknown as {
        inCar: { bounds: { high: number[] }; volume: number }
        unitOfFormat: string
      }
    expect(said.unitOfFormat).toBe('m')
    // y up and z rearwards: x of the file is to the right.
    for (const [i, x] of [1.1, 0.5, 0.2].entries()) expect(said.inCar.bounds.high[i]).toBeCloseTo(x, 6)
    expect(said.inCar.volume).toBeCloseTo(0.11, 6)
    const inches = (await json([file(writeStl(box)), '--unit', 'in', '--up', '-y', '--rear', 'x', '--mirrored'])) as unknown as typeof said
    expect(inches.inCar.volume).toBeCloseTo(0.11 * 0.0254 ** 3, 12)
  })
  it('writes the scan as it lies in the car, in metres', async () => {
    const out = join(folder, 'laid.ply')
    expect((await command([bay, ...picks, '--out', out])).code).toBe(0)
    const laid = readMesh(readFileSync(out))
    if ('issue' in laid) throw new Error(laid.issue.what)
    const { low, high } = boundsOf(laid.mesh)
    expect(high[0] - low[0]).toBeCloseTo(1.2, 1)
    expect(measures(laid.mesh).area).toBeGreaterThan(4)
    expect(await command([bay, ...picks, '--out', out])).toMatchObject({
      code: 2,
      err: expect.stringContaining('is there already; nothing was written'),
    })
  })
  it('packs modules of a conversion into the free space, none of which touches the scan', async () => {
    const asked = [bay, ...picks, '--from', '300,0,600 mm', ...within, '--resolution', '30 mm', '--keep', '8 mm', '--steps', '200']
    const pack = [...asked, '--pack', sample]
    const { code, out, err } = await command(pack)
    expect(err).toBe('')
    expect(code).toBe(0)
    for (const said of [
      /Placed +\d+ of at most \d+, by /,
      /Searched +\d[\d\s]* steps with seed 1/,
      /Held against +every triangle of the scan: none touches it/,
      /Nearest +module \d+: [\d.]+\smm, from/,
      /Module 1 +on its bottom, from /,
      /[\d.]+ s, at most \d+ MB of memory/,
    ])
      expect(out).toMatch(said)
    const told = (await json(pack)) as unknown as {
      pack: { placed: { low: number[]; high: number[]; gap: { gap: number; overlap: boolean } }[]; bound: number; seed: number }
      effort: { seconds: number; peakMemory: number }
    }
    const sides = (p: { low: number[]; high: number[] }): number[] =>
      p.high.map((h, i) => Math.round(1000 * (h - (p.low[i] as number)))).sort((a, b) => a - b)
    expect(told.pack.placed.length).toBeGreaterThan(10)
    for (const p of told.pack.placed) {
      expect(sides(p)).toEqual([108, 152, 355])
      expect(p.gap.overlap).toBe(false)
      expect(p.gap.gap).toBeGreaterThan(0.008)
    }
    expect(told.effort.peakMemory).toBeGreaterThan(1e7)
    const turned = (await json([...pack, '--down', 'bottom', 'left', 'front', '--air', '0 mm'])) as unknown as typeof told
    expect(turned.pack.bound).toBeGreaterThanOrEqual(told.pack.bound)
  })
  it.each([
    ['no free space', ['--pack', sample], 'scan: --pack: the free space is not known; accepted --from with it'],
    [
      'no such seed',
      ['--from', '300,0,600 mm', ...within, '--pack', sample, '--seed', '-1'],
      'scan: --seed -1: found -1; accepted a whole number from 0 on',
    ],
    [
      'no step',
      ['--from', '300,0,600 mm', ...within, '--pack', sample, '--steps', '0'],
      'scan: --steps 0: found 0; accepted a whole number from 1 on',
    ],
    [
      'a module without sides',
      ['--from', '300,0,600 mm', ...within, '--pack', file('schema: 1\ncar: x\n', 'conversion.yaml')],
      'pack.module.length is not stated: length of one module',
    ],
  ])('refuses to pack with %s', async (_, args, message) => {
    const { code, err } = await command([bay, ...picks, ...args])
    expect(err).toContain(message)
    expect(code).toBe(2)
  })
  it('fits a narrow terminal', async () => {
    const { out } = await command([bay, ...picks, '--from', '300,0,600 mm', ...within, '--box', '200 x 100 x 100 mm at 300,0,600 mm'], 60)
    expect(out.split('\n').filter(l => widthOf(l) > 60 && !l.startsWith('/'))).toEqual([])
  })
  it.each([
    [
      'a place without unit',
      ['--from', '1,2,3'],
      "scan: --from 1,2,3: found no unit; accepted '450,0,600 mm': behind the front axle, to the right, up",
    ],
    ['a place of two lengths', ['--from', '1,2 mm'], 'scan: --from 1,2 mm: found 2 of three lengths; accepted'],
    ['a weight for a length', ['--from', '1,2,3 kg'], 'scan: --from 1,2,3 kg: found kg'],
    ['a pick without place', ['--pick', '1,2,3'], 'scan: --pick 1,2,3: found no single =; accepted'],
    ['two picks', picks.slice(0, 4), 'scan: --pick: too few points are picked; found 2; accepted three or more, not on one line'],
    [
      'picks on one line',
      ['0,0,0=0,0,0 mm', '1,0,0=1,0,0 mm', '2,0,0=2,0,0 mm'].flatMap(p => ['--pick', p]),
      'scan: --pick: the points lie on one line on the scan',
    ],
    [
      'cubes of no size',
      ['--from', '0,0,0 mm', '--resolution', '0 mm'],
      "scan: --resolution 0 mm: found 0 mm; accepted a length above 0, such as '15 mm'",
    ],
    ['a box without place', ['--box', '1 x 2 x 3 m'], 'scan: --box 1 x 2 x 3 m: found no sides and place; accepted'],
    ['a flat box', ['--box', '1 x 0 x 3 m at 0,0,0 m'], 'found sides 1 x 0 x 3 m; accepted sides above 0'],
    [
      'a place in the car while it lies nowhere',
      ['--from', '0,0,0 mm'],
      'scan: --from and --box are places in the car: where the scan lies in the car is not known',
    ],
    ['one axis', ['--up', 'z'], 'scan: --up and --rear: one axis does not say how the scan lies; found up z; accepted up and rear'],
    ['one axis twice', ['--up', 'z', '--rear', '-z', '--unit', 'mm'], 'scan: --up and --rear: up and rear are the same axis'],
    [
      'axes without unit',
      ['--up', 'z', '--rear', 'x'],
      'scan: --unit: the unit of the scan is not known; found none; accepted mm, cm, in, ft, m',
    ],
    ['limits of one corner', ['--from', '0,0,0 mm', '--within', '1,2,3 mm'], 'scan: --within 1,2,3 mm: found no two corners; accepted'],
    ['a start in the metal', [...picks, '--from', '0,460,600 mm', ...within], 'scan: --from: the place the flood starts from is in a wall'],
    [
      'a start outside',
      [...picks, '--from', '0,0,5 m', ...within],
      'scan: --from: the place the flood starts from lies outside the limits',
    ],
    ['no place to write', ['--out', 'a.stl'], 'scan: --out: where the scan lies in the car is not known'],
  ])('refuses %s in one line', async (_, args, message) => {
    const { code, err, out } = await command([bay, ...args])
    expect(err).toContain(message)
    expect(err.split('\n')).toHaveLength(1)
    expect({ code, out }).toEqual({ code: 2, out: '' })
  })
  it('refuses four points that fit the mirror image of the scan', async () => {
    expect((await command([bay, ...picks, '--mirrored'])).err).toMatch(
      /^scan: --pick: the points fit the scan as it is, not its mirror image; found \d+ mm left over, [\d.]+ mm the other way about; accepted mirrored said where it is, or points in the right order$/,
    )
    const flipped = {
        ...made.scan,
        positions: made.scan.positions.map((x, i) => (i % 3 === 2 ? -x : x)),
        triangles: made.scan.triangles.slice().reverse(),
      },
      theirs = made.picks.flatMap(({ onScan: [x, y, z], inCar }) => ['--pick', `${text([x, y, -z])} = ${text(inCar, 1000)} mm`]),
      image = file(writeStl(flipped))
    expect((await command([image, ...theirs])).err).toMatch(
      /^scan: --pick: the points fit the mirror image of the scan, not the scan; found/,
    )
    const { out } = await command([image, ...theirs, '--mirrored', '--from', '300,0,600 mm', ...within])
    expect(out).toMatch(/Mirrored +as you said/)
    expect(out).toMatch(/Volume +\d{3}\sl/)
  })
  it('loads what reads and measures meshes only when it is asked to', () => {
    const met = new Set<string>(),
      walk = (name: string): void => {
        if (met.has(name)) return
        met.add(name)
        if (!name.startsWith('.')) return
        const source = readFileSync(new URL(name, import.meta.url), 'utf8')
        for (const [, target] of source.matchAll(/^(?:import|export)\s(?!type\b)[^'"]*?from\s+'([^']+)'/gm)) walk(target as string)
      }
    walk('./main.ts')
    expect(met).toContain('./scan-command.ts')
    expect(met).not.toContain('./scan.ts')
    expect(met).not.toContain('@ampwright/geometry')
  })
  it('refuses points in the wrong order by what is up', async () => {
    const exchanged = made.picks.map((p, i) => ({ ...p, inCar: made.picks[i < 2 ? 1 - i : i]?.inCar ?? p.inCar })),
      wrong = exchanged.slice(0, 3).flatMap(p => ['--pick', `${text(p.onScan)} = ${text(p.inCar)} m`])
    const up = (['x', 'y', 'z', '-x', '-y', '-z'] as const).map(
      axis => [axis, (made.placement.turn[2][{ x: 0, y: 1, z: 2 }[axis.at(-1) as 'x']] as number) * (axis.length > 1 ? -1 : 1)] as const,
    )
    const [nearest] = [...up].sort((a, b) => b[1] - a[1])
    const { code, err } = await command([bay, ...wrong, '--up', nearest?.[0] as string])
    expect(code).toBe(2)
    expect(err).toMatch(
      /^scan: --pick: the points put the scan on its side or its head; found \d+° between -?[xyz] of the file and upwards; accepted points in the right order/,
    )
  })
  it('refuses what is no mesh with place, found and accepted', async () => {
    const cut = file(writeStl(made.scan).subarray(0, 1000))
    expect((await command([cut])).err).toMatch(
      /^.*\.stl: byte 1000: the file is cut off; found 1000 bytes; accepted \d+ bytes for the \d+ triangles it announces$/,
    )
    expect((await command([file('hello')])).err).toMatch(
      /\.stl: the file: this is no mesh that is known; found "hello"; accepted STL, OBJ, PLY, glTF or GLB$/,
    )
    expect((await command([join(folder, 'none.stl')])).err).toMatch(/cannot be opened \(ENOENT\); a mesh such as scan.stl is wanted/)
    expect((await command([bay, '--unit', 'miles'])).code).toBe(2)
  })
})
