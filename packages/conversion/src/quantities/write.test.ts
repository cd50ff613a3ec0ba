import { KINDS, type Kind } from '@ampwright/engine'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import type { System } from './display.ts'
import type { Quantity } from './quantity.ts'
import { readQuantity } from './read.ts'
import { UNITS } from './units.ts'
import { displayUnit, spellQuantity, type Writing, writeQuantity } from './write.ts'

const kinds = Object.keys(KINDS) as Kind[]
const systems: readonly System[] = ['metric', 'us', 'uk']
function read(text: string, kind: Kind): Quantity {
  const result = readQuantity(text, kind)
  if (!result.ok) throw new Error(`${kind} ${text}: ${result.problem.why}`)
  return result.quantity
}
/** Written with plain spaces, for reading in the source. */
const written = (value: number, kind: Kind, how?: Writing): string => writeQuantity(value, kind, how).replaceAll('\u202f', ' ')

/** Any value a thing of the kind can have. */
const valueOf = (kind: Kind): fc.Arbitrary<number> => {
  const any = fc.double({ noNaN: true, noDefaultInfinity: true }).map(x => x + 0),
    everyday = fc.double({ min: -1e6, max: 1e6, noNaN: true })
  if (kind === 'count') return fc.nat()
  return kind === 'temperature' ? fc.double({ min: 0, max: 5000, noNaN: true }) : fc.oneof(any, everyday)
}
const ofSomeKind = fc.constantFrom(...kinds).chain(kind => fc.tuple(fc.constant(kind), valueOf(kind)))

/** K: far enough from zero kelvin that rounding for display cannot cross it. */
const COLD = 150

