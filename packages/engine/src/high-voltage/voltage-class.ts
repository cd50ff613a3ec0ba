import type { Source } from '../sources.ts'
import { formula } from '../working/formula.ts'
import { standard } from '../working/value.ts'
import { count, volts } from './symbols.ts'

const TABLE = { work: 'iso-6469-3', place: 'table of voltage classes' } as const
const cells = (place: string): Source => ({ work: 'iso-6469-3', place: `${place}, held against the classes; recomputed` })

/** Highest DC voltage of class A; above it contact can kill. */
export const LOW_DC = standard('class-a-dc', 'highest DC voltage of class A', 'U_60', 60, 'V', TABLE)
const LOW_AC = standard('class-a-ac', 'highest AC voltage of class A, rms', 'U_30', 30, 'V', TABLE)
const MOST_DC = standard('class-b-dc', 'highest DC voltage of class B', 'U_Bd', 1500, 'V', TABLE)
const MOST_AC = standard('class-b-ac', 'highest AC voltage of class B, rms', 'U_Ba', 1000, 'V', TABLE)

/** What the number of a class stands for. */
export const VOLTAGE_CLASSES = { 1: 'class A', 2: 'class B', 3: 'above class B: out of scope' } as const

/**
 * Voltage class of a circuit: 1 for A, 2 for B, 3 for what lies above and is refused.
 *
 * Takes the highest working voltages [V]: a pack at the end of its charge, never its nominal voltage. What is not a number comes out as 3.
 */
export const voltageClass = formula(
  {
    id: 'voltage-class',
    label: 'Voltage class',
    gives: count('c_U', 'voltage class: 1 is A, 2 is B, 3 lies above'),
    takes: {
      dc: { ...volts('U_dc', 'highest DC working voltage'), holds: [0, 2000] },
      ac: { ...volts('U_ac', 'highest AC working voltage, rms'), holds: [0, 1400] },
    },
    uses: [LOW_DC, LOW_AC, MOST_DC, MOST_AC],
    text: 'c_U = { 1 if U_dc ≤ U_60 and U_ac ≤ U_30; 2 if U_dc ≤ U_Bd and U_ac ≤ U_Ba; 3 otherwise }',
    source: TABLE,
    leavesOut: 'Class A is not harmless: its currents burn. A circuit joined to one of class B counts as B.',
    proof: {
      examples: [
        { takes: { dc: 16 * 3.65, ac: 0 }, gives: 1, within: 0, source: cells('16 LFP cells of 3.65 V at most: 58.4 V') },
        {
          takes: { dc: 17 * 3.65, ac: 0 },
          gives: 2,
          within: 0,
          source: cells('17 LFP cells: 62.05 V'),
          because: 'its nominal 54.4 V would wrongly say A',
        },
        { takes: { dc: 14 * 4.2, ac: 0 }, gives: 1, within: 0, source: cells('14 NMC cells of 4.20 V at most: 58.8 V') },
        { takes: { dc: 15 * 4.2, ac: 0 }, gives: 2, within: 0, source: cells('15 NMC cells: 63.0 V') },
        { takes: { dc: 60, ac: 0 }, gives: 1, within: 0, source: TABLE, because: 'the limit itself belongs to A' },
        { takes: { dc: 48, ac: 31 }, gives: 2, within: 0, source: TABLE },
        { takes: { dc: 1500, ac: 1000 }, gives: 2, within: 0, source: TABLE },
        { takes: { dc: 1501, ac: 0 }, gives: 3, within: 0, source: TABLE },
      ],
    },
  },
  ({ dc, ac }) => (dc <= LOW_DC.value && ac <= LOW_AC.value ? 1 : dc <= MOST_DC.value && ac <= MOST_AC.value ? 2 : 3),
)
