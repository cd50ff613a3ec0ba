import { KINDS, type Kind } from '@ampwright/engine'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { runs } from '../../../../tests/counts.ts'
import type { Problem, Quantity } from './quantity.ts'
import { readQuantity } from './read.ts'
import { UNITS } from './units.ts'

const kinds = Object.keys(KINDS) as Kind[]
function quantity(text: string, kind: Kind): Quantity {
  const read = readQuantity(text, kind)
  if (!read.ok) throw new Error(`${kind} ${text}: ${read.problem.why}`)
  return read.quantity
}
function problem(text: string, kind: Kind): Problem {
  const read = readQuantity(text, kind)
  if (read.ok) throw new Error(`${kind} ${text} was read as ${read.quantity.value}`)
  return read.problem
}

describe('a quantity', () => {
  it('keeps value, spread, unit, origin and the text as typed', () => {
    const text = '1180 ± 10 kg (measured, corner scales 12 May)'
    expect(quantity(text, 'mass')).toEqual({
      value: 1180,
      half: 10,
      text,
      unit: 'kg',
      origin: { how: 'measured', note: 'corner scales 12 May' },
    })
    expect(quantity(' 0.62 m2 ', 'area')).toEqual({ value: 0.62, text: ' 0.62 m2 ', unit: 'm2' })
  })

  it('is the same to the last bit however the unit is scaled', () => {
    for (const text of ['185 mm', '18.5 cm', '18,5 cm', '0.185 m', '0,000185 km', '1.85e-1 m'])
      expect(quantity(text, 'length').value).toBe(0.185)
  })

  it('is read with signs, exponents and every kind of gap between thousands', () => {
    expect(quantity('−480 mm', 'length').value).toBe(-0.48)
    expect(quantity('+5e-1 m', 'length').value).toBe(0.5)
    expect(quantity('5e−1 m', 'length').value).toBe(0.5)
    expect(quantity('.5 m', 'length').value).toBe(0.5)
    for (const gap of [' ', '\u00a0', '\u2007', '\u2009', '\u202f']) expect(quantity(`18${gap}000,5 €`, 'money').value).toBe(18000.5)
    expect(quantity('3 000 1/min', 'rotational speed').value).toBe(quantity('3000 rpm', 'rotational speed').value)
  })

  it('is read from the ways people type a unit', () => {
    for (const unit of ['Nm', 'N m', 'N·m', 'N*m', 'N.m', 'N ⋅ m', 'N\u202fm']) expect(quantity(`250 ${unit}`, 'torque').value).toBe(250)
    for (const unit of ['lb·ft', 'lb ft', 'lb-ft', 'lbft', 'ft·lb', 'lbf·ft', 'ft-lbf'])
      expect(quantity(`100 ${unit}`, 'torque').value).toBeCloseTo(135.581795, 6)
    for (const unit of ['m²', 'm2', 'm^2']) expect(quantity(`2 ${unit}`, 'area').value).toBe(2)
    for (const unit of ['µF', 'μF', 'uF']) expect(quantity(`500 ${unit}`, 'capacitance').value).toBe(0.0005)
    for (const unit of ['mΩ', 'mΩ', 'mohm']) expect(quantity(`3 ${unit}`, 'resistance').value).toBe(0.003)
    for (const unit of ['°C', '℃', '° C', 'ºC', 'degC']) expect(quantity(`25 ${unit}`, 'temperature').value).toBe(298.15)
    for (const unit of ['N/(m/s)²', 'N/(m/s)^2', 'N / (m/s)2', 'N·s²/m²'])
      expect(quantity(`0.39 ${unit} (measured)`, 'air drag').value).toBe(0.39)
    for (const unit of ['min⁻¹', 'min-1', '1/min']) expect(quantity(`60 ${unit}`, 'rotational speed').value).toBeCloseTo(2 * Math.PI, 14)
    expect(quantity('94.5"', 'length').value).toBe(2.4003)
  })

  it('may be a pair, a gauge or an amount with its currency first', () => {
    for (const text of ['3.92', '3.92:1', '3.92 : 1', '3,92:1']) expect(quantity(text, 'ratio').value).toBe(3.92)
    expect(quantity('41:11', 'ratio').value).toBe(41 / 11)
    for (const text of ['12.5 %', '1:8', '1 : 8', '1 in 8', '0.125 m/m']) expect(quantity(text, 'slope').value).toBe(0.125)
    for (const text of ['2/0 AWG', 'AWG 2/0', '00 AWG', 'awg00']) expect(quantity(text, 'conductor size').value * 1e6).toBeCloseTo(67.43, 2)
    for (const text of ['18 000 €', '€ 18000', '€18000', 'EUR 18000', '18000 EUR']) expect(quantity(text, 'money').value).toBe(18000)
  })

  it('needs no unit only where none is needed', () => {
    const bare = kinds.filter(kind => readQuantity('1', kind).ok)
    expect(bare).toEqual(['ratio', 'share', 'count', 'number'])
    expect(problem('0.25', 'slope')).toMatchObject({ why: 'a slope needs its unit', accepted: '25 %, 8° or 1:8' })
    expect(problem('1180', 'mass')).toMatchObject({ found: '1180', accepted: 'kg, g, t, lb, oz' })
    expect(problem('95', 'share')).toMatchObject({ why: '95 would be 9500 %', nearest: '95 % or 0.95' })
  })
})

