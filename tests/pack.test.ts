import { type Figure, halfWidth } from '@ampwright/engine'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { curveOf, figuresOf, value } from './asked.ts'
import { runs } from './counts.ts'

describe('the pack of the roadster', () => {
  const pack = figuresOf('lapwing', 'pack')
  it('is 96 cells in series, 288 to 403.2 V, and holds what its weakest module holds', () => {
    expect(value(pack, 'pack.cells-in-series')).toBe(96)
    expect(value(pack, 'pack.lowest')).toBeCloseTo(288, 9)
    expect(value(pack, 'pack.highest')).toBeCloseTo(403.2, 9)
    // The weakest of thirteen measured modules; three are planned at the stated 91 % and hold more.
    expect(value(pack, 'pack.capacity') / 3600).toBeCloseTo(108.1, 9)
  })
  it('loses what its modules measure, one after another: thirteen readings and three planned ones', () => {
    const measured = [2.98, 3.04, 2.91, 2.96, 3.12, 2.99, 2.9, 3.05, 2.94, 3.08, 3, 2.93, 3.02].reduce((a, b) => a + b, 0) / 1000
    // Class NMC, carried from 97 to 91 % health by 1.4 of resistance for one of capacity.
    const planned = (3 * 6 * ((0.055 * 3600) / 216000) * (1 + 1.4 * 0.06)) / 2
    expect(value(pack, 'pack.cells')).toBeCloseTo(measured + planned, 9)
  })
  it('gets a weaker string from one weaker module, and none from a spare', () => {
    expect(value(figuresOf('lapwing', 'pack', { 'pack.salvage.m09.capacity': '95 Ah' }), 'pack.capacity') / 3600).toBeCloseTo(95, 9)
    expect(value(figuresOf('lapwing', 'pack', { 'pack.salvage.m05.use': 'spare' }), 'pack.capacity') / 3600).toBeCloseTo(108.6, 9)
  })
  it('is less sure of itself while modules are untested', () => {
    const tested = figuresOf(
      'lapwing',
      'pack',
      Object.fromEntries(
        ['m14', 'm15', 'm16'].flatMap(m => [
          [`pack.salvage.${m}.capacity`, '109.5 ± 0.6 Ah (measured)'],
          [`pack.salvage.${m}.resistance`, '3 ± 0.06 mΩ (measured)'],
        ]),
      ),
    )
    for (const id of ['pack.capacity', 'pack.cells'])
      expect(halfWidth(tested.get(id) as Figure)).toBeLessThan(halfWidth(pack.get(id) as Figure))
  })
  it('carries the spread of its resistance in one factor, which is 1', () => {
    expect(value(pack, 'pack.resistance-factor')).toBeCloseTo(1, 14)
    const factor = pack.get('pack.resistance-factor') as Figure,
      ohmic = pack.get('pack.ohmic') as Figure
    expect(halfWidth(factor)).toBeGreaterThan(halfWidth(ohmic) / (ohmic.value + 0.02))
  })
  it('has the resistance a lamp-load test says, when the modules have not been measured', () => {
    const edits = Object.fromEntries(
      Array.from({ length: 13 }, (_, k) => [`pack.salvage.m${String(k + 1).padStart(2, '0')}.resistance`, null]),
    )
    const lamp = {
      'pack.lamp-test': null,
      'pack.lamp-test.current': '30 A',
      'pack.lamp-test.time': '10 s',
      'pack.lamp-test.before': '22.5 V',
      'pack.lamp-test.after': '22.41 V',
      'pack.lamp-test.temperature': '25 °C',
      'pack.lamp-test.charge': '50 %',
      'pack.lamp-test.modules': '1',
    }
    const { 'pack.lamp-test': _, ...test } = lamp
    const found = figuresOf('lapwing', 'pack', { ...edits, ...test })
    expect(value(found, 'pack.module-resistance')).toBeCloseTo(0.09 / 30, 9)
    expect(
      value(figuresOf('lapwing', 'pack', { ...edits, ...test, 'pack.module.cell-resistance': '1 mΩ' }), 'pack.module-resistance'),
    ).toBeCloseTo(0.003, 9)
  })
  it('takes no charge in the frost and less of it the colder it is', () => {
    const share = curveOf(pack, 'pack.charge-share')
    for (let i = 0; i < share.x.length; i++) {
      if (share.x[i]! <= 275) expect(share.y[i]).toBe(0)
      expect(share.y[i]).toBeLessThanOrEqual(1)
    }
    expect(curveOf(pack, 'pack.cold-factor').y.every((f, i, all) => i === 0 || f <= all[i - 1]!)).toBe(true)
  })
})

