import type { Source } from '../sources.ts'
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

/** Inputs and results as the cards on cables and fuses name them: symbol, what it is, coherent unit. */
export const section = one('m²', 'conductor size')
export const length = one('m', 'length')
export const amps = one('A', 'current')
export const volts = one('V', 'voltage')
export const ohms = one('Ω', 'resistance')
export const henries = one('H', 'inductance')
export const watts = one('W', 'power')
export const seconds = one('s', 'time')
export const temperature = one('K', 'temperature')
export const rise = one('K', 'temperature difference')
export const share = one('1', 'share')
export const ratio = one('1', 'ratio')
export const number = one('1', 'number')
export const frequency = one('1/s', 'frequency')
export const pressure = one('Pa', 'pressure')
export const ohmsPerMetre = one('Ω/m')
export const wattsPerMetre = one('W/m')
export const perKelvin = one('1/K')
export const conductivity = one('W/(m·K)')
export const film = one('W/(m²·K)')
export const heatPerMetre = one('J/(m·K)')
export const heatPerVolume = one('J/(m³·K)')
/** Current squared over time: the one number a fuse and a cable are compared by. */
export const integral = one('A²·s')
/** Withstand of a conductor: current times root of time, by section. */
export const withstand = one('A·s^0.5/m²')
export const many = <O extends object>(o: O): O & { readonly many: true } => ({ ...o, many: true })

export const practice = (place: string): Source => ({ work: 'practice', place, mark: 'common practice' })
export const MM2 = 1e-6
export const MM = 1e-3
/** Degrees Celsius as kelvins, for tables that are printed so. */
export const celsius = (degrees: number): number => degrees + 273.15