describe('a spread', () => {
  it.each<[string, Kind, number, number]>([
    ['0.62 ± 0.04 m2', 'area', 0.62, 0.04],
    ['0.62 m2 ± 0.04 m2', 'area', 0.62, 0.04],
    ['0.62 m2 ± 400 cm2', 'area', 0.62, 0.04],
    ['0.62 m2 ± 0.04', 'area', 0.62, 0.04],
    ['95 ± 2 %', 'share', 0.95, 0.02],
    ['95 % ± 2 %', 'share', 0.95, 0.02],
    ['0.95 ± 0.02', 'share', 0.95, 0.02],
    ['250 Nm ± 5 %', 'torque', 250, 12.5],
    ['250 ± 5 % Nm', 'torque', 250, 12.5],
    ['-250 Nm ± 5 %', 'torque', -250, 12.5],
    ['250 +/- 5 Nm', 'torque', 250, 5],
    ['250+-5Nm', 'torque', 250, 5],
    ['25 ± 2 °C', 'temperature', 298.15, 2],
    ['25 °C ± 2 K', 'temperature', 298.15, 2],
    ['77 °F ± 9 Δ°F', 'temperature', 298.15, 5],
    ['77 ± 9 °F', 'temperature', 298.15, 5],
    ['3.92 ± 1 %', 'ratio', 3.92, 0.0392],
    ['96 ± 0', 'count', 96, 0],
    ['25 ± 1 %', 'slope', 0.25, 0.01],
    ['€ 500 ± € 20', 'money', 500, 20],
    ['0 ± 1 %', 'slope', 0, 0.01],
    ['2 ± 3 %', 'slope', 0.02, 0.03],
  ])('%s as %s', (text, kind, value, half) => {
    expect(quantity(text, kind).value).toBe(value)
    expect(quantity(text, kind).half).toBeCloseTo(half, 14)
  })

  it('is carried through a unit that bends at both its ends', () => {
    expect(quantity('8 ± 1 °', 'slope').half).toBeCloseTo((Math.tan((9 * Math.PI) / 180) - Math.tan((7 * Math.PI) / 180)) / 2, 14)
    expect(quantity('4 ± 0.2 mi/kWh', 'consumption').half).toBeCloseTo(((3.6e6 / 1609.344) * (1 / 3.8 - 1 / 4.2)) / 2, 9)
    expect(quantity('2 AWG ± 5 %', 'conductor size').half).toBeCloseTo(0.05 * 33.6308e-6, 10)
  })

  it.each<[string, Kind, RegExp]>([
    ['5 kg ± -1', 'mass', /no sign/],
    ['5 kg ± +1', 'mass', /no sign/],
    ['5 ± 1 ± 1 kg', 'mass', /more than one ±/],
    ['0.95 ± 2 %', 'share', /larger than the value/],
    ['8° ± 5 %', 'slope', /points or a part/],
    ['25 °C ± 5 %', 'temperature', /no percentage/],
    ['5 kg ± 1 m', 'mass', /a length; a mass is wanted/],
    ['5 kg ±', 'mass', /number/],
    ['2 AWG ± 1', 'conductor size', /no spread/],
    ['4 ± 5 mi/kWh', 'consumption', /spread reaches/],
    ['89 ± 2 °', 'slope', /spread reaches/],
    ['250 ± 5', 'torque', /needs its unit/],
    ['25 % ± 1°', 'slope', /unit of the value/],
  ])('%s as %s is refused', (text, kind, why) => expect(problem(text, kind).why).toMatch(why))
})

