import type { Source, WorkKey } from '../sources.ts'
import type { Kind } from '../working/kinds.ts'

const one =
  <const U extends string, const K extends Kind>(unit: U, shows: K) =>
  (symbol: string, label: string): { readonly symbol: string; readonly unit: U; readonly label: string; readonly shows: K } => ({
    symbol,
    unit,
    label,
    shows,
  })

/** Inputs and results as the cards of this domain name them: symbol, what it is, coherent unit. */
export const mass = one('kg', 'mass')
export const length = one('m', 'length')
export const distance = one('m', 'distance')
export const area = one('m²', 'area')
export const volume = one('m³', 'volume')
export const force = one('N', 'force')
export const torque = one('N·m', 'torque')
export const pressure = one('Pa', 'pressure')
export const speed = one('m/s', 'speed')
export const deceleration = one('m/s²', 'acceleration')
export const share = one('1', 'share')
export const ratio = one('1', 'ratio')
export const slope = one('1', 'slope')
export const time = one('s', 'time')
export const power = one('W', 'power')
export const energy = one('J', 'energy')
export const angle = one('rad', 'angle')
export const inertia = one('kg·m²', 'moment of inertia')
export const cooling = one('W/K', 'thermal conductance')
export const temperature = one('K', 'temperature')
export const rise = one('K', 'temperature difference')
export const specificHeat = (symbol: string, label: string) => ({ symbol, unit: 'J/(kg·K)', label }) as const

/** Braking over weight: deceleration over g on the level. */
export const braking = (symbol = 'z', label = 'braking over weight') => share(symbol, label)
/** Where the mass of the car stands: what every sum on axle loads takes. */
export const stance = {
  rearShare: share('ψ', 'static share on the rear axle'),
  height: length('h', 'height of the centre of mass'),
  wheelbase: length('L', 'wheelbase'),
} as const
export const frontPart = share('β', 'share of the brake force at the front')

/** A case worked by hand and once more on another way, as the proof of what is elementary. */
export const workedBy =
  (work: WorkKey) =>
  (place: string): Source => ({ work, place: `worked by hand: ${place}` })
export const hand = workedBy('statics')
/** What a card of this domain ends with while no study asks for it. */
export const HANDBOOK = 'In the handbook only: no study asks for it yet.'
/** The car most cases are worked on: 1200 kg, wheelbase 2.45 m, centre of mass 1.15 m behind the front axle and 0.54 m high. */
export const caseCar = { rearShare: 1.15 / 2.45, height: 0.54, wheelbase: 2.45 }
