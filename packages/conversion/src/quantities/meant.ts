import type { Kind } from '@ampwright/engine'

/**
 * What people write for a unit that is read under another spelling: old names, words, abbreviations of other languages. By kind, because a metre is
 * meant by `m` of a length and by nothing of a torque. Case and the signs between letters do not matter. Each leads to a question, never to a value.
 */
const MEANT: Partial<Record<Kind, string>> = {
  mass: 'kg = kilo, kilos, kilogram, kilograms, kilogramme, kilogrammes | t = ton, tons, to | lb = pound, pounds | g = gram, grams, gramme, gr',
  length:
    'mm = millimetre, millimetres, millimeter, millimeters | cm = centimetre, centimetres, centimeter, centimeters | m = metres, meters',
  distance: 'km = kilometre, kilometres, kilometer, kilometers | m = metres, meters',
  altitude: 'm = metres, meters, m asl, masl',
  volume: 'l = ltr, lt | US gal = gallon, gallons, US gallon, US gallons',
  speed:
    'km/h = kilometres per hour, kilometers per hour, km per hour, kmhr | mph = miles per hour, miles/h, miles/hr | m/s = mps, metres per second',
  force: 'N = newton, newtons | kgf = kg, kilogram, kilopond | lbf = lb, lbs, pound, pounds | kN = kilonewton',
  torque: [
    'Nm = newton metre, newton metres, newton meter, newton meters, Newtonmeter',
    'lb·ft = pound feet, pound foot, foot pound, foot pounds, lbs ft, ft lbs, ftlbs, lbsft, lb/ft, ft/lb',
    'lb·in = inch pound, inch pounds, pound inch, in lbs, lbs in, inlbs',
    'kgf·m = kgm, kg·m, mkg, m·kg, m·kgf, kgf/m, kg/m',
  ].join(' | '),
  power: [
    'kW = kilowatt, kilowatts, kva | W = watt, watts | MW = megawatt, megawatts',
    'hp = horsepower, horse power, whp, shp, brake horsepower',
    'PS = pk, cv din, hk, metric horsepower, metric hp, Pferdestärke, Pferdestärken, chevaux, л.с.',
  ].join(' | '),
  energy: 'kWh = kilowatt hour, kilowatt hours, kw, kwhr | Wh = watt hour, watt hours | J = joule, joules',
  pressure: 'bar = bars | kPa = kilopascal | kgf/cm² = kg/cm2, ata, kp/cm2 | psi = lb/in2, lbs/in2 | atm = atmosphere, atmospheres',
  'rotational speed':
    'rpm = U/min, tr/min, t/min, g/min, ot/min, o/min, turns/min, revs, revs/min, rev, upm, revolutions per minute | Hz = revs/s',
  temperature: '°C = C, celsius, degrees celsius, centigrade | K = kelvin, kelvins, °K | °F = F, fahrenheit, degrees fahrenheit',
  'temperature difference': 'K = C, kelvin, kelvins, celsius, °K',
  voltage: 'V = volt, volts, vdc, v dc, vac, v ac | mV = millivolt, millivolts | kV = kilovolt, kilovolts',
  current: 'A = amp, amps, ampere, amperes, adc, a dc, aac | mA = milliamp, milliamps, milliampere, milliamperes',
  charge: 'Ah = amp hour, amp hours, amphour, amphours, ampere hour, ampere hours, a/h | mAh = milliamp hour, milliamp hours',
  resistance: 'mΩ = milliohm, milliohms | µΩ = microohm, microohms | kΩ = k, kiloohm, kiloohms | MΩ = megohm, megohms, megaohm, meg',
  time: 's = secs | min = mins | ms = millisecond, milliseconds, msec',
  duration: 'h = hrs, std | d = tage, jours | min = mins | year = a',
  acceleration: 'm/s² = m/s/s, mps2 | g = g force, gee | km/h/s = kph/s, kmh/s',
}

const plain = (text: string): string => text.toLowerCase().replace(/[\s·.*-]+/g, '')
const BY_KIND: ReadonlyMap<string, ReadonlyMap<string, string>> = new Map(
  Object.entries(MEANT).map(([kind, table]) => [
    kind,
    new Map(
      table.split(' | ').flatMap(row => {
        const [unit, names] = row.split(' = ') as [string, string]
        return names.split(', ').map(name => [plain(name), unit] as const)
      }),
    ),
  ]),
)

/** The unit somebody meant who wrote another name of it. */
export const unitMeant = (kind: Kind, text: string): string | undefined => BY_KIND.get(kind)?.get(plain(text))
/** Every unit such a name leads to, by kind, for the test that each of them is read. */
export const UNITS_MEANT: readonly (readonly [Kind, string])[] = [...BY_KIND].flatMap(([kind, names]) =>
  [...new Set(names.values())].map(unit => [kind as Kind, unit] as const),
)
