import { type Fact, standard } from '../../working/value.ts'

const DEFINITION = { work: 'definition', place: 'operating point' } as const

/** Charges and cell temperatures the drive is looked at. */
export const CHARGES = {
  full: standard('charge.full', 'full charge', 'z', 1, '1', DEFINITION),
  half: standard('charge.half', 'half charge', 'z', 0.5, '1', DEFINITION),
  low: standard('charge.low', 'low charge', 'z', 0.1, '1', DEFINITION),
} as const
export const TEMPERATURES = {
  cold: { ...standard('cells.cold', 'cold cells', 'T', 263.15, 'K', DEFINITION), shows: 'temperature' },
  mild: { ...standard('cells.mild', 'mild cells', 'T', 293.15, 'K', DEFINITION), shows: 'temperature' },
  hot: { ...standard('cells.hot', 'hot cells', 'T', 313.15, 'K', DEFINITION), shows: 'temperature' },
} as const satisfies Record<string, Fact>
export const POINTS = (Object.keys(CHARGES) as (keyof typeof CHARGES)[]).flatMap(charge =>
  (Object.keys(TEMPERATURES) as (keyof typeof TEMPERATURES)[]).map(cells => ({ charge, cells, name: `${charge} ${cells}` })),
)
/** Where goals are judged. */
export const NORMAL = 'half mild'

export const FRONT = standard('front-axle', 'pull at the front axle only', 's', 1, '1', DEFINITION)
export const REAR = standard('rear-axle', 'pull at the rear axle only', 's', 0, '1', DEFINITION)
export const EVEN = standard('both-axles', 'axles locked together: pull goes where the grip is', 's', 0.5, '1', DEFINITION)
export const counted = (n: number): Fact => standard(`count.${n}`, n === 1 ? 'one gear' : 'gears', 'n_g', n, '1', DEFINITION)
export const AXLES = (word: 'open' | 'locked'): Fact<'open' | 'locked'> => ({
  path: `standard.axles.${word}`,
  label: `axles ${word}`,
  symbol: '',
  unit: '',
  value: word,
  origin: { how: 'standard', source: DEFINITION },
})
/** Windings as warm as the coolant. */
export const COOL_START = standard('windings.cool', 'windings as warm as the coolant', 'θ_0', 0, '1', DEFINITION)
/** Windings after a steady drive at half their continuous heating. */
export const WARM_START = standard('windings.warm', 'windings half way to their limit', 'θ_0', 0.5, '1', DEFINITION)
export const UNLIMITED_WAY = standard('way.unlimited', 'any way', 's_2', Number.POSITIVE_INFINITY, 'm', DEFINITION)
export const UNLIMITED_SPEED = standard('speed.unlimited', 'any speed', 'v_2', Number.POSITIVE_INFINITY, 'm/s', DEFINITION)
export const STANDSTILL = { ...standard('speed.zero', 'standstill', 'v_1', 0, 'm/s', DEFINITION), shows: 'speed' } as const
export const speedOf = (kmh: number): Fact => ({
  ...standard(`speed.${kmh}`, `${kmh} km/h`, 'v', kmh / 3.6, 'm/s', DEFINITION),
  shows: 'speed',
})
export const QUARTER_MILE = standard('way.quarter-mile', 'quarter of a mile', 's_2', 402.336, 'm', {
  work: 'practice',
  place: 'drag strip: quarter mile',
  mark: 'common practice',
})
export const lasting = (seconds: number): Fact => standard(`time.${seconds}`, `${seconds} s`, 't', seconds, 's', DEFINITION)
