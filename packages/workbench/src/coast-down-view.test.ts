import { describe, expect, it } from 'vitest'
import { assessText, lookUps, textOf } from '../../../tests/cars.ts'
import { coastDownView, logTrial } from './coast-down-view.ts'
import { Desk } from './desk/desk.ts'

/** A log of runs in neutral from 122 to 22 km/h, ten rows a second, by a car that is held back by 140 N and 0.45 N/(m/s)². */
function logOf(runs: number, mass = 1036): Uint8Array {
  const rows: string[] = []
  let t = 0,
    v = 0
  const drive = (on: () => boolean, slowing: () => number): void => {
    for (; on(); t += 0.1) {
      rows.push(`${t.toFixed(1)},${(v * 3.6).toFixed(3)}`)
      for (let k = 0; k < 10; k++) v = Math.max(0, v - slowing() / 100)
    }
  }
  for (let run = 0; run < runs; run++) {
    drive(
      () => v <= 122 / 3.6,
      () => -2.5,
    )
    drive(
      () => v >= 22 / 3.6,
      () => (140 + 0.45 * v ** 2) / mass,
    )
    drive(
      () => v > 0,
      () => 4,
    )
  }
  return new TextEncoder().encode(`time [s],speed [km/h]\n${rows.join('\n')}\n`)
}
const open = (text = textOf('lapwing')): Desk => new Desk(text, lookUps.attachments ? { attachments: lookUps.attachments } : {})

describe('speed logs tried on a conversion', () => {
  it('tell the runs found, the steps read off and what would change, and keep nothing', () => {
    const desk = open(),
      trial = logTrial(desk, [{ name: 'day.csv', bytes: logOf(4) }])
    expect(trial.refused).toEqual([])
    expect(trial.found).toHaveLength(4)
    expect(trial.found[0]).toMatch(/^day\.csv, run 1: out, 12\d to 2\d km\/h$/)
    expect(trial.steps.map(s => s.name)).toEqual(Object.keys(desk.current().model.donor.coastDown.steps))
    expect(trial.steps[0]?.times.map(([run]) => run)).toEqual(['out-1', 'out-2', 'back-1', 'back-2'])
    expect(trial.changes[0]).toMatchObject({ path: 'donor.coast-down.steps.115-to-105.out-1', was: '5.4 s' })
    // The third pair of the file is not in the log: it goes, and that is said.
    expect(trial.changes).toContainEqual({
      path: 'donor.coast-down.steps.115-to-105.out-3',
      label: expect.any(String) as string,
      was: '5.4 s',
      now: null,
    })
    expect(desk.source).toBe(textOf('lapwing'))
    expect(structuredClone(trial)).toEqual(trial)
    const made = desk.edit(trial.edits)
    expect(made.ok).toBe(true)
    expect(logTrial(desk, [{ name: 'day.csv', bytes: logOf(4) }]).changes).toEqual([])
  })
  it('are refused whole with the place of what is wrong, and where runs do not come in pairs', () => {
    const bytes = (text: string): Uint8Array => new TextEncoder().encode(text)
    expect(logTrial(open(), [{ name: 'a.csv', bytes: bytes('time [s],speed [km/h]\n1,x\n') }]).refused).toEqual([
      expect.stringMatching(/^a\.csv:2:3 a cell is no number/),
      'Nothing of a.csv was taken over.',
    ])
    const odd = logTrial(open(), [{ name: 'a.csv', bytes: logOf(3) }])
    expect(odd.edits).toEqual([])
    expect(odd.refused.join('\n')).toContain('coast-down: 2 runs out and 1 back')
  })
})

describe('a coast-down as assessed', () => {
  it('tells the road load with its ±, and of every step its force and how well the runs agree', () => {
    const { conversion, assessment } = assessText(textOf('lapwing'), { bands: true }),
      names = Object.keys(conversion.model.donor.coastDown.steps),
      view = coastDownView(names, assessment, 'metric')
    expect(view.figures.map(f => f.name)).toEqual(expect.arrayContaining(['coast-down.f0', 'coast-down.f1', 'coast-down.f2']))
    for (const f of view.figures.slice(0, 3)) expect(f.text).toContain('±')
    expect(Object.keys(view.steps)).toEqual(names)
    for (const s of Object.values(view.steps)) expect([s.force?.text, s.accuracy?.text]).toEqual([expect.any(String), expect.any(String)])
    expect(view.missing).toEqual([])
  })
  it('says what is missing', () => {
    const { assessment } = assessText('schema: 1\ndonor:\n  coast-down: { mass: 1000 kg }\n', { bands: true })
    expect(coastDownView([], assessment, 'metric')).toMatchObject({ figures: [], missing: expect.any(Array) })
    expect(coastDownView([], assessment, 'metric').missing.map(g => g.path)).toContain('donor.coast-down.steps')
  })
})
