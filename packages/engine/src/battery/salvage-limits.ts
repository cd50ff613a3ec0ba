import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { many, ohms, volts } from './symbols.ts'

const PRACTICE = { work: 'practice', place: 'acceptance of used modules', mark: 'common practice' } as const
/** Insulation per volt of the whole pack, and how far above it each module must stand. */
const PER_VOLT = standard('insulation-per-volt', 'insulation resistance per volt', 'r_iso', 500, 'Ω/V', {
  work: 'un-r100',
  place: 'alternating or combined circuits',
})
const MARGIN = standard('module-insulation-margin', 'margin of one module', 'f_iso', 5, '1', PRACTICE)

/** Insulation each module must show, for all of them leak side by side. */
export const moduleInsulation = formula(
  {
    id: 'module-insulation',
    label: 'Insulation wanted of one module',
    gives: ohms('R_iso', 'wanted of one module'),
    takes: { modules: { symbol: 'n', unit: '1', label: 'modules', shows: 'count' }, highest: volts('U_max', 'pack voltage when full') },
    uses: [PER_VOLT, MARGIN],
    text: 'R_iso = n · r_iso · U_max · f_iso',
    source: PRACTICE,
    leavesOut: 'Moisture: measure dry, and again after the box is closed.',
    proof: {
      examples: [
        {
          takes: { modules: 16, highest: 403.2 },
          gives: 16.13e6,
          within: 5e3,
          source: { work: 'practice', place: 'sixteen modules, 403.2 V; recomputed' },
        },
      ],
    },
  },
  ({ modules, highest }) => modules * PER_VOLT.value * highest * MARGIN.value,
)
/** What all modules show together. */
export const packInsulation = formula(
  {
    id: 'pack-insulation',
    label: 'Insulation of all modules together',
    gives: ohms('R_pack', 'all modules'),
    takes: { modules: many(ohms('R_k', 'each module')) },
    text: 'R_pack = 1 / (Σ (1 / R_k))',
    source: { work: 'circuits', place: 'resistances side by side' },
    proof: {
      examples: [
        {
          takes: { modules: Array.from({ length: 16 }, () => 20e6) },
          gives: 1.25e6,
          within: 1,
          source: { work: 'circuits', place: 'sixteen at 20 MΩ; recomputed' },
        },
      ],
    },
  },
  ({ modules }) => {
    let sum = 0
    for (const r of modules) sum += 1 / r
    return 1 / sum
  },
)
