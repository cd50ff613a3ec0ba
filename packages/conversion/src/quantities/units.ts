import type { Kind } from '@ampwright/engine'
import { type Exact, exact, ONE, over, PI, times } from './exact.ts'

/**
 * How a unit leads to the SI unit of its kind.
 * `linear`: times the factor, plus `shift` where zero is elsewhere. `tangent`: an angle, whose slope is wanted. `inverse`: factor divided by the
 * number (miles per kilowatt-hour). `gauge`: a wire gauge, by formula.
 */
export type UnitForm = 'linear' | 'tangent' | 'inverse' | 'gauge'
export type Unit = {
  /** First as this project writes it, then what else is read. */
  readonly spellings: readonly [string, ...string[]]
  readonly factor: Exact
  readonly shift?: Exact
  readonly form: UnitForm
  /** Where the factor stands. */
  readonly from: Source
}

/**
 * NIST SP 811 is *Guide for the Use of the International System of Units*, 2008 edition: §4 SI units and prefixes, §5.1 units accepted for
 * use with the SI (Table 6: minute, hour, day, degree, litre, tonne), Appendix B.8 everything else, alphabetically. Factors that B.8 prints
 * rounded are built here from its exact ones: yard and pound (inch 25.4 mm, lb 0.453 592 37 kg), g 9.806 65 m/s², gallons, bar.
 */
export type Source = 'SP 811 §4' | 'SP 811 §5.1' | 'SP 811 B.8' | 'ASTM B258' | 'definition'
const SI = 'SP 811 §4',
  ACCEPTED = 'SP 811 §5.1',
  B8 = 'SP 811 B.8',
  OWN = 'definition'

const unit = (spellings: string, factor: Exact | string, from: Source, form: UnitForm = 'linear'): Unit => ({
  spellings: spellings.split(', ') as [string, ...string[]],
  factor: typeof factor === 'string' ? exact(factor) : factor,
  form,
  from,
})
const per = (a: Exact | string, b: Exact | string): Exact =>
  over(typeof a === 'string' ? exact(a) : a, typeof b === 'string' ? exact(b) : b)
const by = (...of: (Exact | string)[]): Exact => times(...of.map(f => (typeof f === 'string' ? exact(f) : f)))

const INCH = exact('0.0254'),
  FOOT = exact('0.3048'),
  MILE = exact('1609.344'),
  POUND = exact('0.45359237'),
  GRAVITY = exact('9.80665')
const POUND_FORCE = by(POUND, GRAVITY),
  US_GALLON = by('231', INCH, INCH, INCH),
  IMPERIAL_GALLON = exact('0.00454609')
const KMH = exact('5/18'),
  MPH = per(MILE, '3600'),
  DEGREE = per(PI, '180'),
  RPM = per(PI, '30'),
  KWH = exact('3600000')

const LENGTHS = [
  unit('mm', '0.001', SI),
  unit('cm', '0.01', SI),
  unit('m, metre, meter', ONE, SI),
  unit('km', '1000', SI),
  unit('µm, um', '0.000001', SI),
  unit('in, inch, inches, ", ′′', INCH, B8),
  unit("ft, foot, feet, ', ′", FOOT, B8),
  unit('yd', '0.9144', B8),
  unit('mi, mile, miles', MILE, B8),
]
const TIMES = [
  unit('s, sec, second, seconds', ONE, SI),
  unit('ms', '0.001', SI),
  unit('min, minute, minutes', '60', ACCEPTED),
  unit('h, hr, hour, hours', '3600', ACCEPTED),
  unit('d, day, days', '86400', ACCEPTED),
  unit('week, weeks', '604800', OWN),
]
const BARE = unit('', ONE, OWN)

