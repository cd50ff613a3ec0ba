import { formula } from '../working/formula.ts'
import { type Fact, standard } from '../working/value.ts'
import { ALUMINIUM, COPPER, ICE } from './conductor-metals.ts'
import { amps, celsius, integral, MM2, rise, seconds, section, temperature, withstand } from './conductor-symbols.ts'

const ADIABATIC = { work: 'iec-60364-5-54', place: 'Annex A, conductor heated without loss, up to 5 s' } as const
const recomputed = (place: string) => ({ work: 'iec-60364-5-54', place: `Annex A, ${place}; recomputed` }) as const
/** Longest fault that is reckoned without loss [s]. */
export const ADIABATIC_TIME = standard('adiabatic-time', 'longest fault reckoned without loss', 't_ad', 5, 's', ADIABATIC)

const metal = { constant: withstand('K_m', 'metal'), reciprocal: rise('β_m', 'metal, reciprocal of the coefficient at 0 °C') } as const
const copper = { constant: COPPER.constant.value, reciprocal: COPPER.reciprocal.value }
const aluminium = { constant: ALUMINIUM.constant.value, reciprocal: ALUMINIUM.reciprocal.value }

/** What a square metre of conductor stands between two temperatures: current times root of time. */
export const withstandConstant = formula(
  {
    id: 'withstand-constant',
    label: 'Short-circuit withstand of a conductor by section',
    gives: withstand('k', 'withstand by section'),
    takes: { ...metal, before: temperature('T_i', 'before the fault'), after: temperature('T_f', 'at its end') },
    uses: [ICE],
    text: 'k = K_m · √(ln((β_m + T_f − T_0) / (β_m + T_i − T_0)))',
    source: ADIABATIC,
    proof: {
      examples: (
        [
          [copper, 'copper', 70, 160, 115.0],
          [copper, 'copper', 70, 140, 102.8],
          [copper, 'copper', 90, 160, 99.9],
          [copper, 'copper', 60, 200, 140.9],
          [copper, 'copper', 90, 250, 143.1],
          [copper, 'copper', 30, 160, 142.9],
          [copper, 'copper', 30, 250, 175.8],
          [aluminium, 'aluminium', 70, 160, 76.0],
          [aluminium, 'aluminium', 90, 250, 94.5],
          [aluminium, 'aluminium', 30, 160, 94.5],
          [aluminium, 'aluminium', 30, 250, 116.2],
        ] as const
      ).map(([metal, name, before, after, gives]) => ({
        takes: { ...metal, before: celsius(before), after: celsius(after) },
        gives: gives * 1e6,
        within: 0.06e6,
        source: recomputed(`${name} from ${before} to ${after} °C`),
      })),
    },
  },
  ({ constant, reciprocal, before, after }) =>
    constant * Math.sqrt(Math.log((reciprocal + after - ICE.value) / (reciprocal + before - ICE.value))),
)

/** Insulation of a live copper conductor, as the tables name it, and what it stands in a fault. */
export type Insulation = 'PVC 70 °C' | 'PVC 90 °C' | 'rubber 60 °C' | 'XLPE or EPR 90 °C'
const LIVE: Readonly<Record<Insulation, readonly [k: number, before: number, after: number]>> = {
  'PVC 70 °C': [115, 70, 160],
  'PVC 90 °C': [100, 90, 160],
  'rubber 60 °C': [141, 60, 200],
  'XLPE or EPR 90 °C': [143, 90, 250],
}
/** Above 300 mm² PVC of 70 °C is let go only to 140 °C. */
const LARGE_PVC = 103
/**
 * Tabulated withstand by section [A·√s/m²] of a live copper conductor of a section [m²] in its insulation, from its rated temperature.
 *
 * Source: BS 7671, Table 43.1. Example: XLPE → 143 A·√s/mm².
 */
