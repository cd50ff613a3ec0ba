import { area, caseCar, pressure, share } from './symbols.ts'

export const BAR = 1e5
export const VALVE = { work: 'statics', place: 'pressure behind a valve with a knee' } as const
/** What the cards on a valve take of it and of the brakes. */
export const valve = {
  knee: pressure('p_k', 'pressure at the knee of the valve'),
  slope: { ...share('s', 'slope of the valve above its knee'), holds: [0, 1] },
} as const
export const perPressure = {
  front: area('k_F', 'brake force over line pressure, front axle (1 N/bar is 0.1 cm²)'),
  rear: area('k_R', 'brake force over pressure at the brakes, rear axle'),
} as const

/** The donor of the cases, and what it became. */
export const donor = { mass: 1200, ...caseCar, front: 92 / BAR, rear: 52 / BAR, slope: 0.35 }
export const converted = { ...donor, mass: 1420, rearShare: 0.53, height: 0.545 }