/** Every unit that is read, by kind. */
export const UNITS: Readonly<Record<Kind, readonly Unit[]>> = {
  mass: [
    unit('kg', ONE, SI),
    unit('g', '0.001', SI),
    unit('t, tonne, tonnes', '1000', ACCEPTED),
    unit('lb, lbs', POUND, B8),
    unit('oz', per(POUND, '16'), B8),
  ],
  length: LENGTHS,
  distance: LENGTHS,
  altitude: LENGTHS,
  area: [
    unit('m²', ONE, SI),
    unit('cm²', '0.0001', SI),
    unit('mm²', '0.000001', SI),
    unit('ft², sq ft, sqft', by(FOOT, FOOT), B8),
    unit('in², sq in', by(INCH, INCH), B8),
  ],
  volume: [
    unit('l, L, litre, litres, liter, liters', '0.001', ACCEPTED),
    unit('ml, mL', '0.000001', ACCEPTED),
    unit('cm³, cc, ccm', '0.000001', SI),
    unit('dm³', '0.001', SI),
    unit('m³', ONE, SI),
    unit('US gal, gal', US_GALLON, B8),
    unit('imp gal, UK gal', IMPERIAL_GALLON, B8),
    unit('in³, cu in', by(INCH, INCH, INCH), B8),
    unit('ft³, cu ft', by(FOOT, FOOT, FOOT), B8),
  ],
  speed: [unit('km/h, kph, kmh', KMH, ACCEPTED), unit('m/s', ONE, SI), unit('mph, mi/h', MPH, B8), unit('ft/s', FOOT, B8)],
  acceleration: [
    unit('m/s²', ONE, SI),
    unit('g', GRAVITY, B8),
    unit('ft/s²', FOOT, B8),
    unit('km/h/s', KMH, ACCEPTED),
    unit('mph/s', MPH, B8),
  ],
  force: [unit('N', ONE, SI), unit('daN', '10', SI), unit('kN', '1000', SI), unit('lbf', POUND_FORCE, B8), unit('kgf, kp', GRAVITY, B8)],
  torque: [
    unit('Nm, N·m', ONE, SI),
    unit('kNm, kN·m', '1000', SI),
    unit('daNm, daN·m', '10', SI),
    unit('lb·ft, lbf·ft, ft·lb, ft·lbf, lbft, ftlb', by(POUND_FORCE, FOOT), B8),
    unit('lb·in, lbf·in, in·lb, in·lbf', by(POUND_FORCE, INCH), B8),
    unit('kgf·m, kgfm, kpm, kp·m, mkp', GRAVITY, B8),
  ],
  power: [
    unit('kW', '1000', SI),
    unit('W', ONE, SI),
    unit('MW', '1000000', SI),
    unit('hp, bhp', by('550', FOOT, POUND_FORCE), B8),
    unit('PS, ch, CV', by('75', GRAVITY), B8),
  ],
  energy: [
    unit('kWh, kW·h', KWH, ACCEPTED),
    unit('Wh, W·h', '3600', ACCEPTED),
    unit('MWh', '3600000000', ACCEPTED),
    unit('J', ONE, SI),
    unit('kJ', '1000', SI),
    unit('MJ', '1000000', SI),
    unit('mJ', '0.001', SI),
  ],
  pressure: [
    unit('bar', '100000', B8),
    unit('mbar', '100', B8),
    unit('Pa', ONE, SI),
    unit('hPa', '100', SI),
    unit('kPa', '1000', SI),
    unit('MPa, N/mm²', '1000000', SI),
    unit('kgf/cm², kp/cm², at', by(GRAVITY, '10000'), B8),
    unit('atm', '101325', B8),
    unit('psi, lbf/in²', per(POUND_FORCE, by(INCH, INCH)), B8),
  ],
  angle: [
    unit('°, deg, degree, degrees', DEGREE, ACCEPTED),
    unit('rad', ONE, SI),
    unit('mrad', '0.001', SI),
    unit('arcmin', per(DEGREE, '60'), ACCEPTED),
  ],
  slope: [
    unit('%', '0.01', SI),
    unit('°, deg, degree, degrees', DEGREE, ACCEPTED, 'tangent'),
    unit('1:', ONE, OWN, 'inverse'),
    unit('m/m', ONE, OWN),
  ],
  'rotational speed': [
    unit('rpm, 1/min, r/min, rev/min, min-1', RPM, B8),
    unit('rad/s', ONE, SI),
    unit('Hz, r/s, rev/s', by('2', PI), SI),
    unit('°/s, deg/s', DEGREE, ACCEPTED),
  ],
  temperature: [
    { ...unit('°C, degC, deg C', ONE, SI), shift: exact('273.15') },
    unit('K', ONE, SI),
    { ...unit('°F, degF, deg F', '5/9', B8), shift: by('459.67', '5/9') },
  ],
  'temperature difference': [unit('K', ONE, SI), unit('Δ°C, ΔK', ONE, SI), unit('Δ°F', '5/9', B8)],
  voltage: [unit('V', ONE, SI), unit('mV', '0.001', SI), unit('kV', '1000', SI)],
  current: [unit('A', ONE, SI), unit('mA', '0.001', SI), unit('kA', '1000', SI)],
  charge: [unit('Ah, A·h', '3600', B8), unit('mAh', '3.6', B8), unit('C, A·s', ONE, SI)],
  resistance: [
    unit('Ω, ohm, Ohm, ohms', ONE, SI),
    unit('mΩ, mohm, mOhm', '0.001', SI),
    unit('µΩ, µohm, uΩ, uohm', '0.000001', SI),
    unit('kΩ, kohm, kOhm', '1000', SI),
    unit('MΩ, Mohm, MOhm', '1000000', SI),
    unit('GΩ, Gohm, GOhm', '1000000000', SI),
  ],
  capacitance: [
    unit('F', ONE, SI),
    unit('mF', '0.001', SI),
    unit('µF, uF', '0.000001', SI),
    unit('nF', '0.000000001', SI),
    unit('pF', '0.000000000001', SI),
  ],
  inductance: [unit('H', ONE, SI), unit('mH', '0.001', SI), unit('µH, uH', '0.000001', SI), unit('nH', '0.000000001', SI)],
  'conductor size': [
    unit('mm²', '0.000001', SI),
    unit('AWG', ONE, 'ASTM B258', 'gauge'),
    unit('kcmil, MCM', per(by('1000', PI, INCH, INCH), '4000000'), B8),
    unit('cm²', '0.0001', SI),
    unit('m²', ONE, SI),
  ],
  time: TIMES,
  duration: [...TIMES, unit('year, years, yr', '31536000', B8)],
  money: [unit('€, EUR, euro, euros', ONE, OWN)],
  'money per energy': [
    unit('€/kWh, EUR/kWh', per(ONE, KWH), ACCEPTED),
    unit('ct/kWh, cent/kWh', per('0.01', KWH), ACCEPTED),
    unit('€/MWh, EUR/MWh', per('0.001', KWH), ACCEPTED),
    unit('€/J, EUR/J', ONE, SI),
  ],
  ratio: [BARE, unit(':1', ONE, OWN)],
  share: [unit('%', '0.01', SI), BARE],
  count: [BARE],
  consumption: [
    unit('Wh/km', '3.6', ACCEPTED),
    unit('kWh/100km', '36', ACCEPTED),
    unit('kWh/km', '3600', ACCEPTED),
    unit('J/m', ONE, SI),
    unit('MJ/km, kJ/m', '1000', SI),
    unit('Wh/mi, Wh/mile', per('3600', MILE), B8),
    unit('kWh/100mi', per(KWH, by('100', MILE)), B8),
    unit('kWh/mi, kWh/mile', per(KWH, MILE), B8),
    unit('mi/kWh, miles/kWh', per(KWH, MILE), B8, 'inverse'),
    unit('km/kWh', per(KWH, '1000'), ACCEPTED, 'inverse'),
  ],
  stiffness: [
    unit('N/mm, kN/m', '1000', SI),
    unit('N/m', ONE, SI),
    unit('lbf/in, lb/in', per(POUND_FORCE, INCH), B8),
    unit('kgf/mm', by(GRAVITY, '1000'), B8),
  ],
  'rotational stiffness': [
    unit('Nm/°, Nm/deg, N·m/°, N·m/deg', per(ONE, DEGREE), ACCEPTED),
    unit('Nm/rad, N·m/rad', ONE, SI),
    unit('kNm/rad, kN·m/rad', '1000', SI),
    unit('lb·ft/°, lb·ft/deg, lbf·ft/deg, ft·lb/deg', per(by(POUND_FORCE, FOOT), DEGREE), B8),
  ],
  flow: [
    unit('l/min, L/min, lpm', per('0.001', '60'), ACCEPTED),
    unit('l/s, L/s', '0.001', ACCEPTED),
    unit('l/h, L/h', per('0.001', '3600'), ACCEPTED),
    unit('m³/h', '1/3600', ACCEPTED),
    unit('m³/s', ONE, SI),
    unit('gpm, US gal/min, gal/min', per(US_GALLON, '60'), B8),
    unit('cfm, ft³/min', per(by(FOOT, FOOT, FOOT), '60'), B8),
  ],
  'moment of inertia': [
    unit('kg·m², kgm²', ONE, SI),
    unit('kg·cm², kgcm²', '0.0001', SI),
    unit('g·m², gm²', '0.001', SI),
    unit('lb·ft²', by(POUND, FOOT, FOOT), B8),
    unit('lb·in²', by(POUND, INCH, INCH), B8),
  ],
  density: [unit('kg/m³', ONE, SI), unit('kg/l, kg/L, g/cm³', '1000', ACCEPTED), unit('lb/ft³', per(POUND, by(FOOT, FOOT, FOOT)), B8)],
  'energy density': [
    unit('Wh/l, Wh/L', '3600000', ACCEPTED),
    unit('kWh/m³', '3600000', ACCEPTED),
    unit('MJ/m³', '1000000', SI),
    unit('J/m³', ONE, SI),
  ],
  'specific energy': [
    unit('Wh/kg', '3600', ACCEPTED),
    unit('kWh/kg', '3600000', ACCEPTED),
    unit('kJ/kg', '1000', SI),
    unit('J/kg', ONE, SI),
  ],
  'heat capacity': [
    unit('kJ/K, kJ/°C', '1000', SI),
    unit('J/K, J/°C', ONE, SI),
    unit('MJ/K', '1000000', SI),
    unit('Wh/K, Wh/°C', '3600', ACCEPTED),
  ],
  'thermal conductance': [unit('W/K, W/°C', ONE, SI), unit('kW/K', '1000', SI), unit('mW/K', '0.001', SI)],
  'speed drag': [unit('N/(km/h)', per(ONE, KMH), ACCEPTED), unit('N/(m/s), N·s/m', ONE, SI), unit('lbf/mph', per(POUND_FORCE, MPH), B8)],
  'air drag': [
    unit('N/(km/h)²', per(ONE, by(KMH, KMH)), ACCEPTED),
    unit('N/(m/s)², N·s²/m²', ONE, SI),
    unit('lbf/mph²', per(POUND_FORCE, by(MPH, MPH)), B8),
  ],
  'rotational drag': [unit('N·m·s, Nm·s, Nms, Nm/(rad/s), N·m·s/rad, Nm·s/rad', ONE, SI), unit('Nm/rpm, N·m/rpm', per(ONE, RPM), B8)],
  'charge rate': [unit('C, 1/h', '1/3600', OWN), unit('1/s', ONE, SI)],
  frequency: [unit('Hz, 1/s', ONE, SI), unit('kHz', '1000', SI), unit('MHz', '1000000', SI)],
  number: [BARE],
}
