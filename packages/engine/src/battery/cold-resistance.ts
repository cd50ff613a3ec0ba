import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'

export const ROOM = standard('room-temperature', 'temperature at which cells are rated', 'T_25', 298.15, 'K', {
  work: 'definition',
  place: '25 °C',
})
/** Length of the pulse by which a cell's resistance is stated. */
export const TEN_SECONDS = standard('ten-seconds', 'ten seconds', 't_10', 10, 's', { work: 'definition', place: 'length of the pulse' })
/** Metal, tabs and leads do not warm away. */
export const WARM_FLOOR = standard('warm-resistance', 'least share of the 25 °C resistance', 'f_warm', 0.9, '1', {
  work: 'practice',
  place: 'metal, tab and lead resistance does not fall',
  mark: 'common practice',
})

/** Cell resistance at a temperature over that at 25 °C. Holds for one current: cold resistance falls as the current rises, so in the cold it is cautious for power. */
export const coldFactor = formula(
  {
    id: 'cold-factor',
    label: 'Resistance against temperature',
    gives: { symbol: 'f_T', unit: '1', label: 'resistance over that at 25 °C', shows: 'ratio' },
    takes: {
      coefficient: { symbol: 'B', unit: 'K', label: 'cold coefficient' },
      temperature: { symbol: 'T', unit: 'K', label: 'cell temperature', shows: 'temperature', holds: [243.15, 333.15] },
    },
    uses: [ROOM, WARM_FLOOR],
    text: 'f_T = max(f_warm, exp(B · (1 / T − 1 / T_25)))',
    source: { work: 'kollmeyer-2018', place: 'fitted to pulses at 25, 0 and −10 °C; floor on the warm side' },
    leavesOut: 'The fall of cold resistance with current (B 2370 K at 2C, 2140 K at 4C).',
    proof: {
      examples: [
        {
          takes: { coefficient: 2600, temperature: 283.15 },
          gives: 1.587,
          within: 5e-4,
          source: { work: 'circuits', place: 'law as printed, recomputed' },
        },
        {
          takes: { coefficient: 2600, temperature: 273.15 },
          gives: 2.221,
          within: 5e-4,
          source: { work: 'circuits', place: 'law as printed, recomputed' },
        },
        {
          takes: { coefficient: 2600, temperature: 268.15 },
          gives: 2.6528,
          within: 5e-5,
          source: { work: 'circuits', place: 'law as printed, recomputed' },
        },
        {
          takes: { coefficient: 2600, temperature: 253.15 },
          gives: 4.712,
          within: 5e-4,
          source: { work: 'circuits', place: 'law as printed, recomputed' },
        },
      ],
    },
  },
  ({ coefficient, temperature }) => Math.max(WARM_FLOOR.value, Math.exp(coefficient * (1 / temperature - 1 / ROOM.value))),
)