describe('a written quantity', () => {
  it.each<[number, Kind, Writing, string]>([
    [1180, 'mass', { half: 10 }, '1 180 ± 10 kg'],
    [1183.2, 'mass', {}, '1 183 kg'],
    [0.63, 'area', { half: 0.04 }, '0.63 ± 0.04 m²'],
    [0.63, 'area', { half: 0.0437 }, '0.630 ± 0.044 m²'],
    [1183.2, 'mass', { half: 123 }, '1 180 ± 120 kg'],
    [250, 'torque', { system: 'us' }, '184.4 lb·ft'],
    [250, 'torque', {}, '250 Nm'],
    [0.0012, 'resistance', {}, '1.2 mΩ'],
    [5e8, 'resistance', {}, '500 MΩ'],
    [298.15, 'temperature', {}, '25 °C'],
    [298.15, 'temperature', { system: 'us', half: 2 }, '77.0 ± 3.6 °F'],
    [263.15, 'temperature', {}, '−10 °C'],
    [6.7431e-5, 'conductor size', { system: 'us' }, '2/0 AWG'],
    [3.5e-5, 'conductor size', { system: 'us' }, '69.1 kcmil'],
    [3.5e-5, 'conductor size', {}, '35 mm²'],
    [3.5e-5, 'conductor size', { unit: 'AWG' }, '35 mm²'],
    [0.25, 'slope', {}, '25 %'],
    [0.125, 'slope', { unit: '1:' }, '1:8'],
    [-0.125, 'slope', { unit: '1:' }, '−12.5 %'],
    [1, 'slope', { unit: '°' }, '45°'],
    [18340.4, 'money', {}, '18 340 €'],
    [800, 'power', {}, '800 W'],
    [44_000, 'power', {}, '44 kW'],
    [44_000, 'power', { system: 'us' }, '59 hp'],
    [2.31, 'length', {}, '2 310 mm'],
    [2.31, 'length', { system: 'us' }, '90.9 in'],
    [160_000, 'distance', { system: 'uk' }, '99.4 mi'],
    [1850, 'altitude', {}, '1 850 m'],
    [100, 'altitude', { system: 'us' }, '328 ft'],
    [3.92, 'ratio', {}, '3.92'],
    [3.92, 'ratio', { unit: ':1' }, '3.92:1'],
    [96, 'count', {}, '96'],
    [942.477796, 'rotational speed', {}, '9 000 rpm'],
    [540, 'consumption', {}, '150 Wh/km'],
    [600, 'consumption', { unit: 'mi/kWh', half: 30 }, '3.73 ± 0.19 mi/kWh'],
    [32_400, 'duration', {}, '9 h'],
    [35 * 60, 'duration', {}, '35 min'],
    [9.5, 'time', {}, '9.5 s'],
    [0, 'energy', {}, '0 kWh'],
    [1234.5678, 'mass', { digits: 6 }, '1 234.57 kg'],
    [52_340, 'force', {}, '52 300 N'],
    [-0.0001, 'mass', { half: 1 }, '0 ± 1 kg'],
    [1000, 'mass', { half: 0 }, '1 000 ± 0 kg'],
    [0.01, 'slope', { half: 0.02 }, '1 % ± 2 %'],
    [3.92, 'ratio', { unit: ':1', half: 0.02 }, '3.92 ± 0.02'],
    [0.125, 'slope', { unit: '1:', half: 0.001 }, '1:8.000 ± 0.064'],
  ])('%d %s %j is %s', (value, kind, how, text) => expect(written(value, kind, how)).toBe(text))

  it('sets thin no-break spaces, so that it is never torn at a line end', () => {
    expect(writeQuantity(1180, 'mass', { half: 10 })).toBe('1\u202f180\u202f±\u202f10\u202fkg')
    for (const kind of kinds) expect(writeQuantity(300, kind, { half: 1 })).not.toContain(' ')
  })

  it('reads back to the same value within the digits printed, in every system', () => {
    fc.assert(
      fc.property(ofSomeKind, fc.constantFrom(...systems), fc.integer({ min: 2, max: 12 }), ([kind, value], system, digits) => {
        fc.pre(kind !== 'temperature' || value > COLD)
        fc.pre(Math.abs(value) < 1e290 && (value === 0 || Math.abs(value) > 1e-290))
        const { fromSI } = displayUnit(kind, system)
        const back = fromSI(read(writeQuantity(value, kind, { system, digits }), kind).value),
          x = fromSI(value)
        if (kind !== 'count')
          expect(Math.abs(back - x)).toBeLessThanOrEqual(
            0.5 * 10 ** (1 - digits) * Math.abs(x) * (1 + 1e-6) + (kind === 'temperature' ? 1e-11 : 0),
          )
        else expect(back).toBe(value)
      }),
      { numRuns: runs(10000) },
    )
  })

  it('reads back with its spread, value and half-width within half of the last place printed', () => {
    const spread = fc.double({ min: 1e-6, max: 1e3, noNaN: true })
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds.filter(k => k !== 'count')),
        fc.constantFrom(...systems),
        fc.double({ min: -3000, max: 3000, noNaN: true }),
        spread,
        (kind, system, x, half) => {
          const value = kind === 'temperature' ? Math.abs(x) + COLD : x
          const back = read(writeQuantity(value, kind, { system, half }), kind)
          expect(Math.abs((back.half ?? Number.NaN) / half - 1)).toBeLessThan(0.0501)
          expect(Math.abs(back.value - value)).toBeLessThanOrEqual(0.0501 * half + 1e-10)
        },
      ),
      { numRuns: runs(8000) },
    )
  })

  it('keeps a spread through the units that bend', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.02, max: 0.9, noNaN: true }), fc.double({ min: 0.01, max: 0.9, noNaN: true }), (value, part) => {
        const degrees = read(writeQuantity(value, 'slope', { unit: '°', half: part * value }), 'slope'),
          economy = read(writeQuantity(value * 1000, 'consumption', { unit: 'mi/kWh', half: part * value * 100 }), 'consumption')
        // Two digits of the ± are written: it is off by 5 % at most, and so is the value by 5 % of its ±, which bends an inverse twice as much.
        const off = 0.06 + 0.12 * part
        expect(Math.abs((degrees.half ?? 0) / (part * value) - 1)).toBeLessThan(off)
        expect(Math.abs((economy.half ?? 0) / (part * value * 100) - 1)).toBeLessThan(off)
      }),
      { numRuns: runs(4000) },
    )
  })

  it('is refused to a program that asks for the impossible', () => {
    expect(() => writeQuantity(Number.NaN, 'mass')).toThrow(/finite/)
    expect(() => writeQuantity(1, 'mass', { half: -1 })).toThrow(/half-width/)
    expect(() => writeQuantity(1, 'mass', { unit: 'm' })).toThrow(/not a unit of mass/)
  })
})

