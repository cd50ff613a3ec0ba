import { formula } from '../working/formula.ts'
import { type Curve, type Fact, standard } from '../working/value.ts'
import { COPPER } from './conductor-metals.ts'
import { length, MM, MM2, number, ohmsPerMetre, practice, section } from './conductor-symbols.ts'

/** Nominal section [mm²], most resistance [Ω/km] at 20 °C, and usual diameters [mm] of conductor and jacket where there are any. */
type Row = readonly [mm2: number, ohmsPerKilometre: number, conductor?: number, outside?: number]
/** That 50 mm² is a little below the solid classes is so in the standard: no slip of the pen. */
const CLASS_5: readonly Row[] = [
  [0.5, 39.0],
  [0.75, 26.0],
  [1, 19.5],
  [1.5, 13.3],
  [2.5, 7.98],
  [4, 4.95],
  [6, 3.3],
  [10, 1.91],
  [16, 1.21, 5.5, 9.0],
  [25, 0.78, 6.9, 11.0],
  [35, 0.554, 8.2, 12.5],
  [50, 0.386, 9.9, 14.8],
  [70, 0.272, 11.8, 17.0],
  [95, 0.206, 13.7, 19.3],
  [120, 0.161],
  [150, 0.129],
  [185, 0.106],
  [240, 0.0801],
]
/** A section as typed may be off by rounding. */
const rowOf = (m2: number): Row | undefined => CLASS_5.find(([mm2]) => Math.abs(m2 / (mm2 * MM2) - 1) < 1e-6)
const named = (mm2: number): string => `${String(mm2).replace('.', '-')}-mm2`

/** Nominal sections [m²] of flexible copper conductors, rising. IEC 60228, Table 3. */
export const FLEXIBLE_SECTIONS: readonly number[] = CLASS_5.map(([mm2]) => mm2 * MM2)

/**
 * Most resistance per metre [Ω/m] at 20 °C of a plain flexible copper conductor (class 5) of a nominal section [m²]; undefined for a section not in
 * the table. Source: IEC 60228, Table 3. Example: 35 mm² → 0.554 mΩ/m.
 */
export function flexibleResistance(m2: number): Fact | undefined {
  const row = rowOf(m2)
  return (
    row &&
    standard(
      `copper-class-5.${named(row[0])}`,
      `flexible copper of ${row[0]} mm², most resistance at 20 °C`,
      'R′_20',
      row[1] / 1000,
      'Ω/m',
      {
        work: 'iec-60228',
        place: 'Table 3, class 5, plain copper',
      },
    )
  )
}

/**
 * Diameters [m] of conductor and jacket of usual high-voltage cable of a nominal section [m²]; undefined where no habit is known. Common practice: a
 * cable at hand is measured instead. Example: 35 mm² → 8.2 and 12.5 mm.
 */
export function usualDiameters(m2: number): { readonly conductor: Fact; readonly outside: Fact } | undefined {
  const [mm2, , conductor, outside] = rowOf(m2) ?? []
  if (mm2 === undefined || conductor === undefined || outside === undefined) return undefined
  const of = (what: string, label: string, symbol: string, mm: number): Fact => ({
    ...standard(`cable.${what}.${named(mm2)}`, `${label}, ${mm2} mm²`, symbol, mm * MM, 'm', practice('usual high-voltage cable')),
    shows: 'length',
  })
  return {
    conductor: of('conductor', 'conductor of usual cable', 'd', conductor),
    outside: of('outside', 'jacket of usual cable', 'D', outside),
  }
}

/** The same table as a curve over section [m²], so that a working names the section; true at nominal sections only. */
export const FLEXIBLE_TABLE: Fact<Curve> = {
  path: 'standard.copper-class-5',
  label: 'flexible copper, most resistance by length at 20 °C',
  symbol: 'R′',
  unit: 'Ω/m',
  value: { x: Float64Array.from(FLEXIBLE_SECTIONS), y: Float64Array.from(CLASS_5, ([, ohms]) => ohms / 1000) },
  origin: { how: 'standard', source: { work: 'iec-60228', place: 'Table 3, class 5, plain copper' } },
}
/** The smallest nominal section [m²] that is not below the one wanted; undefined above the largest of the table. IEC 60228, Table 3. */
export const nextSection = (wanted: number): number | undefined => FLEXIBLE_SECTIONS.find(s => s >= wanted * (1 - 1e-9))

const SMALLEST = standard('awg-36', 'diameter of gauge 36', 'd_36', 0.127 * MM, 'm', { work: 'astm-b258', place: 'gauge 36' })

/** Diameter, area and resistance of solid copper wire by American gauge. 1/0 to 4/0 are the numbers 0, −1, −2, −3. */
export const wireByGauge = formula(
  {
    id: 'wire-by-gauge',
    label: 'Wire by American gauge',
    gives: { diameter: length('d', 'diameter'), area: section('A', 'area'), resistance: ohmsPerMetre('R′_20', 'resistance at 20 °C') },
    takes: { gauge: number('n', 'gauge; 1/0 to 4/0 are 0 to −3') },
    uses: [SMALLEST, COPPER.resistivity],
    text: 'd = d_36 · 92^((36 − n) / 39)\nA = π · d² / 4\nR′_20 = ρ_20 / A',
    source: { work: 'astm-b258', place: 'law of the gauge' },
    leavesOut: 'Strands: a stranded wire of the same gauge has 2 to 5 % more resistance.',
    proof: {
      examples: [
        [18, 1.024, 0.823, 20.948],
        [10, 2.588, 5.261, 3.277],
        [4, 5.189, 21.151, 0.8152],
        [2, 6.544, 33.631, 0.5127],
        [0, 8.251, 53.475, 0.3224],
        [-1, 9.266, 67.431, 0.2557],
        [-3, 11.684, 107.219, 0.1608],
      ].flatMap(([gauge, mm, mm2, ohms]) => {
        const takes = { gauge: gauge as number },
          source = { work: 'astm-b258', place: `gauge ${gauge}; recomputed` } as const
        return [
          { takes, gives: { diameter: (mm as number) * MM }, within: 0.0006 * MM, source },
          { takes, gives: { area: (mm2 as number) * MM2 }, within: 0.0006 * MM2, source },
          { takes, gives: { resistance: (ohms as number) / 1000 }, within: (ohms as number) * 2.5e-7, source },
        ]
      }),
    },
  },
  ({ gauge }) => {
    const diameter = SMALLEST.value * 92 ** ((36 - gauge) / 39),
      area = (Math.PI * diameter ** 2) / 4
    return { diameter, area, resistance: COPPER.resistivity.value / area }
  },
)

/** Gauges wire is sold in, thin to thick; 0 to −3 are 1/0 to 4/0. */
const SOLD = [18, 16, 14, 12, 10, 8, 6, 4, 2, 1, 0, -1, -2, -3] as const
/** The thinnest gauge wire is sold in whose area is not below the section [m²] wanted; undefined above 4/0. */
export const nextGauge = (wanted: number): number | undefined => SOLD.find(gauge => wireByGauge({ gauge }).area >= wanted * (1 - 1e-9))
