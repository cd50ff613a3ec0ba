import { spawnSync } from 'node:child_process'
import { KINDS, type Kind } from '@ampwright/engine'
import { describe, expect, it } from 'vitest'
import { proven } from '../../../../tests/proof.ts'
import { UNITS_MEANT } from './meant.ts'
import { readQuantity } from './read.ts'
import { canonical } from './unit-lookup.ts'
import { UNITS, type Unit } from './units.ts'
import { gaugeArea, gaugeName, gaugeNumber } from './wire-gauge.ts'

const kinds = Object.keys(KINDS) as Kind[]
const every: readonly (readonly [Kind, Unit])[] = kinds.flatMap(kind => UNITS[kind].map(unit => [kind, unit] as const))

/** One amount in a unit, as it is typed. */
const typed = (number: string, spelling: string): string => (spelling === '1:' ? `1:${number}` : `${number} ${spelling}`)
function value(text: string, kind: Kind): number {
  const read = readQuantity(text, kind)
  if (!read.ok) throw new Error(`${kind} ${text}: ${read.problem.why}`)
  return read.quantity.value
}

/**
 * What GNU units calls each of our units, `#` standing for the number. Written from its own definitions file, not from our table. Where one
 * spelling means two things, the kind is named.
 */
const THEIRS: ReadonlyMap<string, string> = new Map(
  `
  kg = kg | mass g = gram | t = tonne | lb = pound | oz = ounce | mm = mm | cm = cm | m = m | km = km | µm = micrometer | in = inch
  ft = foot | yd = yard | mi = mile | m² = m^2 | cm² = cm^2 | mm² = mm^2 | ft² = foot^2 | in² = inch^2 | l = liter | ml = milliliter
  cm³ = cc | dm³ = dm^3 | m³ = m^3 | US gal = usgallon | imp gal = brgallon | in³ = inch^3 | ft³ = foot^3 | km/h = km/hour
  m/s = m/s | mph = mph | ft/s = foot/s | m/s² = m/s^2 | acceleration g = gravity | ft/s² = foot/s^2 | N = newton | daN = dekanewton
  kN = kilonewton | lbf = lbf | kgf = kgf | Nm = newton meter | kNm = kilonewton meter | daNm = dekanewton meter | km/h/s = km/hour/s | mph/s = mile/hour/s | kgf/cm² = kgf/cm^2 | atm = atmosphere | lb·ft = foot lbf | lb·in = inch lbf
  kgf·m = kgf meter | kW = kilowatt | W = watt | MW = megawatt | hp = horsepower | PS = metrichorsepower | kWh = kilowatt hour
  Wh = watt hour | MWh = megawatt hour | J = joule | kJ = kilojoule | MJ = megajoule | mJ = millijoule | frequency Hz = 1/s | kHz = 1000/s | MHz = 1e6/s | bar = bar | mbar = millibar | Pa = pascal
  hPa = hectopascal | kPa = kilopascal | MPa = megapascal | psi = psi | angle ° = degree | rad = radian | mrad = milliradian
  arcmin = arcminute | % = percent | slope ° = tan(# degree) | 1: = 1/# | m/m = m/m | rpm = rpm | rad/s = radian/s
  Hz = revolution/s | °/s = degree/s | °C = tempC(#) | temperature K = K | °F = tempF(#) | temperature difference K = K | Δ°C = degC
  Δ°F = degF | V = volt | mV = millivolt | kV = kilovolt | A = ampere | mA = milliampere | kA = kiloampere | Ah = ampere hour
  mAh = milliampere hour | charge C = coulomb | Ω = ohm | mΩ = milliohm | µΩ = microohm | kΩ = kiloohm | MΩ = megaohm | GΩ = gigaohm
  F = farad | mF = millifarad | µF = microfarad | nF = nanofarad | pF = picofarad | H = henry | mH = millihenry | µH = microhenry
  nH = nanohenry | kcmil = mcm | s = second | ms = millisecond | min = minute | h = hour | d = day | week = week | year = 365 day
  € = euro | €/kWh = euro/kilowatt hour | ct/kWh = 0.01 euro/kilowatt hour | €/MWh = euro/megawatt hour | €/J = euro/joule | :1 = 1
   = 1 | Wh/km = watt hour/km | kWh/100km = kilowatt hour/100 km | kWh/km = kilowatt hour/km | J/m = joule/m | MJ/km = megajoule/km
  Wh/mi = watt hour/mile | kWh/100mi = kilowatt hour/100 mile | kWh/mi = kilowatt hour/mile | mi/kWh = 1/(# mile/kilowatt hour)
  km/kWh = 1/(# km/kilowatt hour) | N/mm = newton/mm | N/m = newton/m | lbf/in = lbf/inch | kgf/mm = kgf/mm
  Nm/° = newton meter/degree | Nm/rad = newton meter/radian | kNm/rad = kilonewton meter/radian | lb·ft/° = foot lbf/degree
  l/min = liter/minute | l/s = liter/s | l/h = liter/hour | m³/h = m^3/hour | m³/s = m^3/s | gpm = gpm | cfm = cfm | kg·m² = kg m^2
  kg·cm² = kg cm^2 | g·m² = gram m^2 | lb·ft² = pound foot^2 | lb·in² = pound inch^2 | kg/m³ = kg/m^3 | kg/l = kg/liter
  lb/ft³ = pound/foot^3 | kJ/K = kilojoule/K | J/K = joule/K | MJ/K = megajoule/K | Wh/K = watt hour/K | Wh/kg = watt hour/kg | kWh/kg = kilowatt hour/kg | kJ/kg = kilojoule/kg | J/kg = joule/kg | Wh/l = watt hour/liter | kWh/m³ = kilowatt hour/m^3 | MJ/m³ = megajoule/m^3 | J/m³ = joule/m^3 | W/K = watt/K
  kW/K = kilowatt/K | mW/K = milliwatt/K | N/(km/h) = newton/(km/hour) | N/(m/s) = newton/(m/s) | lbf/mph = lbf/mph
  N/(km/h)² = newton/(km/hour)^2 | N/(m/s)² = newton/(m/s)^2 | lbf/mph² = lbf/mph^2 | N·m·s = newton meter s
  Nm/rpm = newton meter/rpm | charge rate C = 1/hour | 1/s = 1/s
`
    .trim()
    .split(/ *[|\n] */)
    .map(pair => pair.trim().split(/ ?= /) as [string, string]),
)

