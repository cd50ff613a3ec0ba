import { formula } from '../working/formula.ts'
import { type Fact, standard } from '../working/value.ts'
import { amps, celsius, MM2, ratio, temperature } from './conductor-symbols.ts'

const AMBIENT = { work: 'heat', place: 'current by the root of the rise left' } as const

/** Factor on a tabulated rating for air warmer or cooler than the table's. None is left where the air is as hot as the conductor may be. */
export const ambientFactor = formula(
  {
    id: 'cable-ambient-factor',
    label: 'Factor for the air around a cable',
    gives: ratio('k_T', 'factor on the rating'),
    takes: {
      most: temperature('T_m', 'conductor at most'),
      ambient: temperature('T_a', 'air at the hottest place'),
      reference: temperature('T_r', 'air of the table'),
    },
    text: 'k_T = √(max(0, T_m − T_a) / (T_m − T_r))',
    source: AMBIENT,
    leavesOut: 'Terminals, connectors and stud, often held to 85 to 105 °C: the coolest part of the path governs.',
    proof: {
      examples: [
        ...(
          [
            [90, 40, 0.91, 0.006],
            [90, 50, 0.82, 0.006],
            [90, 60, 0.71, 0.011],
            [90, 70, 0.57, 0.01],
            [90, 80, 0.4, 0.01],
          ] as const
        ).map(([most, ambient, gives, within]) => ({
          takes: { most: celsius(most), ambient: celsius(ambient), reference: celsius(30) },
          gives,
          within,
          source: { work: 'bs-7671', place: `Table 4F2A, note on ambient, ${ambient} °C` } as const,
          because: 'the table prints two figures',
        })),
        {
          takes: { most: celsius(150), ambient: celsius(90), reference: celsius(40) },
          gives: 0.74,
          within: 0.005,
          source: { work: 'nec', place: 'factors for 150 °C insulation on a base of 40 °C, 90 °C' },
        },
        ...(
          [
            [105, 40, 0.931],
            [105, 85, 0.516],
            [125, 60, 0.827],
            [125, 85, 0.649],
            [150, 70, 0.816],
            [150, 85, 0.736],
          ] as const
        ).map(([most, ambient, gives]) => ({
          takes: { most: celsius(most), ambient: celsius(ambient), reference: celsius(30) },
          gives,
          within: 6e-4,
          source: { work: 'bs-7671', place: `${most} °C conductor in ${ambient} °C; recomputed` } as const,
        })),
      ],
    },
  },
  ({ most, ambient, reference }) => Math.sqrt(Math.max(0, most - ambient) / (most - reference)),
)

/** Loaded circuits in one bunch, and the factor on their rating. */
const GROUPED: readonly (readonly [circuits: number, factor: number])[] = [
  [1, 1],
  [2, 0.8],
  [3, 0.7],
  [4, 0.65],
  [5, 0.6],
  [6, 0.57],
  [7, 0.54],
  [8, 0.52],
  [9, 0.5],
  [12, 0.45],
  [16, 0.41],
  [20, 0.38],
]
/**
 * Factor on the rating of circuits bunched in air or enclosed together; between two rows the larger bunch holds. Undefined above 20.
 *
 * A conductor loaded below 30 % of its grouped rating is not counted. Throws RangeError when `circuits` is no whole number of at least 1.
 * Source: IEC 60364-5-52, Table B.52.17, item 1 (from memory). Example: 2 → 0.80.
 */
export function groupingFactor(circuits: number): Fact | undefined {
  if (!Number.isInteger(circuits) || circuits < 1)
    throw new RangeError(`groupingFactor: circuits must be a whole number of at least 1, found ${circuits}`)
  const row = GROUPED.find(([n]) => n >= circuits)
  return (
    row && {
      ...standard(`cables.bunched-${row[0]}`, `rating of ${row[0]} circuits bunched`, 'k_g', row[1], '1', {
        work: 'iec-60364-5-52',
        place: 'Table B.52.17, item 1',
        mark: 'from memory',
      }),
      shows: 'ratio',
    }
  )
}