export function tabledWithstand(insulation: Insulation, m2: number): Fact {
  const large = insulation === 'PVC 70 °C' && m2 > 300 * MM2
  return standard(
    `withstand.${insulation.replace(/[ °]+/g, '-')}${large ? '.above-300-mm2' : ''}`,
    `withstand of copper in ${insulation}${large ? ', above 300 mm²' : ''}`,
    'k',
    (large ? LARGE_PVC : LIVE[insulation][0]) * 1e6,
    'A·s^0.5/m²',
    { work: 'bs-7671', place: 'Table 43.1' },
  )
}
/** Temperatures [K] of a live conductor before a fault and at its end, by its insulation. Source: BS 7671, Table 43.1. */
export function faultTemperatures(insulation: Insulation): { readonly before: Fact; readonly after: Fact } {
  const [, before, after] = LIVE[insulation],
    of = (when: string, symbol: string, degrees: number): Fact =>
      standard(`fault.${when}.${insulation.replace(/[ °]+/g, '-')}`, `${insulation}, ${when} a fault`, symbol, celsius(degrees), 'K', {
        work: 'bs-7671',
        place: 'Table 43.1',
      })
  return { before: of('before', 'T_i', before), after: of('after', 'T_f', after) }
}
/** Withstand by section of separate earth and bonding conductors of copper, from 30 °C. */
export const BONDING = {
  pvc: standard('withstand.bond.pvc', 'bonding copper in PVC', 'k', 143e6, 'A·s^0.5/m²', { work: 'bs-7671', place: 'Table 54.2' }),
  xlpe: standard('withstand.bond.xlpe', 'bonding copper in XLPE or EPR', 'k', 176e6, 'A·s^0.5/m²', {
    work: 'bs-7671',
    place: 'Table 54.2',
  }),
} as const

/** What a conductor stands: current squared times time. */
export const cableWithstand = formula(
  {
    id: 'cable-withstand',
    label: 'Fault a conductor stands',
    gives: integral('W_c', 'current squared times time, at most'),
    takes: { constant: withstand('k', 'withstand by section'), section: section('S', 'conductor') },
    text: 'W_c = k² · S²',
    source: ADIABATIC,
    leavesOut: 'Faults of more than 5 s, which lose heat: follow them in time.',
    proof: {
      examples: (
        [
          [2.5, 115, 0.08266e6, 6],
          [16, 115, 3.386e6, 600],
          [35, 143, 25.05e6, 6000],
          [50, 143, 51.12e6, 6000],
          [70, 143, 100.2e6, 60000],
        ] as const
      ).map(([mm2, k, gives, within]) => ({
        takes: { constant: k * 1e6, section: mm2 * MM2 },
        gives,
        within,
        source: recomputed(`${mm2} mm², k ${k}`),
      })),
    },
  },
  ({ constant, section }) => constant ** 2 * section ** 2,
)

/** Temperature of a conductor after a fault, none of the heat lost. */
export const faultTemperature = formula(
  {
    id: 'fault-temperature',
    label: 'Conductor after a fault',
    gives: temperature('T_f', 'at the end'),
    takes: {
      ...metal,
      before: temperature('T_i', 'before the fault'),
      section: section('S', 'conductor'),
      fault: integral('W', 'current squared times time'),
    },
    uses: [ICE],
    text: 'T_f = (β_m + T_i − T_0) · exp(W / (S² · K_m²)) − β_m + T_0',
    source: ADIABATIC,
    proof: {
      examples: (
        [
          [35, 6000, 0.4, 90, 174.0],
          [50, 5000, 0.5, 70, 101.3],
        ] as const
      ).map(([mm2, current, time, before, gives]) => ({
        takes: { ...copper, before: celsius(before), section: mm2 * MM2, fault: current ** 2 * time },
        gives: celsius(gives),
        within: 0.06,
        source: recomputed(`${mm2} mm², ${current} A for ${time} s from ${before} °C`),
      })),
    },
  },
  ({ constant, reciprocal, before, section, fault }) =>
    (reciprocal + before - ICE.value) * Math.exp(fault / (section ** 2 * constant ** 2)) - reciprocal + ICE.value,
)

/** Least section for a fault of a current and a time. */
export const sectionForFault = formula(
  {
    id: 'section-for-fault',
    label: 'Section for a fault',
    gives: section('S', 'least section'),
    takes: {
      current: amps('I', 'fault current'),
      time: seconds('t', 'until it is cleared'),
      constant: withstand('k', 'withstand by section'),
    },
    text: 'S = I · √t / k',
    source: ADIABATIC,
    leavesOut: 'Faults of more than 5 s.',
    proof: {
      examples: [
        {
          takes: { current: 8000, time: 0.02, constant: 143e6 },
          gives: 7.91 * MM2,
          within: 0.006 * MM2,
          source: recomputed('8 kA for 20 ms, k 143'),
        },
      ],
    },
  },
  ({ current, time, constant }) => (current * Math.sqrt(time)) / constant,
)
