import type { Source } from '../sources.ts'
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
export const length = one('m', 'length')
export const area = one('m²', 'area')
export const force = one('N', 'force')
export const moment = one('N·m', 'torque')
export const pressure = one('Pa', 'pressure')
export const share = one('1', 'share')
export const ratio = one('1', 'ratio')
export const angle = one('rad', 'angle')
export const power = one('W', 'power')
export const turns = (symbol: string, label: string) => ({ symbol, unit: '1/s', label, shows: 'frequency' }) as const

/** Grip of a tyre turned where it stands. */
export const GRIP = { ...ratio('μ', 'grip at a stand: 0.7 in textbooks, 0.8 to 1.0 on dry asphalt'), holds: [0.05, 1.3] } as const
/** A case worked by hand and once more on another way, as the proof of what is elementary. */
export const hand = (place: string): Source => ({ work: 'statics', place: `worked by hand: ${place}` })
/** What a card of this domain ends with while no study asks for it. */
export const HANDBOOK = 'In the handbook only: no study asks for it yet.'
/** What no estimate of a parking moment holds. */
export const STEEP = 'The steep rise near full lock. The figure is an estimate: measure with a spring balance on the rim.'