/** Rating of a cable where it runs. */
export const cableRating = formula(
  {
    id: 'cable-rating',
    label: 'Continuous rating of a cable where it runs',
    gives: amps('I_z', 'continuous current'),
    takes: {
      table: amps('I_t', 'rating of the table'),
      ambient: ratio('k_T', 'factor for the air'),
      grouping: ratio('k_g', 'factor for bunching'),
    },
    text: 'I_z = I_t · k_T · k_g',
    source: { work: 'bs-7671', place: 'Appendix 4, rating after its factors', mark: 'from memory' },
    leavesOut: 'Screens, sun and air that stands still under a bonnet; the conductor’s jacket may be too hot to touch.',
    proof: {
      examples: [
        {
          takes: { table: 200, ambient: Math.sqrt(40 / 60), grouping: 0.8 },
          gives: 130.6,
          within: 0.05,
          source: { work: 'bs-7671', place: '90 °C cable of 200 A in 50 °C, two circuits bunched; recomputed' },
        },
      ],
    },
  },
  ({ table, ambient, grouping }) => table * ambient * grouping,
)

/** How a cable lies in the tables of ratings, for direct current or one phase, 30 °C around. */
export type Laid =
  | 'in conduit'
  | 'clipped, touching'
  | 'in air, touching'
  | 'in air, spaced'
  | 'flexible, touching'
  | 'flexible 60 °C, touching'
const ONE_PHASE = 'direct current or one phase, 30 °C'
type Rating = readonly [mm2: number, amps: number, mark?: 'from memory']
const TABLES: Readonly<Record<Laid, readonly [place: string, rows: readonly Rating[]]>> = {
  'in conduit': [
    `Table 4E1A, method B, two in conduit, 90 °C, ${ONE_PHASE}`,
    [
      [1.5, 23],
      [2.5, 31],
      [4, 42],
      [6, 54],
      [10, 75],
      [16, 100],
      [25, 133],
      [35, 164],
      [50, 198],
      [70, 253],
      [95, 306],
    ],
  ],
  'clipped, touching': [
    `Table 4E1A, method C, two clipped and touching, 90 °C, ${ONE_PHASE}`,
    [
      [1.5, 25],
      [2.5, 34],
      [4, 46],
      [6, 59],
      [10, 81],
      [16, 109],
      [25, 143],
      [35, 176],
      [50, 228],
      [70, 293],
      [95, 355],
    ],
  ],
  'in air, touching': [
    `Table 4E1A, method F, two touching in air, 90 °C, ${ONE_PHASE}`,
    [
      [25, 161],
      [35, 200],
      [50, 242],
      [70, 310],
      [95, 377, 'from memory'],
    ],
  ],
  'in air, spaced': [
    `Table 4E1A, method G, two a diameter apart, level, in air, 90 °C, ${ONE_PHASE}`,
    [
      [25, 182],
      [35, 226],
      [50, 275],
      [70, 353],
      [95, 430, 'from memory'],
    ],
  ],
  'flexible, touching': [
    `Table 4F2A, two flexible cables touching, 90 °C, ${ONE_PHASE}`,
    [
      [35, 200],
      [50, 250],
      [70, 310],
      [95, 369],
      [120, 432],
      [150, 497],
    ],
  ],
  'flexible 60 °C, touching': [
    `Table 4F1A, two flexible cables touching, 60 °C, ${ONE_PHASE}`,
    [
      [35, 140],
      [50, 175],
      [70, 216],
      [95, 258],
    ],
  ],
}
/** Sections [m²] a table of ratings has, rising. */
export const ratedSections = (laid: Laid): readonly number[] => TABLES[laid][1].map(([mm2]) => mm2 * MM2)
/** Tabulated continuous current [A] of a copper cable of a nominal section [m²]; undefined for a section that table leaves out. Source: BS 7671, Appendix 4. */
export function tableRating(laid: Laid, m2: number): Fact | undefined {
  const [place, rows] = TABLES[laid],
    row = rows.find(([mm2]) => Math.abs(m2 / (mm2 * MM2) - 1) < 1e-6)
  if (!row) return undefined
  const [mm2, value, mark] = row
  return standard(
    `rating.${laid.replace(/[ ,°]+/g, '-')}.${String(mm2).replace('.', '-')}-mm2`,
    `rating of ${mm2} mm², ${laid}`,
    'I_t',
    value,
    'A',
    { work: 'bs-7671', place, ...(mark ? { mark } : {}) },
  )
}
