import type { Kind } from '@ampwright/engine'
import { fromSI } from './conversion.ts'
import { unitOf } from './unit-lookup.ts'
import type { Unit } from './units.ts'

/** Which units a reader is at home with. */
export type System = 'metric' | 'us' | 'uk'

/** Metric, US, UK; one for all where the trade agrees. */
const SHOWN: Readonly<Record<Kind, string | readonly [metric: string, us: string, uk: string]>> = {
  mass: ['kg', 'lb', 'kg'],
  length: ['mm', 'in', 'mm'],
  distance: ['km', 'mi', 'mi'],
  altitude: ['m', 'ft', 'm'],
  area: ['m²', 'ft²', 'm²'],
  volume: ['l', 'US gal', 'l'],
  speed: ['km/h', 'mph', 'mph'],
  acceleration: ['m/s²', 'ft/s²', 'm/s²'],
  force: ['N', 'lbf', 'N'],
  torque: ['Nm', 'lb·ft', 'Nm'],
  power: ['kW', 'hp', 'kW'],
  energy: 'kWh',
  pressure: ['bar', 'psi', 'psi'],
  angle: '°',
  slope: '%',
  'rotational speed': 'rpm',
  temperature: ['°C', '°F', '°C'],
  'temperature difference': ['K', 'Δ°F', 'K'],
  voltage: 'V',
  current: 'A',
  charge: 'Ah',
  resistance: 'mΩ',
  capacitance: 'µF',
  inductance: 'mH',
  'conductor size': ['mm²', 'kcmil', 'mm²'],
  time: 's',
  duration: 'h',
  money: '€',
  'money per energy': '€/kWh',
  ratio: '',
  share: '%',
  count: '',
  consumption: ['Wh/km', 'Wh/mi', 'Wh/mi'],
  stiffness: ['N/mm', 'lbf/in', 'N/mm'],
  'rotational stiffness': ['Nm/°', 'lb·ft/°', 'Nm/°'],
  flow: ['l/min', 'gpm', 'l/min'],
  'moment of inertia': ['kg·m²', 'lb·ft²', 'kg·m²'],
  density: ['kg/m³', 'lb/ft³', 'kg/m³'],
  'specific energy': 'Wh/kg',
  'energy density': 'Wh/l',
  'heat capacity': 'kJ/K',
  'thermal conductance': 'W/K',
  'speed drag': ['N/(km/h)', 'lbf/mph', 'N/(km/h)'],
  'air drag': ['N/(km/h)²', 'lbf/mph²', 'N/(km/h)²'],
  'rotational drag': 'N·m·s',
  'charge rate': 'C',
  frequency: 'Hz',
  number: '',
}

/** Kinds that span many powers of ten: each unit from this SI value up, smallest first. One column of a table keeps to the unit above. */
const LADDERS: Partial<Record<Kind, readonly (readonly [from: number, unit: string])[]>> = {
  resistance: [
    [0, 'µΩ'],
    [1e-4, 'mΩ'],
    [1, 'Ω'],
    [1e3, 'kΩ'],
    [1e6, 'MΩ'],
    [1e9, 'GΩ'],
  ],
  capacitance: [
    [0, 'pF'],
    [1e-9, 'nF'],
    [1e-6, 'µF'],
    [1e-2, 'mF'],
    [1, 'F'],
  ],
  inductance: [
    [0, 'nH'],
    [1e-6, 'µH'],
    [1e-3, 'mH'],
    [1, 'H'],
  ],
  power: [
    [0, 'W'],
    [1e3, 'kW'],
  ],
  energy: [
    [0, 'J'],
    [360, 'Wh'],
    [3.6e6, 'kWh'],
  ],
  frequency: [
    [0, 'Hz'],
    [1e3, 'kHz'],
  ],
  voltage: [
    [0, 'mV'],
    [1, 'V'],
  ],
  current: [
    [0, 'mA'],
    [1, 'A'],
  ],
  time: [
    [0, 'ms'],
    [1, 's'],
    [120, 'min'],
    [7200, 'h'],
    [259200, 'd'],
  ],
  duration: [
    [0, 's'],
    [120, 'min'],
    [7200, 'h'],
    [259200, 'd'],
  ],
}

const known = (kind: Kind, text: string): Unit => {
  const unit = unitOf(kind, text)
  if (!unit) throw new RangeError(`'${text}' is not a unit of ${kind}`)
  return unit
}

/** The unit a kind is shown in; with a value, the step of the ladder that suits it (800 W, 44 kW). US power keeps to hp throughout. */
export function shownUnit(kind: Kind, system: System, value?: number): Unit {
  const shown = SHOWN[kind],
    text = typeof shown === 'string' ? shown : shown[system === 'metric' ? 0 : system === 'us' ? 1 : 2]
  const ladder = kind === 'power' && system === 'us' ? undefined : LADDERS[kind]
  const step = value === undefined || value === 0 ? undefined : ladder?.findLast(([from]) => Math.abs(value) >= from)
  return known(kind, step?.[1] ?? text)
}

/** Any unit of a kind by its spelling. Throws where there is none: units asked for by a program are known beforehand. */
export const namedUnit = known

/**
 * The unit to show a kind in and how to get there from SI: for axes, table columns and fields, which keep one unit whatever the value.
 * Where the greatest value is known, the step of the ladder that suits it.
 */
export function displayUnit(
  kind: Kind,
  system: System,
  greatest?: number,
): { readonly unit: string; readonly fromSI: (value: number) => number } {
  const unit = shownUnit(kind, system, greatest)
  return { unit: unit.spellings[0], fromSI: value => fromSI(value, unit) }
}