describe('a spelled quantity', () => {
  it.each<[number, Kind, string]>([
    [0.185, 'length', '185 mm'],
    [298.15, 'temperature', '25 °C'],
    [400.0294645571003, 'rotational speed', '3820 rpm'],
    [3.5e-5, 'conductor size', '35 mm²'],
    [18_000, 'money', '18000 €'],
    [0.95, 'share', '95 %'],
    [1.1, 'share', '110 %'],
    [2.5 / 3600, 'charge rate', '2.5 C'],
    [0.25, 'slope', '25 %'],
    [1 / 3, 'temperature', '0.3333333333333333 K'],
    [-0.48, 'length', '-480 mm'],
  ])('%d %s is %s', (value, kind, text) => expect(spellQuantity(value, kind)).toBe(text))

  it('reads back to exactly the same value', () => {
    fc.assert(
      fc.property(ofSomeKind, ([kind, value]) => {
        expect(read(spellQuantity(value, kind), kind).value === value).toBe(true)
      }),
      { numRuns: runs(10000) },
    )
  })

  it('reads back to exactly the same half-width too', () => {
    expect(spellQuantity(1180, 'mass', { half: 10 })).toBe('1180 ± 10 kg')
    const half = fc.double({ min: 0, max: 1e6, noNaN: true }).map(x => x + 0)
    fc.assert(
      fc.property(ofSomeKind, half, ([kind, value], h) => {
        const back = read(spellQuantity(value, kind, { half: h }), kind)
        expect(back.value === value && back.half === h).toBe(true)
      }),
      { numRuns: runs(6000) },
    )
  })

  it('uses the unit asked for where that says the value exactly, and plain characters only', () => {
    const inches = read('94.5 in', 'length').value
    expect(spellQuantity(inches, 'length', { unit: 'in' })).toBe('94.5 in')
    expect(spellQuantity(read('250 ± 5 lb·ft', 'torque').value, 'torque', { unit: 'lb·ft' })).toBe('250 lb·ft')
    for (const kind of kinds) expect(spellQuantity(300, kind)).not.toMatch(/[\u202f−]/)
  })

  it('is the shortest decimal that does', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 99_999 }),
        fc.constantFrom<Kind>('mass', 'length', 'torque', 'temperature difference', 'rotational speed', 'consumption'),
        (n, kind) => {
          const unit = displayUnit(kind, 'metric').unit
          expect(spellQuantity(read(`${n} ${unit}`, kind).value, kind, { unit })).toBe(`${n} ${unit}`)
        },
      ),
      { numRuns: runs(4000) },
    )
  })

  it('is refused where no text of the kind says it', () => {
    expect(() => spellQuantity(0.5, 'count')).toThrow(/no text says/)
    expect(() => spellQuantity(-1, 'temperature')).toThrow(/no text says/)
  })
})

describe('a display unit', () => {
  it('exists for every kind and system and is read back', () => {
    for (const kind of kinds) {
      for (const system of systems) {
        const { unit, fromSI } = displayUnit(kind, system)
        expect(
          UNITS[kind].some(u => u.spellings[0] === unit),
          `${kind} ${system}`,
        ).toBe(true)
        const x = kind === 'count' ? 3 : fromSI(300)
        if (kind !== 'share') expect(read(`${x} ${unit}`, kind).value).toBeCloseTo(kind === 'count' ? 3 : 300, 9)
      }
    }
  })

  it('follows the trade of the place', () => {
    const units = (kind: Kind): readonly string[] => systems.map(system => displayUnit(kind, system).unit)
    expect(units('mass')).toEqual(['kg', 'lb', 'kg'])
    expect(units('speed')).toEqual(['km/h', 'mph', 'mph'])
    expect(units('torque')).toEqual(['Nm', 'lb·ft', 'Nm'])
    expect(units('temperature')).toEqual(['°C', '°F', '°C'])
    expect(displayUnit('temperature', 'us').fromSI(373.15)).toBeCloseTo(212, 10)
    expect(displayUnit('power', 'us').fromSI(745.69987158227)).toBeCloseTo(1, 12)
  })
})
