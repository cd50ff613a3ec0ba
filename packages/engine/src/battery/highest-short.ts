import { formula } from '../working/formula.ts'
import { WARM_FLOOR } from './cold-resistance.ts'
import { amps, ohms, volts } from './symbols.ts'

/** Highest current a short behind a fuse can draw: full, warm, no cable in the way. Every box of a string draws the same, for voltage and resistance go together. */
export const highestShort = formula(
  {
    id: 'highest-short',
    label: 'Highest short-circuit current',
    gives: amps('I_k', 'highest prospective current'),
    takes: { full: volts('U_full', 'full'), cells: ohms('R_0', 'ohmic resistance of all cells, 25 °C') },
    uses: [WARM_FLOOR],
    text: 'I_k = U_full / (f_warm · R_0)',
    source: { work: 'circuits', place: 'Ohm’s law' },
    leavesOut:
      'Links, cable, fuse and contactors, which lower it; the first millisecond, in which inductance holds it back and cells may give more.',
    proof: {
      examples: [
        {
          takes: { full: 403.2, cells: 48e-3 },
          gives: 9333,
          within: 1,
          source: { work: 'circuits', place: '403.2 V, 96 cells of 1 mΩ, two side by side; recomputed' },
        },
      ],
    },
  },
  ({ full, cells }) => full / (WARM_FLOOR.value * cells),
)
