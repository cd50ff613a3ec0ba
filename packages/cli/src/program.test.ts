import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { CARS, fileOf, root, textOf } from '../../../tests/cars.ts'
import { run } from './program.ts'
import { widthOf } from './terminal.ts'

const folder = mkdtempSync(join(tmpdir(), 'ampwright-'))
let count = 0
const file = (text: string | Uint8Array): string => {
  const path = join(folder, `${count++}.conversion.yaml`)
  writeFileSync(path, text)
  return path
}
async function command(args: readonly string[], width = 100): Promise<{ code: number; out: string; err: string }> {
  const out: string[] = [],
    err: string[] = []
  const code = await run(args, { width, colour: false, out: l => out.push(l), err: l => err.push(l) })
  return { code, out: out.join('\n'), err: err.join('\n') }
}
const ajv = new Ajv2020({ allErrors: true, strict: false })
const valid = ajv.compile(JSON.parse(readFileSync(new URL('./assessment.schema.json', import.meta.url), 'utf8')) as object)

describe('assess', () => {
  it.each(CARS)('prints JSON for %s that keeps to its documented schema', async car => {
    const { out } = await command(['assess', fileOf(car), '--json'])
    valid(JSON.parse(out))
    expect(valid.errors ?? []).toEqual([])
  })
  it.each(CARS)('fits %s into a narrow terminal', async car => {
    const { out } = await command(['assess', fileOf(car)], 60)
    expect(out.split('\n').filter(l => widthOf(l) > 60)).toEqual([])
  })
  it.each(CARS)('starts every line of the figures of %s with a capital or a number', async car => {
    const { out } = await command(['assess', fileOf(car), '--figures'], 200),
      lines = out.slice(out.indexOf('\nFigures: '), out.indexOf('\nWhat is not known yet')).split('\n')
    expect(lines.length).toBeGreaterThan(20)
    expect(lines.filter(l => /^\p{Ll}/u.test(l))).toEqual([])
  })
  it('works on an empty file: nothing is known, everything is asked', async () => {
    for (const text of ['', '\n', '# nothing yet\n', 'schema: 1\n']) {
      const { code, out, err } = await command(['assess', file(text)])
      expect(err).toBe(text.trim() === '' ? 'The conversion file is empty: everything is asked.' : '')
      expect(code).toBe(0)
      expect(out).toContain('drive.units')
    }
    const { out } = await command(['assess', file(''), '--json'])
    valid(JSON.parse(out))
    expect(valid.errors ?? []).toEqual([])
  })
  it('works on half a file', async () => {
    const text = textOf('lapwing'),
      half = text.slice(0, text.indexOf('\npack:'))
    const { code, out, err } = await command(['assess', file(half.replace(/trip: mixed, |trip: mixed|place: garage, /g, ''))])
    expect(err).toBe('')
    expect([0, 1]).toContain(code)
    expect(out).toContain('pack.boxes')
  })
  it('names ten different mistakes at once, each with its place, and assesses nothing', async () => {
    const text = textOf('lapwing')
      .replace('wheelbase: 2310', 'wheelbse: 2310')
      .replace('luggage: 40 kg\n  person', 'luggage: 40 km\n  person')
      .replace('budget: 18000 €', 'budget: 18,000 €')
      .replace('driven-wheels: rear', 'driven-wheels: reer')
      .replace('tyre: 185/60 R14 82H', 'tyre: 185/60')
      .replace('converted-on: 2027-04-15', 'converted-on: 15 April')
      .replace('gear: fourth', 'gear: fith')
      .replace('{ kind: hill start, slope: 25 % }', '{ kind: hill strat, slope: 25 % }')
      .replace('peak-torque: 250 Nm', 'peak-torque: -250 Nm')
      .replace('speed: 130 km/h', 'speed: 130')
    const { code, out, err } = await command(['assess', file(text)])
    expect(code).toBe(2)
    expect(out).toBe('')
    const lines = err.split('\n')
    for (const [where, what] of [
      ['donor.wheelbse', 'wheelbase'],
      ['brief.luggage', 'km'],
      ['brief.budget', '18,000'],
      ['donor.driven-wheels', 'rear'],
      ['donor.tyre', '185/60'],
      ['brief.converted-on', '15 April'],
      ['drive.units.main.gear', 'fifth'],
      ['brief.goals.pull-away', 'hill start'],
      ['motor.peak-torque', '250'],
      ['goals.top-speed.speed', 'km/h'],
    ] as const) {
      const line = lines.find(l => l.includes(where))
      expect(line, `${where} is not named in\n${err}`).toBeDefined()
      expect(line).toMatch(/\.conversion\.yaml:\d+:\d+ /)
      expect(line).toContain(what)
    }
    expect(err).not.toMatch(/ at .*\.ts|Error:/)
    expect(lines.at(-1)).toMatch(/^10 problems in /)
  })
  it.each([
    ['a file of a newer schema', 'schema: 99\n', /schema 99/],
    ['deep nesting', `schema: 1\nbrief: ${'{a: '.repeat(5000)}`, /deep|levels/],
    ['an alias bomb', 'schema: 1\na: &a [x,x]\nb: &b [*a,*a]\n', /anchor|alias/i],
    ['a NUL byte', 'schema: 1\ncar: a\u0000b\n', /NUL|control|character/i],
    ['a prototype key', 'schema: 1\n__proto__: { a: 1 kg }\n', /__proto__/],
  ])('refuses %s with one clear message', async (_, text, message) => {
    const { code, err } = await command(['assess', file(text)])
    expect(code).toBe(2)
    expect(err).toMatch(message)
    expect(err).not.toMatch(/ at .*\.ts:/)
  })
  it('refuses 50 MB before reading them', async () => {
    const { code, err } = await command(['assess', file(Buffer.alloc(50_000_000, 0x61))])
    expect(code).toBe(2)
    expect(err).toMatch(/at most 2000000 bytes/)
  })
  it('says what is wrong with a file that is not there, a folder, an unknown trace', async () => {
    expect(await command(['assess', join(folder, 'nothing.yaml')])).toMatchObject({
      code: 2,
      err: expect.stringContaining('cannot be opened'),
    })
    expect(await command(['assess', folder])).toMatchObject({ code: 2, err: expect.stringContaining('folder') })
    expect(await command(['assess', fileOf('wren'), '--json', '--traces', 'nope'])).toMatchObject({
      code: 2,
      err: expect.stringContaining('no trace'),
    })
  })
  it('reads standard input and exits by the findings', () => {
    const main = join(root, 'packages/cli/src/main.ts')
    const child = spawnSync(process.execPath, ['--conditions', 'source', '--import', 'tsx', main, 'assess', '-', '--json'], {
      input: textOf('lapwing'),
      encoding: 'utf8',
      cwd: root,
      maxBuffer: 2 ** 27,
    })
    const parsed = JSON.parse(child.stdout) as { conversion: string; findings: { outcome: string }[] }
    expect(parsed.conversion).toBe('Lapwing roadster')
    expect(child.status).toBe(parsed.findings.some(f => f.outcome === 'failing') ? 1 : 0)
    expect(child.stderr).toBe('')
  })
  it('leaves class values out when told to be strict', async () => {
    const { out } = await command(['assess', fileOf('lapwing'), '--strict', '--json']),
      a = JSON.parse(out) as { gaps: { path: string }[]; facts: Record<string, { origin?: { how: string } }> }
    expect(a.gaps.map(g => g.path)).toContain('donor.rolling-resistance')
    expect(Object.values(a.facts).filter(f => f.origin?.how === 'assumed' && f === a.facts['donor.rolling-resistance'])).toEqual([])
  })
})

