/** Name and unit of a column. The unit is spelled as in the file, or, after an underscore, as the list below spells it. */
export type Heading = { readonly name: string; readonly unit?: string }

/** What loggers write behind an underscore, where brackets, slashes and signs are awkward. `C` stays as it is: it may be °C or coulombs. */
const SUFFIXES: ReadonlyMap<string, string> = new Map([
  ...[
    's',
    'ms',
    'min',
    'h',
    'm',
    'mm',
    'km',
    'm2',
    'kg',
    't',
    'N',
    'kN',
    'Nm',
    'V',
    'mV',
    'A',
    'mA',
    'W',
    'kW',
    'Wh',
    'kWh',
    'Ah',
    'mAh',
    'J',
    'kJ',
    'MJ',
  ].map(u => [u, u] as const),
  ...['Pa', 'kPa', 'bar', 'mbar', 'K', 'C', 'Hz', 'rpm', 'rad', 'deg', 'F', 'H', 'mph', 'psi', 'lb', 'ft', 'in'].map(u => [u, u] as const),
  ['kmh', 'km/h'],
  ['kph', 'km/h'],
  ['mps', 'm/s'],
  ['mps2', 'm/s2'],
  ['degC', '°C'],
  ['degF', '°F'],
  ['pct', '%'],
  ['percent', '%'],
  ['Ohm', 'Ω'],
  ['ohm', 'Ω'],
  ['mOhm', 'mΩ'],
  ['mohm', 'mΩ'],
  ['radps', 'rad/s'],
  ['Whkm', 'Wh/km'],
])

/**
 * Name and unit from a column's heading: `speed [km/h]`, `speed (km/h)` or `speed_kmh`; anything else is all name.
 *
 * Empty brackets say that there is no unit. Only a known unit counts after an underscore, so `road_load` is a name.
 */
export function headingOf(text: string): Heading {
  const heading = text.trim()
  const opening = heading.endsWith(']') ? '[' : heading.endsWith(')') ? '(' : undefined
  const at = opening === undefined ? -1 : heading.lastIndexOf(opening)
  if (at > 0) {
    const name = heading.slice(0, at).trim()
    const unit = heading.slice(at + 1, -1).trim()
    if (name !== '') return unit === '' ? { name } : { name, unit }
  }
  const underscore = heading.lastIndexOf('_')
  const unit = underscore > 0 ? SUFFIXES.get(heading.slice(underscore + 1)) : undefined
  return unit === undefined ? { name: heading } : { name: heading.slice(0, underscore), unit }
}

/** A heading as it is written: the unit in brackets; empty brackets where a bare name would be read as having one. */
export function headingText({ name, unit }: Heading): string {
  if (unit !== undefined) return `${name} [${unit}]`
  const bare = headingOf(name)
  return bare.name === name && bare.unit === undefined ? name : `${name} []`
}
