/** Sea-level temperature [K], sea-level pressure [Pa] and temperature lapse [K/m] of the standard atmosphere. ISO 2533 (from memory). */
export const STANDARD_TEMPERATURE = 288.15
export const STANDARD_PRESSURE = 101325
export const TEMPERATURE_LAPSE = 0.0065
/** Specific gas constant of dry air [J/(kg·K)]. ISO 2533 (from memory). */
export const DRY_AIR_CONSTANT = 287.05287
/** Acceleration of free fall the standard atmosphere is built on [m/s²]. ISO 2533 (from memory). */
const GRAVITY = 9.80665

/**
 * Temperature [K] of the standard atmosphere at an altitude [m]: T = T₀ − L·h.
 *
 * Holds from −2000 to 11 000 m. Source: ISO 2533, gradient layer (from memory). Example: 1000 m → 281.65 K.
 */
export const standardTemperature = (altitude: number): number => STANDARD_TEMPERATURE - TEMPERATURE_LAPSE * altitude

/**
 * Air pressure [Pa] of the standard atmosphere at an altitude [m]: p = p₀·(1 − L·h/T₀)^(g/(R·L)), in numbers 101 325·(1 − 2.25577e-5·h)^5.25588.
 *
 * Holds from −2000 to 11 000 m; NaN above 44 km. Leaves out the weather, worth ±3 %. Source: ISO 2533, gradient layer (from memory).
 */
export const pressureAtAltitude = (altitude: number): number =>
  STANDARD_PRESSURE * (1 - (TEMPERATURE_LAPSE * altitude) / STANDARD_TEMPERATURE) ** (GRAVITY / (DRY_AIR_CONSTANT * TEMPERATURE_LAPSE))

/**
 * Density [kg/m³] of dry air from pressure [Pa] and temperature [K]: ρ = p/(R·T).
 *
 * Source: ideal gas with the constant of ISO 2533 (from memory). Example: 101 325 Pa, 288.15 K → 1.2250 kg/m³. Moist air: × `moistAirFactor`.
 */
export const dryAirDensity = (pressure: number, temperature: number): number => pressure / (DRY_AIR_CONSTANT * temperature)

/**
 * Factor on the density of dry air for water vapour of a partial pressure [Pa] in air of a pressure [Pa]: 1 − 0.378·e/p.
 *
 * Vapour is lighter than air; 0.378 is one minus the ratio of their molar masses, 0.622. Source: ideal gases, elementary.
 * Example: saturated at 30 °C (4.25 kPa) and 101 325 Pa → 0.984.
 */
export const moistAirFactor = (vapourPressure: number, pressure: number): number => 1 - (0.378 * vapourPressure) / pressure

/**
 * Saturation pressure [Pa] of water vapour over water at a temperature [K]: 611.2·exp(17.62·t/(243.12 + t)), t in °C.
 *
 * Holds from −45 to 60 °C, within 0.4 % of steam tables from 0 to 40 °C. Times relative humidity it gives the vapour pressure.
 * Source: WMO-No. 8, Guide to Instruments and Methods of Observation, annex on humidity formulae (from memory). Example: 20 °C → 2333 Pa (steam tables 2339 Pa).
 */
export function saturationPressure(temperature: number): number {
  const celsius = temperature - 273.15
  return 611.2 * Math.exp((17.62 * celsius) / (243.12 + celsius))
}