/** A kind's SI unit in their spelling. */
const theirSI = (kind: Kind): string =>
  KINDS[kind].unit
    .replaceAll('·', ' ')
    .replaceAll('²', '^2')
    .replaceAll('³', '^3')
    .replace('Ω', 'ohm')
    .replace('€', 'euro')
    .replace('rad', 'radian')

const asked = (number: string, kind: Kind, unit: Unit): string | undefined => {
  const name = unit.spellings[0],
    theirs = THEIRS.get(`${kind} ${name}`) ?? THEIRS.get(name)
  return theirs?.includes('#') ? theirs.replace('#', number) : theirs === undefined ? undefined : `${number} ${theirs}`
}

/** GNU units, a program of its own with definitions of its own. */
const PROGRAM = 'units'

/** One run of GNU units over many questions; undefined where the program is not installed. */
function answers(questions: readonly (readonly [have: string, want: string])[]): readonly string[] | undefined {
  const run = spawnSync(PROGRAM, ['-q', '-t', '-d', '15'], {
    input: questions.map(q => q.join('\n')).join('\n'),
    encoding: 'utf8',
    env: { ...process.env, LC_ALL: 'C' },
  })
  return run.error || run.status !== 0 ? undefined : run.stdout.trimEnd().split('\n')
}
const installed = answers([['1 foot', 'inch']])?.[0] === '12'
if (!installed) console.warn('skipped: the unit table against GNU units. Install the program with: apt-get install -y units')

/** Numbers to try a unit with: one, or two where it is more than a factor. */
function numbers(kind: Kind, unit: Unit): readonly string[] {
  if (kind === 'count') return ['48']
  if (kind === 'share' && unit.spellings[0] === '') return ['0.25']
  return unit.form === 'linear' && !unit.shift ? ['48.123'] : ['48.123', '7.25']
}

/** Notes one comparison with that program; it prints 15 digits, and two in the last place are allowed for. */
const agrees = (check: string, expected: number, obtained: number, unit: string): boolean =>
  proven({
    domain: 'units',
    check,
    source: 'GNU units',
    mark: 'independent program',
    expected,
    obtained,
    tolerance: 2e-14 * Math.abs(expected),
    unit,
  })

