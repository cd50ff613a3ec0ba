import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { applyEdits, readText } from '@ampwright/conversion'
import { describe, expect, it } from 'vitest'
import { CARS, type Car, conversionOf, root, textOf } from '../../../../tests/cars.ts'
import { nameFault, tidyName } from './file-name.ts'
import { filePlaces, placeEdits, tripEdits } from './file-places.ts'
import { fileReading } from './file-reading.ts'

const sample = (name: string): Uint8Array => readFileSync(join(root, 'samples/attachments', name)),
  bytes = (text: string): Uint8Array => new TextEncoder().encode(text),
  reading = (name: string, content: Uint8Array) => fileReading(name, content, 'metric'),
  fault = (name: string, text: string) => reading(name, bytes(text)).fault,
  places = (text: string) => filePlaces(readText(text).tree)

describe('a file beside a conversion', () => {
  it('is told by the formats it reads as, with what it holds', () => {
    expect(reading('otter-charge-table.csv', sample('otter-charge-table.csv')).fits.map(f => f.format)).toEqual(['charge-table CSV'])
    expect(reading('otter-charge-taper.csv', sample('otter-charge-taper.csv')).fits.map(f => f.format)).toContain('charge-taper CSV')
    const track = reading('valley-road.gpx', sample('valley-road.gpx'))
    expect(track.fits.map(f => f.says)).toEqual([
      expect.stringMatching(/^160 points: driving distance 0/),
      'a sound track, but without times: a set speed is wanted beside it',
    ])
    expect(track.route?.name).toBe('Valley road, invented')
    expect(track.fault).toBeUndefined()
  })
  it('that cannot be read is refused with the line', () => {
    expect(fault('drag.csv', 'speed [rpm],torque [Nm]\n0,1\n500,x\n')).toEqual({
      place: 'line 3, column torque',
      what: 'a cell is no number',
      found: '"x"',
      accepted: 'a number with a decimal point',
    })
    expect(fault('way.gpx', '<gpx version="1.1">\n<trk></gpx>')?.place).toBe('line 2, column 6')
    expect(fault('way.gpx', '<gpx version="2"/>')?.found).toBe('"2"')
    expect(fault('other.csv', 'force [N],mass [kg]\n1,2\n')?.accepted).toContain('time, speed (speed trace)')
    expect(fault('empty.csv', '')?.what).toBe('the file holds no table')
  })
  it('that is taken over elsewhere says where', () => {
    expect(reading('lot.csv', bytes('serial,capacity [Ah]\nA,109\n'))).toMatchObject({ for: 'modules', fits: [] })
    expect(reading('run.csv', bytes('time [s],speed [km/h],heading [°]\n1,3,4\n'))).toMatchObject({ for: 'coast-down', fits: [] })
  })
  it('has a plain name and a bounded size', () => {
    expect(['way.gpx', 'äther_2-b.csv', 'a.tsv'].map(n => nameFault(n, 1))).toEqual([undefined, undefined, undefined])
    for (const bad of ['', '../x.csv', 'a b.csv', '.csv', 'a/b.csv', 'x.csv.', `${'n'.repeat(120)}.csv`])
      expect(nameFault(bad, 1)?.place, bad).toBe('name')
    expect(nameFault('x.exe', 1)?.accepted).toContain('.gpx')
    expect(nameFault('x.csv', 100_000_000)).toBeUndefined()
    expect(nameFault('x.csv', 100_000_001)).toMatchObject({ place: 'size', accepted: 'at most 100 MB' })
    expect(tidyName('My route (2).gpx')).toBe('My-route-2.gpx')
    for (const name of ['My route (2).gpx', ' a b .csv', '../x.csv', 'ü ß.gpx']) expect(nameFault(tidyName(name), 1), name).toBeUndefined()
  })
})

describe('places that take a file', () => {
  it.each(CARS)('of %s are each read back from the file where one is named', car => {
    for (const p of places(textOf(car))) {
      expect(p.formats.length, p.path).toBeGreaterThan(0)
      if (p.now !== undefined) expect(textOf(car)).toContain(p.now)
    }
    expect(new Set(places(textOf(car)).map(p => p.path)).size).toBe(places(textOf(car)).length)
  })
  it('name the track of a route once, for its heights and its times', () => {
    expect(places(textOf('badger')).filter(p => p.path.startsWith('trips'))).toEqual([
      {
        path: 'trips.named.valley-road.track',
        label: 'Trips › trip valley-road: track',
        formats: ['GPX profile', 'GPX timing'],
        now: 'attachments/valley-road.gpx',
      },
    ])
  })
  it('take the file as an edit that reads, and it counts from then on', () => {
    const put = (car: Car, path: string, name: string): string => {
      const place = places(textOf(car)).find(p => p.path === path)
      if (!place) throw new Error(path)
      const done = applyEdits(textOf(car), placeEdits(place, name))
      if (!done.ok) throw new Error(done.problem.what)
      return done.text
    }
    const text = put('lapwing', 'charging.taper', 'attachments/otter-charge-taper.csv')
    expect(conversionOf(text).model.charging.taper).toMatchObject({ path: 'charging.taper' })
    // A trip is driven by a cycle or by a trace of its own, not by both.
    expect(put('lapwing', 'trips.named.mixed.trace', 'own.csv')).not.toMatch(/mixed: \{.*cycle: /)
  })
  it('begin a new trip along a track, or by a trace', () => {
    const done = applyEdits(textOf('lapwing'), tripEdits('home', 'attachments/valley-road.gpx', ['GPX profile', 'GPX timing']))
    expect(done.ok && conversionOf(done.text).model.trips.named['home']).toMatchObject({ kind: 'route' })
    expect(tripEdits('home', 'x.csv', ['speed trace CSV'])).toEqual([{ path: 'trips.named.home', now: { kind: 'cycle', trace: 'x.csv' } }])
    expect(tripEdits('home', 'x.csv', ['drag CSV'])).toEqual([])
  })
})
