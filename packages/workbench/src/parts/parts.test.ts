import { part, parts } from '@ampwright/catalogue'
import type { Fact } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { CARS, lookUps, textOf } from '../../../../tests/cars.ts'
import { runs } from '../../../../tests/counts.ts'
import { Desk } from '../desk/desk.ts'
import { type PartTable, partTable } from './part-table.ts'
import { partTaking } from './part-taking.ts'
import { type PartPlace, placesIn } from './places.ts'
import { standing } from './standing.ts'

const SECTIONS = ['donor', 'drive', 'pack', 'charging'] as const
const open = (text: string): Desk => new Desk(text, lookUps.attachments ? { attachments: lookUps.attachments } : {})
const places = (desk: Desk): readonly PartPlace[] => SECTIONS.flatMap(s => placesIn(desk.sheet(s)))
const PLACES = CARS.flatMap(car => places(open(textOf(car))).map(p => [car, p.path, p] as const))
const table = (desk: Desk, path: string, words = ''): PartTable => partTable({ classes: desk.partClasses(path), words }, 'metric')
const taken = (desk: Desk, path: string, id: string): Exclude<ReturnType<typeof partTaking>, { refused: string }> => {
  const t = partTaking(desk, path, id)
  if ('refused' in t) throw new Error(t.refused)
  return t
}

/** In the short run one record of three classes; in the long run one of each: records of a class fill the same. */
const some = (rows: PartTable['rows']): PartTable['rows'] => [...new Map(rows.map(r => [r.class, r])).values()].slice(0, runs(60))