describe('the unit table', () => {
  it('has units for every kind, one of them the SI unit itself', () => {
    for (const kind of kinds)
      expect(
        UNITS[kind].some(u => u.form === 'linear' && !u.shift && u.factor.top === u.factor.bottom && u.factor.pi === 0),
        kind,
      ).toBe(true)
  })

  it('never gives one spelling two meanings within a kind', () => {
    for (const kind of kinds) {
      const spellings = UNITS[kind].flatMap(u => u.spellings.map(canonical))
      expect(new Set(spellings).size, kind).toBe(spellings.length)
    }
  })

  it('reads every spelling of a unit as the same amount', () => {
    for (const [kind, unit] of every) {
      const number = kind === 'count' ? '7' : kind === 'share' ? '0.25' : '7.25',
        [first, ...rest] = unit.spellings
      if (unit.form === 'gauge') continue
      for (const spelling of rest)
        expect(value(typed(number, spelling), kind), `${kind} ${spelling}`).toBe(value(typed(number, first), kind))
    }
  })

  it('reads every unit it names to somebody who wrote another name of it', () => {
    for (const [kind, unit] of UNITS_MEANT) expect(Number.isFinite(value(typed('7.25', unit), kind)), `${kind} ${unit}`).toBe(true)
  })

  it.skipIf(!installed)('agrees with GNU units on every unit, to the 15 digits that prints', () => {
    const checks = every
      .filter(([, unit]) => unit.form !== 'gauge')
      .flatMap(([kind, unit]) => numbers(kind, unit).map(number => ({ kind, unit, number })))
    const questions = checks.map(({ kind, unit, number }) => [asked(number, kind, unit) ?? 'unknown', theirSI(kind)] as const)
    const theirs = answers(questions) ?? []
    expect(theirs).toHaveLength(checks.length)
    checks.forEach(({ kind, unit, number }, i) => {
      const text = theirs[i] ?? '',
        check = `${typed(number, unit.spellings[0]).trim()} as ${KINDS[kind].label}`
      expect(text, questions[i]?.join(' in ')).toMatch(/^-?[\d.]+(e[+-]?\d+)?$/)
      expect(agrees(check, Number(text), value(typed(number, unit.spellings[0]), kind), KINDS[kind].unit), `${check}: theirs ${text}`).toBe(
        true,
      )
    })
  })

  it.skipIf(!installed)('agrees with GNU units on every wire gauge', () => {
    const gauges = Array.from({ length: 60 }, (_, i) => i - 3)
    const theirs = answers(gauges.map(n => [`awg(${n})^2 (pi/4)`, 'm^2'] as const)) ?? []
    gauges.forEach((n, i) =>
      expect(agrees(`AWG ${n > 0 ? n : `${1 - n}/0`}`, Number(theirs[i]), gaugeArea(n), 'm²'), `AWG ${n}`).toBe(true),
    )
  })
})

describe('wire gauges', () => {
  // Cross-sections as printed in wire tables to ASTM B258, mm².
  it.each([
    ['18', 0.823],
    ['10', 5.261],
    ['2', 33.63],
    ['1/0', 53.5],
    ['0', 53.5],
    ['2/0', 67.4],
    ['00', 67.4],
    ['0000', 107.22],
    ['4/0', 107.22],
  ])('%s AWG is %f mm²', (name, area) => {
    expect(value(`${name} AWG`, 'conductor size') * 1e6).toBeCloseTo(area, area > 100 ? 2 : area > 40 ? 1 : area > 10 ? 2 : 3)
  })

  it('are known by their size and by name alike', () => {
    for (let n = -3; n <= 56; n++) expect(gaugeNumber(gaugeName(gaugeArea(n)) ?? '')).toBe(n)
    expect(gaugeName(35e-6)).toBeUndefined()
    expect(['5/0', '57', '-1', '00000', '2.5', ''].map(gaugeNumber)).toEqual(Array(6).fill(undefined))
  })

  it('halve in area about every three steps', () => {
    for (let n = 0; n <= 50; n++) expect(gaugeArea(n) / gaugeArea(n + 3)).toBeCloseTo(2.005, 3)
  })
})

describe('conversions that go wrong elsewhere', () => {
  it.each<[string, Kind, number, number]>([
    ['25 °C', 'temperature', 298.15, 0],
    ['0 °F', 'temperature', 255.372222, 6],
    ['−40 °C', 'temperature', 233.15, 0],
    ['−40 °F', 'temperature', 233.15, 0],
    ['10 Δ°F', 'temperature difference', 5.555556, 6],
    ['184.390537 lb·ft', 'torque', 250, 6],
    ['100 %', 'slope', 1, 0],
    ['45°', 'slope', 1, 15],
    ['8°', 'slope', 0.140541, 6],
    ['1:8', 'slope', 0.125, 0],
    ['3000 rpm', 'rotational speed', 314.159265, 6],
    ['100 PS', 'power', 73549.875, 0],
    ['25 daNm', 'torque', 250, 0],
    ['25 kgf·m', 'torque', 245.16625, 0],
    ['10 mph/s', 'acceleration', 4.4704, 0],
    ['100 hp', 'power', 74569.987, 3],
    ['1 imp gal', 'volume', 0.00454609, 0],
    ['1 US gal', 'volume', 0.003785411784, 0],
    ['36 psi', 'pressure', 248211.26, 2],
    ['1 C', 'charge rate', 1 / 3600, 0],
    ['1 C', 'charge', 1, 0],
    ['1 g', 'acceleration', 9.80665, 0],
    ['1 g', 'mass', 0.001, 0],
    ['60 mph', 'speed', 26.8224, 0],
    ['4 mi/kWh', 'consumption', 559.234073, 6],
    ['20 kWh/100 km', 'consumption', 720, 0],
  ])('%s as %s', (text, kind, expected, decimals) => {
    if (decimals === 0) expect(value(text, kind)).toBe(expected)
    else expect(value(text, kind)).toBeCloseTo(expected, decimals)
  })
})
