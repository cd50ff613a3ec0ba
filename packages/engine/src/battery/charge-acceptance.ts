import { at } from '../numerics/curve.ts'
import { formula } from '../working/formula.ts'

const rate = { symbol: 'c', unit: ['K', '1/s'], label: 'charging current over temperature, as capacity per hour', curve: true } as const
const temperature = { symbol: 'T', unit: 'K', label: 'coldest cell', shows: 'temperature', holds: [233.15, 343.15] } as const
const SOURCE = {
  work: 'apl48-manual',
  place: 'charging current against temperature; planning line below makers’ tables',
  mark: 'common practice',
} as const

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