describe('more strings', () => {
  it('sag less, hold more and carry more, for any number of equal strings', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 4 }), n => {
        const of = (strings: number, study: string) => figuresOf('badger', study, { 'pack.strings': String(strings), 'pack.salvage': null })
        const one = of(n, 'pack'),
          more = of(n + 1, 'pack')
        expect(value(more, 'pack.cells')).toBeLessThan(value(one, 'pack.cells'))
        expect(value(more, 'pack.capacity')).toBeGreaterThan(value(one, 'pack.capacity'))
        expect(value(more, 'pack.peak-current')).toBeGreaterThan(value(one, 'pack.peak-current'))
        expect(value(more, 'pack.highest')).toBe(value(one, 'pack.highest'))
        expect(value(of(n + 1, 'sag'), 'sag.voltage')).toBeGreaterThan(value(of(n, 'sag'), 'sag.voltage'))
      }),
      { numRuns: runs(40) },
    )
  })
})

describe.each(['lapwing', 'wren', 'badger', 'otter'] as const)('the pack of %s', car => {
  const power = figuresOf(car, 'power')
  it('gives more power the fuller and warmer it is, and less the longer it lasts', () => {
    const maps = ['2 s', '10 s', '30 s', 'continuous'].map(
      d => (power.get(`power.map@${d}`) as unknown as { value: { x: Float64Array; y: Float64Array; z: Float64Array } }).value,
    )
    for (const { x, y, z } of maps)
      for (let i = 0; i < x.length; i++)
        for (let j = 0; j < y.length; j++) {
          if (j > 0) expect(z[i * y.length + j]).toBeGreaterThanOrEqual(z[i * y.length + j - 1]! - 1e-6)
          if (i > 0) expect(z[i * y.length + j]).toBeGreaterThanOrEqual(z[(i - 1) * y.length + j]! - 1e-6)
        }
    for (let d = 1; d < maps.length; d++)
      for (let k = 0; k < maps[d]!.z.length; k++) expect(maps[d]!.z[k]).toBeLessThanOrEqual(maps[d - 1]!.z[k]! + 1e-6)
  })
  it('gives less energy the colder and the faster it is drawn', () => {
    const energy = figuresOf(car, 'energy'),
      cells = [10, 0, -10, -20].map(t => value(energy, `energy.usable@three hours ${t} °C`))
    const warm = value(energy, 'energy.by-resistance@three hours 25 °C')
    for (const [i, e] of cells.entries()) expect(e).toBeLessThan(i ? cells[i - 1]! : warm)
    for (const t of [25, 10, 0, -10, -20])
      expect(value(energy, `energy.by-resistance@one hour ${t} °C`)).toBeLessThan(value(energy, `energy.by-resistance@three hours ${t} °C`))
  })
  it('ages: less is left after more years, however it aged before', () => {
    const health = (years: string) =>
      ['by standing', 'half and half', 'by cycling'].map(s =>
        value(figuresOf(car, 'life', { 'pack.life.years': years }), `life.health@${s}`),
      )
    const five = health('5 years'),
      ten = health('10 years')
    for (const [i, h] of ten.entries()) expect(h).toBeLessThan(five[i]!)
    for (const h of five) expect(h).toBeLessThan(1)
  })
})

describe('ways to put modules together', () => {
  it('are ranked by window, then energy: the best is the one an exhaustive look finds', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 30 }),
        fc.integer({ min: 120, max: 300 }),
        fc.integer({ min: 310, max: 800 }),
        (modules, low, high) => {
          const edits = {
            'pack.modules-in-series': String(modules),
            'pack.salvage': null,
            'pack.users.cabin-heater.lowest': `${low} V`,
            'pack.users.cabin-heater.highest': `${high} V`,
            'drive.units.main.inverter.lowest-voltage': '100 V',
            'drive.units.main.inverter.highest-voltage': '900 V',
            'pack.users.charger.lowest': '100 V',
            'pack.users.charger.highest': '900 V',
            'pack.users.dc-dc.lowest': '100 V',
            'pack.users.dc-dc.highest': '900 V',
          }
          const found = figuresOf('lapwing', 'arrangement', edits),
            cells = value(found, 'arrangement.cells')
          // Every whole division of the modules, and one or two left over: energy goes with the modules used.
          let best = { fits: false, energy: -1, series: 0 }
          for (let s = 1; s <= modules; s++) {
            const strings = modules % s === 0 ? modules / s : modules - s <= 2 && s > modules / 2 ? 1 : 0
            if (strings === 0) continue
            const fits = s * 6 * 4.2 <= high && s * 6 * 3 >= low,
              energy = s * strings
            if ((fits && !best.fits) || (fits === best.fits && (energy > best.energy || (energy === best.energy && s > best.series))))
              best = { fits, energy, series: s }
          }
          expect(cells).toBe(best.series * 6)
        },
      ),
      { numRuns: runs(200) },
    )
  })
})
