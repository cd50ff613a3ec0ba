import { at, type Curve, curve } from '../numerics/curve.ts'
import type { Source } from '../sources.ts'
import { openCircuitLfp, openCircuitLto, openCircuitNmc } from './open-circuit-sets.ts'

export type ClassNumber = { readonly value: number; readonly half: number; readonly note: string; readonly source: Source }
export type ClassCurve = { readonly value: Curve; readonly note: string; readonly source: Source }

/**
 * What is known of a cell when only its chemistry is: shapes and values measured on one or two cells of that kind, never this cell's own.
 *
 * Limits (voltages, currents) are not here: they come from the cell's sheet.
 */
export type ClassCell = {
  readonly openCircuit: ClassCurve
  /** Resistance over charge, 1 at half charge. */
  readonly resistanceOverCharge: ClassCurve
  /** Voltage lost after 10 s at one-hour current, 25 °C, half charge: resistance times capacity. */
  readonly dropAtHourRate: ClassNumber
  /** Resistance of the RC branch over the 10 s resistance. */
  readonly branchShare: ClassNumber
  readonly branchTime: ClassNumber
  /** B of R(T) = R(25 °C)·exp(B(1/T − 1/298.15 K)). */
  readonly coldCoefficient: ClassNumber
  /** Usable energy over cell temperature at C/3, 1 at 25 °C; undefined where nothing is known. */
  readonly coldEnergy: ClassCurve | undefined
}
export type ClassChemistry = 'NMC' | 'NCA' | 'LFP' | 'LTO'

const STEPS = 100
const sampled = (f: (x: { charge: number }) => number): Curve => {
  const z = Float64Array.from({ length: STEPS + 1 }, (_, i) => i / STEPS)
  return curve(
    z,
    z.map(charge => f({ charge })),
  )
}
const celsius = (...pairs: readonly (readonly [number, number])[]): Curve =>
  curve(
    pairs.map(([t]) => t + 273.15),
    pairs.map(([, y]) => y),
  )
/** Charge left, from charge removed [Ah] and the whole [Ah]: turned round so that charge rises. */
function left(whole: number, points: readonly (readonly [removed: number, y: number])[]): Curve {
  const up = [...points].reverse()
  return curve(
    up.map(([removed]) => 1 - removed / whole),
    up.map(([, y]) => y),
  )
}
/** The same curve as a shape: 1 at half charge. */
const shape = (c: Curve): Curve =>
  curve(
    c.x,
    c.y.map(y => y / at(c, 0.5)),
  )

const PULSES: Source = { work: 'kollmeyer-2018', place: 'pulse test, 25 °C' }
const LAMINATE: Source = { work: 'wiggins-2019', place: 'pulse test, 25 °C' }
const RETIRED: Source = { work: 'pulsebat-2024', place: '56 LFP cells, 35 Ah' }
const planning = (place: string): Source => ({ work: 'practice', place, mark: 'common practice' })

/** Rest voltages of an NCA-type 18650 over charge removed [Ah]; the last point is the added tail. */
export const NCA_REST = [
  [0, 4.175],
  [0.145, 4.1042],
  [0.29, 4.0585],
  [0.58, 3.9466],
  [0.87, 3.8623],
  [1.16, 3.7683],
  [1.45, 3.6635],
  [1.74, 3.603],
  [2.03, 3.5502],
  [2.175, 3.5129],
  [2.32, 3.4582],
  [2.465, 3.3907],
  [2.61, 3.345],
  [2.755, 3.2369],
  [2.8, 3.1],
] as const
/** Rest voltages of the laminate car cell over charge removed [Ah]. */
export const LAMINATE_REST = [
  [0, 4.182],
  [3.196, 4.086],
  [6.383, 4.048],
  [9.571, 3.984],
  [12.759, 3.949],
  [15.947, 3.909],
  [19.134, 3.869],
  [22.322, 3.802],
  [25.51, 3.723],
  [28.698, 3.531],
] as const

const number = (value: number, half: number, note: string, source: Source): ClassNumber => ({ value, half, note, source })

