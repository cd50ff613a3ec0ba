import { standard } from '../working/value.ts'

const IEC_60287 = 'resistivity and temperature coefficient of conductors'
const memory = { work: 'iec-60287-1-1', place: IEC_60287, mark: 'from memory' } as const
const ADIABATIC = { work: 'iec-60364-5-54', place: 'Annex A, table of K and β' } as const
const VOLUME_HEAT = { work: 'iec-60949', place: 'heat of conductors by volume', mark: 'from memory' } as const

/** Temperature the tables of resistance are printed for. */
export const TWENTY = standard('twenty-degrees', '20 °C', 'T_20', 293.15, 'K', { work: 'definition', place: '20 °C' })
/** Zero of the Celsius scale. */
export const ICE = standard('celsius-zero', '0 °C', 'T_0', 273.15, 'K', { work: 'definition', place: '0 °C' })

/** Copper: resistivity at 20 °C, its rise with temperature, heat by volume, and the two constants of a conductor heated too fast to lose any. */
export const COPPER = {
  resistivity: standard('annealed-copper-resistivity', 'resistivity of annealed copper, 20 °C', 'ρ_20', 17.241e-9, 'Ω·m', {
    work: 'definition',
    place: 'standard annealed copper (100 % IACS), 20 °C',
  }),
  coefficient: standard('copper-coefficient', 'rise of the resistance of copper', 'α_20', 0.00393, '1/K', memory),
  heat: standard('copper-heat', 'heat of copper by volume', 'c_Cu', 3.45e6, 'J/(m³·K)', VOLUME_HEAT),
  constant: standard('copper-adiabatic', 'copper heated without loss', 'K_m', 226e6, 'A·s^0.5/m²', ADIABATIC),
  reciprocal: standard('copper-reciprocal', 'copper: reciprocal of the coefficient at 0 °C', 'β_m', 234.5, 'K', ADIABATIC),
} as const
/** The same of aluminium. */
export const ALUMINIUM = {
  resistivity: standard('aluminium-resistivity', 'resistivity of aluminium, 20 °C', 'ρ_20', 28.264e-9, 'Ω·m', memory),
  coefficient: standard('aluminium-coefficient', 'rise of the resistance of aluminium', 'α_20', 0.00403, '1/K', memory),
  constant: standard('aluminium-adiabatic', 'aluminium heated without loss', 'K_m', 148e6, 'A·s^0.5/m²', ADIABATIC),
  reciprocal: standard('aluminium-reciprocal', 'aluminium: reciprocal of the coefficient at 0 °C', 'β_m', 228, 'K', ADIABATIC),
} as const
