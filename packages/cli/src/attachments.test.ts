import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { writeGpx } from '@ampwright/exchange'
import { afterAll, describe, expect, it } from 'vitest'
import { attachmentsIn } from './attachments.ts'

const folder = mkdtempSync(join(tmpdir(), 'attachments-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))
const put = (name: string, text: string): string => {
  writeFileSync(join(folder, name), text)
  return name
}
const read = attachmentsIn(folder)
type Line = { x: Float64Array; y: Float64Array }
const lineOf = (name: string, format: string): Line => {
  const got = read(name, format)
  if (!got?.ok) throw new Error(`${name}: ${JSON.stringify(got)}`)
  return got.datum as Line
}

describe('tables beside a conversion', () => {
  it('come in coherent SI whatever unit their heading names', () => {
    const { x, y } = lineOf(put('trace.csv', '# own log\ntime_s,speed_kmh\n0,0\n1,3.6\n2.5,36\n'), 'speed trace CSV')
    expect([...x]).toEqual([0, 1, 2.5])
    for (const [i, v] of [0, 1, 10].entries()) expect(y[i]).toBeCloseTo(v, 12)
  })
  it('convert temperatures by their zero, not only by their step', () => {
    const { x, y } = lineOf(put('cold.csv', 'temperature [°C];share [%]\n-20;72\n25;100\n'), 'cold-energy CSV')
    expect(x[0]).toBeCloseTo(253.15, 9)
    expect(y[0]).toBeCloseTo(0.72, 12)
  })
  it('give a map from rows in any order', () => {
    const got = read(
      put('map.csv', 'speed [rpm],torque [Nm],efficiency [%]\n1000,50,90\n0,0,0\n1000,100,88\n1000,0,0\n0,50,40\n0,100,30\n'),
      'efficiency map CSV',
    )
    expect(got?.ok && [...(got.datum as { z: Float64Array }).z].map(z => Math.round(100 * z))).toEqual([0, 40, 30, 0, 90, 88])
  })
  it('refuse a map of efficiency that can be none', () => {
    const rows = (best: number): string => `speed [rpm],torque [Nm],efficiency [%]\n0,0,0\n0,50,0\n1000,0,0\n1000,50,${best}\n`
    const found = (name: string, best: number) => read(put(name, rows(best)), 'efficiency map CSV')
    expect(found('few.csv', 90)).toMatchObject({ ok: false, found: expect.stringContaining('fewer than two torques') })
    expect(found('beyond.csv', 120)).toMatchObject({ ok: false, found: expect.stringContaining('an efficiency of 1.2') })
  })
  it.each([
    ['no unit where one is needed', 'time,speed_kmh\n0,0\n1,1\n', /«time» without a unit/],
    ['a unit of another kind', 'time [s],speed [kg]\n0,0\n1,1\n', /«speed» in kg/],
    ['one column', 'time [s]\n0\n1\n', /1 columns/],
    ['a first column that falls', 'time_s,speed_kmh\n0,0\n2,1\n1,2\n', /row 3: the first column does not rise/],
    ['one row', 'time_s,speed_kmh\n0,0\n', /1 rows/],
    ['words for numbers', 'time_s,speed_kmh\n0,fast\n1,2\n', /fast/],
  ])('are refused with %s', (what, text, found) => {
    const got = read(put(`${what.replace(/ /g, '-')}.csv`, text), 'speed trace CSV')
    expect(got?.ok).toBe(false)
    expect(got && !got.ok && got.found).toMatch(found)
  })
  it('never come from outside the folder', () => {
    mkdirSync(join(folder, 'below'))
    for (const name of ['../secret.csv', '/etc/hostname', 'below/../../secret.csv']) {
      const got = read(name, 'speed trace CSV')
      expect(got && !got.ok && got.found).toMatch(/leaves the folder/)
    }
  })
  it('are undefined when nothing is there', () => expect(read('none.csv', 'speed trace CSV')).toBeUndefined())
})

describe('a track', () => {
  // Along the equator, where a degree of longitude is 111.32 km on the ellipsoid's radius.
  const step = 100 / 111319.49,
    n = 41,
    longitudes = Float64Array.from({ length: n }, (_, i) => i * step),
    latitudes = new Float64Array(n)
  const elevations = Float64Array.from({ length: n }, (_, i) => 50 + 4 * i)
  it('gives heights over distance', () => {
    const { x, y } = lineOf(put('a.gpx', writeGpx({ latitudes, longitudes, elevations })), 'GPX profile')
    expect(x.at(-1)).toBeCloseTo(4000, 1)
    expect(y.at(-1)).toBeCloseTo(210, 6)
  })
  it('gives speeds over distance from its time stamps, a stop as a slow place', () => {
    const times = Float64Array.from({ length: n }, (_, i) => 1.7e9 + 5 * i + (i > 20 ? 60 : 0)),
      { x, y } = lineOf(put('b.gpx', writeGpx({ latitudes, longitudes, elevations, times })), 'GPX timing')
    expect(y[1]).toBeCloseTo(20, 2)
    expect(Math.min(...y)).toBeCloseTo(100 / 65, 2)
    expect(x.at(-1)).toBeCloseTo(4000, 1)
  })
  it('without times or heights has no such curve, and says so by being sound and empty', () => {
    put('c.gpx', writeGpx({ latitudes, longitudes }))
    for (const format of ['GPX profile', 'GPX timing']) expect(read('c.gpx', format)).toEqual({ ok: true, datum: undefined })
  })
  it('with times that fall back has no timing', () => {
    const times = Float64Array.from({ length: n }, (_, i) => 1.7e9 + (i === 10 ? 0 : 5 * i))
    expect(read(put('d.gpx', writeGpx({ latitudes, longitudes, times })), 'GPX timing')).toEqual({ ok: true, datum: undefined })
  })
  it('that is no GPX is refused with its line', () => {
    const got = read(put('e.gpx', '<gpx'), 'GPX profile')
    expect(got && !got.ok && got.found).toMatch(/line 1/)
  })
})
