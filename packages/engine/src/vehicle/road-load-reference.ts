import { dryAirDensity } from '../physics/air.ts'
import { standard } from '../working/value.ts'

const GTR = { work: 'un-gtr-15', place: 'Annex 4, 4.5', mark: 'from memory' } as const

/** Reference state of road-load coefficients, and how rolling resistance falls with warmth. */
export const TWENTY = standard('road-load-temperature', 'Reference temperature of road load', 'T_20', 293.15, 'K', GTR)
export const REFERENCE_PRESSURE = standard('road-load-pressure', 'Reference pressure of road load', 'p_ref', 100e3, 'Pa', GTR)
export const PER_KELVIN = standard('rolling-per-kelvin', 'Fall of rolling resistance with air temperature', 'K_0', 8.6e-3, '1/K', GTR)
/** Rotating parts as a share of the mass in running order, where nothing better is known. */
export const ROTATING_SHARE = standard('rotating-share', 'Rotating parts over mass', 's_rot', 0.03, '1', GTR)
/** Air of the reference state. */
export const REFERENCE_DENSITY = standard(
  'road-load-density',
  'Air density at 20 °C and 100 kPa',
  'ρ_ref',
  dryAirDensity(100e3, 293.15),
  'kg/m³',
  GTR,
)