describe('why', () => {
  it('unfolds the kerb mass down to the wheel scales', async () => {
    const { code, out } = await command(['why', fileOf('lapwing'), 'ledger.kerb'])
    expect(code).toBe(0)
    expect(out).toContain('donor.weighing.front-left')
    expect(out).toContain('wheel scales')
  })
  it('suggests the figure that was meant', async () =>
    expect(await command(['why', fileOf('lapwing'), 'ledger.kerp'])).toMatchObject({
      code: 2,
      err: expect.stringContaining('did you mean ledger.kerb? `ampwright assess'),
    }))
  it.each(['kerb', 'kerp', 'range'])('finds the figure meant by its last name alone: %s', async name =>
    expect((await command(['why', fileOf('lapwing'), name])).err).toMatch(/did you mean (ledger\.kerb|range\.range@\w+)\? .*--figures/),
  )
  it('shows the height above the sea in metres or feet', async () => {
    const shownIn = (system: string) => command(['why', fileOf('lapwing'), 'acceleration.density@sprint', '--units', system])
    expect((await shownIn('metric')).out).toMatch(/h = \d+\sm /)
    expect((await shownIn('us')).out).toMatch(/h = \d+\sft /)
  })
})

describe('the rest of the command line', () => {
  it('starts a conversion that assess reads, and never overwrites one', async () => {
    const out = join(folder, 'fresh.conversion.yaml')
    expect(
      await command([
        'new',
        'Our van: the big one',
        '--engine',
        'mid',
        '--driven',
        'rear',
        '--rules',
        'un',
        '--weight',
        '2600 lb',
        '--out',
        out,
      ]),
    ).toMatchObject({ code: 0 })
    expect(await command(['assess', out])).toMatchObject({ code: 0, err: '' })
    expect(await command(['new', 'x', '--out', out])).toMatchObject({ code: 2, err: expect.stringContaining('already there') })
    expect(await command(['new', 'x', '--engine', 'top', '--out', join(folder, 'y.yaml')])).toMatchObject({
      code: 2,
      err: expect.stringContaining('transverse front'),
    })
  })
  it('says what is wrong with a weight, and writes nothing', async () => {
    for (const weight of ['1,180 kg', '1180'])
      expect(await command(['new', 'x', '--weight', weight, '--out', join(folder, 'w.yaml')])).toMatchObject({
        code: 2,
        err: expect.stringMatching(/--weight: found .*1,?180/),
      })
    expect(existsSync(join(folder, 'w.yaml'))).toBe(false)
  })
  it('says never where a time can no longer be reached, and no difference to it', async () => {
    const { out } = await command(['set', fileOf('lapwing'), 'drive.units.main.motor.peak-torque=30 N·m', '--figures'])
    expect(out).toMatch(/Time, sprint +11\.39\ss +never\s*$/m)
    expect(out).not.toContain('+never')
  })
  it('compares a car with itself and with an edited one', async () => {
    const edited = file(textOf('lapwing').replace('gear: fourth', 'gear: third'))
    expect((await command(['compare', fileOf('lapwing'), fileOf('lapwing')])).out).toContain('No difference')
    expect((await command(['compare', fileOf('lapwing'), edited, '--figures'])).out).toContain('Total ratio')
  })
  it('lists the catalogue, class by class and part by part, with how each figure is known', async () => {
    expect((await command(['parts'])).out).toMatch(/^junction-box +\d+ +high-voltage junction box$/m)
    const { out } = await command(['parts', 'drive-unit-pm-front'])
    expect(out).toContain('drive-unit-pm-front-85kw@1')
    expect(out).toMatch(/mass [^·]*\(from memory\)/)
    const json = JSON.parse((await command(['parts', 'vacuum-pump', '--json'])).out) as { id: string; fields: { mass: { mark: string } } }[]
    expect(json[0]?.fields.mass.mark).toMatch(/from memory|common practice|published/)
    expect(await command(['parts', 'vacum-pump'])).toMatchObject({ code: 2, err: expect.stringContaining('did you mean vacuum-pump?') })
  })
  it('takes mass and price of a part put in from the catalogue', async () => {
    const { out } = await command([
        'set',
        fileOf('lapwing'),
        'donor.added.box={part: junction-box-4-branches@1, x: 1 m, z: 0.5 m}',
        '--json',
      ]),
      { figures } = JSON.parse(out) as { figures: { id: string; change?: number }[] }
    expect(figures.find(f => f.id === 'ledger.kerb')?.change).toBeCloseTo(5, 9)
    expect(figures.find(f => f.id === 'cost.parts')?.change).toBeCloseTo(300, 6)
  })
  it('takes the ratings of a fuse, a contactor and an inlet from the catalogue, the mass of the inlet where no other is listed', async () => {
    const tried = async (...sets: string[]) =>
      JSON.parse((await command(['set', fileOf('lapwing'), ...sets, '--json'])).out) as { figures: { id: string; change?: number }[] }
    const fuse = await tried('pack.limits.fuse=', 'pack.limits.fuse-voltage=', 'pack.limits.fuse-part=hv-fuse-250a-500v@1')
    expect(fuse.figures.filter(f => f.change !== undefined && f.change !== 0)).toEqual([])
    const inlet = ['charging.inlet.current=', 'charging.inlet.part=charge-inlet-type2-16a-1ph@1']
    const listed = await tried(...inlet)
    expect(listed.figures.find(f => f.id === 'lead.inlet-room@garage')?.change).toBeCloseTo(-16, 9)
    expect(listed.figures.find(f => f.id === 'ledger.kerb')?.change ?? 0).toBe(0)
    // Two kilograms and 180 € in the list against one and a half and 180 € of the class.
    const own = await tried(...inlet, 'donor.added.charge-inlet=')
    expect(own.figures.find(f => f.id === 'ledger.kerb')?.change).toBeCloseTo(-0.5, 9)
    expect(own.figures.find(f => f.id === 'cost.parts')?.change ?? 0).toBeCloseTo(0, 6)
  })
  it('says when a part is not in the catalogue, or belongs elsewhere, though all it would fill is typed', async () => {
    const tried = async (part: string): Promise<string> =>
      (await command(['set', fileOf('lapwing'), `drive.units.main.motor.part=${part}`])).err
    expect(await tried('motor-pm-100kv@1')).toMatch(
      /motor\.part: not in the catalogue; found «motor-pm-100kv@1»; .*did you mean motor-pm-100kw@1\?/,
    )
    expect(await tried('nonsense@1')).toMatch(/not in the catalogue; found «nonsense@1»; accepted the name of a part \(motor, drive-unit\)/)
    expect(await tried('junction-box-4-branches@1')).toContain('a part of another class')
    expect(await tried('motor-pm-100kw@1')).toBe('')
  })
  it('lists what to measure next', async () => {
    const { out, code } = await command(['survey', fileOf('lapwing'), '--json'])
    expect(code).toBe(0)
    const paths = (JSON.parse(out) as { path: string }[]).map(w => w.path)
    expect(paths).toContain('drive.units.main.efficiency')
    // The coast-down has measured it already.
    expect(paths).not.toContain('donor.rolling-resistance')
  })
  it('says for each measurable gap with what, how well, how long and until when, whatever the width', async () => {
    for (const width of [40, 100]) {
      const { out } = await command(['survey', fileOf('lapwing')], width)
      expect(out.split('\n').filter(l => widthOf(l) > width)).toEqual([])
      expect(out.replace(/\s+/g, ' ')).toMatch(
        /Insulation resistance to the case \(m14\) .*? any time · insulation tester at 500 V .*? 5 min · unlocks/,
      )
      expect(out).not.toContain('…')
    }
    const gaps = JSON.parse((await command(['survey', fileOf('lapwing'), '--json'])).out) as {
      path: string
      measure?: object
      widens?: object
    }[]
    expect(gaps.filter(g => !g.widens && !g.measure).map(g => g.path)).toEqual(['drive.units.main.torque-limit'])
  })
  it('puts findings that wait for the same gap under one heading; JSON keeps them apart', async () => {
    const { out } = await command(['assess', fileOf('otter')])
    expect(out).toMatch(/unanswered 9 rules wait for the same: a record of each salvaged module \(pack\.salvage\)\.\n {2}S3 No salvaged/)
    expect(out.match(/\(pack\.salvage\)/g)).toHaveLength(1)
    const { findings } = JSON.parse((await command(['assess', fileOf('otter'), '--json'])).out) as {
      findings: { gaps: { path: string }[] }[]
    }
    expect(findings.filter(f => f.gaps.some(g => g.path === 'pack.salvage'))).toHaveLength(9)
  })
  it('speaks in the units the reader wants', async () =>
    expect((await command(['assess', fileOf('lapwing'), '--units', 'us'])).out).toMatch(/2.491.*lb/))
  it('refuses an unknown command, option and unit system with exit 2', async () => {
    expect(await command(['asess', 'x'])).toMatchObject({ code: 2, err: expect.stringContaining('assess') })
    expect((await command(['assess', fileOf('wren'), '--unit', 'us'])).code).toBe(2)
    expect((await command(['assess', fileOf('wren'), '--units', 'cubits'])).code).toBe(2)
    expect((await command(['--help'])).code).toBe(0)
  })
  it.each(['bash', 'zsh', 'fish'])('completes commands, options, rules and formulas in %s', async shell => {
    const { out } = await command(['completion', shell])
    for (const word of [
      'assess',
      'coast-down',
      'figures',
      'write',
      'reason',
      'out',
      'series',
      'metric',
      'hill-start',
      'wheel-force',
      'junction-box',
    ])
      expect(out, word).toContain(word)
  })
  const bash = spawnSync('bash', ['-c', 'true']).status === 0
  if (!bash) console.info('The completion of bash is not tried: bash is not installed here.')
  it.skipIf(!bash)('offers in bash what fits the command', async () => {
    const { out } = await command(['completion', 'bash'])
    const offered = (...words: string[]): string[] =>
      spawnSync(
        'bash',
        [
          '-c',
          `${out}\nCOMP_WORDS=(ampwright ${words.map(w => `'${w}'`).join(' ')}); COMP_CWORD=${words.length}; _ampwright; echo "\${COMPREPLY[@]}"`,
        ],
        {
          encoding: 'utf8',
          cwd: join(root, 'samples'),
        },
      )
        .stdout.trim()
        .split(' ')
    expect(offered('as')).toEqual(['assess'])
    expect(offered('accept', '--')).toEqual(expect.arrayContaining(['--by', '--reason', '--scope', '--date', '--write', '--json']))
    expect(offered('assess', '--w')).toEqual([''])
    expect(offered('assess', '--units', 'u')).toEqual(['us', 'uk'])
    expect(offered('assess', 'lap')).toEqual(['lapwing.conversion.yaml'])
    expect(offered('shelf', 'f')).toEqual(['ferry-lane.workshop.yaml'])
    // A scan is told by what is in it: any file is offered.
    expect(offered('scan', 'f')).toEqual(['ferry-lane.workshop.yaml'])
    expect(offered('scan', '--unit', 'm')).toEqual(['mm', 'm'])
    expect(offered('remedy', 'lapwing.conversion.yaml', 'hill-s')).toEqual(['hill-start'])
    expect(offered('handbook', 'wheel-fo')).toEqual(['wheel-force'])
  })
})
