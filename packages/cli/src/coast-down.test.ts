import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
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
beforeEach(() => writeFileSync(file, original))

const F0 = 140,
  F2 = 0.45
/** Rows of a log ten times a second: up to 122 km/h, in neutral down to 22, braked; as often as there are headings. */
function rows(mass: number, headings: readonly number[], wind = 0, start = 0): string[] {
  const out: string[] = []
  let t = start,
    v = 0
  for (const heading of headings) {
    const against = heading < 90 ? wind : -wind
    const drive = (done: () => boolean, slower: () => number): void => {
      while (!done()) {
        out.push(`${t.toFixed(1).replace('.', ',')};${(v * 3.6).toFixed(3).replace('.', ',')};${heading};no fix lost`)
        for (let k = 0; k < 10; k++) v = Math.max(0, v - slower() / 100)
        t += 0.1
      }
    }
    drive(
      () => v > 122 / 3.6,
      () => -2.5,
    )
    drive(
      () => v < 22 / 3.6,
      () => (F0 + F2 * (v + against) ** 2) / mass,
    )
    drive(
      () => v <= 0,
      () => 4,
    )
  }
  return out
}
const log = (name: string, lines: readonly string[], head = 'Elapsed time [s];Speed [km/h];Heading [°];remark'): string => {
  writeFileSync(join(folder, name), [head, ...lines, ''].join('\n'))
  return join(folder, name)
}
const figures = async (): Promise<Record<string, { value: number }>> =>
  (JSON.parse((await command('assess', file, '--json')).out) as { figures: Record<string, { value: number }> }).figures

describe('coast-down', () => {
  it('turns logs of runs both ways into the steps of the file, and so into the road load of the car that ran', async () => {
    const mass = (await figures())['coast-down.coasting-mass']?.value as number
    const one = log('day.csv', rows(mass, [10, 190, 12, 188], 1.5)),
      two = log('later.csv', rows(mass, [9, 191], 1.5))
    const { out } = await command('coast-down', file, one, two, '--write')
    expect(out).toMatch(/day\.csv, run 1: out, 12\d to 2\d km\/h/)
    expect(out).toMatch(/later\.csv, run 2: back/)
    expect(readFileSync(file, 'utf8')).toMatch(/115-to-105: \{ from: 115 km\/h, to: 105 km\/h, out-1: [\d.]+ s \(measured\), /)
    const now = await figures(),
      road = (v: number): number =>
        (now['coast-down.as-run.f0']?.value as number) +
        (now['coast-down.as-run.f1']?.value as number) * v +
        (now['coast-down.as-run.f2']?.value as number) * v ** 2
    for (const v of [10, 20, 30]) expect(Math.abs(road(v) / (F0 + F2 * (v ** 2 + 1.5 ** 2)) - 1)).toBeLessThan(0.01)
    expect(Math.abs(now['coast-down.wind']?.value as number)).toBeCloseTo(1.5, 1)
  })
  it('makes steps of ten where the file has none, and leaves the file alone without --write', async () => {
    writeFileSync(file, original.replace(/    steps:\n(?: {6}.*\n)+/, ''))
    const before = readFileSync(file, 'utf8'),
      { out } = await command('coast-down', file, log('day.csv', rows(1100, [0, 180, 0, 180])), '--json'),
      { edits, written } = JSON.parse(out) as { edits: { path: string; now: Record<string, string> }[]; written: boolean }
    expect(written).toBe(false)
    expect(edits.map(e => e.path)).toEqual([120, 110, 100, 90, 80, 70, 60, 50, 40].map(v => `donor.coast-down.steps.${v}-to-${v - 10}`))
    expect(Object.keys(edits[0]?.now ?? {})).toEqual(['from', 'to', 'out-1', 'out-2', 'back-1', 'back-2'])
    expect(readFileSync(file, 'utf8')).toBe(before)
  })
  it('takes over nothing of a log that does not fit, and says why', async () => {
    const refused = async (name: string, lines: readonly string[], head?: string): Promise<string> => {
      const { code, err } = await command('coast-down', file, log(name, lines, head), '--write')
      expect(code).toBe(2)
      expect(readFileSync(file, 'utf8')).toBe(original)
      return err
    }
    expect(await refused('one.csv', rows(1100, [0, 180, 0]))).toMatch(/2 runs out and 1 back; wanted two to six pairs/)
    expect(await refused('none.csv', ['0;50;0;', '1;50;0;', '2;50;0;'])).toContain('no run in neutral')
    expect(await refused('head.csv', ['0;50', '1;49'], 'time [s];sped [km/h]')).toMatch(/no column speed; found time, sped \(sped\?\)/)
    expect(await refused('unit.csv', ['0;50', '1;49'], 'time [s];speed')).toContain('without a unit')
    expect(await refused('back.csv', ['1;50', '0;49'], 'time [s];speed [km/h]')).toContain('row 2: the time does not rise')
    expect((await command('coast-down', file, 'nope.csv')).err).toContain('a CSV log is wanted')
  })
})