describe('parts of the catalogue in a conversion', () => {
  it.each(PLACES)('%s: %s takes at least one record, and each of them leaves the file readable', (car, path, place) => {
    const desk = open(textOf(car)),
      { rows } = table(desk, path)
    expect(rows.length).toBeGreaterThan(0)
    expect(rows.length).toBe(place.fitting)
    for (const { id } of some(rows)) {
      const t = taken(desk, path, id)
      for (const edits of [t.edits, t.freeing]) {
        const after = desk.tried(edits)
        if (!after.ok) throw new Error(JSON.stringify(after.issues))
        const facts = new Map((after.conversion.facts as readonly Fact[]).map(f => [f.path, f]))
        expect(facts.get(path)?.text).toBe(id)
        for (const f of t.fills.filter(x => x.how === 'assumed' && x.before === undefined))
          expect(facts.get(f.path)?.origin?.note, f.path).toBeDefined()
        for (const f of t.stays)
          if (edits === t.freeing) expect(facts.get(f.path)?.origin?.note, f.path).toBe(`part ${id}`)
          else expect(facts.get(f.path)?.text, f.path).toBe(desk.at(f.path))
      }
    }
  })
  it.each(CARS)('%s: what stands at its places is in the catalogue, and is told by name', car => {
    for (const p of places(open(textOf(car)))) {
      expect(p.label, p.path).not.toBe('')
      if (p.now) expect(p.now.known, p.path).toBe(part(p.now.id)?.label)
    }
    expect(new Set(places(open(textOf(car))).map(p => `${p.label} ${p.of}`)).size).toBe(places(open(textOf(car))).length)
  })
  it('lays what stands at a place beside the records, by the keys they have', () => {
    const lapwing = open(textOf('lapwing'))
    expect(standing(lapwing, 'drive.units.main.motor.part')['peak-torque']).toMatchObject({ text: expect.stringMatching(/^250\s/) })
    const text = 'schema: 1\npack:\n  limits:\n    fuse: 350 A (datasheet)\n    contactor: 400 A\n'
    expect(standing(open(text), 'pack.limits.fuse-part')).toEqual({ current: { text: expect.stringMatching(/^350\s/), how: 'datasheet' } })
  })
  it('shows first the class that the name of the thing speaks of', () => {
    const first = (path: string): string | undefined => places(open(textOf('lapwing'))).find(p => p.path === path)?.first
    expect(first('donor.added.junction-box.part')).toBe('junction-box')
    expect(first('drive.units.main.motor.part')).toMatch(/^motor-/)
  })
  it('says what is typed and stays although the record knows it, and what taking it out would put there', () => {
    const text = 'schema: 1\ncharging:\n  charger:\n    power: 3.3 kW (datasheet)\n    mass: 6 kg\n',
      t = taken(open(text), 'charging.charger.part', 'charger-6600w-air@1')
    expect(t.stays.map(f => f.path)).toContain('charging.charger.power')
    expect(t.stays.find(f => f.path === 'charging.charger.power')).toMatchObject({
      before: expect.stringMatching(/^3\.3\s/),
      after: expect.stringMatching(/^6\.6\s/),
    })
    expect(t.fills.map(f => f.path)).not.toContain('charging.charger.power')
    expect(t.freeing).toContainEqual({ path: 'charging.charger.power', now: null })
    const motor = taken(open(textOf('lapwing')), 'drive.units.main.motor.part', 'motor-pm-100kw@1')
    expect(motor.others.map(f => f.path)).toContain('drive.units.main.motor.continuous-power')
    // The contactor beside a fuse is none of the fuse's.
    expect(taken(open(textOf('lapwing')), 'pack.limits.fuse-part', 'hv-fuse-315a-500v@1').others).toEqual([])
    expect(motor.others.filter(f => motor.stays.some(s => s.path === f.path))).toEqual([])
  })
  it('says what the part before filled and the new one does not', () => {
    const unit = (name: string): string => `    ${name}:\n      motor:\n        part: motor-dc-9in-70kw@1\n`,
      text = `schema: 1\ndrive:\n  units:\n${unit('main')}${unit('front')}`
    const t = taken(open(text), 'drive.units.main.motor.part', 'motor-pm-100kw@1')
    expect(t.fills.filter(f => f.before !== undefined && f.after === undefined).map(f => f.path)).toContain(
      'drive.units.main.motor.continuous-power',
    )
    // The same motor on the other axle stays as it is.
    expect(t.fills.filter(f => f.path.startsWith('drive.units.front'))).toEqual([])
  })
  it('refuses a record there is not, and one of a class that does not belong here, and changes nothing', () => {
    const desk = open(textOf('lapwing')),
      before = desk.source
    expect(partTaking(desk, 'charging.charger.part', 'no-such@1')).toEqual({ refused: expect.stringContaining('no-such@1') })
    expect(partTaking(desk, 'charging.charger.part', 'motor-pm-100kw@1')).toEqual({ refused: expect.stringContaining('another class') })
    expect(desk.source).toBe(before)
  })
  it('lists all of the catalogue, each figure once, differences apart from what is the same', () => {
    const all = partTable({ classes: [] }, 'us')
    expect(all.rows.map(r => r.id)).toEqual(parts.map(p => p.id))
    const one = partTable({ classes: ['charger'], class: 'charger' }, 'metric'),
      keys = new Set(one.rows.flatMap(r => Object.keys(r.figures)))
    expect(one.differing.length + one.same.length).toBe(keys.size)
    expect(one.same.map(s => s.label)).toContain('Lowest voltage')
    expect(one.differing.map(d => d.key)).toContain('power')
  })
  it('cuts a long list where it is asked to, and says how many there were', () => {
    const cut = partTable({ classes: [], most: 5 }, 'metric')
    expect(cut.rows.length).toBe(5)
    expect(cut.found).toBe(parts.length)
    expect(cut.classes.reduce((n, c) => n + c.count, 0)).toBe(parts.length)
  })
  it('finds records by words, within the classes of the place', () => {
    const desk = open(textOf('lapwing'))
    expect(
      table(desk, 'charging.charger.part', 'liquid').rows.every(r => r.id.includes('liquid') || r.figures['cooling']?.text === 'liquid'),
    ).toBe(true)
    expect(table(desk, 'charging.charger.part', 'motor').rows).toEqual([])
  })
})
