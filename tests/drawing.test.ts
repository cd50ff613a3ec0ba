import { displayUnit, type System } from '@ampwright/conversion'
import { type Chart, csvOf, type Drawing, drawingsOf, type Page, traceChart, valueAt, type Windows } from '@ampwright/drawing'
import type { Assessment } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { assessText, CARS, type Car, textOf } from './cars.ts'
import { faults, readSvg } from './drawn.ts'

const page = (width: number, more: Partial<Page> = {}, system: System = 'metric'): Page => ({
  width,
  units: (kind, greatest) => displayUnit(kind, system, greatest),
  ...more,
})
const kept = new Map<Car, Assessment>()
const assessed = (car: Car): Assessment => {
  const a = kept.get(car) ?? assessText(textOf(car), { bands: true }).assessment
  kept.set(car, a)
  return a
}
const drawing = (car: Car, id: string): Drawing => {
  const found = drawingsOf(assessed(car)).find(d => d.id === id)
  if (!found) throw new Error(`${car} has no drawing ${id}`)
  return found
}

describe.each(CARS)('every drawing of the %s', car => {
  it('is there: pull, motor, run, ratio, trip, charge, energy, voltage, range and brakes', () =>
    expect(new Set(drawingsOf(assessed(car)).map(d => d.kind))).toEqual(
      new Set([
        'tractive force',
        'motor curves',
        'acceleration',
        'ratio window',
        'trip',
        'charge',
        'energy flow',
        'voltage window',
        'range table',
        'range by speed',
        'view of the car',
        'battery box',
        'brake forces',
        'grip used',
      ]),
    ))
  it.each([320, 375, 480, 620, 1000])('keeps within the picture and no text over another, %i px wide', width => {
    const found = drawingsOf(assessed(car)).flatMap(d => faults(d.draw(page(width)).svg).map(f => `${d.id}: ${f}`))
    expect(found).toEqual([])
  })
  it('keeps so in a file of its own, and in units of other countries', () => {
    for (const more of [{ standalone: true }, { standalone: true, height: 500 }])
      for (const system of ['us', 'uk'] as const)
        expect(
          drawingsOf(assessed(car)).flatMap(d => faults(d.draw(page(560, more, system)).svg).map(f => `${d.id} ${system}: ${f}`)),
        ).toEqual([])
  })
  it('has a name, a text and a table', () => {
    for (const d of drawingsOf(assessed(car))) {
      const picture = d.draw(page(620)),
        { columns, rows } = picture.table()
      expect(readSvg(picture.svg).label).toBe(`${d.label}. ${picture.text}`)
      expect(picture.text.length).toBeGreaterThan(30)
      expect(rows.length, d.id).toBeGreaterThan(0)
      expect(
        rows.every(r => r.length === columns.length),
        d.id,
      ).toBe(true)
      expect(csvOf(picture).split('\r\n')).toHaveLength(rows.length + 2)
    }
  })
  it.each([330, 620])('is not the only one: any trace can be drawn as it is, %i px wide', width => {
    const found = [...assessed(car).traces.values()].flatMap(t => faults(traceChart(t, page(width)).svg).map(f => `${t.id}: ${f}`))
    expect(found).toEqual([])
  })
  it('shows the same figures narrow and wide', () => {
    for (const d of drawingsOf(assessed(car)).filter(x => x.kind !== 'tractive force'))
      expect(d.draw(page(320)).text).toBe(d.draw(page(900)).text)
  })
})

describe('a file of its own', () => {
  it('has colours, typefaces and its title written out, and no property of a page', () => {
    const svg = drawing('lapwing', 'acceleration.run').draw(page(620, { standalone: true })).svg
    expect(svg).not.toContain('var(')
    expect(svg).toContain('#1d2529')
    expect(readSvg(svg).texts[0]?.text).toBe('A quarter of a mile at full pull')
  })
  it('else takes the colours of the page, with those of paper to fall back on', () =>
    expect(drawing('lapwing', 'acceleration.run').draw(page(620)).svg).toContain('var(--ink, #1d2529)'))
})