describe('a problem says what to do', () => {
  it('where a comma could part thousands: both readings', () => {
    expect(problem('1,180 kg', 'mass')).toEqual({
      found: '1,180',
      accepted: 'kg, g, t, lb, oz',
      nearest: '1.18 or 1180',
      why: '1,180 can be read as 1.18 or as 1180',
    })
    expect(problem('−1,000 mm', 'length').nearest).toBe('−1 or −1000')
    expect(problem('1180 ± 1,180 kg', 'mass').why).toMatch(/can be read as/)
    for (const text of ['0,180 kg', '1,18 kg', '1,1800 kg', '1180,125 kg', '1 180,125 kg']) expect(readQuantity(text, 'mass').ok).toBe(true)
    expect(problem('1,180,000 €', 'money').nearest).toBe('1180000')
    expect(problem('1,180.5 kg', 'mass').nearest).toBe('1180.5')
    expect(problem('1.180,5 kg', 'mass').nearest).toBe('1180,5')
  })

  it.each<[string, Kind, Partial<Problem>]>([
    ['12 km', 'mass', { found: 'km', why: "'km' is a length; a mass is wanted", accepted: 'kg, g, t, lb, oz' }],
    ['10 °C', 'temperature difference', { nearest: 'Δ°C' }],
    ['25 kgm', 'torque', { nearest: 'kgf·m' }],
    ['25 kg·m', 'torque', { nearest: 'kgf·m' }],
    ['250 newton-metres', 'torque', { nearest: 'Nm' }],
    ['180 lbs ft', 'torque', { nearest: 'lb·ft' }],
    ['100 HP', 'power', { nearest: 'hp' }],
    ['100 pk', 'power', { nearest: 'PS' }],
    ['100 Amp', 'current', { nearest: 'A' }],
    ['100 amps', 'current', { nearest: 'A' }],
    ['100 Amp-hours', 'charge', { nearest: 'Ah' }],
    ['400 VDC', 'voltage', { nearest: 'V' }],
    ['4000 tr/min', 'rotational speed', { nearest: 'rpm' }],
    ['20 Celsius', 'temperature', { nearest: '°C' }],
    ['1 ton', 'mass', { nearest: 't' }],
    ['40 lb', 'force', { why: "'lb' is a mass; a force is wanted", nearest: 'lbf' }],
    ['60 A', 'charge', { nearest: 'Ah' }],
    ['95 %', 'torque', { why: "'%' is a share; a torque is wanted" }],
    ['12 Kg', 'mass', { nearest: 'kg' }],
    ['12 kgg', 'mass', { nearest: 'kg' }],
    ['5 kwh', 'energy', { nearest: 'kWh' }],
    ['60 kmh/', 'speed', { nearest: 'km/h' }],
    ['12 blub', 'mass', { why: "'blub' is not a unit known here" }],
    ['£ 500', 'money', { found: '£' }],
    ['500 GBP', 'money', { found: 'GBP' }],
    ['0.3 $/kWh', 'money per energy', { found: '$/kWh' }],
    ['10–20 kg', 'mass', { nearest: '15 ± 5 kg' }],
    ['10 to 20 kg', 'mass', { nearest: '15 ± 5 kg' }],
    ['12 kg (mesured)', 'mass', { nearest: 'measured' }],
    ['12 kg (measured', 'mass', { why: 'the bracket is not closed' }],
    ['12 kg measured', 'mass', { why: 'how the value is known stands in brackets: (measured)' }],
    ['12 kg (measured) 5', 'mass', { found: '(measured) 5' }],
    ['8:1', 'slope', { why: 'the rise comes first: 1:8 is one up in eight along' }],
    ['3.5 AWG', 'conductor size', { found: '3.5 AWG' }],
    ['16.5', 'count', { why: 'a count is a whole number, not below zero' }],
    ['-1', 'count', { found: '-1' }],
    ['-300 °C', 'temperature', { why: 'this is below absolute zero' }],
    ['90°', 'slope', { why: 'a slope is less than 90°' }],
    ['0 mi/kWh', 'consumption', { why: 'this has to be above zero' }],
    ['', 'mass', { why: 'a mass is wanted here' }],
    ['(assumed)', 'area', { why: 'an area is wanted here' }],
    ['1 2 kg', 'mass', { why: 'spaces part digits only in groups of three' }],
    ['1.2.3 kg', 'mass', { why: 'this has more than one decimal sign' }],
    ['3:0', 'ratio', { why: 'both numbers of a pair have to be above zero' }],
  ])('%s as %s', (text, kind, expected) => expect(problem(text, kind)).toMatchObject(expected))

  it.each(['NaN kg', 'Infinity kg', '∞ kg', '1e400 kg', '1e999999999 kg', '1e-399 kg', '1e309 kg', '--5 kg', 'kg', '± 5 kg', '1\u0000 kg'])(
    '%j is no mass',
    text => {
      expect(problem(text, 'mass').why).not.toBe('')
    },
  )
})

