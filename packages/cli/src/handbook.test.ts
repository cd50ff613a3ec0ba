import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { run } from './program.ts'

const folder = mkdtempSync(join(tmpdir(), 'ampwright-'))
let count = 0
async function command(args: readonly string[]): Promise<{ code: number; out: string; err: string }> {
  const out: string[] = [],
    err: string[] = []
  const code = await run(args, { width: 100, colour: false, out: l => out.push(l), err: l => err.push(l) })
  return { code, out: out.join('\n'), err: err.join('\n') }
}

describe('handbook', () => {
  it('computes one formula in the units it is given', async () => {
    const { code, out } = await command([
      'handbook',
      'wheel-force',
      '--json',
      '--input',
      'torque=184.390537 lb·ft',
      '--input',
      'ratio=5.33',
      '--input',
      'efficiency=95 %',
      '--input',
      'radius=280 mm',
    ])
    expect(code).toBe(0)
    // 250 N·m · 5.33 · 0.95 / 0.28 m
    expect((JSON.parse(out) as { value: number }).value).toBeCloseTo(4520.98, 1)
  })
  it('takes a curve as rows or from a CSV file, and a map from a CSV file', async () => {
    const table = (text: string): string => {
      const path = join(folder, `${count++}.csv`)
      writeFileSync(path, text)
      return `@${path}`
    }
    const value = async (formula: string, ...inputs: string[]): Promise<number> => {
      const { out, err } = await command(['handbook', formula, '--json', ...inputs.flatMap(i => ['--input', i])])
      expect(err).toBe('')
      return (JSON.parse(out) as { value: number }).value
    }
    // 1 Ah at 3.5 V on the mean of a straight line from 3 V to 4 V
    for (const curve of ['0:3.0 V, 100 %:4.0 V', '0 %:3,0 V; 100 %:4,0 V', table('charge [%],voltage [V]\n0,3\n100,4\n')])
      expect(await value('stored-energy', `openCircuit=${curve}`, 'capacity=1 Ah')).toBeCloseTo(12_600, 6)
    const map = table('speed [rad/s],torque [Nm],loss [W]\n0,0,0\n0,100,200\n200,0,100\n200,100,500\n')
    // what torque adds: 500 − 100 W
    expect(await value('winding-heat', `losses=${map}`, 'factor=1', 'speed=200 rad/s', 'torque=100 Nm')).toBeCloseTo(400, 9)
    const wrong = async (curve: string): Promise<string> =>
      (await command(['handbook', 'stored-energy', '--input', `openCircuit=${curve}`, '--input', 'capacity=1 Ah'])).err
    expect(await wrong('3 V')).toContain('--input openCircuit=@FILE.csv')
    expect(await wrong('0:3 V')).toContain('at least two rows')
    expect(await wrong('0:3 kg, 100 %:4 V')).toContain('kg')
    expect(await wrong('@nothing.csv')).toContain('a CSV table is wanted')
  })
  it('says which command runs what takes a whole plan', async () => {
    expect((await command(['handbook', 'trip'])).out).toContain('ampwright assess FILE')
    expect((await command(['handbook', 'trip', '--input', 'mass=1000 kg'])).err).toContain('ampwright assess FILE')
  })
  it('says which input is missing and which is unknown', async () => {
    expect(await command(['handbook', 'wheel-force', '--input', 'torque=1 Nm'])).toMatchObject({
      code: 2,
      err: expect.stringContaining('--input ratio='),
    })
    expect(await command(['handbook', 'wheel-force', '--input', 'weight=1 kg'])).toMatchObject({
      code: 2,
      err: expect.stringContaining('torque'),
    })
    expect(await command(['handbook', 'wheel-fores'])).toMatchObject({ code: 2, err: expect.stringContaining('wheel-force') })
  })
  it('refuses a place that is none in one line, and works one that is', async () => {
    const gap = (highA: string) =>
      command([
        'handbook',
        'box-gap',
        ...['lowA=0 mm;0 mm;0 mm', `highA=${highA}`, 'lowB=720 mm;450 mm;200 mm', 'highB=1 m;0.9 m;0.5 m'].flatMap(x => ['--input', x]),
      ])
    expect((await gap('600 mm; 400 mm; 250 mm')).out).toMatch(/d = 130\smm/)
    expect(await gap('600 mm; 400 mm')).toMatchObject({
      code: 2,
      err: expect.stringContaining('handbook: box-gap: highA must be three lengths, x, y and z; found 2'),
    })
  })
})