const NICKEL_COLD: ClassCurve = {
  value: celsius([-20, 0.72], [-10, 0.8], [0, 0.87], [10, 0.93], [25, 1]),
  note: 'nickel cells, planned between measured rows of one NCA cell',
  source: { work: 'kollmeyer-2018', place: 'energy at 0.3C against temperature; planning line rounded down', mark: 'common practice' },
}
const LAMINATE_SHAPE = shape(
  left(30.56, [
    [0, 2.6],
    [9.57, 2.0],
    [15.95, 2.03],
    [25.5, 2.07],
    [28.7, 2.53],
  ]),
)

export const CLASS_CELLS: Readonly<Record<ClassChemistry, ClassCell>> = {
  NMC: {
    openCircuit: {
      value: sampled(openCircuitNmc),
      note: 'class NMC, one 12.5 Ah pouch cell',
      source: { work: 'bpx-nmc-2022', place: 'open-circuit potentials' },
    },
    resistanceOverCharge: { value: LAMINATE_SHAPE, note: 'class NMC, from a laminate car cell', source: LAMINATE },
    dropAtHourRate: number(0.055, 0.015, 'class NMC: 48 mV new, 59 and 62 mV in used car cells', {
      work: 'pulsebat-2024',
      place: '52 NMC pouch cells, 21 Ah; 60 Ah car cell new',
    }),
    branchShare: number(0.31, 0.12, 'class NMC, from a laminate car cell', LAMINATE),
    branchTime: number(15, 6, 'class NMC, from a laminate car cell', LAMINATE),
    coldCoefficient: number(2600, 250, 'class of nickel cells: 2470 to 2800 K at one-hour current', {
      work: 'kollmeyer-2018',
      place: 'pulse tests at 25, 0 and −10 °C',
    }),
    coldEnergy: NICKEL_COLD,
  },
  NCA: {
    openCircuit: { value: left(2.8, NCA_REST), note: 'class NCA, one 18650', source: PULSES },
    resistanceOverCharge: {
      value: shape(
        left(2.8, [
          [0.004, 38.8],
          [0.294, 32.6],
          [0.874, 30.7],
          [1.454, 29.5],
          [2.034, 31.3],
          [2.324, 36],
          [2.614, 58.3],
        ]),
      ),
      note: 'class NCA, one 18650',
      source: PULSES,
    },
    dropAtHourRate: number(0.103, 0.025, 'class NCA, one 18650', PULSES),
    branchShare: number(0.465, 0.2, 'class NCA, one 18650', PULSES),
    branchTime: number(25.5, 12, 'class NCA, one 18650', PULSES),
    coldCoefficient: number(2600, 250, 'class of nickel cells: 2470 to 2800 K at one-hour current', {
      work: 'kollmeyer-2018',
      place: 'pulse tests at 25, 0 and −10 °C',
    }),
    coldEnergy: NICKEL_COLD,
  },
  LFP: {
    openCircuit: {
      value: sampled(openCircuitLfp),
      note: 'class LFP, one 2 Ah cell',
      source: { work: 'bpx-lfp-2022', place: 'open-circuit potentials' },
    },
    resistanceOverCharge: {
      value: shape(curve([0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7], [3.248, 3.185, 3.198, 3.129, 3.066, 3.032, 3.172, 2.931])),
      note: 'class LFP, 56 retired cells of 35 Ah',
      source: RETIRED,
    },
    dropAtHourRate: number(0.1, 0.02, 'class LFP: 85 to 117 mV in retired cells', RETIRED),
    branchShare: number(0.43, 0.2, 'class LFP, from pulses of 0.03 to 5 s of retired cells', RETIRED),
    branchTime: number(10, 5, 'class LFP, from pulses of 0.03 to 5 s of retired cells', RETIRED),
    coldCoefficient: number(2600, 600, 'no LFP cell measured in the cold: the value of nickel cells', {
      work: 'kollmeyer-2018',
      place: 'pulse tests of another chemistry',
    }),
    coldEnergy: {
      value: celsius([-20, 0.5], [-10, 0.68], [0, 0.82], [10, 0.93], [25, 1]),
      note: 'class LFP, between makers’ minimum promises',
      source: {
        work: 'cell-sheets',
        place: 'capacity against temperature of LFP packs; planning line between them',
        mark: 'common practice',
      },
    },
  },
  LTO: {
    openCircuit: {
      value: sampled(openCircuitLto),
      note: 'class LTO, an estimate from the electrodes',
      source: { work: 'bpx-nmc-2022', place: 'positive electrode; titanate about 1.55 V above lithium', mark: 'from memory' },
    },
    resistanceOverCharge: {
      value: curve([0, 1], [1, 1]),
      note: 'class LTO: no curve known, taken as level',
      source: planning('nothing measured'),
    },
    dropAtHourRate: number(0.03, 0.01, 'class LTO, one 42 Ah cylinder', {
      work: 'cell-sheets',
      place: '40 Ah cylindrical LTO cell: 10 s resistance at half charge',
    }),
    branchShare: number(0.31, 0.2, 'no LTO pulse known: the value of NMC', LAMINATE),
    branchTime: number(15, 10, 'no LTO pulse known: the value of NMC', LAMINATE),
    coldCoefficient: number(2600, 800, 'no LTO cell measured in the cold: the value of nickel cells', {
      work: 'kollmeyer-2018',
      place: 'pulse tests of another chemistry',
    }),
    coldEnergy: undefined,
  },
}
export const classCell = (chemistry: string | undefined): ClassCell | undefined =>
  chemistry !== undefined && chemistry in CLASS_CELLS ? CLASS_CELLS[chemistry as ClassChemistry] : undefined