describe('what a chart says', () => {
  const texts = (car: Car, id: string, width = 620): string =>
    readSvg(drawing(car, id).draw(page(width)).svg)
      .texts.map(t => t.text)
      .join('\n')
  it('names lowest and highest: the Lapwing reaches 141 km/h on a quarter of a mile', () =>
    expect(drawing('lapwing', 'acceleration.run').draw(page(620)).text).toMatch(/speed from 0.km\/h to 141\.2.km\/h/))
  it('says goals by shape and word: the sprint of the Lapwing fails', () => {
    expect(drawing('lapwing', 'acceleration.run').draw(page(620)).text).toMatch(/sprint, failing at 9.5.s, 100.km\/h/)
    expect(texts('lapwing', 'acceleration.run')).toContain('▲ sprint: failing')
  })
  it('keeps the words of the goals in a narrow picture, in the key', () => {
    const narrow = texts('badger', 'tractive.pull@main', 330)
    for (const words of ['◐ yard-ramp: marginal', '● stock-climb: sound', 'road load on 20 %']) expect(narrow).toContain(words)
  })
  it('reads under the cursor what the trace says there', () => {
    const trace = assessed('lapwing').traces.get('trip.course@mixed'),
      chart = drawing('lapwing', 'trip.course@mixed').draw(page(700)) as Chart
    if (!trace) throw new Error('no trip')
    const { values: times } = trace.axis,
      step = times[1] as number
    for (const pixel of [60, 123.4, 400, 611]) {
      const { x, values } = chart.readout(pixel)
      expect(x).toBeCloseTo(valueAt(chart.scales.x, pixel), 9)
      const i = Math.floor(x / step),
        share = (x - (times[i] as number)) / step
      for (const read of values) {
        const own = trace.series.find(s => s.name === read.name)?.values as Float64Array,
          straight = (own[i] as number) * (1 - share) + (own[i + 1] as number) * share
        expect(read.value).toBeCloseTo(straight, 6)
      }
    }
    expect(chart.readout(-50).x).toBe(times[0])
    expect(chart.readout(Number.NaN).x).toBe(times[0])
    expect(chart.readout(9999).x).toBeCloseTo(times[times.length - 1] as number, 6)
  })
  it('adds the shares of the energy up to 100.0 %', () => {
    for (const car of CARS)
      for (const d of drawingsOf(assessed(car)).filter(x => x.kind === 'energy flow')) {
        const shares = [...d.draw(page(620)).text.matchAll(/(−?)(\d+\.\d)\u202f%/g)].map(
          m => (m[1] ? -1 : 1) * Math.round(Number(m[2]) * 10),
        )
        expect(
          shares.reduce((a, b) => a + b, 0),
          `${car} ${d.id}`,
        ).toBe(1000)
      }
  })
  it('names in the flow of energy what took most, first', () =>
    expect(drawing('lapwing', 'trip.energy@mixed').draw(page(620)).text).toMatch(
      /^4\.17.kWh out of the charge went to Air 33\.1.% \(1\.38.kWh\)/,
    ))
  it('says the low end of a range first', () => {
    const a = assessed('lapwing'),
      found = a.figures.get('range-in-weather.range@mixed cold')?.value as number,
      half = a.halves.get('range-in-weather.range@mixed cold') as number
    const low = Math.round((found - half) / 1000),
      high = Math.round((found + half) / 1000)
    expect(drawing('lapwing', 'range-in-weather.ranges').draw(page(620)).text).toContain(`mixed: cold day ${low} to ${high}\u202fkm`)
  })
  it('tells the range at steady speeds, and where a speed is not held', () => {
    const text = drawing('wren', 'range-at-speeds.ranges').draw(page(620)).text
    expect(text).toMatch(/^50.km\/h: cold day 1\d\d to 1\d\d.km/)
    expect(text).toContain('120 km/h: cold day not held, mild day not held and hot day not held')
  })
  it('gives the ratio window with a handle at the present ratio, to be dragged along its axis', () => {
    const picture = drawing('lapwing', 'window.ratio@main').draw(page(620)) as Windows
    expect(picture.handle?.value).toBeCloseTo(3.92, 9)
    expect(valueAt(picture.scale, picture.handle?.x as number)).toBeCloseTo(3.92, 9)
    expect(picture.text).toContain('Every goal is met from 4.79 to 5.85; the present ratio 3.92 lies outside.')
    const handle = readSvg(picture.svg).elements.find(e => e.of('class') === 'drawing-handle')
    expect(handle?.at('cx')).toBeCloseTo(picture.handle?.x as number, 0)
  })
  it('holds the voltage of every part against the pack', () => {
    const text = drawing('lapwing', 'voltage-window.parts').draw(page(620)).text
    expect(text).toMatch(/pack 288.V to 403.V; inverter 220.V to 430.V, sound/)
    expect(text).toMatch(/cold launch 299.V/)
  })
  it('draws what it can of an empty conversion: nothing, and does not fail', () =>
    expect(drawingsOf(assessText('schema: 1\n').assessment)).toEqual([]))
})
