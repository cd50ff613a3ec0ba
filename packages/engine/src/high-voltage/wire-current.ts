import { at } from '../numerics/index.ts'
import { formula } from '../working/formula.ts'
import { type Fact, standard } from '../working/value.ts'
import { amps, length, many, ohmsPerMetre, practice, section } from './conductor-symbols.ts'
import { FLEXIBLE_TABLE } from './conductor-sizes.ts'

/** What a wire carries for hours: all that draws through it driving, or all that is charged through it, whichever is more. */
export const currentForHours = formula(
  {
    id: 'wire-current-for-hours',
    label: 'Current of a wire for hours',
    gives: amps('I_w', 'for hours'),
    takes: { driving: many(amps('I_d', 'drawn while driving')), charging: many(amps('I_c', 'put in while charging')) },
    text: 'I_w = max(Σ I_d, Σ I_c)',
    source: { work: 'circuits', place: 'sum at a node; driving and charging exclude each other' },
    leavesOut: 'Peaks of seconds, and a driving rhythm that never asks the continuous rating of everything at once.',
    proof: { none: 'definition' },
  },
  ({ driving, charging }) => Math.max(total(driving), total(charging)),
)
const total = (each: readonly number[]): number => each.reduce((a, b) => a + b, 0)

/** Copper in the circle of a flexible conductor; the rest is air between its strands. */
const FILLED: Fact = {
  ...standard(
    'strands.filled',
    'copper in the round of a flexible conductor',
    'k_f',
    0.66,
    '1',
    practice('35 mm² of 8.2 mm, 50 mm² of 9.9 mm'),
  ),
  shows: 'share',
}
/** Diameter of a flexible conductor of a section. */
export const strandedDiameter = formula(
  {
    id: 'stranded-diameter',
    label: 'Diameter of a flexible conductor',
    gives: length('d', 'diameter'),
    takes: { section: section('S', 'section') },
    uses: [FILLED],
    text: 'd = √(4 · S / (π · k_f))',
    source: { work: 'definition', place: 'area of a circle' },
    proof: {
      examples: (
        [
          [16, 5.5],
          [35, 8.2],
          [50, 9.9],
          [70, 11.8],
        ] as const
      ).map(([mm2, mm]) => ({
        takes: { section: mm2 * 1e-6 },
        gives: mm / 1000,
        within: 2.5e-4,
        source: practice(`usual high-voltage cable of ${mm2} mm²`),
        because: 'diameters of usual cable differ by some per cent',
      })),
    },
  },
  ({ section }) => Math.sqrt((4 * section) / (Math.PI * FILLED.value)),
)

/** Resistance by length of a flexible conductor, as the table lists it for its section. */
export const listedResistance = formula(
  {
    id: 'listed-conductor-resistance',
    label: 'Resistance of a flexible conductor by its section',
    gives: ohmsPerMetre('R′_20', 'resistance at 20 °C'),
    takes: {
      section: section('S', 'nominal section'),
      table: { symbol: 'R′', unit: ['m²', 'Ω/m'], label: 'table of sections', curve: true },
    },
    text: 'R′_20 = R′(S)',
    source: { work: 'iec-60228', place: 'Table 3, class 5, plain copper' },
    leavesOut: 'Sections between the nominal ones, for which nothing is listed.',
    proof: {
      examples: (
        [
          [2.5, 7.98],
          [35, 0.554],
          [50, 0.386],
          [240, 0.0801],
        ] as const
      ).map(([mm2, ohms]) => ({
        takes: { section: mm2 * 1e-6, table: FLEXIBLE_TABLE.value },
        gives: ohms / 1000,
        within: 1e-9,
        source: { work: 'iec-60228', place: `Table 3, class 5, ${mm2} mm²` },
      })),
    },
  },
  ({ section, table }) => at(table, section),
)
