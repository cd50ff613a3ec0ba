import { at } from '../numerics/curve.ts'
import { formula } from '../working/formula.ts'

const rate = { symbol: 'c', unit: ['K', '1/s'], label: 'charging current over temperature, as capacity per hour', curve: true } as const
const temperature = { symbol: 'T', unit: 'K', label: 'coldest cell', shows: 'temperature', holds: [233.15, 343.15] } as const
const SOURCE = {
  work: 'apl48-manual',
  place: 'charging current against temperature; planning line below makers’ tables',
  mark: 'common practice',
} as const

const HALF_WHEN_COLD = { x: Float64Array.of(273.15, 298.15), y: Float64Array.of(0.5, 0.5) }

/** Current cells take while charging, by the coldest cell. Counts for regeneration too. */
export const chargeAcceptance = formula(
  {
    id: 'charge-acceptance',
    label: 'Charging current the cells take at a temperature',
    gives: { symbol: 'I_acc', unit: 'A', label: 'charging current taken' },
    takes: {
      rate,
      temperature,
      capacity: { symbol: 'Q', unit: 'C', label: 'capacity of the pack' },
      most: { symbol: 'I_ch', unit: 'A', label: 'charging current allowed warm' },
    },
    text: 'I_acc = min(I_ch, c(T) · Q)',
    source: SOURCE,
    leavesOut: 'The fall towards full charge.',
    proof: {
      examples: [
        {
          takes: {
            rate: { x: Float64Array.of(273.15, 278.15), y: Float64Array.of(0.1 / 3600, 0.1 / 3600) },
            temperature: 276.15,
            capacity: 378000,
            most: 52,
          },
          gives: 10.5,
          within: 1e-9,
          source: { work: 'apl48-manual', place: '0.1C from 0 to 5 °C, for a 105 Ah cell' },
        },
      ],
    },
  },
  ({ rate, temperature, capacity, most }) => Math.min(most, at(rate, temperature) * capacity),
)

/** The same as a share of the charging current allowed when warm. */
export const chargeShare = formula(
  {
    id: 'charge-share',
    label: 'Share of the charging current the cells take',
    gives: { symbol: 's_ch', unit: '1', label: 'share of the charging current', shows: 'share' },
    takes: {
      rate,
      temperature,
      capacity: { symbol: 'Q', unit: 'C', label: 'capacity of the pack' },
      most: { symbol: 'I_ch', unit: 'A', label: 'charging current allowed warm' },
    },
    text: 's_ch = min(1, c(T) · Q / I_ch)',
    source: SOURCE,
    leavesOut: 'The fall towards full charge.',
    proof: { none: 'charge acceptance over the current allowed warm' },
  },
  ({ rate, temperature, capacity, most }) => Math.min(1, (at(rate, temperature) * capacity) / most),
)

/** The share once the BMS has its say: nothing below its lowest temperature, and more of a lower limit in the cold. */
export const heldChargeShare = formula(
  {
    id: 'held-charge-share',
    label: 'Share of the charging current the BMS lets in',
    gives: { symbol: 's', unit: '1', label: 'share of the current the BMS allows', shows: 'share' },
    takes: {
      share: { symbol: 's_ch', unit: ['K', '1'], label: 'share of the charging current of the cells over temperature', curve: true },
      temperature,
      cells: { symbol: 'I_ch', unit: 'A', label: 'charging current of the cells, warm' },
      held: { symbol: 'I_set', unit: 'A', label: 'charging current cells and BMS allow, warm' },
      lowest: { symbol: 'T_min', unit: 'K', label: 'no charging below', shows: 'temperature' },
    },
    text: 's = { 0 if T < T_min; min(1, s_ch(T) · I_ch / I_set) otherwise }',
    source: { work: 'definition', place: 'the lesser governs' },
    proof: {
      examples: [
        {
          takes: { share: HALF_WHEN_COLD, temperature: 278.15, cells: 120, held: 100, lowest: 273.15 },
          gives: 0.6,
          within: 1e-12,
          source: { work: 'definition', place: 'half of 120 A is 60 A, six tenths of 100 A' },
        },
        {
          takes: { share: HALF_WHEN_COLD, temperature: 278.15, cells: 120, held: 100, lowest: 288.15 },
          gives: 0,
          within: 1e-12,
          source: { work: 'definition', place: 'nothing below the lowest temperature' },
        },
      ],
    },
  },
  ({ share, temperature, cells, held, lowest }) => (temperature < lowest ? 0 : Math.min(1, (at(share, temperature) * cells) / held)),
)
