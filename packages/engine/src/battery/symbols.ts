import type { Kind } from '../working/kinds.ts'

type Named<U extends string, K extends Kind | undefined> = {
  readonly symbol: string
  readonly unit: U
  readonly label: string
} & (K extends Kind ? { readonly shows: K } : object)
const one =
  <const U extends string, const K extends Kind | undefined = undefined>(unit: U, shows?: K) =>
  (symbol: string, label: string): Named<U, K> =>
    ({ symbol, unit, label, ...(shows ? { shows } : {}) }) as Named<U, K>

/** Inputs and results as the cards of this domain name them: symbol, what it is, coherent unit. */
export const count = one('1', 'count')
export const share = one('1', 'share')
export const ratio = one('1', 'ratio')
export const number = one('1', 'number')
export const volts = one('V')
export const amps = one('A')
export const ohms = one('Ω')
export const coulombs = one('C')
export const joules = one('J')
export const watts = one('W')
export const seconds = one('s', 'time')
export const hours = one('s', 'duration')
export const kelvins = one('K', 'temperature')
export const kelvinsApart = one('K', 'temperature difference')
export const kilograms = one('kg')
export const metres = one('m', 'length')
export const squareMetres = one('m²')
export const cubicMetres = one('m³')
export const pascals = one('Pa')
export const newtons = one('N')
export const perKelvin = one('J/K')
export const conductance = one('W/K')
/** State of charge, 0 to 1. */
export const stateOfCharge = { symbol: 'z', unit: '1', label: 'state of charge', shows: 'share', holds: [0, 1] } as const
export const many = <O extends object>(o: O): O & { readonly many: true } => ({ ...o, many: true })