/** Charging current over cell temperature [K] as capacity per hour [1/s], for planning without a maker's table: none below 2 °C and from 50 °C; half a capacity per hour up to 20 °C, a whole one from there. */
export const CHARGE_RATE: ClassCurve = {
  value: (({ x, y }) =>
    curve(
      x,
      y.map(c => c / 3600),
    ))(celsius([2, 0], [5, 0.1], [10, 0.2], [19, 0.5], [20, 1], [45, 1], [50, 0])),
  note: 'planning line; only the maker’s own table may replace it',
  source: { work: 'apl48-manual', place: 'charging current against temperature; line drawn below makers’ tables', mark: 'common practice' },
}
/** An untested module against the others of its pack: cells of retired modules of one kind, two standard deviations. */
export const UNTESTED: ClassNumber = number(1, 0.05, 'untested module of a pack: cells of retired modules spread by 2.4 %', {
  work: 'hassini-2025',
  place: '36 cells of 3 retired modules',
})
/** Capacity against new of a used module nobody has tested. */
export const HEALTH: Readonly<Record<'new' | 'used', ClassNumber>> = {
  new: number(1, 0.03, 'new, as rated', planning('new cells keep their rating')),
  used: number(0.775, 0.075, 'used and untested: 0.70 to 0.85', planning('planning value for untested used modules')),
}
/** Links, cables, contactors and fuse of a pack of some 400 V. */
export const WIRING: ClassNumber = number(
  0.01,
  0.005,
  'links, cables, contactors and fuse of a 400 V pack',
  planning('joints of 10 to 100 µΩ each, cables, contactors'),
)
/** Boxes, plates and links over the mass of the bare modules: modules are 0.65 to 0.8 of a pack as fitted. */
export const BOX_SHARE: ClassNumber = number(
  0.4,
  0.15,
  'modules are 0.65 to 0.8 of a pack as fitted',
  planning('packs as fitted against their bare modules'),
)
/** Heat through the walls of all boxes per kelvin: bare steel to 20 mm of foam, about 2 m² outside. */
export const BOX_CONDUCTANCE: ClassNumber = number(
  5,
  3,
  'steel boxes of about 2 m² outside, bare to 20 mm of foam',
  planning('layers of a wall; nobody’s measurement'),
)
