import {
  DRY_AIR_CONSTANT,
  dryAirDensity,
  pressureAtAltitude,
  STANDARD_PRESSURE,
  STANDARD_TEMPERATURE,
  TEMPERATURE_LAPSE,
} from '../physics/air.ts'
import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { GRAVITY } from './gravity.ts'

const ISO_2533 = { work: 'iso-2533', place: 'gradient layer', mark: 'from memory' } as const
const PRESSURE = standard('sea-level-pressure', 'Sea-level pressure of the standard atmosphere', 'p_0', STANDARD_PRESSURE, 'Pa', ISO_2533)
const TEMPERATURE = standard(
  'sea-level-temperature',
  'Sea-level temperature of the standard atmosphere',
  'T_0',
  STANDARD_TEMPERATURE,
  'K',
  ISO_2533,
)
const LAPSE = standard('temperature-lapse', 'Fall of temperature with height', 'ℓ', TEMPERATURE_LAPSE, 'K/m', ISO_2533)
const GAS = standard('dry-air-constant', 'Specific gas constant of dry air', 'R', DRY_AIR_CONSTANT, 'J/(kg·K)', ISO_2533)

/** Density of the air the car drives in: pressure by altitude, temperature as it is on the day. */
export const airDensity = formula(
  {
    id: 'air-density',
    label: 'Air density',
    gives: { symbol: 'ρ', unit: 'kg/m³', shows: 'density' },
    takes: {
      altitude: { symbol: 'h', unit: 'm', label: 'altitude', shows: 'altitude', holds: [-500, 6000] },
      temperature: { symbol: 'T', unit: 'K', label: 'air temperature', shows: 'temperature', holds: [213.15, 333.15] },
    },
    uses: [PRESSURE, TEMPERATURE, LAPSE, GAS, GRAVITY],
    text: 'p = p_0 · (1 − ℓ · h / T_0)^(g / (R · ℓ))\nρ = p / (R · T)',
    source: ISO_2533,
    leavesOut: 'High and low pressure weather (± 3 %) and humidity (up to 1 % lighter below 20 °C).',
    proof: {
      examples: [
        { takes: { altitude: 0, temperature: 288.15 }, gives: 1.225, within: 0.00005, source: ISO_2533 },
        { takes: { altitude: 1000, temperature: 281.65 }, gives: 1.1116, within: 0.00006, source: ISO_2533 },
        { takes: { altitude: 2000, temperature: 275.15 }, gives: 1.0065, within: 0.00006, source: ISO_2533 },
      ],
    },
  },
  ({ altitude, temperature }) => dryAirDensity(pressureAtAltitude(altitude), temperature),
)

/** Density of air of a pressure and temperature read on the day of a test. */
export const airDensityRead = formula(
  {
    id: 'air-density-read',
    label: 'Air density, pressure and temperature read',
    gives: { symbol: 'ρ', unit: 'kg/m³', shows: 'density' },
    takes: {
      pressure: { symbol: 'p', unit: 'Pa', label: 'air pressure', shows: 'pressure' },
      temperature: { symbol: 'T', unit: 'K', label: 'air temperature', shows: 'temperature' },
    },
    uses: [GAS],
    text: 'ρ = p / (R · T)',
    source: ISO_2533,
    leavesOut: 'Humidity.',
    proof: {
      examples: [
        {
          takes: { pressure: 100e3, temperature: 293 },
          gives: 1.189,
          within: 0.0005,
          source: { work: 'un-gtr-15', place: 'reference conditions', mark: 'from memory' },
        },
        {
          takes: { pressure: 98.21e3, temperature: 293.15 },
          gives: 1.167,
          within: 0.0005,
          source: { work: 'cfr-1066', place: '1066.310: 20 °C, 98.21 kPa' },
        },
      ],
    },
  },
  ({ pressure, temperature }) => dryAirDensity(pressure, temperature),
)
