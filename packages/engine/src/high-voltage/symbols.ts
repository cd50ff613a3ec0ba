import type { Source } from '../sources.ts'
import type { Kind } from '../working/kinds.ts'
import { standard } from '../working/value.ts'

const one =
  <const U extends string, const K extends Kind>(unit: U, shows: K) =>
  (symbol: string, label: string): { readonly symbol: string; readonly unit: U; readonly label: string; readonly shows: K } => ({
    symbol,
    unit,
    label,
    shows,
  })

/** Inputs and results as the cards of this domain name them: symbol, what it is, coherent unit. */
export const volts = one('V', 'voltage')
export const amps = one('A', 'current')
export const ohms = one('Ω', 'resistance')
export const farads = one('F', 'capacitance')
export const henrys = one('H', 'inductance')
export const joules = one('J', 'energy')
export const watts = one('W', 'power')
export const seconds = one('s', 'time')
export const metres = one('m', 'length')
export const share = one('1', 'share')
export const count = one('1', 'count')
export const number = one('1', 'number')
export const ohmsPerVolt = (symbol: string, label: string) => ({ symbol, unit: 'Ω/V', label }) as const

/** A case worked out from circuit laws alone. */
export const byCircuit = (place: string): Source => ({ work: 'circuits', place: `${place}; recomputed` })
/** A habit of the trade. */
export const practice = (place: string): Source => ({ work: 'practice', place, mark: 'common practice' })

const UNIT = { work: 'definition', place: 'unit' } as const
/** Units as values: a text that compares with plain numbers divides by them first. */
export const VOLT = standard('volt', 'one volt', 'V_1', 1, 'V', UNIT)
export const AMPERE = standard('ampere', 'one ampere', 'A_1', 1, 'A', UNIT)
export const OHM = standard('ohm', 'one ohm', 'Ω_1', 1, 'Ω', UNIT)