describe('whatever is typed', () => {
  const anyKind = fc.constantFrom(...kinds)
  const piece = fc.constantFrom(
    '1',
    '9',
    '0',
    '12',
    '180',
    ',',
    '.',
    ' ',
    '\u202f',
    '-',
    '−',
    '±',
    '+/-',
    'e5',
    ':',
    '/',
    '/0',
    '(',
    ')',
    'measured',
    'AWG',
    '%',
    '€',
    '°',
    '°C',
    'kg',
    'mm',
    'N',
    '·',
    '(m/s)²',
    'in ',
    'mi/kWh',
  )
  const nearMiss = fc.oneof(
    fc.array(piece, { maxLength: 12 }).map(p => p.join('')),
    fc.tuple(fc.double(), fc.constantFrom(...kinds.flatMap(k => UNITS[k].flatMap(u => u.spellings)))).map(p => p.join(' ')),
  )

  it('is read or refused with a reason, never thrown at; values are finite and spreads not negative', () => {
    fc.assert(
      fc.property(
        fc.oneof(fc.string({ unit: 'binary', maxLength: 250 }), fc.string({ maxLength: 250 }), nearMiss),
        anyKind,
        (text, kind) => {
          const read = readQuantity(text, kind)
          if (read.ok) {
            expect(Number.isFinite(read.quantity.value)).toBe(true)
            expect(read.quantity.half ?? 0).toBeGreaterThanOrEqual(0)
            expect(Number.isFinite(read.quantity.half ?? 0)).toBe(true)
            expect(read.quantity.text).toBe(text)
          } else expect(read.problem.why.length * read.problem.accepted.length).toBeGreaterThan(0)
        },
      ),
      { numRuns: runs(20000) },
    )
  })

  it('takes bounded time, also when made to be slow', () => {
    const hostile = [
      '(',
      ' ',
      '1 ',
      '9',
      ',',
      '1,',
      '.',
      '±',
      '+/',
      '· ',
      '\u202f1',
      'e',
      '1e9',
      '㎏',
      '\ufdfa',
      '-',
      '/ (',
      ':',
      '\\',
      'µ',
    ].flatMap(s => [s.repeat(200 / s.length), `1${s.repeat(199 / s.length)}`, `1 ${s.repeat(90)} kg`])
    const before = performance.now()
    for (const text of [...hostile, '9'.repeat(1e6)]) for (const kind of kinds) readQuantity(text, kind)
    expect((performance.now() - before) / (hostile.length * kinds.length)).toBeLessThan(5)
  })

  it('means the same with a decimal comma as with a point', () => {
    const decimals = fc.stringMatching(/^[0-9]{1,9}$/).filter(d => d.length !== 3)
    fc.assert(
      fc.property(fc.nat(), decimals, fc.constantFrom('kg', 'g', 'lb', 't'), (whole, decimal, unit) => {
        expect(quantity(`${whole},${decimal} ${unit}`, 'mass').value).toBe(quantity(`${whole}.${decimal} ${unit}`, 'mass').value)
      }),
      { numRuns: runs(4000) },
    )
  })

  it('adds up: parts and their sum agree, except for temperatures, where the difference does', () => {
    const linear = kinds.flatMap(kind =>
      UNITS[kind].filter(u => u.form === 'linear' && u.spellings[0] !== '' && kind !== 'share').map(unit => ({ kind, unit })),
    )
    fc.assert(
      fc.property(
        fc.constantFrom(...linear),
        fc.integer({ min: 1, max: 100_000 }),
        fc.integer({ min: 1, max: 100_000 }),
        ({ kind, unit }, a, b) => {
          const of = (n: number): number => quantity(unit.spellings[0] === ':1' ? `${n}:1` : `${n} ${unit.spellings[0]}`, kind).value
          const zero = unit.shift ? quantity(`0 ${unit.spellings[0]}`, kind).value : 0
          expect(of(a) - zero + (of(b) - zero)).toBeCloseTo(of(a + b) - zero, 12 - Math.ceil(Math.log10(of(a + b) + 1)))
        },
      ),
      { numRuns: runs(8000) },
    )
  })
})
