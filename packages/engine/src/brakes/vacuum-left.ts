import { DRY_AIR_CONSTANT, pressureAtAltitude, STANDARD_PRESSURE, STANDARD_TEMPERATURE, TEMPERATURE_LAPSE } from '../physics/air.ts'
import { GRAVITY } from '../physics/gravity.ts'
import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { pressure, volume, workedBy } from './symbols.ts'

const hand = workedBy('gas')
const ISO_2533 = { work: 'iso-2533', place: 'gradient layer', mark: 'from memory' } as const
const SEA = standard('brake.sea-level-pressure', 'Sea-level pressure of the standard atmosphere', 'p_s', STANDARD_PRESSURE, 'Pa', ISO_2533)
const WARM = standard(
  'brake.sea-level-temperature',
  'Sea-level temperature of the standard atmosphere',
  'T_s',
  STANDARD_TEMPERATURE,
  'K',
  ISO_2533,
)
const LAPSE = standard('brake.temperature-lapse', 'Fall of temperature with height', 'ℓ', TEMPERATURE_LAPSE, 'K/m', ISO_2533)
const GAS = standard('brake.dry-air-constant', 'Specific gas constant of dry air', 'R', DRY_AIR_CONSTANT, 'J/(kg·K)', ISO_2533)

/** Pressure of the air on a road: a vacuum booster works against it, so a pass takes assist away. */
export const airPressure = formula(
  {
    id: 'air-pressure-at-altitude',
    label: 'Pressure of the air at a height',
    gives: pressure('p_0', 'pressure of the air'),
    takes: { altitude: { symbol: 'h', unit: 'm', label: 'height of the road', shows: 'altitude', holds: [-500, 6000] } },
    uses: [SEA, WARM, LAPSE, GAS, GRAVITY],
    text: 'p_0 = p_s · (1 − ℓ · h / T_s)^(g / (R · ℓ))',
    source: ISO_2533,
    leavesOut: 'The weather, worth 3 %.',
    proof: {
      examples: [
        { takes: { altitude: 300 }, gives: 101325 - 3550, within: 30, source: hand('35.5 mbar for the first 300 m') },
        { takes: { altitude: 1000 }, gives: 89875, within: 15, source: ISO_2533 },
      ],
    },
  },
  ({ altitude }) => pressureAtAltitude(altitude),
)
/** Pressure below the air, as a gauge shows it, and back. */
export const belowAir = formula(
  {
    id: 'pressure-below-air',
    label: 'Absolute pressure of a vacuum below the air',
    gives: pressure('p', 'absolute pressure'),
    takes: { atmosphere: pressure('p_0', 'pressure of the air'), depression: pressure('Δp', 'below the air') },
    text: 'p = max(0, p_0 − Δp)',
    source: { work: 'definition', place: 'difference of pressures' },
    proof: { none: 'definition' },
  },
  ({ atmosphere, depression }) => Math.max(0, atmosphere - depression),
)
export const depressionReached = formula(
  {
    id: 'vacuum-reached',
    label: 'Vacuum the pump reaches',
    gives: pressure('Δp', 'below the air'),
    takes: { atmosphere: pressure('p_0', 'pressure of the air'), least: pressure('p_u', 'lowest pressure the pump reaches') },
    text: 'Δp = p_0 − p_u',
    source: { work: 'definition', place: 'difference of pressures' },
    proof: { none: 'definition' },
  },
  ({ atmosphere, least }) => atmosphere - least,
)

/** Hard stops until no vacuum is left, with no pump running: the reserve’s law solved for their number. */
export const applicationsLeft = formula(
  {
    id: 'applications-left',
    label: 'Assisted stops left without the pump',
    gives: { symbol: 'n', unit: '1', label: 'assisted stops left', shows: 'number' },
    takes: {
      volume: volume('V', 'tank, hoses and booster together'),
      swept: volume('V_s', 'air one hard stop lets in'),
      dead: { ...volume('V_d', 'dead volume behind the diaphragm'), holds: [1e-6, 2e-3] },
      start: pressure('p', 'absolute pressure before'),
      atmosphere: pressure('p_0', 'pressure of the air'),
    },
    text: 'a = max(0.001, 1 − V_d / V)\nq = p_0 · (V_d + V_s) / V_d\nn = ln((q − p_0) / (q − p)) / ln(a)',
    source: { work: 'gas', place: 'air let in at one temperature' },
    leavesOut: 'Leaks. The last of them are barely assisted: count on fewer.',
    proof: {
      examples: [
        {
          takes: { volume: 5.5e-3, swept: 1.3e-3, dead: 0.15e-3, start: 80.39e3, atmosphere: 100e3 },
          gives: 0.81,
          within: 0.005,
          source: hand('tank and booster 5.5 L after two stops of 1.3 L: the third takes the last of it'),
        },
        {
          takes: { volume: 5.5e-3, swept: 1.3e-3, dead: 0.15e-3, start: 30e3, atmosphere: 100e3 },
          gives: 2.81,
          within: 0.005,
          source: hand('the same from 30 kPa'),
        },
      ],
    },
  },
  ({ volume, swept, dead, start, atmosphere }) => {
    const q = (atmosphere * (dead + swept)) / dead
    return Math.log((q - atmosphere) / (q - start)) / Math.log(Math.max(0.001, 1 - dead / volume))
  },
)
