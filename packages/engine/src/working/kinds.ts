/**
 * The kinds of quantity this project handles, each with the coherent SI unit its values are kept in.
 *
 * A kind is finer than a dimension where people write it differently: a temperature is not a temperature difference, a slope is not
 * a percentage, neither a driving distance nor a height above the sea is a length on a drawing.
 */
export const KINDS = {
  mass: { unit: 'kg', label: 'mass' },
  length: { unit: 'm', label: 'length' },
  distance: { unit: 'm', label: 'driving distance' },
  altitude: { unit: 'm', label: 'height above sea level' },
  area: { unit: 'm²', label: 'area' },
  volume: { unit: 'm³', label: 'volume' },
  speed: { unit: 'm/s', label: 'speed' },
  acceleration: { unit: 'm/s²', label: 'acceleration' },
  force: { unit: 'N', label: 'force' },
  torque: { unit: 'N·m', label: 'torque' },
  power: { unit: 'W', label: 'power' },
  energy: { unit: 'J', label: 'energy' },
  pressure: { unit: 'Pa', label: 'pressure' },
  angle: { unit: 'rad', label: 'angle' },
  slope: { unit: '1', label: 'slope' },
  'rotational speed': { unit: 'rad/s', label: 'rotational speed' },
  temperature: { unit: 'K', label: 'temperature' },
  'temperature difference': { unit: 'K', label: 'temperature difference' },
  voltage: { unit: 'V', label: 'voltage' },
  current: { unit: 'A', label: 'current' },
  charge: { unit: 'C', label: 'charge' },
  resistance: { unit: 'Ω', label: 'resistance' },
  capacitance: { unit: 'F', label: 'capacitance' },
  inductance: { unit: 'H', label: 'inductance' },
  'conductor size': { unit: 'm²', label: 'conductor size' },
  time: { unit: 's', label: 'time' },
  duration: { unit: 's', label: 'duration' },
  money: { unit: '€', label: 'amount of money' },
  'money per energy': { unit: '€/J', label: 'price of energy' },
  ratio: { unit: '1', label: 'ratio' },
  share: { unit: '1', label: 'share' },
  count: { unit: '1', label: 'count' },
  consumption: { unit: 'J/m', label: 'consumption' },
  stiffness: { unit: 'N/m', label: 'stiffness' },
  'rotational stiffness': { unit: 'N·m/rad', label: 'rotational stiffness' },
  flow: { unit: 'm³/s', label: 'flow' },
  'moment of inertia': { unit: 'kg·m²', label: 'moment of inertia' },
  density: { unit: 'kg/m³', label: 'density' },
  'specific energy': { unit: 'J/kg', label: 'energy per mass' },
  'energy density': { unit: 'J/m³', label: 'energy per volume' },
  'heat capacity': { unit: 'J/K', label: 'heat capacity' },
  'thermal conductance': { unit: 'W/K', label: 'thermal conductance' },
  'speed drag': { unit: 'N·s/m', label: 'drag per speed' },
  'air drag': { unit: 'N·s²/m²', label: 'drag per speed squared' },
  'rotational drag': { unit: 'N·m·s', label: 'torque per rotational speed' },
  'charge rate': { unit: '1/s', label: 'charge rate' },
  frequency: { unit: '1/s', label: 'frequency' },
  number: { unit: '1', label: 'number' },
} as const satisfies Record<string, { unit: string; label: string }>

export type Kind = keyof typeof KINDS
/** The kind a bare SI unit is shown as when nothing finer is said. */
const BY_UNIT: Readonly<Record<string, Kind>> = {
  ...(Object.fromEntries(
    Object.entries(KINDS)
      .map(([kind, { unit }]) => [unit, kind])
      .reverse(),
  ) as Record<string, Kind>),
  '1': 'number',
}
export const kindOf = (unit: string): Kind | undefined => BY_UNIT[unit]
